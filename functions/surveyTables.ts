import { InputError } from "../src/measure/errors";
import type { Answer, Cell } from "../src/item/answers";
import { estimateAnswer } from "../src/estimate/budget";
import { layoutAnswer, sheetsAnswer } from "../src/estimate/sheetAnswers";
import { readSurvey, sizeSurvey, type SizedSurvey, type SurveyReading } from "../src/survey/sizeSurvey";
import { sizedLately } from "../src/survey/sizedLately";
import { cutListTable, figureNames, surveyTable, type SurveyCells } from "../src/survey/surveyAnswers";
import { shelfTable } from "../src/survey/shelfSpace";
import { sizeCount } from "../src/survey/standardSizes/sizeCount";
import { sizeNamed, sizesAnswer } from "../src/survey/standardSizes/sizesTable";
import type { Row } from "../src/item/sizeItem";
import { guarded, isTable, itemAnswer, plainCell, selector, type CellResult } from "./cells";

/**
 * A short search, the same on any machine: Excel restarts an add-in that keeps it waiting for some seconds. The command
 * line searches for as long as the user says.
 */
const CELL_BUDGET = { budget: { iterations: 300 } } as const;

/** The code of the whole-survey functions: a separate script, which the functions of one row never load. */
export function surveyCells(items: unknown, columns: unknown, settings: unknown): CellResult {
  const names = columns as readonly (readonly unknown[])[];
  return tableAnswer(items, settings, readSurvey, (survey, cells) => {
    const [headings = [], ...rows] = surveyTable(survey, figureNames(names), cells);
    // A row of units below the headings has a blank beside it, so that every answer stands beside its own row.
    const { headingRow, firstRow } = survey.survey.recognition;
    const below = Array.from({ length: firstRow - headingRow - 1 }, () => headings.map(() => ""));
    return [headings, ...below, ...rows];
  });
}

export function cutlistCells(items: unknown, settings: unknown): CellResult {
  return tableAnswer(items, settings, readSurvey, cutListTable);
}

export function sheetsCells(items: unknown, board: unknown, settings: unknown): CellResult {
  return tableAnswer(items, settings, sizedLately, (survey) =>
    sheetsAnswer(survey, selector(board, "board", "all"), CELL_BUDGET),
  );
}

export function layoutCells(items: unknown, board: unknown, settings: unknown): CellResult {
  return tableAnswer(items, settings, sizedLately, (survey) =>
    layoutAnswer(survey, selector(board, "board", "all"), CELL_BUDGET),
  );
}

export function estimateCells(items: unknown, settings: unknown): CellResult {
  return tableAnswer(items, settings, sizedLately, (survey, cells) => estimateAnswer(survey, cells, CELL_BUDGET));
}

export function shelfCells(items: unknown, settings: unknown): CellResult {
  return tableAnswer(items, settings, sizeSurvey, shelfTable);
}

/** Looks at one item under one size: about a second, and the same answer on any machine. */
const CELL_LOOKS = { looks: 20_000_000 } as const;

export function sizesCells(items: unknown, count: unknown, settings: unknown): CellResult {
  return tableAnswer(items, settings, sizeSurvey, (survey) =>
    sizesAnswer(survey, sizeCount(selector(count, "count", "12")), CELL_LOOKS),
  );
}

export function sizeCell(row: Row, sizes: unknown, settings: unknown): CellResult {
  return itemAnswer(row, settings, (sized) => sizeNamed(sized, sizes));
}

function tableAnswer<S extends SurveyReading | SizedSurvey>(
  items: unknown,
  settings: unknown,
  read: (cells: SurveyCells, settings: readonly unknown[]) => S,
  answer: (survey: S, cells: SurveyCells) => Answer,
): CellResult {
  return guarded(() => {
    const cells = (items as readonly (readonly unknown[])[]).map((row) => row.map(plainCell));
    const table = answer(read(cells, Array.isArray(settings) ? settings : []), cells);
    refuseTooLarge(table);
    return table;
  });
}

/** What Excel carries in one answer; past it the cell would show nothing but an error without a reason. */
const LARGEST_ANSWER_BYTES = 5_000_000;
/** A number with its comma, and the most that a text or an error takes besides its letters. */
const BYTES_A_NUMBER = 20;
const BYTES_BESIDE_TEXT = 3;
const BYTES_BESIDE_ERROR = 80;

function refuseTooLarge(table: Answer): void {
  if (!isTable(table)) return;
  let bytes = 0;
  for (const row of table) for (const cell of row) bytes += bytesOf(cell);
  if (bytes <= LARGEST_ANSWER_BYTES) return;
  const megabytes = (bytes / 1e6).toFixed(1);
  throw new InputError(
    "items",
    `${table.length - 1} rows to answer, about ${megabytes} MB`,
    "a cell holds at most 5 MB",
    "give fewer rows or columns at a time, or write the list with the command line",
  );
}

function bytesOf(cell: Cell): number {
  if (typeof cell === "number") return BYTES_A_NUMBER;
  return typeof cell === "string" ? cell.length + BYTES_BESIDE_TEXT : cell.message.length + BYTES_BESIDE_ERROR;
}
