import type { Cell } from "../item/answers";
import { problemText } from "../item/sizeItem";
import type { SizedSurvey } from "./sizeSurvey";

/** Rows that cannot be sized, each with why, under a heading; none where all can. */
export function problemRows(survey: SizedSurvey): readonly (readonly Cell[])[] {
  return underHeading(problemsOf(survey));
}

/** The same without a heading. */
export function problemsOf({ survey, outcomes }: SizedSurvey): readonly (readonly Cell[])[] {
  return survey.items.flatMap((item, index): (readonly Cell[])[] => {
    const outcome = outcomes[index]!;
    return outcome.state === "problem" ? [[item.identifier, problemText(outcome.error)]] : [];
  });
}

/** What is left out of a table, below it. */
export function underHeading(rows: readonly (readonly Cell[])[]): readonly (readonly Cell[])[] {
  return rows.length === 0 ? [] : [["left out", "reason"], ...rows];
}
