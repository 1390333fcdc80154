import { createRandom } from "../../cutting/random";
import { boundOf, isProved } from "./boundOf";
import { createColumnPool, type ColumnPool } from "./columnPool";
import { groupGrids, type GroupGrid } from "./costTable";
import { createEffort, type EffortBudget } from "./effort";
import { flatNeeds } from "./flatNeeds";
import { held, type Choice } from "./held";
import type { ChosenSizes, SizesProblem } from "./sizesProblem";
import { swapSearch } from "./swapSearch";

/** Shares of the effort at which the first choice and the bound end; the rest betters the choice. */
const FIRST_CHOICE = 0.15;
const BOUND = 0.85;

/** Pairs of items whose common size is in the first pool. */
const FIRST_PAIRS = 1500;

/**
 * At most so many sizes for all items: fewest made to measure, then least cost, with a proven bound.
 *
 * A first choice, then the bound, whose prices lead to better sizes, then the choice again among those.
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
  const flat = flatNeeds(problem, grids);
  const pool = createColumnPool(problem, grids, flat);
  const penalty = penaltyOf(problem, grids);
  // What goes into no box that is bought is not bought.
  const own = problem.needs.map((need) => (problem.offered === undefined ? need.quantity * problem.cost(need) : 0));
  const madeCost = Float64Array.from(problem.needs, ({ quantity }, place) => own[place]! + quantity * penalty);
  firstPool(problem, grids, pool, random.below);
  const search = { problem, grids, flat, madeCost, pool, effort };
  let choice = swapSearch(search, undefined, random, FIRST_CHOICE);
  const bound = boundOf(search, choice, BOUND);
  if (!isProved(choice.cost, bound)) choice = swapSearch(search, choice, random, 1);
  return answerOf(problem, madeCost, penalty, choice, bound);
}

/** More than any choice can cost beyond another, so that one enclosure fewer made to measure always counts first. */
function penaltyOf({ needs, cost, offered }: SizesProblem, grids: readonly GroupGrid[]): number {
  if (offered !== undefined) {
    const dearest = offered.reduce((most, size) => Math.max(most, cost(size)), 0);
    return needs.reduce((sum, { quantity }) => sum + quantity * dearest, 0) + 1;
  }
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

function answerOf(
  problem: SizesProblem,
  madeCost: Float64Array,
  penalty: number,
  choice: Choice,
  bound: number,
): ChosenSizes {
  const { needs } = problem;
  const place = held(problem, madeCost, choice.sizes).first;
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
