import type { Random } from "../../cutting/random";
import type { ColumnPool, SizeColumn } from "./columnPool";
import type { Effort } from "./effort";
import type { GroupGrid } from "./costTable";
import type { SizesProblem } from "./sizesProblem";

/** A choice of sizes. */
export interface Choice {
  readonly sizes: readonly SizeColumn[];
  readonly cost: number;
}

/** What is known of each need under the sizes chosen: its cheapest size, and what the next cheapest would cost. */
interface Held {
  readonly first: Int32Array;
  readonly firstCost: Float64Array;
  readonly secondCost: Float64Array;
}

/** Looks that a column costs in addition to one for each item that it holds. */
const LOOKS_PER_COLUMN = 8;

/** Less than this is no gain. */
const LEAST_GAIN = 1e-9;

/**
 * Swaps one chosen size for one of the pool while that lowers the cost, then draws each size in to the items that it
 * holds, and tries the sizes next to it; again from a shaken choice until the effort is spent.
 *
 * Source of the swap evaluation: M. Resende and R. Werneck, "A fast swap-based local search procedure for location
 * problems", Annals of Operations Research 150, 2007.
 *
 * @param madeCost what it costs to make a need to measure
 * @param until share of the effort at which to stop
 */
export function swapSearch(
  problem: SizesProblem,
  grids: readonly GroupGrid[],
  pool: ColumnPool,
  madeCost: Float64Array,
  start: Choice | undefined,
  random: Random,
  effort: Effort,
  until: number,
): Choice {
  const { needs, count } = problem;
  let best = start ?? { sizes: [], cost: costOf(problem, madeCost, []) };
  let sizes: SizeColumn[] = [...best.sizes];
  let rounds = 0;
  do {
    if (rounds++ > 0) sizes = shaken(best.sizes, pool.columns(), random);
    for (;;) {
      if (problem.offered === undefined) addNeighbours(problem, grids, pool, sizes, held(problem, madeCost, sizes));
      const before = costOf(problem, madeCost, sizes);
      sizes = swapped(problem, pool.columns(), madeCost, sizes, effort);
      const after = costOf(problem, madeCost, sizes);
      if (after > before - LEAST_GAIN * Math.abs(before) || effort.spent() >= until) break;
    }
    const cost = costOf(problem, madeCost, sizes);
    if (cost < best.cost) best = { sizes: [...sizes], cost };
    effort.count(needs.length * count);
  } while (effort.spent() < until && pool.columns().length > count);
  return best;
}

/** What all needs cost under the sizes chosen, each in its cheapest. */
export function costOf(problem: SizesProblem, madeCost: Float64Array, sizes: readonly SizeColumn[]): number {
  return held(problem, madeCost, sizes).firstCost.reduce((sum, cost) => sum + cost, 0);
}

/** The place of the cheapest size of each need; -1 where none holds it. */
export function sizeOfEach(problem: SizesProblem, madeCost: Float64Array, sizes: readonly SizeColumn[]): Int32Array {
  return held(problem, madeCost, sizes).first;
}

function held({ needs }: SizesProblem, madeCost: Float64Array, sizes: readonly SizeColumn[]): Held {
  const first = new Int32Array(needs.length).fill(-1);
  const firstCost = Float64Array.from(madeCost);
  const secondCost = Float64Array.from(madeCost);
  sizes.forEach(({ cost, holds }, at) => {
    for (const need of holds) {
      const own = needs[need]!.quantity * cost;
      if (own < firstCost[need]!) {
        secondCost[need] = firstCost[need]!;
        firstCost[need] = own;
        first[need] = at;
      } else if (own < secondCost[need]!) secondCost[need] = own;
    }
  });
  return { first, firstCost, secondCost };
}

/** The best swap of each pass, or a size more while there is room, until nothing gains. */
function swapped(
  problem: SizesProblem,
  columns: readonly SizeColumn[],
  madeCost: Float64Array,
  start: readonly SizeColumn[],
  effort: Effort,
): SizeColumn[] {
  const { needs, count } = problem;
  const sizes = [...start];
  const loss = new Float64Array(count);
  const change = new Float64Array(count);
  while (effort.spent() < 1) {
    const { first, firstCost, secondCost } = held(problem, madeCost, sizes);
    const least = LEAST_GAIN * firstCost.reduce((sum, cost) => sum + cost, 0);
    loss.fill(0);
    for (let need = 0; need < needs.length; need++)
      if (first[need]! >= 0) loss[first[need]!]! += secondCost[need]! - firstCost[need]!;
    let best = { gain: least, column: undefined as SizeColumn | undefined, out: -1 };
    for (const column of columns) {
      change.set(loss);
      let gain = 0;
      for (const need of column.holds) {
        const own = needs[need]!.quantity * column.cost;
        const by = first[need]!;
        if (own < firstCost[need]!) {
          gain += firstCost[need]! - own;
          if (by >= 0) change[by]! -= secondCost[need]! - firstCost[need]!;
        } else if (own < secondCost[need]! && by >= 0) change[by]! -= secondCost[need]! - own;
      }
      effort.count(column.holds.length + count + LOOKS_PER_COLUMN);
      if (sizes.length < count) {
        if (gain > best.gain) best = { gain, column, out: -1 };
        continue;
      }
      for (let out = 0; out < sizes.length; out++)
        if (gain - change[out]! > best.gain) best = { gain: gain - change[out]!, column, out };
    }
    if (best.column === undefined) break;
    if (best.out < 0) sizes.push(best.column);
    else sizes[best.out] = best.column;
  }
  return sizes;
}

/** Into the pool: each size drawn in to what it holds, and the sizes one step of the grid away on each side. */
function addNeighbours(
  { needs }: SizesProblem,
  grids: readonly GroupGrid[],
  pool: ColumnPool,
  sizes: readonly SizeColumn[],
  { first }: Held,
): void {
  sizes.forEach((size, at) => {
    const drawn = { group: size.group, x: 0, y: 0, z: 0 };
    for (const need of size.holds) {
      if (first[need] !== at) continue;
      drawn.x = Math.max(drawn.x, needs[need]!.x);
      drawn.y = Math.max(drawn.y, needs[need]!.y);
      drawn.z = Math.max(drawn.z, needs[need]!.z);
    }
    if (drawn.x === 0) return;
    pool.add(drawn);
    const grid = grids.find(({ group }) => group === size.group)!;
    for (const [side, values] of [
      ["x", grid.xs],
      ["y", grid.ys],
      ["z", grid.zs],
    ] as const) {
      const place = values.indexOf(drawn[side]);
      for (const step of [-2, -1, 1, 2]) {
        const value = values[place + step];
        if (value !== undefined) pool.add({ ...drawn, [side]: value });
      }
    }
  });
}

/** A few sizes of a choice replaced by any of the pool. */
function shaken(sizes: readonly SizeColumn[], columns: readonly SizeColumn[], random: Random): SizeColumn[] {
  const next = [...sizes];
  const many = 1 + random.below(Math.max(1, Math.min(4, next.length)));
  for (let i = 0; i < many && next.length > 0; i++)
    next[random.below(next.length)] = columns[random.below(columns.length)]!;
  return [...new Set(next)];
}
