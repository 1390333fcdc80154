import type { Area } from "./cellRef";
import type { CellContent, RowEdit } from "./edits";
import type { Frozen } from "./frozenViews";
import type { ListChoices } from "./listChoices";

/** One cell to write. */
export interface CellChange {
  readonly column: number;
  readonly content: CellContent;
  /** The number of the shared text to point to, in place of writing the letters of `content`. */
  readonly sharedText?: number;
  /** Copy the style of this column in the same row, instead of keeping the cell's own. */
  readonly like?: number | undefined;
  /** The style to use, given the copied or kept one. */
  readonly styled: (style: number | undefined) => number | undefined;
}

/** How a row stands there; what is left out stays. */
export type RowChange = Pick<RowEdit, "height" | "hidden">;

/** All that changes in one sheet. */
export interface SheetChanges {
  readonly cells: ReadonlyMap<number, readonly CellChange[]>;
  readonly widths: ReadonlyMap<number, number>;
  /** Columns of `widths` that are hidden. */
  readonly hidden?: ReadonlySet<number>;
  readonly rows?: ReadonlyMap<number, RowChange>;
  readonly frozen?: Frozen;
  /** The new rectangle of the sheet's own filter, if it grows. */
  readonly filter?: Area;
  /** Tables that take more rows, down to `bottom`: rules for the cells of their last row go on. */
  readonly grown?: readonly { readonly area: Area; readonly bottom: number }[];
  /** Cells that offer a list. */
  readonly choices?: readonly ListChoices[];
}
