import { columnLetters } from "./cellRef";

/*
 * A formula of a new column may name another new column, whose place is known only when all are placed. Until then the
 * column is written between two signs that no formula holds.
 */
const OPEN = "\ue000";
const CLOSE = "\ue001";
const SIBLING = /\ue000([^\ue000\ue001]*)\ue001/g;

/** The cell of another new column in a row: `$H5` once the columns are placed. */
export function siblingCell(wantedName: string, row: number): string {
  return `${OPEN}${wantedName}${CLOSE}${row}`;
}

/** The formula with its columns in their places. @param columnOf the place of a new column by the name asked for */
export function placedFormula(formula: string, columnOf: (wantedName: string) => number): string {
  return formula.includes(OPEN)
    ? formula.replace(SIBLING, (_, name: string) => `$${columnLetters(columnOf(name))}`)
    : formula;
}
