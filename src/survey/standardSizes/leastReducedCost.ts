import type { Effort } from "./effort";
import type { GroupGrid } from "./costTable";
import type { InsideSize, SizesProblem } from "./sizesProblem";

/** What the search for the size of least reduced cost found. */
export interface LeastReducedCost {
  /** No size has a reduced cost below this. */
  readonly bound: number;
  /** Sizes met on the way whose reduced cost is below zero, the least first. */
  readonly found: readonly InsideSize[];
}

/** Sizes of one group from one corner to another, as places in its grid, with the needs that some of them hold. */
interface Box {
  readonly grid: GroupGrid;
  readonly low: readonly [number, number, number];
  readonly high: readonly [number, number, number];
  readonly needs: Int32Array;
  readonly bound: number;
}

/** Sizes handed back, at most. */
const MOST_FOUND = 400;

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
 */
export function leastReducedCost(
  problem: SizesProblem,
  grids: readonly GroupGrid[],
  prices: Float64Array,
  incumbent: number,
  effort: Effort,
  until: number,
): LeastReducedCost {
  const { needs, slack } = problem;
  const queue: Box[] = [];
  const found: { size: InsideSize; reduced: number }[] = [];
  let best = Math.min(0, incumbent);

  const boxOf = (grid: GroupGrid, low: Box["low"], high: Box["high"], among: ArrayLike<number>): Box => {
    const { xs, ys, zs } = grid;
    const [lx, ly, lz] = [xs[low[0]]!, ys[low[1]]!, zs[low[2]]!];
    const [hx, hy, hz] = [xs[high[0]]!, ys[high[1]]!, zs[high[2]]!];
    const kept: number[] = [];
    let bound = 0;
    for (let at = 0; at < among.length; at++) {
      const place = among[at]!;
      const { x, y, z, quantity } = needs[place]!;
      if (x > hx || y > hy || z > hz) continue;
      if (slack !== undefined && (lx > x + slack || ly > y + slack || lz > z + slack)) continue;
      const least = grid.leastCost(Math.max(lx, x), Math.max(ly, y), z > lz ? placeOf(zs, z) : low[2]);
      const part = quantity * least - prices[place]!;
      if (part >= 0) continue;
      bound += part;
      kept.push(place);
    }
    effort.count(among.length);
    return { grid, low, high, needs: Int32Array.from(kept), bound };
  };
  const tryCorner = ({ grid, needs: among }: Box): void => {
    const size = { group: grid.group, x: 0, y: 0, z: 0 };
    for (const place of among) {
      const need = needs[place]!;
      size.x = Math.max(size.x, need.x);
      size.y = Math.max(size.y, need.y);
      size.z = Math.max(size.z, need.z);
    }
    if (size.x === 0) return;
    const each = grid.cost(size.x, size.y, size.z);
    let reduced = 0;
    for (const place of among) {
      const { x, y, z, quantity } = needs[place]!;
      if (slack !== undefined && (size.x > x + slack || size.y > y + slack || size.z > z + slack)) continue;
      reduced += Math.min(0, quantity * each - prices[place]!);
    }
    if (reduced < 0) found.push({ size, reduced });
    best = Math.min(best, reduced);
  };

  for (const grid of grids) {
    const { xs, ys, zs } = grid;
    push(queue, boxOf(grid, [0, 0, 0], [xs.length - 1, ys.length - 1, zs.length - 1], grid.needs));
  }
  let bound: number;
  for (;;) {
    const box = pop(queue);
    if (box === undefined || box.bound >= best * (1 + CLOSE)) {
      bound = Math.min(best * (1 + CLOSE), box?.bound ?? best);
      break;
    }
    if (effort.spent() >= until) {
      bound = box.bound;
      break;
    }
    tryCorner(box);
    const axis = widest(box);
    if (axis === undefined) continue;
    const middle = (box.low[axis] + box.high[axis]) >> 1;
    const with_ = (corner: Box["low"], place: number): Box["low"] =>
      corner.map((own, at) => (at === axis ? place : own)) as unknown as Box["low"];
    for (const half of [
      boxOf(box.grid, box.low, with_(box.high, middle), box.needs),
      boxOf(box.grid, with_(box.low, middle + 1), box.high, box.needs),
    ])
      if (half.bound < best * (1 + CLOSE)) push(queue, half);
  }
  found.sort((one, other) => one.reduced - other.reduced);
  return { bound, found: found.slice(0, MOST_FOUND).map(({ size }) => size) };
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

/** The place of a value that is in a rising list. */
function placeOf(values: Float64Array, value: number): number {
  let low = 0;
  let high = values.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (values[middle]! < value) low = middle + 1;
    else high = middle;
  }
  return low;
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
