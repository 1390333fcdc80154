import type { ICellData, IObjectMatrixPrimitiveType, Nullable } from "@univerjs/core";
import { movedFormula, relativeForm } from "../workbook/relativeFormula";
import { gridCells } from "./gridCells";

type Cells = IObjectMatrixPrimitiveType<Nullable<ICellData>>;

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
