import { columnLetters, columnNumber, MOST_COLUMNS, MOST_ROWS } from "./cellRef";

/**
 * A formula with its relative references as distances from the cell: two cells with the same form hold the same
 * formula, filled down or across. Texts, names and references of tables are as they are.
 *
 * @param formula as typed; rows and columns count from 1
 */
export function relativeForm(formula: string, row: number, column: number): string {
  return eachReference(formula, ({ column: c, row: r, columnFixed, rowFixed }) => {
    const across = columnFixed ? `C${c}` : `C[${c - column}]`;
    return `\u0001${rowFixed ? `R${r}` : `R[${r - row}]`}${across}`;
  });
}

/** The formula as it reads in a cell so many rows below and columns right; what leaves the sheet is `#REF!`. */
export function movedFormula(formula: string, down: number, across: number): string {
  if (down === 0 && across === 0) return formula;
  return eachReference(formula, ({ column: c, row: r, columnFixed, rowFixed }) => {
    const column = columnFixed ? c : c + across;
    const row = rowFixed ? r : r + down;
    if (column < 1 || row < 1 || column > MOST_COLUMNS || row > MOST_ROWS) return "#REF!";
    return `${columnFixed ? "$" : ""}${columnLetters(column)}${rowFixed ? "$" : ""}${row}`;
  });
}

/** A formula of a column, in its row. */
export interface PlacedFormula {
  readonly formula: string;
  readonly row: number;
}

/** The formula that most cells of a column hold, filled down; of equally common ones that of the first. */
export function commonFormula(cells: readonly PlacedFormula[], column: number): PlacedFormula | undefined {
  const counts = new Map<string, { readonly cell: PlacedFormula; times: number }>();
  for (const cell of cells) {
    const form = relativeForm(cell.formula, cell.row, column);
    const known = counts.get(form);
    if (known === undefined) counts.set(form, { cell, times: 1 });
    else known.times++;
  }
  const most = Math.max(0, ...[...counts.values()].map(({ times }) => times));
  return [...counts.values()].find(({ times }) => times === most)?.cell;
}

interface Reference {
  readonly column: number;
  readonly row: number;
  readonly columnFixed: boolean;
  readonly rowFixed: boolean;
}

/** Texts, sheet names and table parts, which are passed over; references to cells; names and functions. */
const PIECES =
  /"(?:[^"]|"")*"|'(?:[^']|'')*'|\[[^\]]{0,600}\]|(?<![\w.$])(\$?)([A-Za-z]{1,3})(\$?)(\d{1,7})(?![\w.(])|[\w.]+/g;

function eachReference(formula: string, change: (reference: Reference) => string): string {
  return formula.replace(PIECES, (piece, dollar?: string, letters?: string, second?: string, digits?: string) => {
    const column = letters === undefined ? undefined : columnNumber(letters);
    if (column === undefined || digits === undefined) return piece;
    return change({ column, row: Number(digits), columnFixed: dollar === "$", rowFixed: second === "$" });
  });
}
