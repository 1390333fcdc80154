import { NONE } from "./forest";
import { UNITS2_PER_TENTH2 } from "./grid";
import { isTakenFor, type Job } from "./job";

/** So little of the area that it decides only between equal prices: the smaller sheet. */
const TIE_BREAK = 1e-9 / UNITS2_PER_TENTH2;

/** Whether one more sheet of the kind may be taken up for the piece. */
export function mayTake(job: Job, kind: number, used: Int32Array, room: number, piece: number): boolean {
  const { limit, weight } = job.kinds[kind]!;
  return used[kind]! < limit && weight <= room && isTakenFor(job, piece, job.kinds[kind]!);
}

/**
 * The kind of sheet to take up for a piece: what costs least for what can still be put on it.
 *
 * @param room weight that may still be spent
 * @param toPlace area of the pieces without a place, this one among them
 * @param favoured a kind to prefer to all that have a weight, or NONE
 */
export function kindFor(
  job: Job,
  used: Int32Array,
  room: number,
  piece: number,
  toPlace: number,
  favoured: number,
): number {
  let best = NONE;
  let bestRate = Number.POSITIVE_INFINITY;
  for (let kind = 0; kind < job.kinds.length; kind++) {
    if (!mayTake(job, kind, used, room, piece)) continue;
    const { length, width, weight } = job.kinds[kind]!;
    const area = length * width;
    const rate = kind === favoured ? area * TIE_BREAK : (weight + area * TIE_BREAK) / Math.min(area, toPlace);
    if (rate < bestRate) {
      bestRate = rate;
      best = kind;
    }
  }
  return best;
}
