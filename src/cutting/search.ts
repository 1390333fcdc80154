import { bestCut, weighNew } from "./bestCut";
import { type Choice, noChoice } from "./choice";
import { type Forest, NONE } from "./forest";
import type { Job } from "./job";
import { kindFor, mayTake } from "./kindFor";
import { cutPiece, layOut } from "./panels";
import type { Random } from "./random";

/** The state of a running search: sheets in work, and the pieces that lie on none. */
export interface Search {
  readonly job: Job;
  readonly forest: Forest;
  readonly random: Random;
  /** The sheets being changed, as panels, with their kinds; and the others, panel and kind in turn. */
  readonly sheets: Int32Array;
  readonly kinds: Int32Array;
  sheetCount: number;
  parked: number[];
  readonly used: Int32Array;
  /** Weight of all sheets, and the most that it may be. */
  spent: number;
  allowed: number;
  /** The pieces on no sheet, the first `outCount`, and their area. */
  readonly out: Int32Array;
  outCount: number;
  outArea: number;
  readonly choice: Choice;
  readonly fits: Int32Array;
  readonly rest: Int32Array;
  readonly panels: Int32Array;
}

/** One in so many sheets is taken up without regard to its price. */
const ANY_KIND = 4;

export function createSearch(job: Job, forest: Forest, random: Random): Search {
  const pieces = () => new Int32Array(job.size + 1);
  return {
    job,
    forest,
    random,
    sheets: pieces(),
    kinds: pieces(),
    sheetCount: 0,
    parked: [],
    used: new Int32Array(job.kinds.length),
    spent: 0,
    allowed: 0,
    out: pieces(),
    outCount: 0,
    outArea: 0,
    choice: noChoice(),
    fits: pieces(),
    rest: pieces(),
    panels: new Int32Array(4 * job.size + 4),
  };
}

/**
 * Puts the pieces of `out` back on sheets, the one with the fewest leftovers to go to first, each where it wastes least;
 * takes up new sheets as far as the allowed weight goes.
 *
 * @param blink chance to overlook a way of cutting, in parts of CHANCE_PARTS
 * @param limit area of pieces left out from which on the outcome does not matter
 * @returns false when that limit was passed: the state is then to be taken back
 */
export function recreate(search: Search, blink: number, limit: number): boolean {
  const { job, forest, random, choice, fits, rest } = search;
  let count = search.outCount;
  for (let index = 0; index < count; index++) {
    const piece = search.out[index]!;
    rest[index] = piece;
    fits[index] = countFits(forest, job, piece, 0);
  }
  search.outCount = 0;
  search.outArea = 0;
  while (count > 0) {
    const at = mostAwkward(fits, count, random);
    const piece = rest[at]!;
    const awkward = fits[at]!;
    count--;
    rest[at] = rest[count]!;
    fits[at] = fits[count]!;
    choice.leftover = NONE;
    if (awkward > 0) bestCut(forest, job, piece, random, blink, choice);
    if (choice.leftover === NONE && takeSheet(search, piece, count))
      for (let index = 0; index < count; index++)
        fits[index]! += countFits(forest, job, rest[index]!, forest.openCount - 1);
    if (choice.leftover === NONE) {
      search.out[search.outCount++] = piece;
      search.outArea += job.area[piece]!;
      if (search.outArea > limit) return false;
      continue;
    }
    const { leftover } = choice;
    const fullLength = forest.length[leftover]!;
    const fullWidth = forest.width[leftover]!;
    const fresh = forest.openCount - 1;
    cutPiece(forest, leftover, piece, choice.length, choice.width, choice.axis);
    for (let index = 0; index < count; index++) {
      const other = rest[index]!;
      if (!fitsIn(job, other, fullLength, fullWidth)) continue;
      fits[index]! += countFits(forest, job, other, fresh) - 1;
    }
  }
  return true;
}

/** Takes up a new sheet for a piece when one is allowed, and weighs how to cut the piece from it. */
export function takeSheet(search: Search, piece: number, waiting: number): boolean {
  const kind = nextKind(search, piece, waiting);
  if (kind === NONE) return false;
  const { job, forest, choice } = search;
  const sheet = layOut(forest, job.kinds[kind]!);
  search.sheets[search.sheetCount] = sheet;
  search.kinds[search.sheetCount++] = kind;
  search.used[kind]!++;
  search.spent += job.kinds[kind]!.weight;
  choice.loss = Number.POSITIVE_INFINITY;
  weighNew(forest, job, piece, sheet, search.random, choice);
  return true;
}

/** Takes a sheet off the list; its panels are the caller's. */
export function forgetSheet(search: Search, at: number): void {
  const kind = search.kinds[at]!;
  search.used[kind]!--;
  search.spent -= search.job.kinds[kind]!.weight;
  const last = --search.sheetCount;
  search.sheets[at] = search.sheets[last]!;
  search.kinds[at] = search.kinds[last]!;
}

/** The kind of sheet to take up for a piece: what costs least for what can still be put on it, now and then any. */
function nextKind(search: Search, piece: number, waiting: number): number {
  const { job, random, used } = search;
  const room = search.allowed - search.spent;
  if (job.kinds.length === 1) return mayTake(job, 0, used, room, piece) ? 0 : NONE;
  if (random.below(ANY_KIND) === 0) {
    let any = NONE;
    for (let kind = 0, seen = 0; kind < job.kinds.length; kind++)
      if (mayTake(job, kind, used, room, piece) && random.below(++seen) === 0) any = kind;
    return any;
  }
  let toPlace = job.area[piece]!;
  for (let index = 0; index < waiting; index++) toPlace += job.area[search.rest[index]!]!;
  return kindFor(job, used, room, piece, toPlace, NONE);
}

function mostAwkward(fits: Int32Array, count: number, random: Random): number {
  let best = 0;
  let ties = 1;
  for (let index = 1; index < count; index++) {
    const value = fits[index]!;
    if (value > fits[best]!) continue;
    if (value < fits[best]!) {
      best = index;
      ties = 1;
    } else if (random.below(++ties) === 0) best = index;
  }
  return best;
}

function fitsIn(job: Job, piece: number, fullLength: number, fullWidth: number): boolean {
  const length = job.length[piece]!;
  const width = job.width[piece]!;
  return (
    (length <= fullLength && width <= fullWidth) ||
    (job.turn[piece] === 1 && width <= fullLength && length <= fullWidth)
  );
}

/** How many open leftovers, from slot `from` on, the piece fits. */
function countFits(forest: Forest, job: Job, piece: number, from: number): number {
  const length = job.length[piece]!;
  const width = job.width[piece]!;
  const turn = job.turn[piece] === 1;
  const { openLength, openWidth, openCount } = forest;
  let count = 0;
  if (turn) {
    for (let slot = from; slot < openCount; slot++) {
      const fullLength = openLength[slot]!;
      const fullWidth = openWidth[slot]!;
      if ((length <= fullLength && width <= fullWidth) || (width <= fullLength && length <= fullWidth)) count++;
    }
    return count;
  }
  for (let slot = from; slot < openCount; slot++) if (length <= openLength[slot]! && width <= openWidth[slot]!) count++;
  return count;
}
