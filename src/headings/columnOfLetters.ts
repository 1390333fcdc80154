import { columnNumber } from "../workbook/cellRef";

/** `C` -> `3`, also written `column C`; undefined for what is no such name. */
export function columnOfLetters(text: string): number | undefined {
  return columnNumber(text.trim().replace(/^column\s+/i, ""));
}
