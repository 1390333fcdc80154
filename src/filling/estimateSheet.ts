import type { NewSheet } from "../workbook/edits";

/** The sheet of the estimate; a later run replaces it. */
export const ESTIMATE_SHEET = "Estimate";

/**
 * The estimate as a sheet of a workbook: money with two decimals, the columns as wide as their texts.
 *
 * @param rows the table with its headings, then what was left out
 * @param notice what the reader must know before the figures, in the row above the headings; empty for none
 */
export function estimateSheet(rows: readonly (readonly (string | number)[])[], notice: string): NewSheet {
  const [headings = []] = rows;
  const formats = headings.map((heading) => FORMATS.get(String(heading)));
  const sheet = { name: ESTIMATE_SHEET, formats, replaceable: true };
  return notice === "" ? { ...sheet, rows } : { ...sheet, rows: [[notice], ...rows], headingRow: 2 };
}

const MONEY = "#,##0.00";
const FORMATS: ReadonlyMap<string, string> = new Map([
  ["net area", "0.00"],
  ["yield", "0.0%"],
  ["unit price", MONEY],
  ["cost", MONEY],
  ["contingency", MONEY],
  ["total", MONEY],
]);
