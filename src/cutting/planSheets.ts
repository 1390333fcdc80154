import { blanksOf } from "./blanks";
import type { CutSheet, Draft } from "./construct";
import { fewerSetUps } from "./fewerSetUps";
import { fillOneByOne } from "./fillOneByOne";
import { firstDraft } from "./firstDraft";
import { NONE } from "./forest";
import { improve } from "./improve";
import { type Job, PRICE_STEPS, prepareSheets } from "./job";
import { layOutPlan } from "./layOutPlan";
import { orderSheets } from "./orderSheets";
import { piecesIn } from "./panels";
import { areasOf, countSheets, leftOver, nothingFits, piecesHeld, quickBounds } from "./planParts";
import { hasSharpBound, sharpBound } from "./sharpBound";
import { tidySheets } from "./tidySheets";
import type { CuttingOptions, Piece, Plan, Sheet } from "./types";
import { shareOf, type Watch } from "./watch";

/** From so many pieces on, filling sheets one by one makes a better plan to start from. */
const MANY_PIECES = 300;

/** How to cut pieces out of sheets; see `planCutting`. */
export function planFromSheets(
  pieces: readonly Piece[],
  sheets: readonly Sheet[],
  options: CuttingOptions,
  watch: Watch,
): Plan {
  const { bench } = options;
  const asked = prepareSheets(pieces, sheets, { ...options, bench: undefined }).job;
  const cut = bench === undefined ? pieces : blanksOf(pieces, sheets, options);
  const { job, tooLarge } = prepareSheets(cut, sheets, options);
  let best = firstDraft(job, (draft) => layOutPlan(job, draft.sheets, sheets, options).setUps);
  let { bound, sheetBound } = quickBounds(asked);
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
  if (job.kinds.length === 1 && best.sheets.length > sheetBound && hasSharpBound(asked)) {
    sheetBound = Math.max(sheetBound, sharpBound(asked, best.sheets.length));
    bound = sheetBound * job.kinds[0]!.weight;
  }
  if (bench === undefined) {
    const filled = job.size >= MANY_PIECES && best.weight > bound ? fillOneByOne(job, watch) : undefined;
    if (filled !== undefined && filled.out.length <= best.out.length && filled.weight < best.weight) keep(filled);
    improve(job, best, bound, options.seed ?? 1, watch, keep);
  } else {
    const goal = Math.max(bound, quickBounds(job).bound);
    improve(job, best, goal, options.seed ?? 1, shareOf(watch, FEWEST_SHEETS_SHARE), keep);
    const few = withFewSetUps(job, best, bench.spareSheets, best.weight <= bound, options.seed ?? 1, watch);
    best = { ...best, sheets: few, weight: weightOf(job, few) };
  }
  const tidied = tidySheets(job, best.sheets);
  const laidOut = layOutPlan(job, bench === undefined ? tidied : inOrder(job, tidied), sheets, options);
  const complete = best.out.length === 0;
  return {
    ...laidOut,
    counts: countSheets(sheets, best),
    cost: costOf(best),
    costBound: !complete ? 0 : best.weight <= bound ? costOf(best) : costBound(),
    sheetBound: complete ? sheetBound : 0,
    rollLength: 0,
    rollBound: 0,
    provedLeast: complete && best.weight <= bound && !nothingFits(job, tooLarge),
    uncuttable: piecesHeld([...tooLarge, ...leftOver(job, best.out)]),
    ...areasOf(laidOut.sheets),
    iterations: watch.steps(),
  };
}

/** The part of the budget in which the fewest sheets are looked for, in the bench style. */
const FEWEST_SHEETS_SHARE = 0.4;

/** Fewer sheets than this take no spare one. */
const FEWEST_WITH_SPARE = 5;

/** An item on one sheet more counts as much as so many set-ups. */
const EFFORT = { perItem: 1.5, perLength: 0 };

function withFewSetUps(
  job: Job,
  draft: Draft,
  spareSheets: number,
  provedLeast: boolean,
  seed: number,
  watch: Watch,
): readonly CutSheet[] {
  const fewest = draft.sheets.length;
  const share = Math.floor(spareSheets * fewest);
  // A small job has no share of a sheet to spare: it takes one where no plan can have fewer.
  const more = share === 0 && spareSheets > 0 && fewest >= FEWEST_WITH_SPARE && provedLeast ? 1 : share;
  return fewerSetUps(job, draft.sheets, { most: fewest + more, spare: spareKind(job), effort: EFFORT, seed }, watch);
}

/** The cheapest kind of sheet that may be bought, or NONE. */
function spareKind({ kinds }: Job): number {
  return Array.from(kinds.keys())
    .filter((kind) => kinds[kind]!.limit === Number.POSITIVE_INFINITY)
    .reduce((best, kind) => (best === NONE || kinds[kind]!.weight < kinds[best]!.weight ? kind : best), NONE);
}

function weightOf({ kinds }: Job, sheets: readonly CutSheet[]): number {
  return sheets.reduce((sum, { kind }) => sum + kinds[kind]!.weight, 0);
}

/** The sheets in an order in which few items are open at a time. */
function inOrder(job: Job, sheets: readonly CutSheet[]): readonly CutSheet[] {
  const items = sheets.map(({ panel }) => new Set(piecesIn(panel).map((piece) => job.source[piece]!.item)));
  return orderSheets(items).map((at) => sheets[at]!);
}
