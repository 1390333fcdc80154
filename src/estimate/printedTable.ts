import { plainCell, type Cell } from "../item/answers";
import { MONEY_HEADINGS } from "./estimateTables";

/** A table as it is printed, its headings first. */
export type PrintedTable = readonly (readonly string[])[];

export function printedTable([headings = [], ...rows]: readonly (readonly Cell[])[]): PrintedTable {
  const names = headings.map((heading) => String(plainCell(heading)));
  return [names, ...rows.map((row) => row.map((cell, at) => printedCell(cell, names[at] ?? "")))];
}

/** Money with its hundredths, areas to a thousandth, shares in per cent. */
function printedCell(cell: Cell, heading: string): string {
  if (typeof cell !== "number") return String(plainCell(cell));
  if (MONEY_HEADINGS.has(heading)) return cell.toFixed(2);
  if (heading === "yield") return `${Number((cell * 100).toFixed(1))} %`;
  return String(Number(cell.toFixed(3)));
}
