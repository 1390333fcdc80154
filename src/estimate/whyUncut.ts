import { misfitCure } from "../board/misfitCure";
import type { UncuttableReason } from "../cutting/types";
import type { StockPlan } from "./stockPlans";

/** Why a plan leaves a piece out, and what a user can do about it. */
export function whyUncut(plan: Pick<StockPlan, "material" | "form">, reason: UncuttableReason): string {
  return `${reason} (${cureOf(plan, reason)})`;
}

function cureOf({ material, form }: Parameters<typeof whyUncut>[0], reason: UncuttableReason): string {
  const againstGrain = reason === "fits only against the grain";
  if (againstGrain || reason === "larger than every sheet")
    return misfitCure({ material, inSheets: form === "sheets", againstGrain });
  if (reason === "longer than the longest cut")
    return "set cut length to the longest cut that you can make, or to 0 for any";
  return "more sheets are needed than are in hand";
}
