import { InputError, NoAnswer } from "../measure/errors";
import type { Cell } from "../item/answers";
import { figureOf } from "../item/figureCatalogue";
import type { WorkbookUnit } from "../measure/units";
import { MEASURED } from "../headings/lexicon";
import type { Book } from "../workbook/book";
import { headedFigure } from "./headedFigure";
import { recogniseColumns } from "../headings/recognise";
import { Unanswered } from "../headings/questions";
import type { Recognition, RecogniseOptions } from "../headings/recognition";
import { boardNotes } from "../survey/boardNotes";
import { checkedSurvey } from "../survey/checkedSurvey";
import type { SizedSurvey } from "../survey/sizeSurvey";
import { surveyTable, type SurveyTable } from "../survey/surveyAnswers";
import { cutListToRead } from "./cutListToRead";
import { unanswered } from "../survey/unanswered";
import { readBookSurvey } from "./readBookSurvey";
import { PREFERRED_BOARD } from "../settings/definitions/materialSettings";
import { BOARD, lacksPreference, withBoards } from "./boardColumns";
import { createWorkbook } from "../workbook/createWorkbook";
import type { CellContent } from "../workbook/edits";
import type { Csv } from "../workbook/readCsv";
import { writeCsv, type CsvValue } from "../workbook/writeCsv";

export interface FilledCsv {
  readonly bytes: Uint8Array;
  readonly sized: SizedSurvey;
  readonly said: readonly string[];
}

/**
 * A text table with its figures in new columns right of everything it holds; every cell of the user's goes out as it
 * came in. A figure without an answer is left blank: the column `problem` says why a row has none, and `said` why a figure
 * has none.
 */
export function fillCsv(
  csv: Csv,
  figures: readonly string[],
  settings: readonly unknown[],
  recognise: RecogniseOptions,
): FilledCsv {
  const sized = checkedSurvey(csv.rows, settings, recognise);
  const { rows, said } = filledRows(sized, figures, csv.rows, csv.rows);
  return { bytes: writeCsv(rows, csv), sized, said };
}

/**
 * The survey of a workbook with its figures as a text table: a way on for a workbook that cannot be written back. Cells
 * other than measures are as the workbook shows them.
 *
 * @throws InputError when there is no survey to read
 */
export function fillCsvOfBook(
  book: Book,
  figures: readonly string[],
  options: Parameters<typeof readBookSurvey>[1],
): FilledCsv {
  const { chosen, cells, displayed, sized } = readBookSurvey(book, options);
  const { columns } = sized.survey.recognition;
  const asNumbers = new Set([...MEASURED, "quantity" as const].map((field) => columns[field]?.column));
  const shown = cells.map((row, r) =>
    row.map((cell, c): CsvValue => {
      const text = asNumbers.has(c + 1) ? undefined : displayed(r + 1, c + 1);
      if (text !== undefined || typeof cell === "number") return text ?? (cell as number);
      return typeof cell === "boolean" ? String(cell).toUpperCase() : typeof cell === "string" ? cell : null;
    }),
  );
  const { rows, said } = filledRows(sized, figures, cells, shown);
  return { bytes: writeCsv(rows), sized, said: [chosen.said, ...said] };
}

/** The rows of the user with the figures right of them. */
function filledRows(
  sized: SizedSurvey,
  figures: readonly string[],
  cells: readonly (readonly unknown[])[],
  shown: readonly (readonly CsvValue[])[],
): { readonly rows: readonly (readonly CsvValue[])[]; readonly said: readonly string[] } {
  const { headingRow, firstRow, said } = sized.survey.recognition;
  const table = withPreference(sized, surveyTable(sized, withBoards(figures), cells));
  const width = widthOf(shown);
  const headings = new Set(
    (shown[headingRow - 1] ?? []).map((heading) =>
      String(heading ?? "")
        .trim()
        .toLowerCase(),
    ),
  );
  const { answerUnit: unit } = sized.settings;
  const names = table[0]!.map((name) => freeHeading(headedFigure(String(name), unit), headings));
  const filled = shown.map((row, index): readonly CsvValue[] => {
    const added = index === headingRow - 1 ? names : table[index - firstRow + 2];
    if (added === undefined || (index < firstRow - 1 && index !== headingRow - 1)) return row;
    return [
      ...row,
      ...Array.from({ length: width - row.length }, () => ""),
      ...added.map((cell, i) => rounded(csvValue(cell), String(table[0]![i]), unit)),
    ];
  });
  // A survey without headings gets a row for those of the answers.
  const rows = headingRow > 0 ? filled : [[...Array.from({ length: width }, () => ""), ...names], ...filled];
  return {
    rows,
    said: [...said, ...sized.survey.notes, ...boardNotes(sized), ...unanswered(sized, table)],
  };
}

/** The figures with an empty column before them for the keeper's own decision on boards, where the survey has none. */
function withPreference(sized: SizedSurvey, table: SurveyTable): SurveyTable {
  if (!lacksPreference(sized, [BOARD])) return table;
  return table.map((row, index) => [index === 0 ? PREFERRED_BOARD : "", ...row]);
}

/** Decimals of a length in a text table: 0.1 mm, and as fine in the other units. */
const DECIMALS = { mm: 1, cm: 2, in: 3 } as const;

function rounded(value: CsvValue, figure: string, unit: WorkbookUnit): CsvValue {
  if (typeof value !== "number" || figureOf(figure)?.unit !== "length") return value;
  return Number(value.toFixed(DECIMALS[unit]));
}

/** The cut list as a text table. */
export function cutListCsv(sized: SizedSurvey, like?: Csv): Uint8Array {
  const rows = cutListToRead(sized).map((row) =>
    row.map((cell) => (cell instanceof InputError ? cell.message : csvValue(cell))),
  );
  return writeCsv(rows, like === undefined ? undefined : { ...like, rows: [], raw: [], notice: "" });
}

/**
 * The text table as a workbook, its survey a table where headings are found. Numbers of measured columns, and of columns of
 * nothing but numbers, become numbers; every other cell stays the text that it is.
 */
export function csvToWorkbook(csv: Csv, recognise: RecogniseOptions): Uint8Array {
  const recognition = recognisedIn(csv, recognise);
  const { headingRow, firstRow } = recognition;
  const { height, width, depth, weight, quantity, identifier } = recognition.columns;
  const measured = new Set([height, width, depth, weight, quantity].map((column) => column?.column));
  const columns = widthOf(csv.rows);
  const body = csv.rows.slice(firstRow - 1);
  const numeric = Array.from(
    { length: columns },
    (_, i) => measured.has(i + 1) || (identifier?.column !== i + 1 && body.every((row) => isNumber(row[i]))),
  );
  const rows = csv.rows.map((row, index): readonly CellContent[] =>
    Array.from({ length: columns }, (_, i) => {
      const cell = row[i] ?? "";
      if (index === headingRow - 1 && cell.trim() === "") return `column ${i + 1}`;
      if (cell === "") return null;
      return index >= firstRow - 1 && numeric[i] === true ? numberOrText(cell) : cell;
    }),
  );
  return createWorkbook([{ name: "Survey", rows, headingRow, ...(headingRow > 0 ? { table: "Survey" } : {}) }]);
}

/**
 * What is in doubt is asked about where the workbook is read: the page can ask with buttons. Which row holds the headings is
 * one of these questions; until it is answered no row does.
 */
function recognisedIn(csv: Csv, recognise: RecogniseOptions): Pick<Recognition, "headingRow" | "firstRow" | "columns"> {
  try {
    return recogniseColumns(csv.rows, recognise);
  } catch (error) {
    if (error instanceof Unanswered) return { headingRow: 0, firstRow: 1, columns: {} };
    throw error;
  }
}

/** Not by spreading: the arguments of a long survey would not fit on the stack. */
function widthOf(rows: readonly (readonly unknown[])[]): number {
  return rows.reduce((widest, { length }) => Math.max(widest, length), 0);
}

function csvValue(cell: Cell): CsvValue {
  return cell instanceof NoAnswer || cell instanceof InputError ? "" : cell;
}

/** Blank, or a number written as a spreadsheet would write it: `007` is no number. */
function isNumber(cell: string | undefined): boolean {
  const text = (cell ?? "").trim();
  return text === "" || String(Number(text)) === text;
}

function numberOrText(cell: string): CellContent {
  const text = cell.trim();
  return /^\d+(?:[.,]\d{1,2}|\.\d+)?$/.test(text) ? Number(text.replace(",", ".")) : cell;
}

function freeHeading(name: string, taken: ReadonlySet<string>): string {
  if (!taken.has(name)) return name;
  let number = 2;
  while (taken.has(`${name} ${number}`)) number += 1;
  return `${name} ${number}`;
}
