import { bestShares } from "./bestShares";
import { dualFeasible } from "./dualFeasible";
import type { Job } from "./job";
import { raiseLengths } from "./raise";

const MOST_THRESHOLDS = 100;

/** Shares fitted to the job are looked for up to so many pieces, with this effort (see `bestShares`). */
const MOST_PIECES = 150;
const EFFORT = 3e7;
const EFFORT_PER_STEP = 2.5e4;

/** Sums of shares are binary fractions: what is this near below a whole unit counts as that unit. */
const ROUNDING = 1e-6;

/**
 * A length of roll, in units, below which no plan holds all pieces.
 *
 * @param steps of the search that the bound is for: beside a short one less effort is made
 */
export function rollBound(job: Job, rollWidth: number, steps: number): number {
  const ways = Array.from(job.area, (_, piece) => {
    const length = job.length[piece]!;
    const width = job.width[piece]!;
    const turned = job.turn[piece] === 1 ? [{ piece, length: width, width: length }] : [];
    return [{ piece, length, width }, ...turned].filter((way) => way.width <= rollWidth);
  });
  const each = ways.flat();
  const raised = raiseLengths(
    each.map((way) => way.width),
    each.map((way) => way.piece),
    rollWidth,
  );
  let best = Math.max(0, ...ways.map((lying) => Math.min(...lying.map((way) => way.length))));
  for (const share of dualFeasible(raised.lengths, raised.side, MOST_THRESHOLDS)) {
    let at = 0;
    let total = 0;
    for (const lying of ways) {
      let least = Number.POSITIVE_INFINITY;
      for (const way of lying) least = Math.min(least, way.length * share(raised.lengths[at++]!));
      total += least;
    }
    best = Math.max(best, Math.ceil(total - ROUNDING));
  }
  if (job.size > MOST_PIECES || job.turn.includes(1)) return best;
  const fitted = bestShares(raised.lengths, raised.side, job.length, {
    left: Math.min(EFFORT, steps * EFFORT_PER_STEP),
  });
  return Math.max(best, Math.ceil(fitted.total - ROUNDING * fitted.total));
}
