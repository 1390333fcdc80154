import type { Random } from "../../cutting/random";
import type { SizeColumn } from "./columnPool";
import { held } from "./held";
import type { SizesSearch } from "./sizesSearch";

/** Looks that a column costs in addition to one for each item that it holds. */
const LOOKS_PER_COLUMN = 8;

/** Less than this share is no gain. */
const LEAST_GAIN = 1e-9;

/**
 * Swaps one size for the first column of the pool that gains, or takes a size more while there is room, until none gains.
 *
 * Source of the swap evaluation: M. Resende and R. Werneck, "A fast swap-based local search procedure for location
 * problems", Annals of Operations Research 150, 2007.
 *
 * @param until share of the effort at which to stop
 */
export function swapped(
  { problem, flat, madeCost, pool, effort }: SizesSearch,
  start: readonly SizeColumn[],
  random: Random,
  until: number,
): readonly SizeColumn[] {
  const { needs, count } = problem;
  const { quantity } = flat;
  const columns = pool.columns();
  const sizes = [...start];
  const loss = new Float64Array(count);
  const change = new Float64Array(count);
  if (columns.length === 0) return sizes;
  let state = held(problem, madeCost, sizes);
  let least = 0;
  const settle = () => {
    state = held(problem, madeCost, sizes);
    const { first, firstCost, secondCost } = state;
    loss.fill(0);
    least = 0;
    for (let need = 0; need < needs.length; need++) {
      least += LEAST_GAIN * firstCost[need]!;
      if (first[need]! >= 0) loss[first[need]!]! += secondCost[need]! - firstCost[need]!;
    }
    effort.count(sizes.reduce((sum, { holds }) => sum + holds.length, needs.length));
  };
  settle();
  // From a place of its own, so that no column always comes first.
  let at = random.below(columns.length);
  for (let without = 0; without < columns.length && effort.spent() < until; without++) {
    at = (at + 1) % columns.length;
    const column = columns[at]!;
    const { first, firstCost, secondCost } = state;
    change.set(loss);
    let gain = 0;
    const { cost, holds } = column;
    for (let i = 0; i < holds.length; i++) {
      const need = holds[i]!;
      const own = quantity[need]! * cost;
      if (own >= secondCost[need]!) continue;
      const by = first[need]!;
      if (own < firstCost[need]!) {
        gain += firstCost[need]! - own;
        if (by >= 0) change[by]! -= secondCost[need]! - firstCost[need]!;
      } else if (by >= 0) change[by]! -= secondCost[need]! - own;
    }
    effort.count(holds.length + count + LOOKS_PER_COLUMN);
    let out = -1;
    if (sizes.length >= count) {
      out = 0;
      for (let other = 1; other < sizes.length; other++) if (change[other]! < change[out]!) out = other;
      gain -= change[out]!;
    }
    if (gain <= least) continue;
    if (out < 0) sizes.push(column);
    else sizes[out] = column;
    settle();
    without = -1;
  }
  return sizes;
}
