import { surveyEdits } from "../filling/surveyEdits";
import type { PaneSurvey, PaneWrite } from "./paneState";

/** What a workbook keeps on sheets of its own, and has not yet. */
export function missingSheets({ found }: Pick<PaneSurvey, "found">): readonly string[] {
  return [
    ...(found.settings === undefined ? ["settings"] : []),
    ...(found.stock === undefined ? ["stock"] : []),
    ...(found.guide === undefined ? ["board guide"] : []),
  ];
}

/** Makes those sheets with the usual values; nothing where none is missing. */
export function makeSheets(survey: PaneSurvey): PaneWrite | undefined {
  if (missingSheets(survey).length === 0) return undefined;
  const { book, answered } = survey;
  const { edits } = surveyEdits(book, { ...answered, figures: [], values: false, cutList: false });
  const { sheets = [], names = [] } = edits;
  return { edits: { sheets, names } };
}
