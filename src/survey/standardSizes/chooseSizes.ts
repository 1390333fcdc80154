import { createRandom } from "../../cutting/random";
import { createColumnPool, type ColumnPool, type SizeColumn } from "./columnPool";
import { groupGrids, type GroupGrid } from "./costTable";
import { createEffort, type EffortBudget } from "./effort";
import { leastReducedCost } from "./leastReducedCost";
import { raisePrices } from "./raisePrices";
import type { ChosenSizes, SizesProblem } from "./sizesProblem";
import { sizeOfEach, swapSearch, type Choice } from "./swapSearch";

/** Shares of the effort at which each stage ends: the first choice, the prices of the bound, the proof. */
const FIRST_CHOICE = 0.15;
const PRICES = 0.5;
const PROOF = 0.9;

/** A bound this close to the cost, as a share of it, proves it. */
const CLOSE = 1e-7;

/** Columns kept between rounds. */
const POOL = 3000;

/** Pairs of items whose common size is in the first pool. */
const FIRST_PAIRS = 1500;

/**
 * At most so many sizes for all items: fewest made to measure, then least cost, with a proven bound.
 *
 * The bound is Lagrange's: every need pays a price to be held; whatever the sizes, the cost is at least the sum of the
 * prices + count x the least reduced cost that any size can have. Prices are raised over the sizes met so far, then the
 * size of least reduced cost is sought among all, which closes the bound and brings new sizes into the pool.
 *
 * @param seed the same seed and number of looks give the same answer
 */
export function chooseSizes(
  problem: SizesProblem,
  budget: EffortBudget,
  seed: number,
  shouldStop?: () => boolean,
): ChosenSizes {
  if (problem.needs.length === 0)
    return { sizes: [], sizeOf: [], toMeasure: 0, total: 0, leastToMeasure: 0, leastTotal: 0 };
  const effort = createEffort(budget, shouldStop);
  const random = createRandom(seed);
  const grids = groupGrids(problem);
  const pool = createColumnPool(problem, grids);
  const penalty = penaltyOf(problem, grids);
  const own = problem.needs.map((need) => need.quantity * problem.cost(need));
  const madeCost = Float64Array.from(problem.needs, ({ quantity }, place) => own[place]! + quantity * penalty);
  firstPool(problem, grids, pool, random.below);
  let choice = swapSearch(problem, grids, pool, madeCost, undefined, random, effort, FIRST_CHOICE);
  const bound = boundOf(problem, grids, pool, madeCost, choice, effort);
  if (!isProved(choice.cost, bound)) choice = swapSearch(problem, grids, pool, madeCost, choice, random, effort, 1);
  return answerOf(problem, madeCost, penalty, choice, bound);
}

/** Nothing is left to gain. */
function isProved(cost: number, bound: number): boolean {
  return bound >= cost * (1 - CLOSE);
}

/** More than any choice can cost beyond another, so that one enclosure fewer made to measure always counts first. */
function penaltyOf({ needs, cost }: SizesProblem, grids: readonly GroupGrid[]): number {
  let most = 0;
  for (const { group, needs: places, xs, ys, zs } of grids) {
    // A deeper one may cost less: the dearest of all depths.
    const dearest = Math.max(...[...zs].map((z) => cost({ group, x: xs[xs.length - 1]!, y: ys[ys.length - 1]!, z })));
    for (const place of places) most += needs[place]!.quantity * dearest;
  }
  return most + 1;
}

function firstPool(
  { needs, offered }: SizesProblem,
  grids: readonly GroupGrid[],
  pool: ColumnPool,
  below: (limit: number) => number,
): void {
  if (offered !== undefined) {
    for (const size of offered) pool.add(size);
    return;
  }
  for (const { group, needs: places, xs, ys, zs } of grids) {
    pool.add({ group, x: xs[xs.length - 1]!, y: ys[ys.length - 1]!, z: zs[zs.length - 1]! });
    const pairs = Math.ceil((FIRST_PAIRS * places.length) / needs.length);
    for (let i = 0; i < pairs; i++) {
      const [one, other] = [needs[places[below(places.length)]!]!, needs[places[below(places.length)]!]!];
      pool.add({ group, x: Math.max(one.x, other.x), y: Math.max(one.y, other.y), z: Math.max(one.z, other.z) });
    }
  }
}

/** A bound on the cost of any choice, and in the pool the sizes that were met. */
function boundOf(
  problem: SizesProblem,
  grids: readonly GroupGrid[],
  pool: ColumnPool,
  madeCost: Float64Array,
  choice: Choice,
  effort: ReturnType<typeof createEffort>,
): number {
  const { needs, count, offered } = problem;
  const first = sizeOfEach(problem, madeCost, choice.sizes);
  let prices: Float64Array = Float64Array.from(needs, ({ quantity }, place) =>
    first[place]! < 0 ? madeCost[place]! : quantity * choice.sizes[first[place]!]!.cost,
  );
  let bound = Number.NEGATIVE_INFINITY;
  for (let round = 0; effort.spent() < PROOF; round++) {
    // A round without work would be asked for again and again.
    effort.count(1);
    const calm = round === 0 ? 0 : Math.min(0.95, 0.6 + 0.05 * round);
    const end = effort.spent() + (PRICES - FIRST_CHOICE) / 4;
    prices = raisePrices(problem, pool.columns(), madeCost, prices, calm, effort, end);
    if (effort.spent() >= PROOF && round > 0) break;
    const least = leastOver(problem, pool.columns(), prices);
    const total = prices.reduce((sum, price) => sum + price, 0);
    if (offered !== undefined) {
      if (total + count * least <= bound * (1 + 1e-9)) break;
      bound = total + count * least;
      continue;
    }
    const share = round < 4 ? 0.05 : 1;
    const proof = leastReducedCost(problem, grids, prices, least, effort, Math.min(PROOF, effort.spent() + share));
    bound = Math.max(bound, total + count * proof.bound);
    if (isProved(choice.cost, bound)) break;
    trim(pool, problem, prices, choice.sizes);
    for (const size of proof.found) pool.add(size);
  }
  return bound;
}

/** The least reduced cost among the columns; 0 where none is below it. */
function leastOver({ needs }: SizesProblem, columns: readonly SizeColumn[], prices: Float64Array): number {
  let reduced = 0;
  for (const { cost, holds } of columns) {
    let sum = 0;
    for (const need of holds) sum += Math.min(0, needs[need]!.quantity * cost - prices[need]!);
    reduced = Math.min(reduced, sum);
  }
  return reduced;
}

/** Drops the columns of highest reduced cost from a pool that has grown too large. */
function trim(pool: ColumnPool, problem: SizesProblem, prices: Float64Array, chosen: readonly SizeColumn[]): void {
  const columns = pool.columns();
  if (columns.length <= POOL) return;
  const ranked = columns
    .map((column) => ({ column, reduced: leastOver(problem, [column], prices) }))
    .sort((one, other) => one.reduced - other.reduced)
    .slice(0, POOL)
    .map(({ column }) => column);
  pool.keep([...new Set([...chosen, ...ranked])]);
}

function answerOf(
  problem: SizesProblem,
  madeCost: Float64Array,
  penalty: number,
  choice: Choice,
  bound: number,
): ChosenSizes {
  const { needs } = problem;
  const place = sizeOfEach(problem, madeCost, choice.sizes);
  const used = choice.sizes.filter((_, at) => place.includes(at));
  const sizeOf = [...place].map((at) => (at < 0 ? -1 : used.indexOf(choice.sizes[at]!)));
  let toMeasure = 0;
  needs.forEach(({ quantity }, at) => {
    if (sizeOf[at]! < 0) toMeasure += quantity;
  });
  const total = choice.cost - toMeasure * penalty;
  // A choice that makes m to measure costs less than (m + 1) penalties.
  const leastToMeasure = Math.min(toMeasure, Math.max(0, Math.ceil(bound / penalty - 1)));
  const leastTotal = Math.min(total, Math.max(0, bound - toMeasure * penalty));
  return {
    sizes: used.map(({ group, x, y, z }) => ({ group, x, y, z })),
    sizeOf,
    toMeasure,
    total,
    leastToMeasure,
    leastTotal,
  };
}
