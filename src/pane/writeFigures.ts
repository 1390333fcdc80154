import { surveyEdits } from "../filling/surveyEdits";
import { withProblem } from "../item/figureCatalogue";
import type { ColumnsHold } from "../workbook/edits";
import type { PaneSurvey, PaneWrite } from "./paneState";

/** Above this many rows a formula in every row keeps Excel busy: one formula is offered first. */
const MANY_ROWS = 1000;

/** What the columns hold unless the user says: what those that stand hold, else what suits the number of rows. */
export function usualHold({ holds, sized }: PaneSurvey): ColumnsHold {
  return holds ?? (sized.survey.items.length > MANY_ROWS ? "one formula" : "formulas");
}

/** Columns of figures beside the survey, and what rows have no answer to. */
export function writeFigures(
  survey: PaneSurvey,
  names: readonly string[],
  {
    cutList = false,
    holds = usualHold(survey),
    keeps = false,
  }: { readonly cutList?: boolean; readonly holds?: ColumnsHold; readonly keeps?: boolean } = {},
): PaneWrite {
  const options = {
    ...survey.answered,
    figures: withProblem(names),
    values: holds === "values",
    oneFormula: holds === "one formula",
    cutList,
  };
  const { edits, unanswered } = surveyEdits(survey.book, options, survey);
  const { identifier } = survey.sized.survey.recognition.columns;
  if (!keeps || identifier === undefined || edits.columns === undefined) return { edits, said: unanswered };
  return { edits: { ...edits, columns: { ...edits.columns, keepsInSight: identifier.column } }, said: unanswered };
}

/** The columns that stand already, after something that their formulas read was added. */
export function writeAgain(survey: PaneSurvey, standing: readonly string[]): PaneWrite {
  return { edits: writeFigures(survey, standing).edits };
}
