import { toBuy, type StockPlan } from "./stockPlans";

/** What cutting group by group takes of one stock, beside cutting all groups together. */
export interface BatchingCost {
  readonly stock: string;
  readonly unit: "sheets" | "m";
  readonly apart: number;
  readonly together: number;
  /** What it costs; below 0 where the longer search for all together found less than the groups did. */
  readonly more: number;
}

/**
 * What batching costs, stock by stock, in the order of the plans together. Stocks without a size have no sheets to
 * count and are left out.
 *
 * @param apart the plans of each group
 * @param together the plans of all groups' enclosures at once
 */
export function batchingCost(
  apart: readonly (readonly StockPlan[])[],
  together: readonly StockPlan[],
): readonly BatchingCost[] {
  const taken = new Map<string, number>();
  for (const plan of apart.flat()) taken.set(plan.stock, (taken.get(plan.stock) ?? 0) + toBuy(plan));
  return together.flatMap((plan) => {
    if (plan.form === "none") return [];
    const [separate, joint] = [taken.get(plan.stock) ?? 0, toBuy(plan)];
    const unit = plan.form === "roll" ? "m" : "sheets";
    return [{ stock: plan.stock, unit, apart: separate, together: joint, more: separate - joint }];
  });
}
