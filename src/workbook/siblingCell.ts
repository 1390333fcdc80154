import { columnLetters } from "./cellRef";

/*
 * A formula of a new column may name another new column, whose place is known only when all are placed. Until then the
 * column is written between two signs that no file can hold.
 */
const OPEN = "\u0001";
const CLOSE = "\u0002";

/** The cell of another new column in a row: `$H5` once the columns are placed. */
export function siblingCell(wantedName: string, row: number): string {
  return `${OPEN}${wantedName}${CLOSE}${row}`;
}

/** The formula with its columns in their places. @param columnOf the place of a new column by the name asked for */
export function placedFormula(formula: string, columnOf: (wantedName: string) => number): string {
  const [start = "", ...named] = formula.split(OPEN);
  return named.reduce((text, each) => {
    const end = each.indexOf(CLOSE);
    return `${text}$${columnLetters(columnOf(each.slice(0, end)))}${each.slice(end + 1)}`;
  }, start);
}
