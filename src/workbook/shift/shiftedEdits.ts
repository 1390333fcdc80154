import { isFormula, type CellContent, type CellEdit, type TableGrowth, type WidthEdit } from "../edits";
import { areaAfter, placeAfter, type Shift } from "./shift";
import { shiftedFormula } from "./shiftedFormula";

interface Placed {
  readonly cells: readonly CellEdit[];
  readonly widths: readonly WidthEdit[];
  readonly tables: readonly TableGrowth[];
}

/** Changes of cells, widths and tables after rows or columns have come or gone; those of cells that go are left out. */
export function shiftedEdits({ cells, widths, tables }: Placed, shift: Shift): Placed {
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
    tables: tables.flatMap((each) => {
      if (!isHome(each.sheet) || shift.axis === "column") return [each];
      const bottom = placeAfter(each.bottom, shift);
      return bottom === undefined ? [] : [{ ...each, bottom }];
    }),
  };
}

function shiftedContent(content: CellContent, sheet: string, shift: Shift): CellContent {
  if (!isFormula(content)) return content;
  const formula = shiftedFormula(content.formula, sheet, shift);
  const fills = content.fills && areaAfter(content.fills, shift);
  return { formula, result: content.result, ...(fills === undefined ? {} : { fills }) };
}
