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
  const longest = (pieces: readonly number[]) => pieces.reduce((most, piece) => Math.max(most, job.length[piece]!), 0);
  const items = [...left]
    .map(([item, pieces]) => ({ item, longest: longest(pieces) }))
    .sort((one, other) => other.longest - one.longest)
    .map(({ item }) => item);
  const sheets: CutSheet[] = [];
  while (items.length > 0) {
    const turn = items.slice(0, ITEMS_IN_TURN);
    const pieces = turn.flatMap((item) => left.get(item)!);
    const largest = left.get(turn[0]!)!.reduce((one, other) => (job.area[one]! >= job.area[other]! ? one : other));
    const kind = job.kinds.findIndex((each) => fitsKind(job, largest, each));
    const filled = Array.from({ length: tries }, () => fillWithFewSettings(job, [kind], pieces, random).sheets).flat();
    if (filled.length === 0) return undefined;
    const costs = filled.map((sheet) => costOf(job, sheet, left));
    const sheet = filled[costs.indexOf(Math.min(...costs))]!;
    sheets.push(sheet);
    if (sheets.length % LENGTHS_IN_STEP === 0) yield;
    const placed = new Set(piecesIn(sheet.panel));
    for (const item of turn) {
      const rest = left.get(item)!.filter((piece) => !placed.has(piece));
      left.set(item, rest);
      if (rest.length === 0) items.splice(items.indexOf(item), 1);
    }
  }
  return sheets;
}

function piecesByItem({ source }: Job): Map<string, readonly number[]> {
  const pieces = new Map<string, number[]>();
  source.forEach(({ item }, piece) => {
    const own = pieces.get(item);
    if (own === undefined) pieces.set(item, [piece]);
    else own.push(piece);
  });
  return pieces;
}

/** The length that is cut off for the area that it holds, and the items that it leaves unfinished. */
function costOf(job: Job, { kind, panel }: CutSheet, left: ReadonlyMap<string, readonly number[]>): number {
  const placed = piecesIn(panel);
  const area = placed.reduce((sum, piece) => sum + job.area[piece]!, 0);
  const on = new Map<string, number>();
  for (const piece of placed) on.set(job.source[piece]!.item, (on.get(job.source[piece]!.item) ?? 0) + 1);
  const unfinished = [...on].filter(([item, count]) => left.get(item)!.length > count).length;
  return (neededLength(panel, endWaste(job, kind)) * job.kinds[kind]!.width) / area + PER_UNFINISHED * unfinished;
}
