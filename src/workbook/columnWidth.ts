import { isFormula, type CellContent } from "./edits";

/** A width in characters that shows the heading with its filter's arrow, and the first cells. */
export function columnWidth(heading: string, cells: readonly CellContent[]): number {
  const shown = cells.slice(0, LOOKED_AT).map((cell) => shownLength(cell) + ROOM);
  return Math.min(WIDEST, Math.max(NARROWEST, heading.length + ARROW, ...shown));
}

const NARROWEST = 9;
const WIDEST = 50;
const LOOKED_AT = 200;
const ROOM = 2;
const ARROW = 4;
/** More decimals than a number format shows do not count. */
const LONGEST_NUMBER = 10;

function shownLength(content: CellContent): number {
  const value = isFormula(content) ? content.result : content;
  if (value === null) return 0;
  if (typeof value === "object") return value.error.length;
  return typeof value === "number" ? Math.min(LONGEST_NUMBER, String(value).length) : String(value).length;
}
