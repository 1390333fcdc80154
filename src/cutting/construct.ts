import { weighNew } from "./bestCut";
import { noChoice } from "./choice";
import { createForest, NONE } from "./forest";
import type { Job } from "./job";
import { kindFor } from "./kindFor";
import { cutPiece, exportPanel, layOut, type Panel } from "./panels";
import { createRandom } from "./random";
import { leastSides } from "./leastSides";
import { shelve, type Shelves, takeFromShelves } from "./shelves";

/** A sheet of a plan. */
export interface CutSheet {
  readonly kind: number;
  readonly panel: Panel;
}

/** A plan in units; `out` are the pieces for which no sheet was left. */
export interface Draft {
  readonly sheets: readonly CutSheet[];
  readonly out: readonly number[];
  readonly weight: number;
}

/** An order in which pieces are placed: negative when the first is placed first. */
export type Order = (job: Job) => (one: number, other: number) => number;

export const byWidth: Order = (job) => (one, other) =>
  job.width[other]! - job.width[one]! || job.length[other]! - job.length[one]!;

/** Orders that put what is hard to place first; none is best for all jobs. */
export const ORDERS: readonly Order[] = [
  (job) => (one, other) => job.area[other]! - job.area[one]!,
  byWidth,
  (job) => (one, other) => job.length[other]! - job.length[one]! || job.width[other]! - job.width[one]!,
  (job) => (one, other) => longSide(job, other) - longSide(job, one) || job.area[other]! - job.area[one]!,
  (job) => (one, other) => halfGirth(job, other) - halfGirth(job, one) || job.area[other]! - job.area[one]!,
];

/**
 * A plan made in one pass: each piece goes where it loses the least worth of leftovers, on a new sheet when it fits none.
 *
 * @param favoured kind of sheet to take before all others that cost something, or NONE
 * @param pieces those to place; all when left out
 */
export function construct(
  job: Job,
  order: Order,
  favoured: number,
  pieces: readonly number[] = Array.from(job.area.keys()),
): Draft {
  const { leastLength, leastWidth } = leastSides(job, pieces);
  const forest = createForest(pieces.length, leastLength, leastWidth, job.limits);
  const random = createRandom(0);
  const shelves: Shelves = [];
  const choice = noChoice();
  const used = new Int32Array(job.kinds.length);
  const sheets: { kind: number; panel: number }[] = [];
  const out: number[] = [];
  let weight = 0;
  let toPlace = pieces.reduce((sum, piece) => sum + job.area[piece]!, 0);
  for (const piece of [...pieces].sort(order(job))) {
    takeFromShelves(shelves, forest, job, piece, random, choice);
    if (choice.leftover === NONE) {
      const kind = kindFor(job, used, Number.POSITIVE_INFINITY, piece, toPlace, favoured);
      if (kind !== NONE) {
        const panel = layOut(forest, job.kinds[kind]!);
        forest.slot[panel] = NONE;
        forest.openCount = 0;
        sheets.push({ kind, panel });
        used[kind]!++;
        weight += job.kinds[kind]!.weight;
        weighNew(forest, job, piece, panel, random, choice);
      }
    }
    toPlace -= job.area[piece]!;
    if (choice.leftover === NONE) {
      out.push(piece);
      continue;
    }
    cutPiece(forest, choice.leftover, piece, choice.length, choice.width, choice.axis);
    shelve(shelves, forest);
  }
  return { sheets: sheets.map(({ kind, panel }) => ({ kind, panel: exportPanel(forest, panel) })), out, weight };
}

function longSide(job: Job, piece: number): number {
  return Math.max(job.length[piece]!, job.width[piece]!);
}

function halfGirth(job: Job, piece: number): number {
  return job.length[piece]! + job.width[piece]!;
}
