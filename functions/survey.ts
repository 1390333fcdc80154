import { InputError } from "../src/measure/errors";
import type { Answer } from "../src/survey/answers";
import { cutListTable, figureNames, surveyTable } from "../src/survey/surveyAnswers";
import { sizeSurvey } from "../src/survey/sizeSurvey";
import { guarded, plainCell, type CellResult } from "./cells";

/**
 * A whole survey in one formula: a row of figures beside each row of the survey, under their names.
 * @customfunction SURVEY SURVEY
 * @param items The survey with its heading row, such as Survey[[#Headers],[#Data]] or A3:H212
 * @param columns Figures, such as outside height, side wall length, board area or problem; or default
 * @param settings Settings range, stock table or text such as fit=loose; as many as you like, later over earlier
 * @returns Table with headings, a row for each row of the survey
 */
export function survey(items: any[][], columns: any[][], settings?: any[][][]): any[][] {
  return tableAnswer(items, settings, (cells, read) =>
    surveyTable(sizeSurvey(cells, read), figureNames(columns), cells),
  );
}

/**
 * The cut list of a whole survey: every part of every item, a row each, with the item's identifier.
 * @customfunction CUTLIST CUTLIST
 * @param items The survey with its heading row, such as Survey[[#Headers],[#Data]] or A3:H212
 * @param settings Settings range, stock table or text such as fit=loose; as many as you like, later over earlier
 * @returns Table with headings
 */
export function cutlist(items: any[][], settings?: any[][][]): any[][] {
  return tableAnswer(items, settings, (cells, read) => cutListTable(sizeSurvey(cells, read)));
}

function tableAnswer(
  items: any[][],
  settings: unknown,
  answer: (cells: readonly (readonly unknown[])[], settings: readonly unknown[]) => Answer,
): CellResult {
  return guarded(() => {
    const cells = items.map((row) => row.map(plainCell));
    const table = answer(cells, Array.isArray(settings) ? settings : []);
    refuseTooLarge(table);
    return table;
  });
}

/** What Excel carries in one answer; past it the cell would show nothing but an error without a reason. */
const LARGEST_ANSWER_BYTES = 5_000_000;
/** A number with its comma, and what a text takes beside its letters, at the most. */
const BYTES_A_NUMBER = 20;
const BYTES_BESIDE_TEXT = 3;

function refuseTooLarge(table: Answer): void {
  if (!Array.isArray(table)) return;
  let bytes = 0;
  for (const row of table)
    for (const cell of row) bytes += typeof cell === "string" ? cell.length + BYTES_BESIDE_TEXT : BYTES_A_NUMBER;
  if (bytes <= LARGEST_ANSWER_BYTES) return;
  const megabytes = (bytes / 1e6).toFixed(1);
  throw new InputError(
    "items",
    `${table.length - 1} rows to answer, about ${megabytes} MB`,
    "a cell carries 5 MB at the most",
    "give fewer rows or columns at a time, or write the list with the command line",
  );
}
