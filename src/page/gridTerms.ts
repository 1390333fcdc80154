import type { BooleanNumber, ICellData, IRange, Nullable } from "@univerjs/core";
import type { Area } from "../workbook/cellRef";
import type { RichText } from "../workbook/sheetLook";
import { DAYS_1904, isDateFormat, isTimeFormat } from "../workbook/sheetValue";

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
export const RICH_TEXT = "richText";

/** What the file has of a cell's text beyond its letters. */
export function richTextOf(cell: Nullable<ICellData>): RichText | undefined {
  const text: unknown = cell?.custom?.[RICH_TEXT];
  return typeof text === "number" || text === "own" ? text : undefined;
}

/** The look of tables, which the grid defines. */
export const TABLE_STYLE = "quiet";

export const YES: BooleanNumber = 1;
const NO: BooleanNumber = 0;

export function flag(on: boolean): BooleanNumber {
  return on ? YES : NO;
}

export function rangeOf({ top, left, bottom, right }: Area): IRange {
  return { startRow: top - 1, endRow: bottom - 1, startColumn: left - 1, endColumn: right - 1 };
}

/** A point is 1/72 inch, a pixel of a page 1/96. */
export const PIXELS_A_POINT = 96 / 72;

/** Pixels of a column width given in characters: seven a character and five of margin (ECMA-376 part 1, 18.3.1.13). */
const CHARACTER = 7;
const MARGIN = 5;

export function pixels(characters: number): number {
  return Math.round(characters * CHARACTER + MARGIN);
}

/** The reverse of `pixels`, to a hundredth of a character. */
export function characters(width: number): number {
  return Math.max(0, Math.round(((width - MARGIN) / CHARACTER) * 100) / 100);
}
