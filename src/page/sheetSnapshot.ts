import type { BooleanNumber, CellValueType, ICellData, IFreeze, IWorksheetData } from "@univerjs/core";
import type { Area } from "../workbook/cellRef";
import type { Frozen } from "../workbook/frozenViews";
import type { SheetGrid } from "../workbook/readSheet";
import type { SheetLook, StoredFormula } from "../workbook/sheetLook";
import type { SheetValue } from "../workbook/sheetValue";
import { flag, pixels, PIXELS_A_POINT, rangeOf, RICH_TEXT, styleKey, YES } from "./gridTerms";
import { formulaSharer } from "./sharedFormulas";
import { typedFromStored } from "./storedFormulas";

const TEXT: CellValueType = 1;
const NUMBER: CellValueType = 2;
const BOOLEAN: CellValueType = 3;
/** A text that would be a number or a formula if it were typed. */
const SURE_TEXT: CellValueType = 4;

/** Room around what the sheet holds: a budget spills over nineteen columns. */
const SPARE_ROWS = 60;
const SPARE_COLUMNS = 30;
const LEAST_ROWS = 120;
const LEAST_COLUMNS = 52;

const DEFAULT_WIDTH = 69;
const ROW_HEIGHT = 22;

/**
 * The cells, widths, merged and frozen parts of a sheet as the grid reads them.
 *
 * @param shift days by which a number of that style is more in the grid than in the file
 */
export function sheetSnapshot(
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
    rowData: Object.fromEntries(
      [...look.rows].map(([row, { height, own, hidden }]) => [
        row - 1,
        { ...(height === undefined ? {} : rowHeight(height, own)), ...(hidden ? { hd: YES } : {}) },
      ]),
    ),
    freeze: freezeOf(look.frozen),
    rightToLeft: flag(look.rightToLeft),
  };
}

/** The grid counts the first row and column that are scrolled. */
function freezeOf({ rows, columns, firstRow, firstColumn }: Frozen): IFreeze {
  return {
    xSplit: columns,
    ySplit: rows,
    startRow: rows === 0 ? -1 : firstRow - 1 + rows,
    startColumn: columns === 0 ? -1 : firstColumn - 1 + columns,
  };
}

/** A height that someone gave is kept as it is; any other leaves room for the letters of the page. */
function rowHeight(points: number, own: boolean): { readonly h: number; readonly ia: BooleanNumber } {
  const height = Math.round(points * PIXELS_A_POINT);
  return { h: own ? height : Math.max(ROW_HEIGHT, height), ia: 0 };
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

/** The cells that one array formula fills, by its first cell. */
export function arraysOf(
  look: SheetLook,
): readonly { readonly row: number; readonly column: number; readonly area: Area }[] {
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
