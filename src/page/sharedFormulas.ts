import type { ICellData, IObjectMatrixPrimitiveType, Nullable } from "@univerjs/core";
import { columnLetters, columnNumber, MOST_COLUMNS, MOST_ROWS } from "../workbook/cellRef";
import { gridCells } from "./gridCells";

type Cells = IObjectMatrixPrimitiveType<Nullable<ICellData>>;

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

/** Reads the formula of any cell, with `=`, also of one that shares it; rows and columns count from 0. */
export function formulasOf(cells: Cells): (row: number, column: number) => string | undefined {
  const first = new Map<string, { readonly formula: string; readonly row: number; readonly column: number }>();
  for (const [row, column, cell] of gridCells(cells))
    if (cell?.f && cell.si && !first.has(cell.si)) first.set(cell.si, { formula: cell.f, row, column });
  return (row, column) => {
    const cell = cells[row]?.[column];
    if (cell?.f) return cell.f;
    const shared = cell?.si ? first.get(cell.si) : undefined;
    return shared && movedFormula(shared.formula, row - shared.row, column - shared.column);
  };
}

/**
 * Makes the cells of a column that hold the same formula, filled down, share it: the grid takes a millisecond to read one
 * formula, and reads a shared one once.
 *
 * @param name begins the names under which they share; rows and columns count from 1
 */
export function formulaSharer(name: string): (data: ICellData, row: number, column: number) => ICellData {
  const known = new Map<string, string>();
  return (data, row, column) => {
    if (typeof data.f !== "string" || typeof data.si === "string") return data;
    const form = `${column}!${relativeForm(data.f, row, column)}`;
    const si = known.get(form);
    if (si !== undefined) return { si };
    known.set(form, `${name}-${known.size + 1}`);
    return { ...data, si: `${name}-${known.size}` };
  };
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
