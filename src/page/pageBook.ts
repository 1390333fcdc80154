import type { ICellData, IStyleData, IWorkbookData, IWorksheetData, Nullable } from "@univerjs/core";
import type { Book } from "../workbook/book";
import { cellName, type Area } from "../workbook/cellRef";
import type { SheetGrid } from "../workbook/readSheet";
import { sheetNamed } from "../workbook/sheetNamed";
import { dateValue, isDateFormat, type SheetValue } from "../workbook/sheetValue";
import type { LiveBook } from "./bookEdits";
import type { FilledArea } from "./filledArea";
import { plainOf } from "./plainOf";
import { gridCells } from "./gridCells";
import { liveTables } from "./liveTables";
import type { OpenedBook } from "./openedBook";

/** The workbook as the grid shows it now, for whoever reads a survey: later changes of its cells do not change it. */
export function pageBook(opened: OpenedBook, { snapshot, filled }: LiveBook): Book {
  const states = new Map(opened.sheets.map(({ name, state }) => [name, state]));
  const locked = new Set(opened.sheets.filter((sheet) => sheet.locked).map(({ name }) => name));
  const bottoms = liveTables(snapshot);
  const shown = snapshot.sheetOrder.map((id) => {
    const sheet = { ...snapshot.sheets[id]!, cellData: copied(snapshot.sheets[id]!.cellData ?? {}) };
    const name = sheet.name ?? "";
    return { id, sheet, name, state: states.get(name) ?? "visible", cells: true } as const;
  });
  const grids = new Map<string, SheetGrid>();
  return {
    sheets: shown.map(({ name, state, cells }) => ({ name, state, cells })),
    tables: opened.tables.map((table) => {
      const bottom = bottoms.get(table.id);
      return table.totalsRow || bottom === undefined ? table : { ...table, area: { ...table.area, bottom } };
    }),
    names: opened.names,
    grid: (wanted, { lastRow = Infinity } = {}) => {
      const { id, sheet, name } = sheetNamed({ sheets: shown }, wanted);
      const key = `${id} ${lastRow}`;
      const grid = grids.get(key) ?? gridOf(name, sheet, filled(id), snapshot, locked.has(name), lastRow);
      grids.set(key, grid);
      return grid;
    },
  };
}

/** The grid changes its cells in place. */
function copied(cells: Cells): Cells {
  const rows: Cells = {};
  for (const [row, column, cell] of gridCells(cells)) (rows[row] ??= {})[column] = { ...cell };
  return rows;
}

type Cells = IWorksheetData["cellData"];

function gridOf(
  name: string,
  { cellData = {}, mergeData = [] }: Partial<IWorksheetData>,
  filled: readonly FilledArea[],
  { styles }: IWorkbookData,
  locked: boolean,
  lastRow: number,
): SheetGrid {
  const rows: SheetValue[][] = [];
  const formats: (string | undefined)[][] = [];
  const uncached: string[] = [];
  const put = (row: number, column: number, cell: Nullable<ICellData>): void => {
    const pattern = patternOf(cell, styles);
    const value = sheetValue(cell, pattern);
    if (value === null) return;
    while (rows.length <= row) rows.push([]);
    while (rows[row]!.length <= column) rows[row]!.push(null);
    rows[row]![column] = value;
    if (pattern === "" || typeof value === "string") return;
    while (formats.length <= row) formats.push([]);
    formats[row]![column] = pattern;
  };
  for (const [row, column, cell] of gridCells(cellData)) {
    if (row >= lastRow) break;
    put(row, column, cell);
    if ((cell?.f || cell?.si) && (cell.v === undefined || cell.v === null))
      uncached.push(cellName(row + 1, column + 1));
  }
  for (const { row, column, area, value } of filled)
    for (let r = area.top; r <= Math.min(area.bottom, lastRow); r++)
      for (let c = area.left; c <= area.right; c++) if (r !== row || c !== column) put(r - 1, c - 1, value(r, c));
  const merged = mergeData.map(({ startRow, startColumn, endRow, endColumn }): Area => ({
    top: startRow + 1,
    left: startColumn + 1,
    bottom: endRow + 1,
    right: endColumn + 1,
  }));
  return { sheet: name, rows, uncached, formulas: new Map(), formats, merged, locked };
}

function sheetValue(cell: Nullable<ICellData>, pattern: string): SheetValue {
  const plain = plainOf(cell);
  return typeof plain === "number" && isDateFormat(pattern) ? dateValue(plain, false) : plain;
}

/** The number format of a cell; empty for `General`. */
function patternOf(cell: Nullable<ICellData>, styles: IWorkbookData["styles"]): string {
  const style: Nullable<IStyleData> = typeof cell?.s === "string" ? styles[cell.s] : cell?.s;
  return style?.n?.pattern ?? "";
}
