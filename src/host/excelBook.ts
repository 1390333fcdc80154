import { InputError } from "../measure/errors";
import type { Book } from "../workbook/book";
import { areaName, type Area } from "../workbook/cellRef";
import { sheetNamed } from "../workbook/readSheet";
import type { SheetValue } from "../workbook/sheetValue";
import { isErrorText, lookAt, readCells, type CellRequest, type Matrix } from "./excelRead";
import { isCode, placedTexts, shownTexts } from "./excelShown";

/**
 * The workbook with the values of its cells. Dates come as the numbers that Excel keeps. What cells show is read only of
 * columns whose numbers show as something else (000042, a shelf-mark that Excel took for a date), and number formats only of
 * the first rows: all of them would double what is read. Of a sheet with more cells than any survey only the first rows
 * are read; asked for more, its grid says so.
 */
export async function readBook(context: Excel.RequestContext): Promise<Book> {
  const { used, locked, ...look } = await lookAt(context);
  const requests = [...used].map(([sheet, area]): CellRequest => {
    const bottom = cellsIn(area) > MOST_CELLS ? Math.min(area.bottom, area.top + FIRST_ROWS - 1) : area.bottom;
    return { sheet, area: { ...area, bottom }, what: "values" };
  });
  const heads = requests.map(({ sheet, area }): CellRequest => {
    const bottom = Math.min(area.bottom, area.top + FIRST_ROWS - 1);
    return { sheet, area: { ...area, bottom }, what: "numberFormat" };
  });
  const read = await readCells(context, [...requests, ...heads]);
  const values = read.slice(0, requests.length);
  const codes = read.slice(requests.length);
  const rows = new Map(requests.map(({ sheet, area }, place) => [sheet, placedRows(area, values[place]!)]));
  const formats = new Map(
    heads.map(({ sheet, area }, place) => [sheet, placedTexts(area, codes[place]!, values[place]!, isCode)]),
  );
  const shown = await shownTexts(context, look, requests, values, codes);
  return {
    sheets: look.sheets,
    tables: look.tables,
    names: look.names,
    grid: (wanted, { lastRow } = {}) => {
      const { name } = sheetNamed(look, wanted);
      const own = rows.get(name);
      const area = used.get(name);
      if (area !== undefined && cellsIn(area) > MOST_CELLS && (lastRow ?? area.bottom) > own!.length)
        throw tooLarge(name, area);
      return {
        sheet: name,
        rows: (own ?? []).slice(0, lastRow),
        uncached: [],
        formulas: new Map(),
        formats: formats.get(name) ?? [],
        shown: shown.get(name) ?? [],
        merged: [],
        locked: locked.has(name),
      };
    },
  };
}

/** Cells of a sheet past which it is no survey. */
const MOST_CELLS = 4_000_000;

/** Rows by which such a sheet is still judged, and whose number formats are read. */
const FIRST_ROWS = 200;

function cellsIn({ top, left, bottom, right }: Area): number {
  return (bottom - top + 1) * (right - left + 1);
}

/** The rows of a sheet from its first on, each up to its last cell that holds something. */
function placedRows({ top, left }: Area, cells: Matrix): SheetValue[][] {
  const above = Array.from({ length: top - 1 }, (): SheetValue[] => []);
  const before = Array.from({ length: left - 1 }, () => null);
  const rows = cells.map((row) => {
    let length = row.length;
    while (length > 0 && row[length - 1] === "") length--;
    return length === 0 ? [] : [...before, ...row.slice(0, length).map(sheetValue)];
  });
  return [...above, ...rows];
}

function sheetValue(value: unknown): SheetValue {
  if (typeof value === "number" || typeof value === "boolean") return value;
  if (typeof value !== "string" || value === "") return null;
  return isErrorText(value) ? { error: value } : value;
}

function tooLarge(name: string, area: Area): InputError {
  return new InputError(
    "sheet",
    `"${name}", whose used cells are ${areaName(area)}`,
    `accepts a survey of at most ${MOST_CELLS / 1_000_000} million cells`,
    "delete the stray cells far down or right, or copy the survey into a new workbook",
  );
}
