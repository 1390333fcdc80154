import {
  isFormula,
  type CellContent,
  type CellEdit,
  type FrozenEdit,
  type RowEdit,
  type TableGrowth,
  type WidthEdit,
} from "../edits";
import type { Frozen } from "../frozenViews";
import { areaAfter, placeAfter, spanAfter, type Shift } from "./shift";
import { shiftedFormula } from "./shiftedFormula";

interface Placed {
  readonly cells: readonly CellEdit[];
  readonly widths: readonly WidthEdit[];
  readonly rows: readonly RowEdit[];
  readonly frozen: readonly FrozenEdit[];
  readonly tables: readonly TableGrowth[];
}

/** Changes of cells, widths, heights, frozen parts and tables after rows or columns have come or gone; those of cells that go are left out. */
export function shiftedEdits({ cells, widths, rows, frozen, tables }: Placed, shift: Shift): Placed {
  const isHome = (sheet: string): boolean => sheet.toLowerCase() === shift.sheet.toLowerCase();
  return {
    cells: cells.flatMap((cell) => {
      const content = shiftedContent(cell.content, cell.sheet, shift);
      if (!isHome(cell.sheet)) return [{ ...cell, content }];
      const now = placeAfter(cell[shift.axis], shift);
      return now === undefined ? [] : [{ ...cell, content, [shift.axis]: now }];
    }),
    widths: widths.flatMap((each) => {
      if (!isHome(each.sheet) || shift.axis === "row") return [each];
      const column = placeAfter(each.column, shift);
      return column === undefined ? [] : [{ ...each, column }];
    }),
    rows: rows.flatMap((each) => {
      if (!isHome(each.sheet) || shift.axis === "column") return [each];
      const row = placeAfter(each.row, shift);
      return row === undefined ? [] : [{ ...each, row }];
    }),
    frozen: frozen.map((each) => (isHome(each.sheet) ? { ...each, ...shiftedFrozen(each, shift) } : each)),
    tables: tables.flatMap((each) => {
      if (!isHome(each.sheet) || shift.axis === "column") return [each];
      const bottom = placeAfter(each.bottom, shift);
      return bottom === undefined ? [] : [{ ...each, bottom }];
    }),
  };
}

/** Frozen rows that go, or among which others come, are fewer or more. */
function shiftedFrozen(frozen: Frozen, shift: Shift): Partial<Frozen> {
  const [first, count] = shift.axis === "row" ? [frozen.firstRow, frozen.rows] : [frozen.firstColumn, frozen.columns];
  if (count === 0) return {};
  const now = spanAfter({ first, last: first + count - 1 }, shift);
  const left = now === undefined ? 0 : now.last - now.first + 1;
  const start = now?.first ?? 1;
  return shift.axis === "row" ? { rows: left, firstRow: start } : { columns: left, firstColumn: start };
}

function shiftedContent(content: CellContent, sheet: string, shift: Shift): CellContent {
  if (!isFormula(content)) return content;
  const formula = shiftedFormula(content.formula, sheet, shift);
  const fills = content.fills && areaAfter(content.fills, shift);
  return { formula, result: content.result, ...(fills === undefined ? {} : { fills }) };
}
