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
  const each: Way[] = [];
  for (let piece = 0; piece < job.size; piece++) {
    const length = job.length[piece]!;
    const width = job.width[piece]!;
    if (width <= rollWidth) each.push({ piece, length, width });
    if (job.turn[piece] === 1 && length <= rollWidth) each.push({ piece, length: width, width: length });
  }
  const raised = raiseLengths(
    each.map((way) => way.width),
    each.map((way) => way.piece),
    rollWidth,
  );
  const { fixed, free, longest } = sortedOut(each, raised.lengths);
  let best = longest;
  for (const share of dualFeasible(raised.lengths, raised.side, MOST_THRESHOLDS)) {
    let total = 0;
    for (const [width, length] of fixed) total += length * share(width);
    for (const [one, other] of free)
      total += Math.min(one.length * share(one.width), other.length * share(other.width));
    best = Math.max(best, Math.ceil(total - ROUNDING));
  }
  if (job.size > MOST_PIECES || job.turn.includes(1)) return best;
  const fitted = bestShares(raised.lengths, raised.side, job.length, {
    left: Math.min(EFFORT, steps * EFFORT_PER_STEP),
  });
  return Math.max(best, Math.ceil(fitted.total - ROUNDING * fitted.total));
}

/** A piece as it may lie on the roll. */
interface Way {
  readonly piece: number;
  readonly length: number;
  readonly width: number;
}

/** Pieces that lie one way, as the length of all of each raised width; those that may lie two ways; the longest needed. */
interface SortedOut {
  readonly fixed: ReadonlyMap<number, number>;
  readonly free: readonly (readonly [Way, Way])[];
  readonly longest: number;
}

function sortedOut(ways: readonly Way[], widths: readonly number[]): SortedOut {
  const fixed = new Map<number, number>();
  const free: (readonly [Way, Way])[] = [];
  let longest = 0;
  for (let at = 0; at < ways.length; at++) {
    const way = ways[at]!;
    const other = ways[at + 1];
    if (other?.piece === way.piece) {
      free.push([
        { ...way, width: widths[at]! },
        { ...other, width: widths[++at]! },
      ]);
      longest = Math.max(longest, Math.min(way.length, other.length));
    } else {
      fixed.set(widths[at]!, (fixed.get(widths[at]!) ?? 0) + way.length);
      longest = Math.max(longest, way.length);
    }
  }
  return { fixed, free, longest };
}
