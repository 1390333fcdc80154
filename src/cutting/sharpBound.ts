import { bestShares } from "./bestShares";
import { dualFeasible } from "./dualFeasible";
import type { Job } from "./job";
import { raiseLengths } from "./raise";

/** The sharper bound is computed for at most this many pieces; beyond, the area decides anyway. */
const MOST_PIECES = 150;

const MOST_THRESHOLDS = 60;

/** Shares of the width from which the search for better ones starts, and how often each side is improved in turn. */
const STARTS = 3;
const ROUNDS = 6;

/** Effort spent in all, see `bestShares`: about a tenth of a second, and less beside a short search. */
const EFFORT = 6e7;
const EFFORT_PER_STEP = 5e4;

/** A smaller improvement does not count. */
const PROGRESS = 1e-6;

/** Shares are binary fractions found by elimination: what is this near above a whole number of sheets counts as that. */
const ROUNDING = 1e-6;

/** Whether the bound can be computed: one size of sheet, grain fixed, not too many pieces. */
export function hasSharpBound(job: Job): boolean {
  return job.kinds.length === 1 && job.size > 0 && job.size <= MOST_PIECES && !job.turn.includes(1);
}

/**
 * A number of sheets below which no plan holds all pieces; mostly sharper than `lowerBound`, and slower.
 *
 * Starts with the best dual feasible functions, then takes turns: the best shares of the length for the shares of the
 * width, and the other way round, until neither gains.
 *
 * @param enough a number of sheets that suffices: the search for more ends there
 * @param steps of the search that the bound is for
 */
export function sharpBound(job: Job, enough: number, steps = Number.POSITIVE_INFINITY): number {
  const [kind] = job.kinds;
  if (kind === undefined || !hasSharpBound(job)) return 0;
  const owner = Array.from(job.area.keys());
  const length = raiseLengths([...job.length], owner, kind.length);
  const width = raiseLengths([...job.width], owner, kind.width);
  const lengthShares = dualFeasible(length.lengths, length.side, MOST_THRESHOLDS).map((share) =>
    Float64Array.from(length.lengths, share),
  );
  const widthShares = dualFeasible(width.lengths, width.side, MOST_THRESHOLDS).map((share) =>
    Float64Array.from(width.lengths, share),
  );
  const effort = { left: Math.min(EFFORT, steps * EFFORT_PER_STEP) };
  let best = 0;
  for (const start of bestStarts(lengthShares, widthShares)) {
    let shares: ArrayLike<number> = start;
    let total = 0;
    for (let round = 0; round < ROUNDS && sheetsOf(best) < enough; round++) {
      const alongLength = bestShares(length.lengths, length.side, shares, effort);
      const alongWidth = bestShares(width.lengths, width.side, alongLength.shares, effort);
      best = Math.max(best, alongLength.total, alongWidth.total);
      if (alongWidth.total <= total + PROGRESS) break;
      total = alongWidth.total;
      shares = alongWidth.shares;
    }
  }
  return sheetsOf(best);
}

function sheetsOf(total: number): number {
  return Math.ceil(total - ROUNDING);
}

/** The shares of the width that are part of the highest products, without repeats. */
function bestStarts(
  lengthShares: readonly Float64Array[],
  widthShares: readonly Float64Array[],
): readonly Float64Array[] {
  const ranked = widthShares
    .map((shares) => ({ shares, most: lengthShares.reduce((most, own) => Math.max(most, inner(own, shares)), 0) }))
    .sort((one, other) => other.most - one.most);
  const starts: Float64Array[] = [];
  for (const { shares } of ranked) {
    if (starts.length === STARTS) break;
    if (!starts.some((start) => start.every((value, index) => value === shares[index]))) starts.push(shares);
  }
  return starts;
}

function inner(one: Float64Array, other: Float64Array): number {
  let sum = 0;
  for (let index = 0; index < one.length; index++) sum += one[index]! * other[index]!;
  return sum;
}
