import { InputError } from "../measure/errors";

/** A cell by numbers counted from 1, as the sheet shows its rows. */
export interface Cell {
  readonly row: number;
  readonly column: number;
}

/** A rectangle of cells, both corners inside. */
export interface Area {
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

export const MOST_ROWS = 1_048_576;
export const MOST_COLUMNS = 16_384;
/** Places that a grid may have, blank ones between included: 100,000 rows of 200 columns. */
export const MOST_POSITIONS = 20_000_000;
/** Cells that hold something: 100,000 rows of 50 columns. */
export const MOST_CELLS = 5_000_000;

/** `3` -> `C`, `28` -> `AB`. */
export function columnLetters(column: number): string {
  let letters = "";
  for (let n = column; n > 0; n = Math.floor((n - 1) / LETTERS))
    letters = String.fromCharCode(A + ((n - 1) % LETTERS)) + letters;
  return letters;
}

/** `AB` -> `28`; undefined when it is no column of a sheet. */
export function columnNumber(letters: string): number | undefined {
  if (!/^[a-z]{1,3}$/i.test(letters)) return undefined;
  const number = [...letters.toUpperCase()].reduce((n, letter) => n * LETTERS + letter.charCodeAt(0) - A + 1, 0);
  return number <= MOST_COLUMNS ? number : undefined;
}

/** `{ row: 7, column: 2 }` -> `B7`. */
export function cellName(row: number, column: number): string {
  return columnLetters(column) + row;
}

/** `B7` or `$B$7` -> its numbers; undefined when it is no cell. */
export function parseCell(text: string): Cell | undefined {
  const match = /^\$?([a-z]{1,3})\$?(\d{1,7})$/i.exec(text);
  const column = match && columnNumber(match[1]!);
  const row = match ? Number(match[2]) : 0;
  return column && row >= 1 && row <= MOST_ROWS ? { row, column } : undefined;
}

/** `A4:G104` or `A4` -> its corners; undefined when it is no rectangle. */
export function parseArea(text: string): Area | undefined {
  const [first = "", last = first] = text.split(":");
  const a = parseCell(first);
  const b = parseCell(last);
  if (!a || !b) return undefined;
  return {
    top: Math.min(a.row, b.row),
    left: Math.min(a.column, b.column),
    bottom: Math.max(a.row, b.row),
    right: Math.max(a.column, b.column),
  };
}

/** `A4:G104`, or `A4` for one cell. */
export function areaName({ top, left, bottom, right }: Area): string {
  const first = cellName(top, left);
  return top === bottom && left === right ? first : `${first}:${cellName(bottom, right)}`;
}

/** `'My survey'!$A$4:$G$104`: an area as a defined name holds it. */
export function sheetArea(sheet: string, { top, left, bottom, right }: Area): string {
  const corner = (row: number, column: number) => `$${columnLetters(column)}$${row}`;
  const first = corner(top, left);
  const last = top === bottom && left === right ? "" : `:${corner(bottom, right)}`;
  return `'${sheet.replaceAll("'", "''")}'!${first}${last}`;
}

/** The reverse of `sheetArea`; undefined for anything else (`#REF!`, a formula, whole columns). */
export function parseSheetArea(text: string): { readonly sheet: string; readonly area: Area } | undefined {
  const match = /^(?:'((?:[^']|'')+)'|([^'!]+))!([^!]+)$/.exec(text);
  const area = match && parseArea(match[3]!.replaceAll("$", ""));
  return area ? { sheet: (match[1] ?? match[2]!).replaceAll("''", "'"), area } : undefined;
}

export function overlap(a: Area, b: Area): boolean {
  return a.left <= b.right && b.left <= a.right && a.top <= b.bottom && b.top <= a.bottom;
}

/** @throws InputError when the columns do not fit a sheet */
export function refuseTooWide(lastColumn: number): void {
  if (lastColumn > MOST_COLUMNS) {
    throw new InputError(
      "workbook",
      `columns up to number ${lastColumn}`,
      `a sheet ends at column ${columnLetters(MOST_COLUMNS)} (${MOST_COLUMNS})`,
      "ask for fewer columns, or delete unused ones right of the survey",
    );
  }
}

const A = 65;
const LETTERS = 26;
