import { CanceledError, ICommandService, type IRange } from "@univerjs/core";
import type { FWorkbook } from "@univerjs/sheets/facade";
import { columnLetters } from "../../workbook/cellRef";
import type { Shift } from "../../workbook/shift/shift";
import type { Grid } from "./createGrid";

/** What inserts and deletes whole rows and columns: from the selected cells, from a range, or so many of them. */
const SHIFTING =
  /^sheet\.command\.(?:table-)?(insert|remove)-(?:multi-)?(row|col)s?(?:-(before|after|above|right|confirm|by-range))?$/;

/** The same for a column of a table, from the menu of its filter. */
const OF_TABLE = /^sheet\.command\.table-(insert|remove)-column-at$/;

interface ShiftParams {
  /** How many, where the menu asks. */
  readonly value?: number;
  readonly range?: IRange;
  /** A column of a table, counted from 0. */
  readonly index?: number;
}

/**
 * Rows and columns are inserted and deleted in the file and not in the grid: there everything that names a cell follows.
 *
 * @param ask does it, and shows the outcome
 */
export function shiftByCommand(
  grid: Pick<Grid, "injector">,
  workbook: () => FWorkbook,
  ask: (shift: Shift) => void,
): void {
  grid.injector.get(ICommandService).beforeCommandExecuted(({ id, params }) => {
    const [, ofTable] = OF_TABLE.exec(id) ?? [];
    if (ofTable !== undefined) {
      const { index = 0 } = params as ShiftParams;
      const name = workbook().getActiveSheet().getSheetName();
      ask({ sheet: name, axis: "column", at: index + 1, count: 1, goes: ofTable === "remove" });
      throw new CanceledError();
    }
    const [, kind, axis, place] = SHIFTING.exec(id) ?? [];
    if (kind === undefined) return;
    const sheet = workbook().getActiveSheet();
    const { value, range = sheet.getSelection()?.getActiveRange()?.getRange() } = (params ?? {}) as ShiftParams;
    if (range !== undefined) {
      const [first, last] = axis === "row" ? [range.startRow, range.endRow] : [range.startColumn, range.endColumn];
      const after = place === "after" || place === "right";
      ask({
        sheet: sheet.getSheetName(),
        axis: axis === "row" ? "row" : "column",
        at: 1 + (after ? last + 1 : first),
        count: kind === "insert" ? Number(value ?? last - first + 1) : last - first + 1,
        goes: kind === "remove",
      });
    }
    throw new CanceledError();
  });
}

/** What was done, in words. */
export function told({ axis, at, count, goes }: Shift): string {
  const name = (place: number): string => (axis === "row" ? String(place) : columnLetters(place));
  const which = count === 1 ? `${axis} ${name(at)}` : `${axis}s ${name(at)} to ${name(at + count - 1)}`;
  return `${goes ? "Deleted" : "Inserted"} ${which}`;
}
