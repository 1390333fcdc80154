import { CHANCE_PARTS } from "./choice";
import { createForest, NONE } from "./forest";
import { begin, commit, rollback } from "./history";
import type { Draft } from "./construct";
import { weightStep } from "./cover";
import type { Job } from "./job";
import { leastSides } from "./leastSides";
import { exportPanel, importPanel } from "./panels";
import { discard } from "./takeOut";
import { createRandom } from "./random";
import { ruin } from "./ruin";
import { createSearch, forgetSheet, recreate, type Search } from "./search";
import type { Watch } from "./watch";
import { chooseWindow, gather } from "./searchWindow";
import { type Past, createPast, remember, recall } from "./searchPast";

/** Chance to overlook a way of cutting: 3 in 100. */
const BLINK = Math.round(0.03 * CHANCE_PARTS);

/** How many accepted steps back a step is compared with (late acceptance). */
const LATE = 30;
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
