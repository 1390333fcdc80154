import type { ICellData, IObjectMatrixPrimitiveType, Nullable } from "@univerjs/core";
import { movedFormula, relativeForm } from "../workbook/relativeFormula";
import { gridCells } from "./gridCells";

type Cells = IObjectMatrixPrimitiveType<Nullable<ICellData>>;

/** The formulas of a sheet; rows and columns count from 0. */
export interface Formulas {
  /** The formula of any cell, with `=`, also of one that shares it. */
  readonly at: (row: number, column: number) => string | undefined;
  /** Where a cell's formula is written, when the cell holds one. */
  readonly from: (row: number, column: number) => WrittenFormula | undefined;
}

/** A formula in the cell that holds it for others. */
interface WrittenFormula {
  readonly formula: string;
  readonly row: number;
  readonly column: number;
}

export function formulasOf(cells: Cells): Formulas {
  const first = new Map<string, WrittenFormula>();
  for (const [row, column, cell] of gridCells(cells))
    if (cell?.f && cell.si && !first.has(cell.si)) first.set(cell.si, { formula: cell.f, row, column });
  const from: Formulas["from"] = (row, column) => {
    const cell = cells[row]?.[column];
    if (cell?.f) return { formula: cell.f, row, column };
    return cell?.si ? first.get(cell.si) : undefined;
  };
  return {
    from,
    at: (row, column) => {
      const written = from(row, column);
      return written && movedFormula(written.formula, row - written.row, column - written.column);
    },
  };
}

/** Whether a cell holds the same formula in both, or none: to write it out takes long, and is not needed for most. */
export function sameFormula(one: Formulas, other: Formulas, row: number, column: number): boolean {
  const [a, b] = [one.from(row, column), other.from(row, column)];
  if (a === undefined || b === undefined) return a === b;
  if (a.formula === b.formula && a.row === b.row && a.column === b.column) return true;
  return one.at(row, column) === other.at(row, column);
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
