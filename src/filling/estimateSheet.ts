import { MONEY_HEADINGS } from "../estimate/estimateTables";
import { columnLetters } from "../workbook/cellRef";
import type { CellContent, NewSheet } from "../workbook/edits";

type Rows = readonly (readonly (string | number)[])[];

/** The sheet of the estimate; a later run replaces it. */
export const ESTIMATE_SHEET = "Estimate";

/**
 * The estimate as a sheet of a workbook: its sums are live, so that a changed price is added up again; money with two
 * decimals, the columns as wide as their texts.
 *
 * @param table the lines with their headings and totals
 * @param below what comes below them, as plain values
 * @param notice what the reader must know before the figures, in the row above the headings; empty for none
 */
export function estimateSheet(table: Rows, below: Rows, notice: string): NewSheet {
  const [headings = []] = table;
  const formats = headings.map((heading) => FORMATS.get(String(heading)) ?? moneyFormat(heading));
  const headingRow = notice === "" ? 1 : 2;
  const rows = [...(notice === "" ? [] : [[notice]]), ...withSums(table, headingRow), ...below];
  return { name: ESTIMATE_SHEET, formats, replaceable: true, rows, headingRow };
}

const MONEY = "#,##0.00";
const FORMATS: ReadonlyMap<string, string> = new Map([
  ["net area", "0.00"],
  ["yield", "0.0%"],
]);

function moneyFormat(heading: string | number): string | undefined {
  return MONEY_HEADINGS.has(String(heading)) ? MONEY : undefined;
}

const SUMMED: ReadonlySet<string> = new Set(["cost", "contingency", "total", "match", "in kind", "requested"]);

/** Totals of the lines, what is requested of each line, and the totals below them, as formulas with their results. */
function withSums([headings = [], ...rows]: Rows, headingRow: number): readonly (readonly CellContent[])[] {
  const column = (name: string) => columnLetters(headings.indexOf(name) + 1);
  const [first, last] = [headingRow + 1, headingRow + rows.length - 1];
  const sums = (row: number): ReadonlyMap<string, string> =>
    new Map([
      ["total", `SUM(${column("cost")}${row}:${column("contingency")}${row})`],
      ["requested", `${column("total")}${row}-SUM(${column("match")}${row}:${column("in kind")}${row})`],
    ]);
  return [
    headings,
    ...rows.map((cells, at) => {
      const ofLine = sums(first + at);
      return cells.map((result, place): CellContent => {
        const heading = String(headings[place]);
        const letters = columnLetters(place + 1);
        const isTotals = at === rows.length - 1;
        if (isTotals && at > 0 && SUMMED.has(heading))
          return { formula: `SUM(${letters}${first}:${letters}${last})`, result };
        const formula = isTotals ? undefined : ofLine.get(heading);
        return formula === undefined || typeof result !== "number" ? result : { formula, result };
      });
    }),
  ];
}
