import { InputError } from "../measure/errors";
import type { Area } from "./cellRef";
import type { Frozen } from "./frozenViews";
import type { ErrorValue } from "./sheetValue";
import type { Shift } from "./shift/shift";

/** A plain value to write. A text stays a text, whatever it begins with. */
export type PlainContent = string | number | boolean | null | ErrorValue;

/**
 * A live formula with the result that shows until a spreadsheet calculates. The formula is in the stored form and
 * without `=`: `_xldudf_ENC_INSIDE(B5,C5,D5,E5,"height",settings)`.
 */
export interface FormulaContent {
  readonly formula: string;
  readonly result: PlainContent;
  /** The cells that its one answer fills, when they are several; the others are written as values. */
  readonly fills?: Area;
}

export type CellContent = PlainContent | FormulaContent;

/** One column to add, or to write again when it is ours from an earlier run. */
export interface NewColumn {
  readonly heading: string;
  /** What an earlier version headed the same column with: such a column is written again in its place. */
  readonly formerHeading?: string;
  /** The heading in other units: a column with such a heading is written again in its place, and renamed. */
  readonly headingsElsewhere?: readonly string[];
  /** One cell for each row of the survey, in order. */
  readonly cells: readonly CellContent[];
  /** Number format, `0.0`; left out, that of the neighbour, unless that is a date or text format. */
  readonly format?: string;
  /**
   * The column whose look the cells and the heading copy; left out, the survey's last. For a column of texts name one
   * of texts, or they may stand at the right.
   */
  readonly like?: number;
  /** The user's from then on: it is added once, carries no mark, and no later run writes or deletes it. */
  readonly ofUser?: boolean;
  /** A formula that answers a range of values: its cells offer them as a list, and take any other too. */
  readonly choices?: string;
  /** In characters; left out, wide enough for the heading and the first cells. */
  readonly width?: number;
  /** In a table: the formula with which new rows fill themselves. */
  readonly everyRow?: string;
}

/** What columns of figures hold: a formula in every row, one formula that fills them all, or values alone. */
export type ColumnsHold = "formulas" | "one formula" | "values";

/** Columns for a survey, right of it or as new columns of its table. Rows and columns count from 1. */
export interface ColumnsEdit {
  readonly sheet: string;
  /** The table that holds the survey, if one does. */
  readonly table?: string;
  readonly headingRow: number;
  readonly firstRow: number;
  readonly lastRow: number;
  /** The survey's right edge; ignored for a table, which knows its own. */
  readonly lastColumn: number;
  readonly columns: readonly NewColumn[];
  /**
   * Left out, formulas. One formula is in the first cell of the first column, and the columns stand together outside any
   * table, which takes no formula of several cells.
   */
  readonly holds?: ColumnsHold;
  /**
   * The sheet is frozen right of this column, so that it stays in sight beside the added ones; rows that are frozen stay so.
   * A sheet with columns that are frozen already is left as it is.
   */
  readonly keepsInSight?: number;
}

/** One cell to write; its style stays unless a style or a format is given. */
export interface CellEdit {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly content: CellContent;
  readonly format?: string;
  /** The number of a cell style of the file, such as that of the row from which a sort brought the cell. */
  readonly style?: number;
  /**
   * The number of a text that the file's cells share, of which `content` is the letters: whatever look its parts have
   * comes along.
   */
  readonly sharedText?: number;
  /** The cell was read as a typed one: where it holds a formula, all is refused. */
  readonly typed?: true;
}

/** The width of a column, in characters, and whether it is hidden: left out, it is shown. */
export interface WidthEdit {
  readonly sheet: string;
  readonly column: number;
  readonly width: number;
  readonly hidden?: boolean;
}

/** How a row stands there: what is left out stays. */
export interface RowEdit {
  readonly sheet: string;
  readonly row: number;
  /** In points, or as high as what is in it. */
  readonly height?: number | "auto";
  readonly hidden?: boolean;
}

/** The rows and columns of a sheet that stay in sight from now on. */
export interface FrozenEdit extends Frozen {
  readonly sheet: string;
}

/** A table that takes the rows below it, down to this one; rules and lists that end with its last row go on too. */
export interface TableGrowth {
  readonly sheet: string;
  readonly table: string;
  readonly bottom: number;
}

/** A sheet to add after the last, or to write again when it is ours from an earlier run. */
export interface NewSheet {
  readonly name: string;
  readonly rows: readonly (readonly CellContent[])[];
  /** The row in bold, above which the sheet is frozen too; default 1, 0 for none. */
  readonly headingRow?: number;
  /** Number format by column. */
  readonly formats?: readonly (string | undefined)[];
  /** Width by column, in characters; left out, from the texts. */
  readonly widths?: readonly (number | undefined)[];
  /** Makes the rows from the heading on a table with this name; its headings must then be texts, each its own. */
  readonly table?: string;
  /** A later run may replace it. Leave it out for a sheet that the user goes on editing (settings, stock). */
  readonly replaceable?: boolean;
}

/** A name for the whole workbook, added when it is missing; an existing one stays unless its range is to grow. */
export interface NewName {
  readonly name: string;
  /** `settings!$A$1:$B$60`. */
  readonly refersTo: string;
  /** What the existing name means, exactly: it takes the new range instead. Left out, or where it means another, it stays. */
  readonly grownFrom?: string;
}

export interface WorkbookEdits {
  readonly columns?: ColumnsEdit;
  readonly cells?: readonly CellEdit[];
  readonly sheets?: readonly NewSheet[];
  /** Sheets of an earlier run to delete; a sheet that is not ours is refused. */
  readonly removeSheets?: readonly string[];
  readonly names?: readonly NewName[];
  readonly widths?: readonly WidthEdit[];
  readonly rows?: readonly RowEdit[];
  readonly frozen?: readonly FrozenEdit[];
  /** Tables that take more rows. */
  readonly tables?: readonly TableGrowth[];
  /** Rows or columns that come or go: nothing else is changed in the same edit. */
  readonly shift?: Shift;
}

/** Where a column went. */
export interface PlacedColumn {
  /** As written in the sheet: a number is added when another column already has that heading. */
  readonly heading: string;
  readonly wantedName: string;
  readonly column: number;
  /** It was there from an earlier run. */
  readonly replaced: boolean;
  /** Its heading until now, where that named another unit. */
  readonly renamedFrom?: string;
}

export interface EditResult {
  readonly bytes: Uint8Array;
  readonly changed: readonly string[];
  readonly added: readonly string[];
  readonly removed: readonly string[];
  readonly columns: readonly PlacedColumn[];
  /** Messages for the user. */
  readonly notes: readonly string[];
}

export function isFormula(content: CellContent): content is FormulaContent {
  return typeof content === "object" && content !== null && "formula" in content;
}

/** Whether a name of the workbook is to take a greater range. */
export function isGrowing(
  { name, refersTo }: Pick<NewName, "name" | "refersTo">,
  wanted: Pick<NewName, "name" | "grownFrom">,
): boolean {
  return name.toLowerCase() === wanted.name.toLowerCase() && refersTo === wanted.grownFrom;
}

/** A formula is never lost under a number that was worked out from its answer. */
export function formulaStands(cells: readonly string[]): InputError {
  return new InputError(
    "cells",
    `${cells.length === 1 ? "a formula" : "formulas"} in ${cells.slice(0, MOST_NAMED).join(", ")}`,
    "only typed numbers can be changed into others",
    "change what the formulas read, or choose that only answers are in the new unit",
  );
}

const MOST_NAMED = 5;
