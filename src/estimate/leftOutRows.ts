import type { Estimate } from "./estimate";
import type { StockPlan } from "./stockPlans";
import type { Cell } from "../item/answers";
import type { SizedSurvey } from "../survey/sizeSurvey";
import { problemText } from "../item/sizeItem";

/**
 * What is in no figure of the sheets: rows that cannot be sized, and pieces that no sheet holds, by item and part; of an
 * estimate, what has no price too.
 */
export function leftOutRows(
  { survey, outcomes }: SizedSurvey,
  plans: readonly StockPlan[],
  estimate?: Estimate,
): readonly (readonly Cell[])[] {
  const rows = survey.items.flatMap((item, index): (readonly Cell[])[] => {
    const outcome = outcomes[index]!;
    return outcome.state === "problem" ? [[item.identifier, problemText(outcome.error)]] : [];
  });
  const pieces = plans.flatMap(({ stock, plan }) =>
    (plan?.uncuttable ?? []).map(({ piece, count, reason }): readonly Cell[] => [
      piece.item,
      `${piece.part} (${count}) of ${stock}: ${reason}`,
    ]),
  );
  // Groups of a budget lack the same prices, and that is reported once.
  const unpriced = new Map(
    (estimate?.lines ?? []).flatMap(({ stock, notInCost }) =>
      notInCost === undefined ? [] : [[`${stock}: ${notInCost}`, [stock, notInCost]] as const],
    ),
  );
  const all = [...rows, ...pieces, ...unpriced.values()];
  return all.length === 0 ? [] : [["left out", "reason"], ...all];
}
