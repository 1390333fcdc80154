import { InputError } from "../measure/errors";
import type { Cell } from "../item/answers";
import { readSurvey, type SizedSurvey } from "../survey/sizeSurvey";
import { surveyTable, type SurveyCells } from "../survey/surveyAnswers";
import { cellName } from "../workbook/cellRef";
import { quoted, stored } from "../workbook/formulaText";

/**
 * The one formula that answers the figures of all rows, without the row of their names: the columns have headings of their
 * own, which a later run knows.
 *
 * @param settings ranges and texts, as a formula names them
 */
export function surveyFormula(
  { survey }: SizedSurvey,
  figures: readonly string[],
  settings: readonly string[],
): string {
  const { headingRow, firstRow, lastRow, firstColumn, lastColumn } = survey.recognition;
  const corners = [cellName(headingRow, firstColumn), cellName(lastRow, lastColumn)];
  const items = corners.map((corner) => corner.replace(/^([A-Z]+)(\d+)$/, "$$$1$$$2")).join(":");
  const answer = stored("SURVEY", [items, `{${figures.map(quoted).join(",")}}`, ...settings]);
  return `_xlfn.DROP(${answer},${firstRow - headingRow})`;
}

/**
 * Refuses one formula for a survey that it would read in another way than it was read here: what the user answered about
 * words and units is in no cell that the formula is given.
 *
 * @param cells the sheet
 * @param settings the ranges that the formula is given
 * @param table what was read, under its headings
 */
export function refuseReadOtherwise(
  { survey }: SizedSurvey,
  cells: SurveyCells,
  settings: readonly unknown[],
  figures: readonly string[],
  table: readonly (readonly Cell[])[],
): void {
  const { headingRow, lastRow, firstColumn, lastColumn } = survey.recognition;
  const items = cells.slice(headingRow - 1, lastRow).map((row) => row.slice(firstColumn - 1, lastColumn));
  if (same(answerOf(items, settings, figures), table)) return;
  throw new InputError(
    "columns",
    "one formula for all rows",
    "it would read this survey in another way: your answers about words and units are not in the cells",
    "choose a formula in every row",
  );
}

function answerOf(items: SurveyCells, settings: readonly unknown[], figures: readonly string[]) {
  try {
    return surveyTable(readSurvey(items, settings), figures, items);
  } catch (error) {
    if (error instanceof InputError) return undefined;
    throw error;
  }
}

/** Numbers and errors: texts name rows, which count from the first row of what is given. */
function same(one: readonly (readonly Cell[])[] | undefined, other: readonly (readonly Cell[])[]): boolean {
  return (
    one !== undefined &&
    one.length === other.length &&
    one.every((row, r) => row.every((cell, c) => comparable(cell) === comparable(other[r]?.[c])))
  );
}

function comparable(cell: Cell | undefined): unknown {
  return cell instanceof Error ? cell.name : typeof cell === "number" ? cell : typeof cell;
}
