import { blanksOf } from "./blanks";
import { checkInput } from "./checkInput";
import { prepareSheets } from "./job";
import { planBatches } from "./planBatches";
import { lengthsFor, planLengths } from "./planLengths";
import { planOneLength } from "./planOneLength";
import { planFromSheets } from "./planSheets";
import { finish, type Steps } from "./steps";
import type { Budget, CuttingOptions, Piece, Plan, Stock, Uncuttable } from "./types";
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
  return finish(planInSteps(pieces, stock, options));
}

/** The same in steps that each take a part of the time. @throws as `planCutting` */
export function* planInSteps(pieces: readonly Piece[], stock: Stock, options: CuttingOptions): Steps<Plan> {
  checkInput(pieces, stock, options);
  const tooLong = beyondTheCut(pieces, stock, options);
  if (tooLong.size > 0) {
    const rest = yield* planInSteps(
      pieces.filter((piece) => !tooLong.has(piece)),
      stock,
      options,
    );
    const left = [...tooLong].map((piece): Uncuttable => ({
      piece,
      count: piece.count ?? 1,
      reason: "longer than the longest cut",
    }));
    return {
      ...rest,
      provedLeast: rest.provedLeast && rest.sheets.length > 0,
      uncuttable: [...rest.uncuttable, ...left],
    };
  }
  const watch = createWatch(options.budget ?? DEFAULT_BUDGET, options.shouldStop ?? (() => false));
  if (options.bench !== undefined && pieces.some(({ batch }) => batch !== undefined))
    return yield* planBatches(pieces, stock, options, watch);
  if (stock.kind === "sheets") return yield* planFromSheets(pieces, stock.sheets, options, watch);
  if (options.bench === undefined) return planOneLength(pieces, stock.roll, options, watch);
  return yield* planLengths(pieces, stock.roll, options, watch);
}

/** Pieces that fit a sheet, but that no cut of the shop's greatest length frees from it. */
function beyondTheCut(pieces: readonly Piece[], stock: Stock, options: CuttingOptions): ReadonlySet<Piece> {
  if (options.bench?.cutLength === undefined) return new Set();
  const ofSheets = stock.kind === "sheets";
  const sheets = ofSheets ? stock.sheets : lengthsFor(pieces, stock.roll, options);
  const cut = ofSheets ? blanksOf(pieces, sheets, options) : pieces;
  const { tooLarge } = prepareSheets(cut, sheets, options);
  const tooLong = tooLarge.filter(({ reason }) => reason === "longer than the longest cut");
  return new Set(tooLong.flatMap(({ piece }) => piece.holds?.map((held) => held.piece) ?? piece));
}
