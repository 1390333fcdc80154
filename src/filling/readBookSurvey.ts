import { InputError } from "../measure/errors";
import type { RecogniseOptions } from "../headings/recognition";
import { sizeSurvey, type SizedSurvey } from "../survey/sizeSurvey";
import type { Book } from "../workbook/book";
import { parseArea, type Area } from "../workbook/cellRef";
import { chooseSheet, surveyPlace, type ChosenSheet } from "./chooseSheet";
import type { SheetGrid } from "../workbook/readSheet";
import type { SheetValue } from "../workbook/sheetValue";

/** Names of the ranges that a workbook keeps its settings and stock in, and of the sheets made for them. */
export const SETTINGS_NAME = "settings";
export const STOCK_NAME = "stock";
export const GUIDE_NAME = "board_guide";

type Range = readonly (readonly unknown[])[];

export interface BookSurvey {
  readonly chosen: ChosenSheet;
  readonly grid: SheetGrid;
  /** Cells as plain values. */
  readonly cells: Range;
  /** The workbook's own settings range, stock table and board guide, where it names them. */
  readonly found: {
    readonly settings: Range | undefined;
    readonly stock: Range | undefined;
    readonly guide: Range | undefined;
  };
  readonly sized: SizedSurvey;
}

/**
 * Reads and sizes the survey of a workbook with the settings and stock that it names.
 *
 * @throws InputError when there is no survey to read, or a named range cannot be used
 */
export function readBookSurvey(
  book: Book,
  options: { readonly sheet?: string; readonly recognise: RecogniseOptions; readonly settings: readonly unknown[] },
): BookSurvey {
  const chosen = chooseSheet(book, options.sheet, options.recognise);
  const grid = book.grid(chosen.sheet.name);
  const cells = plainCells(grid.rows, grid.uncached);
  const found = {
    settings: namedRange(book, SETTINGS_NAME),
    stock: namedRange(book, STOCK_NAME),
    guide: namedRange(book, GUIDE_NAME),
  };
  const stored = [found.settings, found.stock, found.guide].filter((range) => range !== undefined);
  const sized = sizeSurvey(cells, [...stored, ...options.settings], {
    ...options.recognise,
    ...surveyPlace(book, chosen.sheet, chosen.table),
  });
  return { chosen, grid, cells, found, sized };
}

/** A range that the workbook names: its cells as values. */
function namedRange(book: Book, name: string): readonly (readonly unknown[])[] | undefined {
  const defined = book.names.find((each) => each.name.toLowerCase() === name && each.sheet === undefined);
  if (defined === undefined) return undefined;
  const match = /^'?((?:[^'!]|'')+)'?!(\$?[A-Z]+\$?\d+:\$?[A-Z]+\$?\d+)$/.exec(defined.refersTo);
  if (match === null)
    throw new InputError(
      `the name ${name}`,
      `"${defined.refersTo}"`,
      "it must mean one range of cells, such as settings!$A$1:$B$60",
    );
  const area: Area = parseArea(match[2]!.replaceAll("$", ""))!;
  const { rows, uncached } = book.grid(match[1]!.replaceAll("''", "'"));
  const cells = plainCells(rows, uncached);
  const kept = cells.slice(area.top - 1, area.bottom).map((row) => row.slice(area.left - 1, area.right));
  // The name may be of whole columns, most of them blank.
  const used = kept.reduce((widest, { length }) => Math.max(widest, length), LEAST_COLUMNS);
  const width = Math.min(area.right - area.left + 1, used);
  refuseTooMuch(name, kept.length * width);
  return kept.map((row) => [...row, ...Array.from({ length: width - row.length }, () => null)]);
}

/** A settings range has two columns. */
const LEAST_COLUMNS = 2;
/** A thousand stocks with a hundred columns each. */
const MOST_CELLS = 100_000;

function refuseTooMuch(name: string, cells: number): void {
  if (cells <= MOST_CELLS) return;
  throw new InputError(
    `the name ${name}`,
    `a range of ${cells} cells in use`,
    `it has up to ${MOST_CELLS}`,
    "let it mean the settings alone",
  );
}

/** What a formula without a stored result reads as: refused by every measure, never taken for a blank. */
const UNCALCULATED = "formula not calculated";

function plainCells(rows: readonly (readonly SheetValue[])[], uncached: readonly string[]): unknown[][] {
  const cells: unknown[][] = rows.map((row) => row.map(plainValue));
  for (const name of uncached) {
    const area = parseArea(name);
    if (area === undefined) continue;
    while (cells.length < area.top) cells.push([]);
    const row = cells[area.top - 1]!;
    while (row.length < area.left) row.push(null);
    row[area.left - 1] = UNCALCULATED;
  }
  return cells;
}

function plainValue(value: SheetValue): unknown {
  if (typeof value !== "object" || value === null) return value;
  return "error" in value ? value.error : value.serial;
}
