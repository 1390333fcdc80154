import { plainCell, type Cell } from "../item/answers";
import { roughFigure } from "../measure/roughFigure";
import { MONEY_HEADINGS } from "./estimateTables";

/** A table as it is printed, its headings first. */
export type PrintedTable = readonly (readonly string[])[];

export function printedTable([headings = [], ...rows]: readonly (readonly Cell[])[]): PrintedTable {
  const names = headings.map((heading) => String(plainCell(heading)));
  const unit = names.indexOf("unit");
  return [
    names,
    ...rows.map((row) => row.map((cell, at) => printedCell(cell, names[at] ?? "", row[unit], row[at - 1]))),
  ];
}

/** Units of what nobody knows to a hundredth. */
export const ROUGH: ReadonlySet<Cell | undefined> = new Set(["hours", "kg", "lb"]);

/** Units whose number is before them. */
const SINGULAR: ReadonlyMap<Cell, string> = new Map([
  ["sheets", "sheet"],
  ["pieces", "piece"],
  ["hours", "hour"],
]);

/** Room in a store is worked out to the hundredth, and each number of a column shows as many digits. */
const HUNDREDTHS: ReadonlySet<string> = new Set(["now", "boxed", "more"]);

/** Money with its hundredths, hours and kilograms with their tenths, shares in whole per cent, the rest to digits that count. */
function printedCell(cell: Cell, heading: string, unit: Cell | undefined, before: Cell | undefined): string {
  if (typeof cell !== "number")
    return (heading === "unit" && before === 1 && SINGULAR.get(cell)) || String(plainCell(cell));
  if (heading === "hours" || (heading === "to buy" && ROUGH.has(unit))) return String(Number(cell.toFixed(1)));
  if (MONEY_HEADINGS.has(heading) || HUNDREDTHS.has(heading)) return cell.toFixed(2);
  if (heading === "yield") return `${Math.round(cell * 100)} %`;
  if (heading === "net area" && cell === 0) return "";
  return String(roughFigure(cell));
}
