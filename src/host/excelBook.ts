import { InputError } from "../measure/errors";
import type { Book } from "../workbook/book";
import { areaName, type Area } from "../workbook/cellRef";
import type { SheetGrid } from "../workbook/readSheet";
import { sheetNamed } from "../workbook/sheetNamed";
import type { SheetValue } from "../workbook/sheetValue";
import { isErrorText, lookAt, readCells, type CellRequest, type Matrix } from "./excelRead";
import { isCode, placedTexts, shownTexts } from "./excelShown";

/** Reads the open workbook, each sheet again only when it changed. */
export interface BookReader {
  readonly read: (context: Excel.RequestContext) => Promise<Book>;
  /** A sheet changed, by the id that Excel gives it; without one, any may have. */
  readonly forget: (sheetId?: string) => void;
  /** Whether changes are reported from now on: until then every sheet is read each time. */
  readonly follow: (reported: boolean) => void;
}

export function bookReader(): BookReader {
  let kept = new Map<string, ReadSheetCells>();
  let follows = false;
  let forgotten = 0;
  return {
    read: async (context) => {
      const before = forgotten;
      const { book, cells } = await readBook(context, kept);
      // What changed while it was read is read again.
      if (follows && before === forgotten) kept = new Map(cells);
      else kept.clear();
      return book;
    },
    forget: (sheetId) => {
      forgotten++;
      if (sheetId === undefined) kept.clear();
      else kept.delete(sheetId);
    },
    follow: (reported) => {
      follows = reported;
      kept.clear();
    },
  };
}

/** What was read of the cells of one sheet. */
interface ReadSheetCells {
  readonly area: Area;
  readonly values: Matrix;
  readonly codes: Matrix;
  readonly shown: SheetGrid["shown"];
}

/**
 * The workbook with the values of its cells. Dates come as the numbers that Excel keeps. What cells show is read only of
 * columns whose numbers show as something else (000042, a shelf-mark that Excel took for a date), and number formats only of
 * the first rows: all of them would double what is read. Of a sheet with more cells than any survey only the first rows
 * are read; asked for more, its grid says so.
 */
async function readBook(
  context: Excel.RequestContext,
  kept: ReadonlyMap<string, ReadSheetCells>,
): Promise<{ readonly book: Book; readonly cells: ReadonlyMap<string, ReadSheetCells> }> {
  const { used, locked, ids, byHand, ...look } = await lookAt(context);
  const known = (sheet: string, area: Area): ReadSheetCells | undefined => {
    const found = kept.get(ids.get(sheet)!);
    return found !== undefined && areaName(found.area) === areaName(area) ? found : undefined;
  };
  const fresh = [...used].filter(([sheet, area]) => known(sheet, area) === undefined);
  const requests = fresh.map(([sheet, area]): CellRequest => {
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
  const texts = await shownTexts(context, look, requests, values, codes);
  const cells = new Map(
    [...used].map(([sheet, area]): [string, ReadSheetCells] => {
      const place = requests.findIndex((each) => each.sheet === sheet);
      const now = known(sheet, area) ?? {
        area,
        values: values[place]!,
        codes: codes[place]!,
        shown: texts.get(sheet) ?? [],
      };
      return [sheet, now];
    }),
  );
  const rows = new Map([...cells].map(([sheet, { area, values }]) => [sheet, placedRows(area, values)]));
  const formats = new Map(
    [...cells].map(([sheet, { area, codes, values }]) => [sheet, placedTexts(area, codes, values, isCode)]),
  );
  const byId = new Map([...cells].map(([sheet, each]) => [ids.get(sheet)!, each]));
  return {
    cells: byId,
    book: {
      sheets: look.sheets,
      tables: look.tables,
      names: look.names,
      said: byHand ? [CALCULATED_BY_HAND] : [],
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
          shown: cells.get(name)?.shown ?? [],
          merged: [],
          locked: locked.has(name),
        };
      },
    },
  };
}

const CALCULATED_BY_HAND =
  "Excel calculates only when you press F9 (Formulas, Calculation options: Manual), so columns and pane do not follow what you change";

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
