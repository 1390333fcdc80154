import type {
  BooleanNumber,
  CellValueType,
  HorizontalAlign,
  ICellData,
  IRange,
  IStyleData,
  IWorkbookData,
  IWorksheetData,
  LocaleType,
  Nullable,
  WrapStrategy,
} from "@univerjs/core";
import { cellLooksOf, type CellLook } from "../workbook/cellLooks";
import type { Area } from "../workbook/cellRef";
import type { PlacedColumn } from "../workbook/edits";
import type { DefinedName, Workbook } from "../workbook/openWorkbook";
import type { TableInfo } from "../workbook/readTable";
import { isMark } from "../workbook/ownMarks";
import { readSheet, type SheetGrid } from "../workbook/readSheet";
import { sheetLook, type RichText, type SheetLook, type StoredFormula } from "../workbook/sheetLook";
import type { SheetValue } from "../workbook/sheetValue";
import { DAYS_1904, isDateFormat, isTimeFormat } from "../workbook/sheetValue";
import { formulaSharer } from "./sharedFormulas";
import { typedFromStored } from "./storedFormulas";

/** A sheet of the file as the page knows it. */
export interface OpenedSheet {
  readonly id: string;
  readonly name: string;
  readonly state: "visible" | "hidden" | "veryHidden";
  /** Protected in the file: shown, never changed. */
  readonly locked: boolean;
  /** Cells that one array formula fills, by the row and column of its first cell. */
  readonly arrays: readonly { readonly row: number; readonly column: number; readonly area: Area }[];
}

/** A workbook as the server hands it to the page. */
export interface OpenedBook {
  /** Name of the file. */
  readonly name: string;
  readonly snapshot: IWorkbookData;
  readonly sheets: readonly OpenedSheet[];
  readonly tables: readonly TableInfo[];
  readonly names: readonly DefinedName[];
  /** Its dates count from 1904, in the grid from 1900: see `calendarShift`. */
  readonly date1904: boolean;
  /** Messages for the user. */
  readonly said: readonly string[];
}

/** What the pane has written, and the workbook that the page is to show now. */
export interface WrittenBook {
  readonly opened: OpenedBook;
  readonly columns: readonly PlacedColumn[];
  /** Notes for the user, in plain words. */
  readonly notes: readonly string[];
}

/** The id under which the grid knows the one workbook of a page. */
export const BOOK_ID = "book";

/** Key in the snapshot of the cell style that the file numbers so. */
export const styleKey = (style: number): string => `x${style}`;

/** The reverse of `styleKey`; undefined for a style that the file does not have. */
export function styleNumber(key: unknown): number | undefined {
  const match = typeof key === "string" ? /^x(\d+)$/.exec(key) : null;
  return match ? Number(match[1]) : undefined;
}

/**
 * Days by which a number of the grid exceeds that of a file with the calendar from 1904, since the grid knows the one
 * from 1900 alone. A time of day or a length of time has no calendar.
 *
 * @param format the number format of the cell
 */
export function calendarShift(format: string): number {
  return isDateFormat(format) && !isTimeFormat(format) ? DAYS_1904 : 0;
}

/** Under this name a cell of the grid carries what its text is more than letters: the grid takes it along in a sort. */
const RICH_TEXT = "richText";

/** What the file has of a cell's text beyond its letters. */
export function richTextOf(cell: Nullable<ICellData>): RichText | undefined {
  const text: unknown = cell?.custom?.[RICH_TEXT];
  return typeof text === "number" || text === "own" ? text : undefined;
}

/**
 * A workbook as a snapshot for the grid: values, formulas as they are typed, number formats, bold, fills, widths, merged
 * cells, frozen headings, names, tables and filters.
 *
 * @throws InputError when a sheet is damaged
 */
export function openedBook(workbook: Workbook, name: string): OpenedBook {
  const looks = cellLooksOf(workbook);
  const read = workbook.sheets
    .filter((sheet) => sheet.cells)
    .map((sheet, place) => {
      const grid = readSheet(workbook, sheet.name);
      const look = sheetLook(workbook, sheet.name);
      return { id: `sheet-${place + 1}`, sheet, grid, look };
    });
  const idOf = new Map(read.map(({ id, sheet }) => [sheet.name, id]));
  const charts = workbook.sheets.filter((sheet) => !sheet.cells).map((sheet) => `"${sheet.name}"`);
  const dates = (style = 0): number => (workbook.date1904 ? calendarShift(looks[style]?.format ?? "") : 0);
  const snapshot: IWorkbookData = {
    id: BOOK_ID,
    name,
    appVersion: "",
    locale: "enUS" as LocaleType,
    styles: Object.fromEntries(looks.map((look, style) => [styleKey(style), styleData(look)])),
    sheetOrder: read.map(({ id }) => id),
    sheets: Object.fromEntries(
      read.map(({ id, sheet, grid, look }) => [
        id,
        { ...worksheet(grid, look, dates), id, name: sheet.name, hidden: flag(sheet.state !== "visible") },
      ]),
    ),
    resources: [
      { name: "SHEET_DEFINED_NAME_PLUGIN", data: JSON.stringify(namesResource(workbook.names, idOf)) },
      { name: "SHEET_TABLE_PLUGIN", data: JSON.stringify(tablesResource(workbook.tables, idOf)) },
      { name: "SHEET_FILTER_PLUGIN", data: JSON.stringify(filtersResource(read)) },
    ],
  };
  return {
    name,
    snapshot,
    sheets: read.map(({ id, sheet, grid, look }) => ({
      id,
      name: sheet.name,
      state: sheet.state,
      locked: grid.locked,
      arrays: arraysOf(look),
    })),
    tables: workbook.tables,
    names: workbook.names,
    date1904: workbook.date1904,
    said: [
      ...(workbook.date1904 ? [CALENDAR] : []),
      ...(charts.length === 0 ? [] : [`${charts.join(", ")}: a sheet of charts is not shown here; a save keeps it`]),
      ...(workbook.macros ? ["The macros of this file do not run here; a save keeps them"] : []),
    ],
  };
}

const TEXT: CellValueType = 1;
const NUMBER: CellValueType = 2;
const BOOLEAN: CellValueType = 3;
/** A text that would be a number or a formula if it were typed. */
const SURE_TEXT: CellValueType = 4;

const YES: BooleanNumber = 1;
const NO: BooleanNumber = 0;
const ALIGN: Readonly<Record<string, HorizontalAlign>> = { left: 1, center: 2, right: 3 };
const WRAP: WrapStrategy = 3;

/** Room around what the sheet holds. */
const SPARE_ROWS = 60;
const SPARE_COLUMNS = 12;
const LEAST_ROWS = 120;
const LEAST_COLUMNS = 26;

/** Pixels of a column width given in characters: seven a character and five of margin (ECMA-376 part 1, 18.3.1.13). */
const CHARACTER = 7;
const MARGIN = 5;
const DEFAULT_WIDTH = 69;
const ROW_HEIGHT = 22;

export function pixels(characters: number): number {
  return Math.round(characters * CHARACTER + MARGIN);
}

/** The reverse of `pixels`, to a hundredth of a character. */
export function characters(width: number): number {
  return Math.max(0, Math.round(((width - MARGIN) / CHARACTER) * 100) / 100);
}

const CALENDAR =
  "The dates of this file count from 1904: they are shown and saved as they are, but a date shown as a plain number is " +
  `${DAYS_1904} more here`;

const flag = (on: boolean): BooleanNumber => (on ? YES : NO);

function styleData(look: CellLook): IStyleData {
  return {
    ...(look.format === "General" ? {} : { n: { pattern: look.format } }),
    ...(look.bold ? { bl: YES } : {}),
    ...(look.italic ? { it: YES } : {}),
    ...(look.colour === undefined || look.colour === "#000000" ? {} : { cl: { rgb: look.colour } }),
    ...(look.fill === undefined ? {} : { bg: { rgb: look.fill } }),
    ...(look.align === undefined ? {} : { ht: ALIGN[look.align]! }),
    ...(look.wrap ? { tb: WRAP } : {}),
  };
}

function worksheet(
  grid: SheetGrid,
  look: SheetLook,
  shift: (style: number | undefined) => number,
): Partial<IWorksheetData> {
  const cellData: Record<number, Record<number, ICellData>> = {};
  const cellAt = (row: number, column: number): ICellData => ((cellData[row - 1] ??= {})[column - 1] ??= {});
  const filled = filledCells(look);
  let right = 0;
  grid.rows.forEach((row, r) =>
    row.forEach((value, c) => {
      if (value === null || filled(r + 1, c + 1)) return;
      right = Math.max(right, c + 1);
      Object.assign(cellAt(r + 1, c + 1), valueData(value, shift(look.styles.get(r + 1)?.get(c + 1))));
    }),
  );
  for (const [row, cells] of look.richTexts)
    for (const [column, text] of cells) cellAt(row, column).custom = { [RICH_TEXT]: text };
  for (const [row, cells] of look.styles) for (const [column, style] of cells) cellAt(row, column).s = styleKey(style);
  const share = formulaSharer("page");
  for (const [row, cells] of look.formulas) {
    for (const [column, formula] of cells) {
      const data = formulaData(formula);
      if (data !== undefined) Object.assign(cellAt(row, column), share(data, row, column));
    }
  }
  const { rows, columns } = look.frozen;
  return {
    cellData,
    rowCount: Math.max(LEAST_ROWS, grid.rows.length + SPARE_ROWS),
    columnCount: Math.max(LEAST_COLUMNS, right + SPARE_COLUMNS),
    defaultColumnWidth: DEFAULT_WIDTH,
    defaultRowHeight: ROW_HEIGHT,
    mergeData: grid.merged.map(rangeOf),
    columnData: Object.fromEntries(
      look.columns.flatMap(({ first, last, width, hidden }) => {
        const data = { ...(width === undefined ? {} : { w: pixels(width) }), ...(hidden ? { hd: YES } : {}) };
        // A stretch to the sheet's end says how wide the columns are that nobody uses.
        const end = Math.min(last, Math.max(LEAST_COLUMNS, right + SPARE_COLUMNS));
        return Array.from({ length: Math.max(0, end - first + 1) }, (_, i) => [first - 1 + i, data]);
      }),
    ),
    rowData: Object.fromEntries(look.hiddenRows.map((row) => [row - 1, { hd: YES }])),
    freeze: {
      xSplit: columns,
      ySplit: rows,
      startRow: rows === 0 ? -1 : rows,
      startColumn: columns === 0 ? -1 : columns,
    },
    rightToLeft: flag(look.rightToLeft),
  };
}

function valueData(value: Exclude<SheetValue, null>, shift: number): ICellData {
  if (typeof value === "number") return { v: value + shift, t: NUMBER };
  if (typeof value === "boolean") return { v: value ? 1 : 0, t: BOOLEAN };
  if (typeof value === "string") return { v: value, t: wouldChange(value) ? SURE_TEXT : TEXT };
  return "error" in value ? { v: value.error, t: TEXT } : { v: value.serial + shift, t: NUMBER };
}

/** Whether a spreadsheet would make something else of this text when it is typed. */
function wouldChange(text: string): boolean {
  return /^[=+\-@]/.test(text) || (text.trim() !== "" && !Number.isNaN(Number(text)));
}

/** A formula the grid can work out; one that leads to another file stays the value that it has. */
function formulaData({ text, shared }: StoredFormula): ICellData | undefined {
  const typed = typedFromStored(text);
  if (/\[\d+\]/.test(typed)) return undefined;
  if (shared === undefined) return text === "" ? undefined : { f: `=${typed}` };
  return text === "" ? { si: `file-${shared}` } : { f: `=${typed}`, si: `file-${shared}` };
}

function arraysOf(look: SheetLook): OpenedSheet["arrays"] {
  return [...look.formulas].flatMap(([row, cells]) =>
    [...cells].flatMap(([column, { fills }]) => (fills === undefined ? [] : [{ row, column, area: fills }])),
  );
}

/** Whether a cell is filled by the array formula of another: the grid fills it again. */
function filledCells(look: SheetLook): (row: number, column: number) => boolean {
  const arrays = arraysOf(look);
  if (arrays.length === 0) return () => false;
  return (row, column) =>
    arrays.some(
      ({ row: top, column: left, area }) =>
        (row !== top || column !== left) &&
        row >= area.top &&
        row <= area.bottom &&
        column >= area.left &&
        column <= area.right,
    );
}

export function rangeOf({ top, left, bottom, right }: Area): IRange {
  return { startRow: top - 1, endRow: bottom - 1, startColumn: left - 1, endColumn: right - 1 };
}

/** The names of the file, without the marks of this program and those that a spreadsheet keeps for itself. */
function namesResource(names: readonly DefinedName[], idOf: ReadonlyMap<string, string>): object {
  const shown = names.filter(({ name }) => !isMark(name) && !name.startsWith("_xlnm."));
  return Object.fromEntries(
    shown.map(({ name, refersTo, sheet, hidden, comment }, place) => [
      `name-${place + 1}`,
      {
        id: `name-${place + 1}`,
        name,
        formulaOrRefString: isReference(refersTo) ? refersTo : `=${typedFromStored(refersTo)}`,
        comment,
        hidden,
        localSheetId: (sheet === undefined ? undefined : idOf.get(sheet)) ?? "AllDefaultWorkbook",
      },
    ]),
  );
}

function isReference(text: string): boolean {
  return /^(?:'(?:[^']|'')+'|[^'!()]+)!\$?[A-Z]+\$?\d+(?::\$?[A-Z]+\$?\d+)?$/i.test(text);
}

/** A table that the grid can show: with headings, and without its row of totals, which is no row of the data. */
function tablesResource(tables: readonly TableInfo[], idOf: ReadonlyMap<string, string>): object {
  const bySheet: Record<string, { tables: object[] }> = {};
  for (const table of tables.filter(({ headerRow }) => headerRow)) {
    const sheet = idOf.get(table.sheet);
    if (sheet === undefined) continue;
    (bySheet[sheet] ??= { tables: [] }).tables.push({
      id: `table-${table.id}`,
      name: table.name,
      range: rangeOf({ ...table.area, bottom: table.area.bottom - (table.totalsRow ? 1 : 0) }),
      options: { showHeader: true, showFooter: false, tableStyleId: TABLE_STYLE },
      filters: { tableColumnFilterList: [] },
      columns: table.columns.map((column, place) => ({
        id: `table-${table.id}-column-${place + 1}`,
        displayName: column,
        dataType: "none",
        formula: "",
        meta: {},
        style: {},
      })),
      meta: {},
    });
  }
  return bySheet;
}

/** The look of tables, which the grid defines. */
export const TABLE_STYLE = "quiet";

function filtersResource(sheets: readonly { readonly id: string; readonly look: SheetLook }[]): object {
  return Object.fromEntries(
    sheets.flatMap(({ id, look }) =>
      look.filter === undefined ? [] : [[id, { ref: rangeOf(look.filter), filterColumns: [] }]],
    ),
  );
}
