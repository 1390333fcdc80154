import { CHANCE_PARTS } from "./choice";
import { begin, commit, createForest, type Forest, isLeftover, NONE, openLeftover, rollback } from "./forest";
import type { Draft } from "./construct";
import { weightStep } from "./cover";
import type { Job } from "./job";
import { leastSides } from "./leastSides";
import { discard, exportPanel, importPanel } from "./panels";
import { createRandom } from "./random";
import { ruin } from "./ruin";
import { createSearch, forgetSheet, recreate, type Search } from "./search";
import type { Watch } from "./watch";

/** Chance to overlook a way of cutting: 3 in 100. */
const BLINK = Math.round(0.03 * CHANCE_PARTS);

/** How many accepted steps back a step is compared with (late acceptance). */
const LATE = 30;

/** Pieces on the sheets that are changed together, about, and the steps before other sheets are taken. */
const WINDOW_PIECES = 400;
const WINDOW_STEPS = 400;

/** Called with each better plan. */
export type Found = (draft: Draft) => void;

/**
 * Looks for a plan of less weight by ruin and recreate with late acceptance: aims at a weight below the best plan's,
 * leaves out what does not fit, and shuffles pieces until none is left out. A draft with pieces left out is first
 * searched for room for them.
 *
 * @param bound weight that no plan goes below: the search ends there
 * Source: Gardeyn and Wauters 2022 (see worth.ts) for the method; E. Burke, Y. Bykov, "The late acceptance hill-climbing
 * heuristic", European Journal of Operational Research 258, 2017, for the acceptance.
 */
export function improve(job: Job, draft: Draft, bound: number, seed: number, watch: Watch, found: Found): void {
  const search = plant(job, draft, seed);
  const step = weightStep(job.kinds.map((kind) => kind.weight));
  if (draft.out.length > 0) {
    const outArea = search.outArea;
    aimAt(search, Number.POSITIVE_INFINITY, watch);
    if (search.outArea < outArea) found(draftOf(search));
  }
  while (search.outCount === 0 && search.spent > bound && aimAt(search, search.spent - step, watch))
    found(draftOf(search));
}

/** Looks for room for the pieces that a draft leaves out, on the sheets there are, for at most `patience` steps. */
export function placeAll(job: Job, draft: Draft, seed: number, watch: Watch, patience: number): Draft {
  const search = plant(job, draft, seed);
  aimAt(search, Number.POSITIVE_INFINITY, watch, patience);
  return draftOf(search);
}

/** Runs until every piece is placed within the weight; false when the budget or the patience ran out first. */
function aimAt(search: Search, allowed: number, watch: Watch, patience = Number.POSITIVE_INFINITY): boolean {
  search.allowed = allowed;
  while (search.spent > allowed && giveUpWorstSheet(search));
  chooseWindow(search, true);
  recreate(search, BLINK, Number.POSITIVE_INFINITY);
  const late = createLate(search);
  const past = createPast(search);
  for (let step = 1; search.outCount > 0 && step <= patience && !watch.over(); step++) {
    if (step % WINDOW_STEPS === 0) chooseWindow(search, false);
    tryStep(search, late, past);
  }
  gather(search);
  return search.outCount === 0;
}

interface Late {
  readonly area: Float64Array;
  readonly worth: Float64Array;
  accepted: number;
}

function createLate(search: Search): Late {
  return {
    area: new Float64Array(LATE).fill(search.outArea),
    worth: new Float64Array(LATE).fill(search.forest.totalWorth),
    accepted: 0,
  };
}

function tryStep(search: Search, late: Late, past: Past): void {
  const { forest } = search;
  const at = late.accepted % LATE;
  const lateArea = late.area[at]!;
  begin(forest);
  remember(search, past);
  ruin(search);
  const done = recreate(search, BLINK, Math.max(lateArea, past.outArea));
  const area = search.outArea;
  const worth = forest.totalWorth;
  const better = done && notWorse(area, worth, lateArea, late.worth[at]!);
  if (!better && !(done && notWorse(area, worth, past.outArea, past.worth))) {
    rollback(forest);
    recall(search, past);
    return;
  }
  commit(forest);
  if (better) {
    late.area[at] = area;
    late.worth[at] = worth;
  }
  late.accepted++;
}

function notWorse(area: number, worth: number, thanArea: number, thanWorth: number): boolean {
  return area < thanArea || (area === thanArea && worth >= thanWorth);
}

/** The search as it was before a step, apart from the forest, which remembers for itself. */
interface Past {
  readonly sheets: Int32Array;
  readonly kinds: Int32Array;
  readonly used: Int32Array;
  readonly out: Int32Array;
  sheetCount: number;
  outCount: number;
  outArea: number;
  spent: number;
  worth: number;
}

function createPast(search: Search): Past {
  return {
    sheets: new Int32Array(search.sheets.length),
    kinds: new Int32Array(search.kinds.length),
    used: new Int32Array(search.used.length),
    out: new Int32Array(search.out.length),
    sheetCount: 0,
    outCount: 0,
    outArea: 0,
    spent: 0,
    worth: 0,
  };
}

function remember(search: Search, past: Past): void {
  copy(search.sheets, past.sheets, search.sheetCount);
  copy(search.kinds, past.kinds, search.sheetCount);
  copy(search.used, past.used, search.used.length);
  copy(search.out, past.out, search.outCount);
  past.sheetCount = search.sheetCount;
  past.outCount = search.outCount;
  past.outArea = search.outArea;
  past.spent = search.spent;
  past.worth = search.forest.totalWorth;
}

function recall(search: Search, past: Past): void {
  copy(past.sheets, search.sheets, past.sheetCount);
  copy(past.kinds, search.kinds, past.sheetCount);
  copy(past.used, search.used, past.used.length);
  copy(past.out, search.out, past.outCount);
  search.sheetCount = past.sheetCount;
  search.outCount = past.outCount;
  search.outArea = past.outArea;
  search.spent = past.spent;
}

function copy(from: Int32Array, to: Int32Array, count: number): void {
  for (let index = 0; index < count; index++) to[index] = from[index]!;
}

function plant(job: Job, draft: Draft, seed: number): Search {
  const { leastLength, leastWidth } = leastSides(job);
  const search = createSearch(job, createForest(job.size, leastLength, leastWidth, job.limits), createRandom(seed));
  for (const { kind, panel } of draft.sheets) {
    const sheet = importPanel(search.forest, panel);
    search.forest.edgeTrim[sheet] = job.kinds[kind]!.edgeTrim;
    search.sheets[search.sheetCount] = sheet;
    search.kinds[search.sheetCount++] = kind;
    search.used[kind]!++;
    search.spent += job.kinds[kind]!.weight;
  }
  for (const piece of draft.out) {
    search.out[search.outCount++] = piece;
    search.outArea += job.area[piece]!;
  }
  return search;
}

/** Puts all sheets into the window. */
function gather(search: Search): void {
  for (let index = 0; index < search.parked.length; index += 2) {
    search.sheets[search.sheetCount] = search.parked[index]!;
    search.kinds[search.sheetCount++] = search.parked[index + 1]!;
  }
  search.parked = [];
}

/** Parks all but some sheets, chosen by chance, so that a step looks through few leftovers however large the job. */
function chooseWindow(search: Search, again: boolean): void {
  const all = search.sheetCount + search.parked.length / 2;
  const wanted = Math.ceil((WINDOW_PIECES * all) / search.job.size);
  if (!again && wanted >= all && search.parked.length === 0) return;
  gather(search);
  const { sheets, kinds, random, forest } = search;
  while (search.sheetCount > wanted) {
    const at = random.below(search.sheetCount);
    const last = --search.sheetCount;
    search.parked.push(sheets[at]!, kinds[at]!);
    sheets[at] = sheets[last]!;
    kinds[at] = kinds[last]!;
  }
  for (let slot = 0; slot < forest.openCount; slot++) forest.slot[forest.open[slot]!] = NONE;
  forest.openCount = 0;
  for (let index = 0; index < search.sheetCount; index++) reopen(forest, sheets[index]!);
}

function reopen(forest: Forest, panel: number): void {
  if (isLeftover(forest, panel)) {
    forest.totalWorth -= forest.worth[panel]!;
    openLeftover(forest, panel);
  } else for (let part = forest.first[panel]!; part !== NONE; part = forest.next[part]!) reopen(forest, part);
}

function draftOf(search: Search): Draft {
  const sheets = Array.from({ length: search.sheetCount }, (_, index) => ({
    kind: search.kinds[index]!,
    panel: exportPanel(search.forest, search.sheets[index]!),
  }));
  return { sheets, out: [...search.out.subarray(0, search.outCount)], weight: search.spent };
}

/** Gives up the sheet with the least on it for its weight; false when none has a weight. */
function giveUpWorstSheet(search: Search): boolean {
  let worst = NONE;
  let least = Number.POSITIVE_INFINITY;
  for (let at = 0; at < search.sheetCount; at++) {
    const { weight } = search.job.kinds[search.kinds[at]!]!;
    const rate = weight === 0 ? Number.POSITIVE_INFINITY : pieceArea(search, search.sheets[at]!) / weight;
    if (rate < least) {
      least = rate;
      worst = at;
    }
  }
  if (worst === NONE) return false;
  const before = search.outCount;
  search.outCount = discard(search.forest, search.sheets[worst]!, search.out, before);
  for (let index = before; index < search.outCount; index++) search.outArea += search.job.area[search.out[index]!]!;
  forgetSheet(search, worst);
  return true;
}

function pieceArea(search: Search, panel: number): number {
  const { forest, job } = search;
  if (forest.piece[panel] !== NONE) return job.area[forest.piece[panel]!]!;
  let sum = 0;
  for (let part = forest.first[panel]!; part !== NONE; part = forest.next[part]!) sum += pieceArea(search, part);
  return sum;
}
