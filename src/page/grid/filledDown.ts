import type { ICellData, IRange, Nullable } from "@univerjs/core";
import { commonFormula, movedFormula } from "../../workbook/relativeFormula";
import { formulasOf } from "../sharedFormulas";

/** What a new cell takes from those above it. */
export interface NewCell {
  readonly f?: string;
  readonly s?: ICellData["s"];
}

/** Cells of a sheet by row and column, as the grid has them. */
export type Cells = Readonly<Record<number, Readonly<Record<number, Nullable<ICellData>>>>>;
export type Filled = ReadonlyMap<number, ReadonlyMap<number, NewCell>>;

/**
 * The cells of new rows below an area: formulas of its last rows filled down, and their looks.
 *
 * @param last the last of the new rows, counted from 0
 * @param isTable whether the area is a table: its first row is headings, and its looks go on everywhere
 */
export function filledDown(
  cells: Cells,
  { startRow, endRow, startColumn, endColumn }: IRange,
  last: number,
  isTable: boolean,
): Filled {
  const { at: formulaAt } = formulasOf(cells);
  const found = new Map<number, Map<number, NewCell>>();
  const first = Math.max(isTable ? startRow + 1 : startRow, endRow - LOOKED_AT);
  const rows = Array.from({ length: Math.max(0, endRow - first + 1) }, (_, i) => first + i);
  const typedIn = (row: number): string => {
    const columns = Array.from({ length: endColumn - startColumn + 1 }, (_, i) => startColumn + i);
    return columns.filter((c) => isFilled(cells[row]?.[c]) && formulaAt(row, c) === undefined).join();
  };
  const patterns = new Map(rows.map((row) => [row, typedIn(row)]));
  for (let r = endRow + 1; r <= last; r++) {
    // Formulas of a survey differ a little by what is filled in a row: those of rows like it, else what most rows have.
    const own = typedIn(r);
    const alike = rows.filter((row) => patterns.get(row) === own);
    const row = new Map<number, NewCell>();
    for (let c = startColumn; c <= endColumn; c++) {
      const cell = cells[r]?.[c];
      const runs = formulaAt(endRow, c) !== undefined && (isTable || formulaAt(endRow - 1, c) !== undefined);
      const takes = runs && !isFilled(cell) && !cell?.f && !cell?.si;
      const placed = (of: readonly number[]) =>
        of.flatMap((at) => {
          const formula = formulaAt(at, c);
          return formula === undefined ? [] : [{ formula, row: at }];
        });
      const formula = takes ? (commonFormula(placed(alike), c) ?? commonFormula(placed(rows), c)) : undefined;
      const style = cells[endRow]?.[c]?.s;
      const looks = style !== undefined && style !== null && !cell?.s && (isTable || formula !== undefined);
      if (formula === undefined && !looks) continue;
      row.set(c, {
        ...(formula === undefined ? {} : { f: movedFormula(formula.formula, r - formula.row, 0) }),
        ...(looks ? { s: style } : {}),
      });
    }
    if (row.size > 0) found.set(r, row);
  }
  return found;
}

/** So many last rows tell what a column is filled with. */
const LOOKED_AT = 60;

/** Whether a cell shows something: a value, or a text with looks of its own. */
export function isFilled(cell: Nullable<ICellData>): boolean {
  return cell?.p !== undefined && cell.p !== null ? true : cell?.v !== undefined && cell.v !== null && cell.v !== "";
}
