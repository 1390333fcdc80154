import { checkInput } from "./checkInput";
import { construct, type CutSheet, type Draft, type Order, ORDERS } from "./construct";
import { NONE } from "./forest";
import { improve } from "./improve";
import { type Job, PRICE_STEPS, prepareRoll, prepareSheets, UNITS_PER_MM, unitsUp } from "./job";
import { type Face, layOutPlan } from "./layOutPlan";
import { lowerBound } from "./lowerBound";
import { constructRoll, improveRoll } from "./planRoll";
import { rollBound } from "./rollBound";
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
import { createWatch, type Watch } from "./watch";

/** The budget when none is given: a fraction of a second for a usual survey, and the same plan on any machine. */
const DEFAULT_BUDGET: Budget = { iterations: 2000 };

const MM2_PER_M2 = 1e6;
const MM_PER_M = 1000;

/** Up to so many pieces every order is tried for a first plan, up to so many two, beyond one. */
const ALL_ORDERS_UP_TO = 2000;
const TWO_ORDERS_UP_TO = 12000;

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
  const bound = lowerBound(
    job,
    job.kinds.map((kind) => kind.weight),
  );
  const [only] = job.kinds;
  const alone = job.kinds.length === 1 && only !== undefined && only.weight > 0 ? only.weight : undefined;
  const sheetBound =
    alone === undefined
      ? lowerBound(
          job,
          job.kinds.map(() => 1),
        )
      : bound / alone;
  const costOf = (draft: Draft) => draft.sheets.reduce((sum, { kind }) => sum + sheets[kind]!.price, 0);
  const faces: readonly Face[] = sheets;
  const priced = job.kinds.some((kind, index) => kind.weight > 0 && sheets[index]!.price > 0);
  const costBound = priced ? bound / PRICE_STEPS : 0;
  let best = firstDraft(job, faces, options);
  const report = () =>
    options.onProgress?.({
      sheets: best.sheets.length,
      cost: costOf(best),
      bound: costBound,
      gap: best.weight > bound ? best.weight / bound - 1 : 0,
      iterations: watch.steps(),
      elapsedMs: watch.elapsedMs(),
    });
  report();
  improve(job, best, bound, options.seed ?? 1, watch, (draft) => {
    best = draft;
    report();
  });
  const laidOut = layOutPlan(job, best.sheets, faces, options);
  const complete = best.out.length === 0;
  return {
    ...laidOut,
    counts: countSheets(sheets, best),
    cost: costOf(best),
    costBound: !complete ? 0 : best.weight <= bound ? costOf(best) : costBound,
    sheetBound: complete ? sheetBound : 0,
    rollLength: 0,
    rollBound: 0,
    provedLeast: complete && best.weight <= bound,
    uncuttable: [...tooLarge, ...leftOver(job, best.out)],
    ...areasOf(laidOut.sheets),
    iterations: watch.steps(),
  };
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

/** The best of some first plans: fewest pieces left out, then least weight, then least area, then fewest set-ups. */
function firstDraft(job: Job, faces: readonly Face[], options: CuttingOptions): Draft {
  if (job.size === 0) return { sheets: [], out: [], weight: 0 };
  const favoured = job.kinds.length === 1 ? [NONE] : [NONE, ...job.kinds.keys()];
  const drafts = favoured.flatMap((kind) => ordersFor(job).map((order) => construct(job, order, kind)));
  const area = (draft: Draft) =>
    draft.sheets.reduce((sum, { kind }) => sum + job.kinds[kind]!.length * job.kinds[kind]!.width, 0);
  const rank = (draft: Draft) => [draft.out.length, draft.weight, area(draft)];
  const best = drafts.map(rank).reduce((one, other) => (comparison(one, other) <= 0 ? one : other));
  const equal = drafts.filter((draft) => comparison(rank(draft), best) === 0);
  if (equal.length === 1) return equal[0]!;
  return equal
    .map((draft) => ({ draft, setUps: layOutPlan(job, draft.sheets, faces, options).setUps }))
    .reduce((one, other) => (one.setUps <= other.setUps ? one : other)).draft;
}

function ordersFor(job: Job): readonly Order[] {
  if (job.size <= ALL_ORDERS_UP_TO) return ORDERS;
  return ORDERS.slice(0, job.size <= TWO_ORDERS_UP_TO ? 2 : 1);
}

function comparison(one: readonly number[], other: readonly number[]): number {
  const at = one.findIndex((value, index) => value !== other[index]);
  return at < 0 ? 0 : one[at]! - other[at]!;
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
