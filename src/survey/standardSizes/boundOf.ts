import type { SizeColumn, ColumnPool } from "./columnPool";
import { held, type Choice } from "./held";
import { leastReducedCost, type FoundSize } from "./leastReducedCost";
import { raisePrices } from "./raisePrices";
import type { SizesProblem } from "./sizesProblem";
import type { SizesSearch } from "./sizesSearch";

/** Shares of the effort here that the prices may take, in the first round and in a later one. */
const FIRST_PRICES = 0.12;
const LATER_PRICES = 0.05;

/** While the prices are still far off, the search for the least reduced cost takes at most this share of all effort. */
const SHORT_PROOF = 0.05;
const SHORT_PROOFS = 4;

/** A bound this close to the cost, as a share of it, proves it. */
const CLOSE = 1e-7;

/** A bound that rises by no more than this share of it has settled. */
const NO_GAIN = 1e-9;

/** Columns kept between rounds. */
const POOL = 3000;

/**
 * A bound on the cost of any choice; and in the pool the sizes that were met.
 *
 * The bound is Lagrange's: every need pays a price to be held; whatever the sizes, the cost is at least the sum of the
 * prices + count x the least reduced cost that any size can have. Prices are raised over the sizes met so far, then the
 * size of least reduced cost is sought among all, which closes the bound and brings new sizes into the pool.
 *
 * @param until share of the effort at which to stop
 */
export function boundOf(search: SizesSearch, choice: Choice, until: number): number {
  const { problem, madeCost, pool, effort } = search;
  const { count, offered } = problem;
  const begin = effort.spent();
  let prices = held(problem, madeCost, choice.sizes).firstCost;
  let bound = Number.NEGATIVE_INFINITY;
  for (let round = 0; effort.spent() < until; round++) {
    // A round without work would be asked for again and again.
    effort.count(1);
    const calm = round === 0 ? 0 : Math.min(0.95, 0.6 + 0.05 * round);
    const end = effort.spent() + (until - begin) * (round === 0 ? FIRST_PRICES : LATER_PRICES);
    prices = raisePrices(search, prices, calm, end);
    if (effort.spent() >= until && round > 0) break;
    const least = leastOver(problem, pool.columns(), prices);
    const total = prices.reduce((sum, price) => sum + price, 0);
    if (offered !== undefined) {
      if (total + count * least <= bound * (1 + NO_GAIN)) break;
      bound = total + count * least;
      continue;
    }
    const proofEnd = round < SHORT_PROOFS ? Math.min(until, effort.spent() + SHORT_PROOF) : until;
    const proof = leastReducedCost(search, prices, least, proofEnd);
    bound = Math.max(bound, total + count * proof.bound);
    if (isProved(choice.cost, bound)) break;
    trim(pool, problem, prices, choice.sizes);
    addFound(search, proof.found, prices, until);
  }
  return bound;
}

/** Nothing is left to gain. */
export function isProved(cost: number, bound: number): boolean {
  return bound >= cost * (1 - CLOSE);
}

/** New columns a round brings in, at most; and of those that hold a need for its price, at most. */
const MOST_NEW = 400;
const MOST_OF_A_NEED = 5;

/** Into the pool: the sizes of least reduced cost, but of nearly the same ones only a few. */
function addFound(
  { flat, pool, effort }: SizesSearch,
  found: readonly FoundSize[],
  prices: Float64Array,
  until: number,
): void {
  const times = new Int32Array(prices.length);
  let added = 0;
  for (const { size } of found) {
    if (added >= MOST_NEW || effort.spent() >= until) break;
    if (pool.has(size)) continue;
    const column = pool.add(size);
    const { holds, cost } = column;
    effort.count(prices.length);
    const paid = holds.filter((need) => flat.quantity[need]! * cost < prices[need]!);
    if (paid.every((need) => times[need]! >= MOST_OF_A_NEED)) {
      pool.drop(column);
      continue;
    }
    for (const need of paid) times[need]!++;
    added++;
  }
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
