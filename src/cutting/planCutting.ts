import { checkInput } from "./checkInput";
import { planBatches } from "./planBatches";
import { planLengths } from "./planLengths";
import { planOneLength } from "./planOneLength";
import { planFromSheets } from "./planSheets";
import type { Budget, CuttingOptions, Piece, Plan, Stock } from "./types";
import { createWatch } from "./watch";

/** The budget when none is given: a fraction of a second for a usual survey, and the same plan on any machine. */
const DEFAULT_BUDGET: Budget = { iterations: 4000 };

/**
 * How to cut pieces out of sheets or off a roll, edge to edge, at the least cost that is found within the budget, with
 * the cost below which no plan can be.
 *
 * A piece that fits no sheet is listed as uncuttable. Off-cuts in hand (price 0) are used before sheets that cost
 * something; when no sheet costs anything, the plan with the least area of sheets is looked for.
 *
 * @example planCutting(pieces, { kind: "sheets", sheets: [board] }, { budget: { iterations: 5000 } }).counts
 * @throws InputError when a size, count, price or allowance cannot be used
 */
export function planCutting(pieces: readonly Piece[], stock: Stock, options: CuttingOptions = {}): Plan {
  checkInput(pieces, stock, options);
  const watch = createWatch(options.budget ?? DEFAULT_BUDGET, options.shouldStop ?? (() => false));
  if (options.bench !== undefined && pieces.some(({ batch }) => batch !== undefined))
    return planBatches(pieces, stock, options, watch);
  if (stock.kind === "sheets") return planFromSheets(pieces, stock.sheets, options, watch);
  const ofRoll = options.bench === undefined ? planOneLength : planLengths;
  return ofRoll(pieces, stock.roll, options, watch);
}
