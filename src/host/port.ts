import type { Book } from "../workbook/book";
import type { Cell } from "../workbook/cellRef";
import type { PlacedColumn, WorkbookEdits } from "../workbook/edits";

/** A cell of a sheet; rows and columns count from 1. */
export interface SheetCell extends Cell {
  readonly sheet: string;
}

/** The rows of a survey, by one column of its sheet. Rows and columns count from 1. */
export interface RowsByColumn {
  readonly sheet: string;
  readonly column: number;
  readonly headingRow: number;
  readonly lastRow: number;
  readonly firstColumn: number;
  readonly lastColumn: number;
}

/** What a write did. */
export interface WrittenEdits {
  readonly columns: readonly PlacedColumn[];
  /** Messages for the user. */
  readonly notes: readonly string[];
  /** Puts the workbook back as it was before this write; whatever else was changed since then stays. */
  readonly undo: () => Promise<void>;
}

/**
 * What the pane needs of an open workbook, in Excel or in the local page. Formulas of `WorkbookEdits` are in the stored
 * form (`typedFormula` gives the one a sheet takes); columns go where `columnPlaces` puts them and carry the marks of
 * `ownMarks`, so that the pane, the command line and a later session know them again.
 */
export interface BookPort {
  /** The sheets, tables, names and cells as they are now: one look, whatever the size. */
  readonly read: () => Promise<Book>;
  /**
   * Adds columns with number format and the look of their neighbour, sheets, names. One step for the user.
   *
   * @throws InputError when a sheet is protected, a name is the user's own, or the columns do not fit
   */
  readonly write: (edits: WorkbookEdits) => Promise<WrittenEdits>;
  /** The cell that is selected; undefined on a chart sheet. */
  readonly selected: () => Promise<SheetCell | undefined>;
  readonly goTo: (cell: SheetCell) => Promise<void>;
  /**
   * Hides the rows whose cell holds something else, as the filter of the sheet does; undefined shows every row. A filter of
   * the user's own takes in the column and keeps what it goes by.
   *
   * @throws InputError when the sheet has a filter elsewhere, which would be lost
   */
  readonly showOnly: (rows: RowsByColumn, value: number | string | undefined) => Promise<void>;
  /** Calls back when another cell is selected. @returns what stops it */
  readonly onSelect: (listener: (cell: SheetCell) => void) => Promise<() => void>;
  /** Calls back when cells of any sheet were changed, by the user or by a calculation of theirs. @returns what stops it */
  readonly onChange: (listener: () => void) => Promise<() => void>;
}
