import type { ICellData, Nullable } from "@univerjs/core";
import type { Area } from "../workbook/cellRef";
import type { CellContent } from "../workbook/edits";
import { SHOWN_BLANK } from "../workbook/shownBlank";
import { plainOf } from "./plainOf";
import type { StyleChange } from "./styleChange";

/** Cells that one formula of the grid fills, and what it fills them with; rows and columns count from 1. */
export interface FilledArea {
  readonly row: number;
  readonly column: number;
  readonly area: Area;
  readonly value: (row: number, column: number) => Nullable<ICellData>;
}

/** Takes the new content of a cell; rows and columns count from 0, as in the grid. */
export type Put = (
  row: number,
  column: number,
  content: CellContent,
  more: StyleChange & { readonly sharedText?: number },
) => void;

/** The cells that an array formula filled, except the first, which is written after. */
export function clearArea({ top, left, bottom, right }: Area, row: number, column: number, put: Put): void {
  for (let r = top - 1; r < bottom; r++)
    for (let c = left - 1; c < right; c++) if (r !== row || c !== column) put(r, c, null, {});
}

/** What the formula fills, except its own cell. */
export function fillArea({ row, column, area, value }: FilledArea, put: Put): void {
  for (let r = area.top; r <= area.bottom; r++)
    for (let c = area.left; c <= area.right; c++)
      if (r !== row || c !== column) put(r - 1, c - 1, plainOf(value(r, c)) ?? SHOWN_BLANK, {});
}
