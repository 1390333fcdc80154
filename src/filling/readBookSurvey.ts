import { isEmpty } from "../measure/blank";
import { InputError } from "../measure/errors";
import { recogniseColumns } from "../headings/recognise";
import type { RecogniseOptions } from "../headings/recognition";
import { wordsOf } from "../headings/lexicon";
import { checkedSurvey } from "../survey/checkedSurvey";
import type { SizedSurvey } from "../survey/sizeSurvey";
import type { SurveyOptions } from "../survey/surveyItems";
import type { Book } from "../workbook/book";
import { parseArea, type Area } from "../workbook/cellRef";
import { ALL_SHEETS, chooseSheet, surveyPlace, surveySheets, type ChosenSheet } from "./chooseSheet";
import { displayedCells, unitsOfFormats } from "./displayedCells";
import { GUIDE_NAME, SETTINGS_NAME, SIZES_NAME, STOCK_NAME } from "./keptRanges";
import { rememberedWords } from "./wordsSheet";
import { isSizesHeading } from "../settings/sizesList";
import type { SheetGrid } from "../workbook/readSheet";
import type { SheetValue } from "../workbook/sheetValue";

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
    readonly sizes: Range | undefined;
  };
  /** What a cell shows where that is not its value. */
  readonly displayed: (row: number, column: number) => string | undefined;
  /** Everything it was sized with beside its rows. */
  readonly settings: readonly unknown[];
  readonly sized: SizedSurvey;
}

export interface BookSurveyOptions {
  readonly sheet?: string;
  readonly recognise: RecogniseOptions;
  readonly settings: readonly unknown[];
}

/**
 * Reads and sizes the survey of a workbook with the settings, the stock and the words that it keeps.
 *
 * @param before an earlier reading: its rows that read as they did are not sized again
 * @throws Unanswered when only the user can say what is meant
 * @throws InputError when there is no survey to read, or a named range cannot be used
 */
export function readBookSurvey(book: Book, options: BookSurveyOptions, before?: BookSurvey): BookSurvey {
  const found = {
    settings: namedRange(book, SETTINGS_NAME),
    stock: namedRange(book, STOCK_NAME),
    guide: namedRange(book, GUIDE_NAME),
    sizes: sizesRange(book),
  };
  const stored = [found.settings, found.stock, found.guide, found.sizes].filter((range) => range !== undefined);
  const settings = [...stored, ...options.settings];
  const { chosen, grid, cells, recognise } = isAll(book, options.sheet)
    ? allSheets(book, options.recognise)
    : oneSheet(book, options);
  const displayed = recognise.displayed ?? (() => undefined);
  const isAlike = before !== undefined && JSON.stringify(before.settings) === JSON.stringify(settings);
  const sized = checkedSurvey(cells, settings, recognise, isAlike ? before.sized : undefined);
  return { chosen, grid, cells, found, displayed, settings, sized };
}

/** A workbook may use the name for something else. */
function sizesRange(book: Book): Range | undefined {
  const range = namedRange(book, SIZES_NAME);
  return range !== undefined && isSizesHeading(range[0] ?? []) ? range : undefined;
}

/** Whether all sheets are asked for, and none has that name. */
export function isAll(book: Book, sheet: string | undefined): boolean {
  const wanted = sheet?.trim().toLowerCase();
  return wanted === ALL_SHEETS && !book.sheets.some(({ name }) => name.toLowerCase() === wanted);
}

interface ReadCells {
  readonly chosen: ChosenSheet;
  readonly grid: SheetGrid;
  readonly cells: Range;
  readonly recognise: SurveyOptions;
}

function oneSheet(book: Book, { sheet, recognise }: Pick<BookSurveyOptions, "sheet" | "recognise">): ReadCells {
  const chosen = chooseSheet(book, sheet, recognise);
  const grid = book.grid(chosen.sheet.name, { formats: true });
  const words = [...rememberedWords(book, chosen.sheet.name), ...(recognise.words ?? [])];
  return {
    chosen,
    grid,
    cells: plainCells(grid.rows, grid.uncached),
    recognise: {
      ...recognise,
      words,
      ...surveyPlace(book, chosen.sheet, chosen.table),
      displayed: displayedCells(grid),
      formatUnits: unitsOfFormats(grid),
    },
  };
}

/** Sheets of the same layout as one survey: the rows of each below those of the first. */
function allSheets(book: Book, recognise: RecogniseOptions): ReadCells {
  const sheets = surveySheets(book, recognise);
  const [first, ...others] = sheets.map((sheet) => {
    const one = oneSheet(book, { sheet: sheet.name, recognise });
    return { ...one, found: recogniseColumns(one.cells, outsideTables(one.recognise)) };
  });
  if (first === undefined)
    throw new InputError("sheet", `"${ALL_SHEETS}"`, "no sheet looks like a survey", "name the sheet");
  const cells = first.cells.slice(0, first.found.lastRow).map((row) => [...row]);
  const shown: Displayed[] = cells.map((_, i) => (column) => first.recognise.displayed?.(i + 1, column));
  const said = [`sheet "${first.chosen.sheet.name}": rows ${first.found.firstRow} to ${first.found.lastRow}`];
  const headings = (read: ReadCells, row: number) =>
    (read.cells[row - 1] ?? []).map((cell) => wordsOf(isEmpty(cell) ? "" : String(cell)));
  for (const other of others) {
    const { name } = other.chosen.sheet;
    if (headings(other, other.found.headingRow).join("|") !== headings(first, first.found.headingRow).join("|"))
      throw new InputError(
        "sheet",
        `"${ALL_SHEETS}"`,
        `sheet "${name}" has other headings than "${first.chosen.sheet.name}"`,
        "name one sheet",
      );
    const from = cells.length + 1;
    for (let row = other.found.firstRow; row <= other.found.lastRow; row++) {
      cells.push([...(other.cells[row - 1] ?? [])]);
      shown.push((column) => other.recognise.displayed?.(row, column));
    }
    said.push(
      `sheet "${name}": its rows ${other.found.firstRow} to ${other.found.lastRow} are counted as ${from} to ${cells.length}`,
    );
  }
  return {
    ...first,
    cells,
    chosen: { ...first.chosen, table: undefined, said: said.join("; ") },
    recognise: {
      ...outsideTables(first.recognise),
      headingRow: first.found.headingRow,
      displayed: (row, column) => shown[row - 1]?.(column),
    },
  };
}

/** What the cells of one row show, by column. */
type Displayed = (column: number) => string | undefined;

/** Without the table of one sheet, and what its cells show. */
function outsideTables(options: SurveyOptions): SurveyOptions {
  return Object.fromEntries(Object.entries(options).filter(([name]) => name !== "region" && name !== "displayed"));
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
