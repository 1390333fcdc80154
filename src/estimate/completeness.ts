import type { SizedSurvey } from "../survey/sizeSurvey";
import type { StockPlan } from "./stockPlans";

/** How much of a survey a budget holds: each row that asks for an enclosure is in exactly one of the counts. */
export interface Completeness {
  readonly complete: number;
  /** Some of its pieces cannot be cut, so that they are not in the cost. */
  readonly inPart: number;
  readonly notSized: number;
}

export function completenessOf({ outcomes }: Pick<SizedSurvey, "outcomes">, plans: readonly StockPlan[]): Completeness {
  const count = (state: string) => outcomes.filter((outcome) => outcome.state === state).length;
  const inPart = itemsInPart(plans).size;
  return { complete: count("sized") - inPart, inPart, notSized: count("problem") };
}

/** `37 complete, 1 in part, 2 not sized`, and what that means for the money. */
export function completenessText({ complete, inPart, notSized }: Completeness): string {
  const counts = `${complete} complete, ${inPart} in part, ${notSized} not sized`;
  const missing = [
    ...(inPart === 0 ? [] : ["pieces that cannot be cut"]),
    ...(notSized === 0 ? [] : ["rows that are not sized"]),
  ];
  return missing.length === 0 ? `${counts}.` : `${counts}: ${missing.join(" and ")} are not in the cost.`;
}

/** Items of which some pieces cannot be cut. */
function itemsInPart(plans: readonly StockPlan[]): ReadonlySet<string> {
  return new Set(plans.flatMap(({ plan }) => (plan?.uncuttable ?? []).map(({ piece }) => piece.item)));
}
