import type { CutSheet } from "./construct";
import { fillWithFewSettings } from "./fillWithFewSettings";
import { fitsKind, type Job } from "./job";
import { piecesIn } from "./panels";
import { createRandom } from "./random";
import { endWaste, neededLength } from "./shorten";
import type { Steps } from "./steps";

/** Items that a length may take pieces of: the first that are not finished. More waste less, and are on more lengths. */
const ITEMS_IN_TURN = 30;

/** Pieces laid out in all tries together, in a short search and in any other; and the tries for each length. */
const SHORT_SEARCH = 1000;
const TRIED_IN_SHORT = 15_000;
const TRIED = 75_000;
const FEWEST_TRIES = 2;
const MOST_TRIES = 60;

/** After so many lengths the thread is given back: some hundredths of a second in a short search. */
const LENGTHS_IN_STEP = 100;

/** What an item that is begun and not finished counts, as a part of a length. */
const PER_UNFINISHED = 0.01;

/**
 * Lengths of a roll, one after another: each takes pieces of the next few items and, of some tries, is the one that
 * wastes least, so that an item is on few lengths. Items with pieces of like length follow one another.
 *
 * @param steps of the search that the draft is for
 * @returns undefined where a length cannot be begun
 */
export function* draftByItems(job: Job, seed: number, steps: number): Steps<readonly CutSheet[] | undefined> {
  const random = createRandom(seed);
  const tried = steps < SHORT_SEARCH ? TRIED_IN_SHORT : TRIED;
  const tries = Math.min(MOST_TRIES, Math.max(FEWEST_TRIES, Math.floor(tried / job.size)));
  const left = piecesByItem(job);
  const longest = left.map((pieces) => pieces.reduce((most, piece) => Math.max(most, job.length[piece]!), 0));
  const waiting = Array.from(left.keys()).sort((one, other) => longest[other]! - longest[one]!);
  const placed = new Uint8Array(job.size);
  const sheets: CutSheet[] = [];
  let turn = waiting.slice(0, ITEMS_IN_TURN);
  let next = turn.length;
  while (turn.length > 0) {
    const pieces = turn.flatMap((item) => left[item]!);
    const largest = left[turn[0]!]!.reduce((one, other) => (job.area[one]! >= job.area[other]! ? one : other));
    const kind = job.kinds.findIndex((each) => fitsKind(job, largest, each));
    let best: CutSheet | undefined;
    let least = Number.POSITIVE_INFINITY;
    for (let done = 0; done < tries; done++)
      for (const sheet of fillWithFewSettings(job, [kind], pieces, random).sheets) {
        const cost = costOf(job, sheet, left);
        if (best !== undefined && cost >= least) continue;
        best = sheet;
        least = cost;
      }
    if (best === undefined) return undefined;
    sheets.push(best);
    if (sheets.length % LENGTHS_IN_STEP === 0) yield;
    for (const piece of piecesIn(best.panel)) placed[piece] = 1;
    for (const item of turn)
      if (left[item]!.some((piece) => placed[piece] === 1))
        left[item] = left[item]!.filter((piece) => placed[piece] === 0);
    turn = turn.filter((item) => left[item]!.length > 0);
    while (turn.length < ITEMS_IN_TURN && next < waiting.length) turn.push(waiting[next++]!);
  }
  return sheets;
}

/** The pieces of each item, by its number. */
function piecesByItem({ item, items }: Job): (readonly number[])[] {
  const left = Array.from({ length: items }, (): number[] => []);
  item.forEach((own, piece) => left[own]!.push(piece));
  return left;
}

/** The length that is cut off for the area that it holds, and the items that it leaves unfinished. */
function costOf(job: Job, { kind, panel }: CutSheet, left: readonly (readonly number[])[]): number {
  const placed = piecesIn(panel);
  const area = placed.reduce((sum, piece) => sum + job.area[piece]!, 0);
  const on = new Map<number, number>();
  for (const piece of placed) on.set(job.item[piece]!, (on.get(job.item[piece]!) ?? 0) + 1);
  let unfinished = 0;
  for (const [item, count] of on) if (left[item]!.length > count) unfinished++;
  return (neededLength(panel, endWaste(job, kind)) * job.kinds[kind]!.width) / area + PER_UNFINISHED * unfinished;
}
