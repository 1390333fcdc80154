import { blanksOf } from "./blanks";
import type { CutSheet, Draft } from "./construct";
import { draftInGroups } from "./draftInGroups";
import { fewerSetUps, setUpsOf } from "./fewerSetUps";
import { fillOneByOne } from "./fillOneByOne";
import { firstDraft } from "./firstDraft";
import { NONE } from "./forest";
import { improve } from "./improve";
import { type Job, PRICE_STEPS, prepareSheets } from "./job";
import { layOutPlan } from "./layOutPlan";
import { mostOpen, orderSheets } from "./orderSheets";
import { type Panel, piecesIn } from "./panels";
import { areasOf, countSheets, leftOver, nothingFits, piecesHeld, quickBounds } from "./planParts";
import { hasSharpBound, sharpBound } from "./sharpBound";
import type { Steps } from "./steps";
import { tidySheets } from "./tidySheets";
import type { BenchStyle, CuttingOptions, Piece, Plan, Sheet } from "./types";
import { isTooShort, shareOf, stretchOf, type Watch } from "./watch";

/** From so many pieces on, filling sheets one by one makes a better plan to start from. */
const MANY_PIECES = 300;

/** How to cut pieces out of sheets; see `planCutting`. */
export function* planFromSheets(
  pieces: readonly Piece[],
  sheets: readonly Sheet[],
  options: CuttingOptions,
  watch: Watch,
): Steps<Plan> {
  const { bench } = options;
  const asked = prepareSheets(pieces, sheets, { ...options, bench: undefined }).job;
  let bounds = quickBounds(asked);
  yield;
  const cut = bench === undefined ? pieces : blanksOf(pieces, sheets, options);
  const { job, tooLarge } = prepareSheets(cut, sheets, options);
  yield;
  let best = firstDraft(job, (draft) => draft.sheets.reduce((sum, { panel }) => sum + setUpsOf(job, panel), 0));
  const costOf = (draft: Draft) => draft.sheets.reduce((sum, { kind }) => sum + sheets[kind]!.price, 0);
  const report = () =>
    options.onProgress?.({
      sheets: best.sheets.length,
      cost: costOf(best),
      bound: leastCost(asked, sheets, bounds),
      gap: best.weight > bounds.bound ? best.weight / bounds.bound - 1 : 0,
      iterations: watch.steps(),
      elapsedMs: watch.elapsedMs(),
    });
  const keep = (draft: Draft) => {
    best = draft;
    report();
  };
  report();
  yield;
  bounds = sharperBounds(asked, best.sheets.length, bounds, watch.mostSteps);
  const { bound } = bounds;
  const isSearched = !isTooShort(job, watch);
  if (isSearched && bench === undefined) {
    const filled = job.size >= MANY_PIECES && best.weight > bound ? fillOneByOne(job, watch) : undefined;
    if (filled !== undefined && filled.out.length <= best.out.length && filled.weight < best.weight) keep(filled);
    improve(job, best, bound, options.seed ?? 1, watch, keep);
  }
  if (isSearched && bench !== undefined) {
    const isShort = watch.mostSteps < SHORT_SEARCH;
    const goal = isShort ? bound : Math.max(bound, quickBounds(job).bound);
    const share = fewestSheetsShare(bench, isShort);
    improve(job, best, goal, options.seed ?? 1, shareOf(watch, share), keep);
    const few = withFewSetUps(
      job,
      { ...best, sheets: inOrder(job, best.sheets) },
      bench,
      bounds.sheetBound,
      options.seed ?? 1,
      watch,
    );
    best = { ...best, sheets: few, weight: weightOf(job, few) };
  }
  yield;
  const tidied = tidySheets(job, best.sheets);
  const laidOut = layOutPlan(job, bench === undefined ? tidied : inOrder(job, tidied), sheets, options);
  return {
    ...laidOut,
    counts: countSheets(sheets, best),
    cost: costOf(best),
    rollLength: 0,
    rollBound: 0,
    ...proofOf(asked, sheets, bounds, {
      weight: best.weight,
      cost: costOf(best),
      complete: best.out.length === 0,
      empty: nothingFits(job, tooLarge),
    }),
    uncuttable: piecesHeld([...tooLarge, ...leftOver(job, best.out)]),
    ...areasOf(laidOut.sheets),
    iterations: watch.steps(),
  };
}

/** Weight and sheets that no plan goes below. */
interface Bounds {
  readonly bound: number;
  readonly sheetBound: number;
}

/** The bounds with more effort, where a plan of that many sheets might be beaten. */
export function sharperBounds(asked: Job, found: number, quick: Bounds, steps: number): Bounds {
  if (asked.kinds.length > 1 || found <= quick.sheetBound || !hasSharpBound(asked)) return quick;
  const sheetBound = Math.max(quick.sheetBound, sharpBound(asked, found, steps));
  return { bound: sheetBound * asked.kinds[0]!.weight, sheetBound };
}

/** What is proved of a plan of some weight and cost. A plan that lacks pieces proves nothing. */
export function proofOf(
  asked: Job,
  sheets: readonly Sheet[],
  bounds: Bounds,
  { weight, cost, complete, empty }: ProvedPlan,
): Pick<Plan, "costBound" | "sheetBound" | "provedLeast"> {
  const least = complete && weight <= bounds.bound;
  return {
    costBound: !complete ? 0 : least ? cost : leastCost(asked, sheets, bounds),
    sheetBound: complete ? bounds.sheetBound : 0,
    provedLeast: least && !empty,
  };
}

interface ProvedPlan {
  readonly weight: number;
  readonly cost: number;
  /** No piece is left out for want of a sheet. */
  readonly complete: boolean;
  /** None of the pieces fits a sheet. */
  readonly empty: boolean;
}

function leastCost({ kinds }: Job, sheets: readonly Sheet[], { bound }: Bounds): number {
  const priced = kinds.some((kind, index) => kind.weight > 0 && sheets[index]!.price > 0);
  return priced ? bound / PRICE_STEPS : 0;
}

/** A search of fewer steps is over before the bound of its blanks is worked out. */
const SHORT_SEARCH = 1000;

/** The part of the budget in which the fewest sheets are looked for, in the bench style. */
function fewestSheetsShare({ openItems }: BenchStyle, isShort: boolean): number {
  // Plans in groups take much of the time; a short search would have too little left for set-ups.
  if (openItems !== undefined) return 0.5;
  return isShort ? 0.7 : 0.85;
}

/** The part in which a plan with few open items is looked for, where they have a limit. */
const GROUPED_SHARE = 0.9;

/** Fewer sheets than this take no spare one. */
const FEWEST_WITH_SPARE = 5;

/** What else counts beside set-ups: an item on one sheet more, one that is open on a sheet more, one above the limit. */
const PER_ITEM = 1.5;
const PER_OPEN = 0.1;
const PER_OVER = 10;

function withFewSetUps(
  job: Job,
  draft: Draft,
  { spareSheets, openItems, batchSize }: BenchStyle,
  least: number,
  seed: number,
  watch: Watch,
): readonly CutSheet[] {
  // What is in hand, whole sheets or off-cuts, costs nothing more.
  const fewest = draft.sheets.filter(({ kind }) => job.kinds[kind]!.weight > 0).length;
  const share = Math.floor(spareSheets * fewest);
  // A small job has no share of a sheet to spare: it takes one where no plan can have fewer, or only one fewer.
  // Batches would each take one, and together more than their share.
  const takesOne = batchSize === undefined && spareSheets > 0 && fewest >= FEWEST_WITH_SPARE && fewest <= least + 1;
  const more = share === 0 && takesOne ? 1 : share;
  const spare = spareKind(job);
  const most = draft.weight + (spare === NONE ? 0 : more * job.kinds[spare]!.weight);
  const open = { perOpen: PER_OPEN, perOver: PER_OVER, limit: openItems ?? Number.POSITIVE_INFINITY };
  const inGroups =
    openItems === undefined || mostOpenOf(job, draft.sheets) <= openItems
      ? undefined
      : draftInGroups(job, openItems, most, seed, stretchOf(watch, GROUPED_SHARE));
  return fewerSetUps(
    job,
    inGroups === undefined ? draft.sheets : inOrder(job, inGroups),
    { most, spare, effort: { perItem: PER_ITEM, perLength: 0, open }, seed },
    watch,
  );
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

function mostOpenOf(job: Job, sheets: readonly CutSheet[]): number {
  const items = sheets.map(({ panel }) => itemsOf(job, panel));
  return mostOpen(items, [...sheets.keys()]);
}

function itemsOf(job: Job, panel: Panel): ReadonlySet<number> {
  return new Set(piecesIn(panel).map((piece) => job.item[piece]!));
}

/** The sheets in an order in which few items are open at a time. */
function inOrder(job: Job, sheets: readonly CutSheet[]): readonly CutSheet[] {
  return orderSheets(sheets, ({ panel }) => itemsOf(job, panel));
}
