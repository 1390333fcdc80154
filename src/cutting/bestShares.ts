import { weightStep } from "./cover";

/** Shares for lengths along one side, found for one job. */
export interface BestShares {
  readonly shares: Float64Array;
  /** Sum of shares times demands: with demands that are shares of the other side, a number of sheets. */
  readonly total: number;
}

/** The side is divided into at most this many steps; coarser steps only weaken the shares. */
const MOST_STEPS = 1500;

/** A step that goes into a length almost exactly goes into it. */
const ROUNDING = 1e-9;

/** What may still be spent on the search for shares, about as many additions; less is left after each call. */
export interface Effort {
  left: number;
}

const EXACT = 1e-9;
const SIMPLEX_ZERO = 1e-11;
const LEAST_PIVOT = 1e-9;

/**
 * The shares of a side that make the most of given demands, such that the shares of any lengths that fit together add up
 * to at most 1: the dual of cutting the demands from sides, solved by column generation. When the effort is spent the
 * shares are valid, but may not be the best.
 *
 * Source: P. Gilmore, R. Gomory, "A linear programming approach to the cutting-stock problem", Operations Research 9,
 * 1961. That any such shares, for this job only, may stand in for a dual feasible function: Fekete and Schepers 2004
 * ("conservative scales", see lowerBound.ts).
 */
export function bestShares(
  lengths: ArrayLike<number>,
  side: number,
  demands: ArrayLike<number>,
  effort: Effort,
): BestShares {
  const step = Math.max(1, weightStep(Array.from(lengths)), side / MOST_STEPS);
  const wanted = Array.from({ length: demands.length }, (_, index) => index).filter((index) => demands[index]! > 0);
  const sizes = Int32Array.from(wanted, (index) => Math.floor(lengths[index]! / step + ROUNDING));
  const most = Math.floor(side / step + ROUNDING);
  const found = solve(
    sizes,
    most,
    Float64Array.from(wanted, (index) => demands[index]!),
    effort,
  );
  const shares = new Float64Array(demands.length);
  wanted.forEach((index, at) => (shares[index] = found[at]!));
  return { shares, total: shares.reduce((sum, share, index) => sum + share * demands[index]!, 0) };
}

/** The simplex method's hold on the problem: a basis of cutting patterns, kept as the inverse of its matrix. */
interface Basis {
  readonly count: number;
  readonly inverse: Float64Array;
  /** How often each pattern of the basis is cut, and the price of each length that follows. */
  readonly amounts: Float64Array;
  readonly prices: Float64Array;
  readonly entering: Float64Array;
}

/** The first basis cuts every length by itself. */
function solve(sizes: Int32Array, side: number, demands: Float64Array, effort: Effort): Float64Array {
  const count = sizes.length;
  const basis: Basis = {
    count,
    inverse: new Float64Array(count * count),
    amounts: demands.slice(),
    prices: new Float64Array(count).fill(1),
    entering: new Float64Array(count),
  };
  for (let row = 0; row < count; row++) basis.inverse[row * count + row] = 1;
  const chooser = createChooser(sizes, side);
  let best = new Float64Array(count);
  let bestTotal = 0;
  for (; effort.left > 0; effort.left -= count * (count + side)) {
    const { prices } = basis;
    const { chosen, sum } = chooser(prices);
    const scale = Math.max(1, sum);
    let total = 0;
    for (let index = 0; index < count; index++) total += (Math.max(0, prices[index]!) / scale) * demands[index]!;
    if (total > bestTotal) {
      bestTotal = total;
      best = prices.map((price) => Math.max(0, price) / scale);
    }
    const surplus = prices.findIndex((price) => price < -EXACT);
    if (surplus < 0 && sum <= 1 + EXACT) break;
    if (!(surplus >= 0 ? pivot(basis, [surplus], -1, 0) : pivot(basis, chosen, 1, 1))) break;
  }
  return best;
}

/** Brings a column, `sign` in the rows of some lengths, into the basis; false when nothing leaves. */
function pivot(basis: Basis, rows: readonly number[], sign: number, cost: number): boolean {
  const { count, inverse, amounts, prices, entering } = basis;
  let leaving = -1;
  let least = Number.POSITIVE_INFINITY;
  for (let row = 0; row < count; row++) {
    let value = 0;
    for (const index of rows) value += inverse[row * count + index]!;
    value *= sign;
    entering[row] = value;
    if (value > LEAST_PIVOT && amounts[row]! / value < least) {
      least = amounts[row]! / value;
      leaving = row;
    }
  }
  if (leaving < 0) return false;
  let gain = cost;
  for (const index of rows) gain -= sign * prices[index]!;
  const base = leaving * count;
  const divisor = entering[leaving]!;
  for (let index = 0; index < count; index++) {
    inverse[base + index]! /= divisor;
    prices[index]! += gain * inverse[base + index]!;
  }
  for (let row = 0; row < count; row++) {
    const factor = entering[row]!;
    if (row === leaving || Math.abs(factor) < SIMPLEX_ZERO) continue;
    for (let index = 0; index < count; index++) inverse[row * count + index]! -= factor * inverse[base + index]!;
    amounts[row] = Math.max(0, amounts[row]! - factor * least);
  }
  amounts[leaving] = least;
  return true;
}

interface Chosen {
  readonly chosen: readonly number[];
  readonly sum: number;
}

/** Chooses the lengths that fit together and have the highest prices. */
function createChooser(sizes: Int32Array, side: number): (prices: Float64Array) => Chosen {
  const count = sizes.length;
  const reach = new Float64Array(side + 1);
  const taken = new Uint8Array(count * (side + 1));
  return (prices) => {
    reach.fill(0);
    taken.fill(0);
    for (let index = 0; index < count; index++) {
      const price = prices[index]!;
      const size = sizes[index]!;
      if (price <= 0) continue;
      const base = index * (side + 1);
      for (let room = side; room >= size; room--) {
        const value = reach[room - size]! + price;
        if (value > reach[room]!) {
          reach[room] = value;
          taken[base + room] = 1;
        }
      }
    }
    const chosen: number[] = [];
    let room = side;
    for (let index = count - 1; index >= 0; index--)
      if (taken[index * (side + 1) + room] === 1) {
        chosen.push(index);
        room -= sizes[index]!;
      }
    return { chosen, sum: reach[side]! };
  };
}
