import type { Job } from "./job";

/** The least extent of any of the pieces (all when left out) along the length and along the width of a sheet: what is narrower holds none. */
export function leastSides(
  job: Job,
  pieces: Iterable<number> = job.area.keys(),
): { leastLength: number; leastWidth: number } {
  let leastLength = Number.POSITIVE_INFINITY;
  let leastWidth = Number.POSITIVE_INFINITY;
  for (const piece of pieces) {
    const length = job.length[piece]!;
    const width = job.width[piece]!;
    const shorter = Math.min(length, width);
    leastLength = Math.min(leastLength, job.turn[piece] === 1 ? shorter : length);
    leastWidth = Math.min(leastWidth, job.turn[piece] === 1 ? shorter : width);
  }
  return { leastLength, leastWidth };
}
