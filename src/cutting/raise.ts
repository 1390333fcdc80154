import { weightStep } from "./cover";
import { UNITS_PER_MM } from "./grid";

/** Up to so many lengths, each is raised; beyond, only the side is cut down to what lengths can add up to. */
const FEW_LENGTHS = 160;

/** A side may be divided into so many steps at most; finer lengths are first rounded down to tenths of a millimetre. */
const MOST_STEPS = 32_768;

export interface Raised {
  readonly lengths: readonly number[];
  readonly side: number;
}

/**
 * Lengths made longer by what can never be used beside them: one after another becomes the side less the largest sum of
 * other lengths (as raised by then) that fits beside it. A plan for the given lengths is one for the raised ones too.
 *
 * @param lengths what pieces can take up along a side of the sheet
 * @param owner the piece of each length; a piece that may turn has two
 * Source: S. Martello, D. Vigo, "Exact solution of the two-dimensional finite bin packing problem", Management Science
 * 44 (3), 1998; M. Boschetti, A. Mingozzi, "The two-dimensional finite bin packing problem", 4OR 1, 2003.
 */
export function raiseLengths(lengths: readonly number[], owner: readonly number[], side: number): Raised {
  const common = Math.max(1, weightStep(lengths));
  // Lengths that fit together still do when all are rounded down: what holds for them holds for the true ones.
  const unit = side / common <= MOST_STEPS ? common : Math.max(UNITS_PER_MM / 10, Math.ceil(side / MOST_STEPS));
  const steps = lengths.map((length) => Math.floor(length / unit));
  const sideSteps = Math.floor(side / unit);
  if (lengths.length > FEW_LENGTHS)
    return {
      lengths: steps.map((length) => length * unit),
      side: unit * largestUpTo(sumsOf(steps, sideSteps), sideSteps),
    };
  const longestFirst = Array.from(steps.keys()).sort((one, other) => steps[other]! - steps[one]!);
  for (const index of longestFirst) {
    const others = steps.filter((_, other) => owner[other] !== owner[index]);
    const room = sideSteps - steps[index]!;
    steps[index] = sideSteps - largestUpTo(sumsOf(others, room), room);
  }
  return { lengths: steps.map((length) => length * unit), side: sideSteps * unit };
}

/** Bit s is set when some of the lengths add up to s, at most `limit`. */
function sumsOf(lengths: readonly number[], limit: number): bigint {
  const mask = (1n << BigInt(limit + 1)) - 1n;
  const all = mask;
  let sums = 1n;
  const times = new Map<number, number>();
  for (const length of lengths) times.set(length, (times.get(length) ?? 0) + 1);
  for (const [length, count] of times) {
    // No sum has a length more often than that.
    const most = length === 0 ? 0 : Math.min(count, Math.floor(limit / length));
    // Twice as many at a time: so many of a length add up to as many sums as one by one.
    for (let covered = 0; covered < most;) {
      const more = Math.min(covered + 1, most - covered);
      sums |= (sums << BigInt(more * length)) & mask;
      covered += more;
    }
    if (sums === all) break;
  }
  return sums;
}

function largestUpTo(sums: bigint, limit: number): number {
  const digits = (sums & ((1n << BigInt(limit + 1)) - 1n)).toString(16);
  return digits.length * 4 - 1 - (Math.clz32(parseInt(digits[0]!, 16)) - 28);
}
