import { isBlank } from "../measure/blank";
import type { SizedSurvey } from "../survey/sizeSurvey";
import type { CellEdit } from "../workbook/edits";

/**
 * The cells that a row's kind is written to: its own, and of rows in the same box those that name a kind too.
 *
 * @param kind empty to take the decision back
 * @returns undefined where the survey has no column of enclosures
 */
export function kindCells(
  { survey }: SizedSurvey,
  index: number,
  kind: string,
  sheet: string,
): readonly CellEdit[] | undefined {
  const { enclosure } = survey.recognition.columns;
  if (enclosure === undefined) return undefined;
  const chosen = survey.items[index]!;
  const rows = survey.items.filter(
    (item) =>
      item === chosen ||
      (chosen.box !== "" && item.box === chosen.box && item.leftOut === "" && !isBlank(item.cells.enclosure)),
  );
  return rows.map(({ row }) => ({ sheet, row, column: enclosure.column, content: kind === "" ? null : kind }));
}
