import { BLANK_PARTS } from "./blankParts";
import { editWorkbook } from "./editWorkbook";
import type { NewName, NewSheet } from "./edits";
import { openPackage } from "./openWorkbook";
import { packText } from "./writeZip";

/**
 * A new .xlsx of these sheets: a blank workbook, edited as a file is, so that there is one writer only.
 *
 * @throws InputError when a sheet or table name is refused, or no sheet is given
 */
export function createWorkbook(sheets: readonly [NewSheet, ...NewSheet[]], names: readonly NewName[] = []): Uint8Array {
  const zip = new Map(Object.entries(BLANK_PARTS).map(([name, text]) => [name, packText(name, text)]));
  return editWorkbook(openPackage(zip), { sheets, names }).bytes;
}
