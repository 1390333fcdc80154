import type { Estimate } from "./estimate";
import type { StockPlan } from "./stockPlans";
import { whyUncut } from "./whyUncut";
import { plainCell, type Cell } from "../item/answers";
import { problemsOf, underHeading } from "../survey/problemRows";
import type { SizedSurvey } from "../survey/sizeSurvey";

/**
 * What is in no figure of the sheets: rows that cannot be sized, and pieces that no sheet holds, by item and part; of an
 * estimate, what has no price too.
 */
export function leftOutRows(
  survey: SizedSurvey,
  plans: readonly StockPlan[],
  estimate?: Estimate,
): readonly (readonly Cell[])[] {
  const pieces = plans.flatMap((each) =>
    (each.plan?.uncuttable ?? []).map(({ piece, count, reason }): readonly Cell[] => [
      piece.item,
      `${piece.part} (${count}) of ${each.stock}: ${whyUncut(each, reason)}`,
    ]),
  );
  // Groups of a budget lack the same prices, and that is reported once.
  const unpriced = new Map(
    (estimate?.lines ?? []).flatMap(({ stock, notInCost }) =>
      notInCost === undefined ? [] : [[`${stock}: ${notInCost}`, [stock, notInCost]] as const],
    ),
  );
  return underHeading([...problemsOf(survey), ...pieces, ...unpriced.values()]);
}

/** The same, a row each name with all its reasons. */
export function leftOutByName([headings, ...rows]: readonly (readonly Cell[])[]): readonly (readonly string[])[] {
  if (headings === undefined) return [];
  const reasons = new Map<string, string[]>();
  for (const [name = "", reason = ""] of rows.map((row) => row.map((cell) => String(plainCell(cell)))))
    reasons.set(name, [...(reasons.get(name) ?? []), reason]);
  return [
    headings.map((cell) => String(plainCell(cell))),
    ...[...reasons].map(([name, own]) => [name, own.join("; ")]),
  ];
}
