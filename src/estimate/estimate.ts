import { enclosureMassOfAdhesive } from "../board/mass";
import type { Settings } from "../settings/schema";
import { addedLines, sharedLine } from "./addedLines";
import { costShares, type CostShare } from "./costShares";
import { bareLine, hundredth, hundredthSum, money, type CostLine, type EstimateLine } from "./estimateLine";
import { hoursLines, labourLine, type HoursLine } from "./labour";
import { stockLine } from "./stockLine";
import type { StockPlan } from "./stockPlans";
import type { Demand } from "./stockJobs";

/** A budget: sums are of the printed, rounded lines. */
export interface Estimate extends Sums {
  readonly lines: readonly EstimateLine[];
  readonly hours: readonly HoursLine[];
  readonly byKind: readonly CostShare[];
  /** Empty where the survey has no batches. */
  readonly byBatch: readonly CostShare[];
  readonly plans: readonly { readonly group: string; readonly plans: readonly StockPlan[] }[];
}

export type Sums = Pick<EstimateLine, (typeof SUMS)[number]>;

/** What is summed. */
const SUMS = ["cost", "contingency", "total", "match", "inKind", "requested"] as const;

/** What a budget is grouped by, with the enclosures of each group; the one group of a budget by material has no name. */
export interface DemandGroup {
  readonly group: string;
  readonly demands: readonly Demand[];
}

/**
 * A budget: each group is planned by itself, so that its sheets are its own.
 *
 * Sums are of the printed, rounded lines, so that they add up on paper.
 *
 * @param groups each with the plans of its own stocks
 */
export function estimateOf(
  groups: readonly (DemandGroup & { readonly plans: readonly StockPlan[] })[],
  settings: Settings,
): Estimate {
  const own = groups.flatMap(({ group, demands, plans }): readonly CostLine[] => [
    ...plans.map((plan) => stockLine(group, plan, settings)),
    ...adhesiveLine(group, demands, settings),
    ...labourLine(group, demands, settings),
  ]);
  const lines = [...own, ...addedLines(own, settings)].map((line) => sharedLine(line, settings));
  const sums = Object.fromEntries(SUMS.map((sum) => [sum, hundredthSum(lines, (line) => line[sum])])) as Sums;
  return {
    lines,
    ...sums,
    hours: hoursLines(groups, settings),
    ...costShares(groups, lines, settings),
    plans: groups.map(({ group, plans }) => ({ group, plans })),
  };
}

function adhesiveLine(group: string, demands: readonly Demand[], settings: Settings): readonly CostLine[] {
  const kg = demands.reduce((sum, { parts, quantity }) => sum + enclosureMassOfAdhesive(parts, settings) * quantity, 0);
  if (kg === 0) return [];
  const price = settings.adhesivePrice;
  return [
    {
      ...bareLine(group, "adhesive"),
      quantity: hundredth(kg),
      unit: "kg",
      ...money(price === 0 ? undefined : price, price * hundredth(kg), settings),
      notInCost: price === 0 ? "no price: not in the cost until adhesive price is set" : undefined,
    },
  ];
}
