import type { SizedSurvey } from "../survey/sizeSurvey";
import { bookOf } from "../workbook/book";
import { editWorkbook } from "../workbook/editWorkbook";
import type { EditResult } from "../workbook/edits";
import type { Workbook } from "../workbook/openWorkbook";
import { surveyEdits, type FillOptions } from "./surveyEdits";

export interface Filled {
  readonly edit: EditResult;
  readonly sized: SizedSurvey;
  /** Messages for the user. */
  readonly said: readonly string[];
}

/**
 * Fills the survey of a workbook: figures as live formulas with their results in new columns beside it, a settings and
 * a stock sheet where there are none, a cut list when asked. Nothing else is touched.
 *
 * @throws InputError when there is no survey to read, or the workbook may not be changed
 */
export function fillWorkbook(
  workbook: Workbook,
  { onProgress, ...options }: FillOptions & { readonly onProgress?: (fraction: number) => void },
): Filled {
  const { edits, sized, said, unanswered } = surveyEdits(bookOf(workbook), options);
  const edit = editWorkbook(workbook, edits, onProgress);
  return { edit, sized, said: [...said, ...edit.notes, ...unanswered] };
}
