import { plainCell, type Cell } from "../item/answers";
import { MONEY_HEADINGS } from "./estimateTables";

/** A table as it is printed, its headings first. */
export type PrintedTable = readonly (readonly string[])[];

export function printedTable([headings = [], ...rows]: readonly (readonly Cell[])[]): PrintedTable {
  const names = headings.map((heading) => String(plainCell(heading)));
  const unit = names.indexOf("unit");
  return [
    names,
    ...rows.map((row) =>
      row.map((cell, at) => {
        const name = names[at] ?? "";
        return printedCell(cell, ROUGH.has(String(row[unit])) && name === "to buy" ? "hours" : name);
      }),
    ),
  ];
}

/** Units of what nobody knows to a hundredth. */
const ROUGH: ReadonlySet<string> = new Set(["hours", "kg", "lb"]);

/** Money with its hundredths, hours and kilograms with their tenths, areas to a thousandth, shares in per cent. */
function printedCell(cell: Cell, heading: string): string {
  if (typeof cell !== "number") return String(plainCell(cell));
  if (heading === "hours") return String(Number(cell.toFixed(1)));
  if (MONEY_HEADINGS.has(heading)) return cell.toFixed(2);
  if (heading === "yield") return `${Number((cell * 100).toFixed(1))} %`;
  return String(Number(cell.toFixed(3)));
}
