import type { SizeColumn } from "./columnPool";
import type { SizesProblem } from "./sizesProblem";

/** A choice of sizes. */
export interface Choice {
  readonly sizes: readonly SizeColumn[];
  readonly cost: number;
}

/** What is known of each need under the sizes chosen: its cheapest size, and what the next cheapest would cost. */
export interface Held {
  /** Its place among the sizes; -1 where none holds the need, which is then made to measure. */
  readonly first: Int32Array;
  readonly firstCost: Float64Array;
  readonly secondCost: Float64Array;
}

/** What all needs cost under the sizes chosen, each in its cheapest. */
export function costOf(problem: SizesProblem, madeCost: Float64Array, sizes: readonly SizeColumn[]): number {
  return held(problem, madeCost, sizes).firstCost.reduce((sum, cost) => sum + cost, 0);
}

/** Each need in its cheapest size of a choice. */
export function held({ needs }: SizesProblem, madeCost: Float64Array, sizes: readonly SizeColumn[]): Held {
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
