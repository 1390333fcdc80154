import { cellText } from "../measure/blank";
import type { SizedSurvey } from "../survey/sizeSurvey";
import type { SurveyCells } from "../survey/surveyAnswers";

/** What the survey says of the condition of each row; always empty where no column is headed so. */
export function conditionOf({ survey: { recognition } }: SizedSurvey, cells: SurveyCells): (row: number) => string {
  const headings = cells[recognition.headingRow - 1] ?? [];
  const column = headings.findIndex((heading) => typeof heading === "string" && /^\s*condition\b/i.test(heading));
  return (row) => (column < 0 ? "" : cellText(cells[row - 1]?.[column]));
}
