import { surveyEdits } from "../filling/surveyEdits";
import { withProblem } from "../item/figureCatalogue";
import type { PaneSurvey, PaneWrite } from "./paneState";

/** Columns of figures beside the survey, and what rows have no answer to. */
export function writeFigures(
  { book, answered }: PaneSurvey,
  names: readonly string[],
  { cutList = false } = {},
): PaneWrite {
  const figures = withProblem(names);
  const { edits, unanswered } = surveyEdits(book, { ...answered, figures, values: false, cutList });
  return { edits, said: unanswered };
}

/** The columns that stand already, after something that their formulas read was added. */
export function writeAgain(survey: PaneSurvey, standing: readonly string[]): PaneWrite {
  return { edits: writeFigures(survey, standing).edits };
}
