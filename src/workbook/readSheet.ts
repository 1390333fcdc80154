import {
  cellName,
  columnNumber,
  MOST_CELLS,
  MOST_COLUMNS,
  MOST_POSITIONS,
  MOST_ROWS,
  parseArea,
  type Area,
} from "./cellRef";
import { damaged } from "./damaged";
import { isTrue, type Workbook } from "./openWorkbook";
import { neededPart } from "./parts";
import { attribute, readXml, type XmlHandlers, type XmlTag } from "./readXml";
import { dateStylesOf, formatCodesOf } from "./readStyles";
import { sharedTextsOf } from "./sharedTexts";
import { DAYS_1904, type SheetValue } from "./sheetValue";
import { sheetNamed } from "./sheetNamed";
import { plainValue } from "./plainValue";
import { tooFull, tooWide } from "./tooLarge";

/** The cells of a sheet as plain values: `rows[4][2]` is C5. Rows end at their last cell that holds something. */
export interface SheetGrid {
  readonly sheet: string;
  readonly rows: readonly (readonly SheetValue[])[];
  /** Formulas that the file holds no result for (`B7`): their value here is null, never a guess. */
  readonly uncached: readonly string[];
  /** Formula by cell name, when asked for; a cell that shares a formula is listed with the text of the first. */
  readonly formulas: ReadonlyMap<string, string>;
  /** Number formats other than `General` of cells that hold numbers or dates, as `rows`; empty unless asked for. */
  readonly formats?: readonly (readonly (string | undefined)[])[];
  /** What cells that hold numbers or dates show, as `rows`, where the host itself says so. */
  readonly shown?: readonly (readonly (string | undefined)[])[];
  /** Days from a date of this sheet to the number that the calendar from 1900 has for it; 0 when left out. */
  readonly calendarShift?: number;
  readonly merged: readonly Area[];
  /** The sheet may not be changed without its password. */
  readonly locked: boolean;
}

export interface ReadSheetOptions {
  /** Stop after this row; `merged` and `locked` then stay empty. */
  readonly lastRow?: number;
  /** Collect the formulas, which takes memory on a long sheet. */
  readonly formulas?: boolean;
  /** Collect the number formats. */
  readonly formats?: boolean;
  readonly onProgress?: (fraction: number) => void;
}

/**
 * Reads the cells of one sheet.
 *
 * @throws InputError when there is no such sheet, or it is damaged or wider than any survey
 */
export function readSheet(workbook: Workbook, name: string, options: ReadSheetOptions = {}): SheetGrid {
  const { handlers, grid } = sheetReader(workbook, name, options);
  readXml(neededPart(workbook.zip, sheetNamed(workbook, name).part), handlers);
  return grid();
}

/**
 * The same for whoever reads more of the sheet on the way.
 *
 * @returns what listens to the sheet, and what was read when that is done
 */
export function sheetReader(
  workbook: Workbook,
  name: string,
  options: ReadSheetOptions = {},
): { readonly handlers: XmlHandlers; readonly grid: () => SheetGrid } {
  const { lastRow = MOST_ROWS, formulas: wantFormulas = false, formats: wantFormats = false, onProgress } = options;
  const sheet = sheetNamed(workbook, name);
  const texts = sharedTextsOf(workbook);
  const dateStyles = dateStylesOf(workbook);
  const codes = wantFormats ? formatCodesOf(workbook) : undefined;
  const formats: (string | undefined)[][] = [];
  const rows: (readonly SheetValue[])[] = [];
  const uncached: string[] = [];
  const formulas = new Map<string, string>();
  const shared = new Map<string, string>();
  const merged: Area[] = [];
  let locked = false;
  let row = 0;
  let column = 0;
  let positions = 0;
  let cells = 0;
  /** Columns of the row that are counted among the positions. */
  let counted = 0;
  let type = "";
  let style = "";
  let value: string | undefined;
  let formula: string | undefined;
  let sharedId: string | undefined;
  let phonetic = false;
  let into: "value" | "formula" | undefined;

  const openCell = (tag: XmlTag): void => {
    if (row === 0) throw damaged(`the sheet "${sheet.name}" with a cell outside its rows`);
    column = columnOf(attribute(tag, "r"), column, sheet.name);
    type = attribute(tag, "t") ?? "n";
    style = attribute(tag, "s") ?? "";
    value = formula = sharedId = undefined;
  };
  const closeCell = (): void => {
    const at = () => cellName(row, column);
    if (formula !== undefined || value !== undefined) {
      positions += column - counted;
      counted = column;
      cells++;
      if (positions > MOST_POSITIONS) throw tooWide(sheet.name);
      if (cells > MOST_CELLS) throw tooFull(sheet.name);
    }
    if (formula !== undefined) {
      if (sharedId !== undefined && formula !== "") shared.set(sharedId, formula);
      if (wantFormulas)
        formulas.set(at(), formula !== "" || sharedId === undefined ? formula : (shared.get(sharedId) ?? ""));
      if (value === undefined) uncached.push(at());
    }
    if (value === undefined) return;
    const plain = plainValue(value, type, dateStyles.has(style), { texts, date1904: workbook.date1904, at });
    if (plain === null) return;
    while (rows.length < row - 1) rows.push(BLANK_ROW);
    if (rows.length < row) rows.push([]);
    const own = rows[row - 1] as SheetValue[];
    while (own.length < column) own.push(null);
    own[column - 1] = plain;
    const code = typeof plain === "string" ? undefined : codes?.get(style);
    if (code === undefined) return;
    while (formats.length < row) formats.push([]);
    formats[row - 1]![column - 1] = code;
  };

  const handlers: XmlHandlers = {
    open: (tag) => {
      if (tag.uri !== workbook.namespace) return;
      switch (tag.local) {
        case "row":
          row = rowOf(attribute(tag, "r"), row, sheet.name);
          column = counted = 0;
          break;
        case "c":
          openCell(tag);
          break;
        case "v":
          value = "";
          into = "value";
          break;
        case "is":
          value = "";
          break;
        case "t":
          if (!phonetic) into = "value";
          break;
        case "rPh":
          phonetic = true;
          break;
        case "f":
          formula = "";
          sharedId = attribute(tag, "t") === "shared" ? attribute(tag, "si") : undefined;
          into = "formula";
          break;
        case "mergeCell": {
          const area = parseArea(attribute(tag, "ref") ?? "");
          if (area) merged.push(area);
          break;
        }
        case "sheetProtection":
          locked = isTrue(attribute(tag, "sheet"));
      }
    },
    text: (piece) => {
      if (into === "value") value = (value ?? "") + piece;
      else if (into === "formula") formula += piece;
    },
    close: (tag) => {
      if (tag.local === "v" || tag.local === "t" || tag.local === "f") into = undefined;
      else if (tag.local === "rPh") phonetic = false;
      else if (tag.local === "c" && tag.uri === workbook.namespace) closeCell();
    },
    enough: () => row > lastRow,
    ...(onProgress ? { progress: onProgress } : {}),
  };
  const grid = (): SheetGrid => ({
    sheet: sheet.name,
    rows: rows.slice(0, lastRow),
    uncached,
    formulas,
    formats,
    merged,
    locked,
    calendarShift: workbook.date1904 ? DAYS_1904 : 0,
  });
  return { handlers, grid };
}

const BLANK_ROW: readonly SheetValue[] = [];

function rowOf(text: string | undefined, before: number, sheet: string): number {
  const row = text === undefined ? before + 1 : Number(text);
  if (!Number.isInteger(row) || row < 1 || row > MOST_ROWS)
    throw damaged(`the sheet "${sheet}" with a row numbered ${text ?? row}`);
  if (row <= before) throw damaged(`the sheet "${sheet}" with row ${row} twice, or below row ${before}`);
  return row;
}

function columnOf(reference: string | undefined, before: number, sheet: string): number {
  if (reference === undefined) return before + 1;
  const column = columnNumber(/^[a-z]+/i.exec(reference)?.[0] ?? "");
  if (column === undefined || column > MOST_COLUMNS)
    throw damaged(`the sheet "${sheet}" with a cell named ${reference}`);
  if (column <= before) throw damaged(`the sheet "${sheet}" with the cell ${reference} twice, or out of its order`);
  return column;
}
