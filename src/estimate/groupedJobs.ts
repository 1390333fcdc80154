import type { Settings } from "../settings/schema";
import type { DemandGroup } from "./estimate";
import type { StockPlan } from "./stockPlans";
import { stockJobs, type StockJob } from "./stockJobs";

/** A group with the plans of its own stocks. */
export type PlannedGroup = DemandGroup & { readonly plans: readonly StockPlan[] };

/** What several groups ask of the stock, as one list to plan. */
export interface GroupedJobs {
  readonly jobs: readonly StockJob[];
  /** The groups with their plans, from the plans of `jobs` in order; plans after the last of them are left over. */
  readonly planned: (plans: readonly StockPlan[]) => readonly PlannedGroup[];
}

/** Each group's stocks apart from the others', in one list for whoever plans them. */
export function groupedJobs(groups: readonly DemandGroup[], settings: Settings): GroupedJobs {
  const own = groups.map(({ demands }) => stockJobs(demands, settings));
  return {
    jobs: own.flat(),
    planned: (plans) => {
      let next = 0;
      return groups.map((group, index) => {
        const from = next;
        next += own[index]!.length;
        return { ...group, plans: plans.slice(from, next) };
      });
    },
  };
}
