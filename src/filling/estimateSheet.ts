import type { NewSheet } from "../workbook/edits";

/** The sheet of the estimate; a later run writes it anew. */
export const ESTIMATE_SHEET = "Estimate";

/**
 * The estimate as a sheet of a workbook: money with two decimals, the columns as wide as their texts.
 *
 * @param rows the table with its headings, then what was left out
 */
export function estimateSheet(rows: readonly (readonly (string | number)[])[]): NewSheet {
  const [headings = []] = rows;
  const formats = headings.map((heading) => FORMATS.get(String(heading)));
  return { name: ESTIMATE_SHEET, rows, formats, replaceable: true };
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
