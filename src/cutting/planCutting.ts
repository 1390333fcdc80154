import { checkInput } from "./checkInput";
import type { CutSheet, Draft } from "./construct";
import { fillOneByOne } from "./fillOneByOne";
import { firstDraft } from "./firstDraft";
import { improve } from "./improve";
import { type Job, PRICE_STEPS, prepareRoll, prepareSheets, UNITS_PER_MM, unitsUp } from "./job";
import { layOutPlan } from "./layOutPlan";
import { lowerBound } from "./lowerBound";
import { constructRoll, improveRoll } from "./planRoll";
import { rollBound } from "./rollBound";
import { hasSharpBound, sharpBound } from "./sharpBound";
import type {
  Budget,
  CuttingOptions,
  Piece,
  Plan,
  Roll,
  Sheet,
  SheetPlan,
  Stock,
  StockCount,
  Uncuttable,
} from "./types";
import { tidySheets } from "./tidySheets";
import { createWatch, type Watch } from "./watch";

/** The budget when none is given: a fraction of a second for a usual survey, and the same plan on any machine. */
const DEFAULT_BUDGET: Budget = { iterations: 2000 };

/** From so many pieces on, filling sheets one by one makes a better plan to start from. */
const MANY_PIECES = 300;

const MM2_PER_M2 = 1e6;
const MM_PER_M = 1000;

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
  return stock.kind === "roll"
    ? planFromRoll(pieces, stock.roll, options, watch)
    : planFromSheets(pieces, stock.sheets, options, watch);
}

function planFromSheets(
  pieces: readonly Piece[],
  sheets: readonly Sheet[],
  options: CuttingOptions,
  watch: Watch,
): Plan {
  const { job, tooLarge } = prepareSheets(pieces, sheets, options);
  let best = firstDraft(job, (draft) => layOutPlan(job, draft.sheets, sheets, options).setUps);
  let { bound, sheetBound } = quickBounds(job);
  const costOf = (draft: Draft) => draft.sheets.reduce((sum, { kind }) => sum + sheets[kind]!.price, 0);
  const priced = job.kinds.some((kind, index) => kind.weight > 0 && sheets[index]!.price > 0);
  const costBound = () => (priced ? bound / PRICE_STEPS : 0);
  const report = () =>
    options.onProgress?.({
      sheets: best.sheets.length,
      cost: costOf(best),
      bound: costBound(),
      gap: best.weight > bound ? best.weight / bound - 1 : 0,
      iterations: watch.steps(),
      elapsedMs: watch.elapsedMs(),
    });
  const keep = (draft: Draft) => {
    best = draft;
    report();
  };
  report();
  if (job.kinds.length === 1 && best.sheets.length > sheetBound && hasSharpBound(job)) {
    sheetBound = Math.max(sheetBound, sharpBound(job, best.sheets.length));
    bound = sheetBound * job.kinds[0]!.weight;
  }
  const filled = job.size >= MANY_PIECES && best.weight > bound ? fillOneByOne(job, watch) : undefined;
  if (filled !== undefined && filled.out.length <= best.out.length && filled.weight < best.weight) keep(filled);
  improve(job, best, bound, options.seed ?? 1, watch, keep);
  const laidOut = layOutPlan(job, tidySheets(job, best.sheets), sheets, options);
  const complete = best.out.length === 0;
  return {
    ...laidOut,
    counts: countSheets(sheets, best),
    cost: costOf(best),
    costBound: !complete ? 0 : best.weight <= bound ? costOf(best) : costBound(),
    sheetBound: complete ? sheetBound : 0,
    rollLength: 0,
    rollBound: 0,
    provedLeast: complete && best.weight <= bound,
    uncuttable: [...tooLarge, ...leftOver(job, best.out)],
    ...areasOf(laidOut.sheets),
    iterations: watch.steps(),
  };
}

/** The weight and the number of sheets that no plan goes below. */
function quickBounds(job: Job): { bound: number; sheetBound: number } {
  const sheetBound = lowerBound(
    job,
    job.kinds.map(() => 1),
  );
  const weights = job.kinds.map((kind) => kind.weight);
  return { bound: weights.length === 1 ? sheetBound * weights[0]! : lowerBound(job, weights), sheetBound };
}

function planFromRoll(pieces: readonly Piece[], roll: Roll, options: CuttingOptions, watch: Watch): Plan {
  const { job, tooLarge } = prepareRoll(pieces, roll, options);
  const gap = unitsUp(options.pieceGap ?? 0);
  const trim = 2 * (options.edgeTrim ?? 0);
  const taken = (units: number) => (units === 0 ? 0 : (units - gap) / UNITS_PER_MM + trim);
  const cost = (units: number) => (taken(units) / MM_PER_M) * roll.pricePerM;
  const bound = rollBound(job, job.kinds[0]!.width);
  let best = job.size === 0 ? undefined : constructRoll(job, bound);
  const length = () => best?.length ?? 0;
  const report = () =>
    options.onProgress?.({
      sheets: best === undefined ? 0 : 1,
      cost: taken(length()),
      bound: taken(bound),
      gap: bound === 0 ? 0 : length() / bound - 1,
      iterations: watch.steps(),
      elapsedMs: watch.elapsedMs(),
    });
  report();
  if (best !== undefined)
    improveRoll(job, best, bound, options.seed ?? 1, watch, (panel) => {
      best = panel;
      report();
    });
  const cutSheets: readonly CutSheet[] = best === undefined ? [] : [{ kind: 0, panel: best }];
  const face = { name: roll.name, length: taken(length()), width: roll.width };
  const laidOut = layOutPlan(job, cutSheets, [face], options);
  const sheets = cutSheets.length;
  return {
    ...laidOut,
    counts: [{ stock: roll.name, sheets, packs: sheets, cost: cost(length()) }],
    cost: cost(length()),
    costBound: cost(bound),
    sheetBound: sheets,
    rollLength: taken(length()),
    rollBound: taken(bound),
    provedLeast: length() <= bound,
    uncuttable: tooLarge,
    ...areasOf(laidOut.sheets),
    iterations: watch.steps(),
  };
}

function countSheets(sheets: readonly Sheet[], draft: Draft): readonly StockCount[] {
  return sheets.map(({ name, price, pack }, index) => {
    const count = draft.sheets.filter(({ kind }) => kind === index).length;
    return { stock: name, sheets: count, packs: Math.ceil(count / (pack ?? 1)), cost: count * price };
  });
}

function leftOver(job: Job, out: readonly number[]): readonly Uncuttable[] {
  const counts = new Map<Piece, number>();
  for (const index of out) counts.set(job.source[index]!, (counts.get(job.source[index]!) ?? 0) + 1);
  return [...counts].map(([piece, count]) => ({ piece, count, reason: "no sheet left" }));
}

function areasOf(sheets: readonly SheetPlan[]): { pieceAreaM2: number; sheetAreaM2: number } {
  const area = (side: { length: number; width: number }) => (side.length * side.width) / MM2_PER_M2;
  return {
    pieceAreaM2: sheets.reduce(
      (sum, { placements }) => sum + placements.reduce((own, place) => own + area(place), 0),
      0,
    ),
    sheetAreaM2: sheets.reduce((sum, sheet) => sum + area(sheet), 0),
  };
}
