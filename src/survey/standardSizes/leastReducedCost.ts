import type { GroupGrid } from "./costTable";
import type { Mm } from "../../measure/units";
import type { InsideSize } from "./sizesProblem";
import type { SizesSearch } from "./sizesSearch";

/** What the search for the size of least reduced cost found. */
export interface LeastReducedCost {
  /** No size has a reduced cost below this. */
  readonly bound: number;
  /** Sizes met on the way whose reduced cost is below zero, the least first. */
  readonly found: readonly FoundSize[];
}

export interface FoundSize {
  readonly size: InsideSize;
  readonly reduced: number;
}

type Corner = readonly [number, number, number];

/** Sizes of one group from one corner to another, as places in its grid, with the needs that some of them hold. */
interface Box {
  readonly grid: GroupGrid;
  readonly low: Corner;
  readonly high: Corner;
  readonly needs: Int32Array;
  /** What each need counts for, at the least. */
  readonly parts: Float64Array;
  readonly bound: number;
}

/** Sizes handed back, at most. */
const MOST_FOUND = 3000;

/** A bound this close to the best found, as a share of it, is close enough. */
const CLOSE = 1e-6;

/**
 * The least reduced cost of any size: the sum of min(0, q cost(S) - price) over the needs that S holds.
 *
 * Best first over boxes of sizes. In a box a need counts for at least min(0, q cost(larger of its own and the box's least
 * corner) - price), and for nothing when no size of the box holds it.
 *
 * @param prices what each need would pay to be held
 * @param incumbent the least reduced cost known
 * @param until share of the effort at which to stop; the bound is then that of the best box left
 * @param closeness the share of the best found to which it is sought
 */
export function leastReducedCost(
  { problem: { slack }, grids, flat, effort }: SizesSearch,
  prices: Float64Array,
  incumbent: number,
  until: number,
  closeness = CLOSE,
): LeastReducedCost {
  const queue: Box[] = [];
  const found: FoundSize[] = [];
  let best = Math.min(0, incumbent);
  const sides = [flat.x, flat.y, flat.z] as const;
  const keptNeeds = new Int32Array(prices.length);
  const keptParts = new Float64Array(prices.length);

  /** What a need counts for at the least in sizes from a corner up; 0 or more where it is not held. */
  const partOf = (grid: GroupGrid, place: number, lx: number, ly: number, lz: number): number => {
    const x = Math.max(lx, flat.x[place]!);
    const y = Math.max(ly, flat.y[place]!);
    const z = Math.max(lz, flat.zAt[place]!);
    if (
      slack !== undefined &&
      (x > flat.x[place]! + slack || y > flat.y[place]! + slack || grid.zs[z]! > flat.z[place]! + slack)
    )
      return 0;
    const { a, b, c, d } = grid.least;
    return flat.quantity[place]! * (a[z]! + b[z]! * x + c[z]! * y + d[z]! * x * y) - prices[place]!;
  };
  const limit = (): number => best * (1 + closeness);
  /** Of the needs kept so far; undefined where no size of it can be better than the best found. */
  const boxOf = (grid: GroupGrid, low: Corner, high: Corner, kept: number, bound: number): Box | undefined =>
    bound >= limit()
      ? undefined
      : { grid, low, high, needs: keptNeeds.slice(0, kept), parts: keptParts.slice(0, kept), bound };
  const boxFrom = (grid: GroupGrid, low: Corner, high: Corner, among: ArrayLike<number>): Box | undefined => {
    const [lx, ly, lz] = [grid.xs[low[0]]!, grid.ys[low[1]]!, low[2]];
    let [kept, bound] = [0, 0];
    for (let at = 0; at < among.length; at++) {
      const part = partOf(grid, among[at]!, lx, ly, lz);
      if (part >= 0) continue;
      bound += part;
      keptNeeds[kept] = among[at]!;
      keptParts[kept++] = part;
    }
    effort.count(among.length);
    return boxOf(grid, low, high, kept, bound);
  };
  /** The half nearer the least corner: each need counts for the same, and fewer are held. */
  const lowerHalf = ({ grid, low, needs, parts }: Box, high: Corner, side: Float64Array, most: Mm): Box | undefined => {
    let [kept, bound] = [0, 0];
    for (let at = 0; at < needs.length; at++) {
      if (side[needs[at]!]! > most) continue;
      bound += parts[at]!;
      keptNeeds[kept] = needs[at]!;
      keptParts[kept++] = parts[at]!;
    }
    return boxOf(grid, low, high, kept, bound);
  };
  const tryCorner = ({ grid, needs: among }: Box): void => {
    let [x, y, zAt] = [0, 0, 0];
    for (let at = 0; at < among.length; at++) {
      const place = among[at]!;
      x = Math.max(x, flat.x[place]!);
      y = Math.max(y, flat.y[place]!);
      zAt = Math.max(zAt, flat.zAt[place]!);
    }
    if (x === 0) return;
    const z = grid.zs[zAt]!;
    const each = grid.cost(x, y, zAt);
    let reduced = 0;
    for (let at = 0; at < among.length; at++) {
      const place = among[at]!;
      if (
        slack !== undefined &&
        (x > flat.x[place]! + slack || y > flat.y[place]! + slack || z > flat.z[place]! + slack)
      )
        continue;
      reduced += Math.min(0, flat.quantity[place]! * each - prices[place]!);
    }
    if (reduced < 0) found.push({ size: { group: grid.group, x, y, z }, reduced });
    best = Math.min(best, reduced);
  };
  for (const grid of grids) {
    const { xs, ys, zs } = grid;
    const all = boxFrom(grid, [0, 0, 0], [xs.length - 1, ys.length - 1, zs.length - 1], grid.needs);
    if (all !== undefined) push(queue, all);
  }
  let bound: number;
  for (;;) {
    const box = pop(queue);
    if (box === undefined || box.bound >= limit()) {
      bound = Math.min(limit(), box?.bound ?? best);
      break;
    }
    if (effort.spent() >= until) {
      bound = box.bound;
      break;
    }
    tryCorner(box);
    const axis = widest(box);
    if (axis === undefined) continue;
    const values = [box.grid.xs, box.grid.ys, box.grid.zs][axis]!;
    const middle = (box.low[axis] + box.high[axis]) >> 1;
    for (const half of [
      lowerHalf(box, replaced(box.high, axis, middle), sides[axis], values[middle]!),
      boxFrom(box.grid, replaced(box.low, axis, middle + 1), box.high, box.needs),
    ])
      if (half !== undefined) push(queue, half);
  }
  found.sort((one, other) => one.reduced - other.reduced);
  return { bound, found: found.slice(0, MOST_FOUND) };
}

/** The axis along which the box is widest as a share of its least side; undefined for a single size. */
function widest({ grid: { xs, ys, zs }, low, high }: Box): 0 | 1 | 2 | undefined {
  let best: { axis: 0 | 1 | 2 | undefined; share: number } = { axis: undefined, share: 0 };
  for (const axis of [0, 1, 2] as const) {
    const values = [xs, ys, zs][axis]!;
    const share = (values[high[axis]]! - values[low[axis]]!) / values[low[axis]]!;
    if (share > best.share) best = { axis, share };
  }
  return best.axis;
}

function replaced(corner: Corner, axis: 0 | 1 | 2, place: number): Corner {
  return [axis === 0 ? place : corner[0], axis === 1 ? place : corner[1], axis === 2 ? place : corner[2]];
}

/** A binary heap, the least bound first. */
function push(heap: Box[], box: Box): void {
  let at = heap.length;
  heap.push(box);
  while (at > 0) {
    const above = (at - 1) >> 1;
    if (heap[above]!.bound <= box.bound) break;
    heap[at] = heap[above]!;
    at = above;
  }
  heap[at] = box;
}

function pop(heap: Box[]): Box | undefined {
  const top = heap[0];
  const last = heap.pop();
  if (top === undefined || last === undefined || heap.length === 0) return top;
  let at = 0;
  for (;;) {
    let child = 2 * at + 1;
    if (child >= heap.length) break;
    if (child + 1 < heap.length && heap[child + 1]!.bound < heap[child]!.bound) child++;
    if (heap[child]!.bound >= last.bound) break;
    heap[at] = heap[child]!;
    at = child;
  }
  heap[at] = last;
  return top;
}
