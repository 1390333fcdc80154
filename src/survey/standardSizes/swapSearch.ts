import type { Random } from "../../cutting/random";
import type { SizeColumn } from "./columnPool";
import { costOf, held, type Choice } from "./held";
import { leastReducedCost } from "./leastReducedCost";
import { addNeighbours } from "./neighbours";
import type { SizesSearch } from "./sizesSearch";
import { swapped } from "./swapped";

/** Less than this share is no gain. */
const LEAST_GAIN = 1e-9;

/** Where a size saves most is sought to this share of what it saves. */
const REOPEN_CLOSE = 0.01;

/**
 * Swaps chosen sizes for sizes of the pool while that lowers the cost, then takes each size away in turn and puts it back
 * where, of all sizes, it saves most; again from a shaken choice until the effort is spent.
 *
 * @param until share of the effort at which to stop
 */
export function swapSearch(search: SizesSearch, start: Choice | undefined, random: Random, until: number): Choice {
  const { problem, madeCost, pool, effort } = search;
  const { needs, count, offered } = problem;
  let best = start ?? { sizes: [], cost: costOf(problem, madeCost, []) };
  let sizes: readonly SizeColumn[] = best.sizes;
  let rounds = 0;
  do {
    if (rounds++ > 0) sizes = shaken(best.sizes, pool.columns(), random);
    for (;;) {
      const before = costOf(problem, madeCost, sizes);
      if (offered === undefined) addNeighbours(search, sizes);
      sizes = swapped(search, sizes, random, until);
      if (offered === undefined) sizes = reopened(search, sizes, until);
      const after = costOf(problem, madeCost, sizes);
      if (after > before - LEAST_GAIN * Math.abs(before) || effort.spent() >= until) break;
    }
    const cost = costOf(problem, madeCost, sizes);
    if (cost < best.cost) best = { sizes, cost };
    effort.count(needs.length * count);
  } while (effort.spent() < until && pool.columns().length > count);
  return best;
}

/** Each size in turn taken away and put back where, of all sizes, it saves most. */
function reopened(search: SizesSearch, start: readonly SizeColumn[], until: number): readonly SizeColumn[] {
  const { problem, madeCost, pool, effort } = search;
  const sizes = [...start];
  for (let at = 0; at < sizes.length && effort.spent() < until; at++) {
    const others = sizes.filter((_, other) => other !== at);
    const { firstCost } = held(problem, madeCost, others);
    const { cost, holds } = sizes[at]!;
    let saved = 0;
    for (const need of holds) saved += Math.min(0, problem.needs[need]!.quantity * cost - firstCost[need]!);
    const [best] = leastReducedCost(search, firstCost, saved, until, REOPEN_CLOSE).found;
    if (best !== undefined && best.reduced < saved * (1 + LEAST_GAIN)) sizes[at] = pool.add(best.size);
  }
  return sizes;
}

/** A few sizes of a choice replaced by any of the pool. */
function shaken(sizes: readonly SizeColumn[], columns: readonly SizeColumn[], random: Random): SizeColumn[] {
  const next = [...sizes];
  const many = 1 + random.below(Math.max(1, Math.min(4, next.length)));
  for (let i = 0; i < many && next.length > 0; i++)
    next[random.below(next.length)] = columns[random.below(columns.length)]!;
  return [...new Set(next)];
}
