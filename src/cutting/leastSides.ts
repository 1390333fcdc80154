import type { Job } from "./job";

/** The least extent of any of the pieces (all when left out) along the length and along the width of a sheet: what is narrower holds none. */
export function leastSides(job: Job, pieces?: readonly number[]): { leastLength: number; leastWidth: number } {
  let leastLength = Number.POSITIVE_INFINITY;
  let leastWidth = Number.POSITIVE_INFINITY;
  const count = pieces?.length ?? job.size;
  for (let at = 0; at < count; at++) {
    const piece = pieces === undefined ? at : pieces[at]!;
    const length = job.length[piece]!;
    const width = job.width[piece]!;
    const shorter = Math.min(length, width);
    leastLength = Math.min(leastLength, job.turn[piece] === 1 ? shorter : length);
    leastWidth = Math.min(leastWidth, job.turn[piece] === 1 ? shorter : width);
  }
  return { leastLength, leastWidth };
}
