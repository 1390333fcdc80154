import { InputError } from "../measure/errors";
import { parseSheetArea, type Area } from "./cellRef";
import type { Book } from "./book";
import type { ColumnsHold } from "./edits";
import type { DefinedName } from "./openWorkbook";

/*
 * How a later run knows its own columns and sheets: hidden defined names. A spreadsheet keeps them through a save and
 * moves them along when the user inserts rows, sorts, or renames a sheet, which no list of cell addresses would survive.
 *
 *   _enclosure_column_1   'Survey'!$H$4:$H$104   comment: the heading as it was asked for
 *   _enclosure_column_values_1                   the same, of a column of values
 *   _enclosure_sheet_1    'Cut list'!$A$1        comment: the sheet's name as it was asked for
 */

/** A column from an earlier run: its heading cell and the rows below. */
export interface OwnColumn {
  readonly mark: string;
  readonly sheet: string;
  readonly column: number;
  readonly headingRow: number;
  readonly lastRow: number;
  /** The heading as it was asked for; empty when another program dropped the comment. */
  readonly wantedName: string;
  readonly holds: ColumnsHold;
}

type Names = Pick<Book, "names" | "sheets">;

/** A sheet from an earlier run. */
export interface OwnSheet {
  readonly mark: string;
  readonly sheet: string;
  readonly wantedName: string;
}

const COLUMN_MARK = "_enclosure_column_";
export const SHEET_MARK = "_enclosure_sheet_";

/** The columns that an earlier run wrote, and that still are there. */
export function ownColumns(book: Names): readonly OwnColumn[] {
  return marked(book, COLUMN_MARK)
    .filter(({ area }) => area.left === area.right)
    .map(({ name, sheet, area }) => ({
      mark: name.name,
      sheet,
      column: area.left,
      headingRow: area.top,
      lastRow: area.bottom,
      wantedName: name.comment,
      holds: HOLDS.find((holds) => name.name.startsWith(columnMark(holds))) ?? "formulas",
    }));
}

/** How the mark of a column begins; a number follows. */
export function columnMark(holds: ColumnsHold = "formulas"): string {
  return holds === "formulas" ? COLUMN_MARK : `${COLUMN_MARK}${holds.replace(" ", "_")}_`;
}

const HOLDS = ["one formula", "values"] as const;

/** The sheets that an earlier run wrote, and that still are there. */
export function ownSheets(book: Names): readonly OwnSheet[] {
  return marked(book, SHEET_MARK).map(({ name, sheet }) => ({
    mark: name.name,
    sheet,
    wantedName: name.comment || sheet,
  }));
}

/** Whether a defined name is one of these marks. */
export function isMark(name: string): boolean {
  return name.startsWith(COLUMN_MARK) || name.startsWith(SHEET_MARK);
}

/** A sheet of the user is never written over. */
export function sheetNotOurs(name: string): InputError {
  return new InputError(
    "sheet",
    `"${name}"`,
    "the workbook has a sheet of that name that this program did not write, and keeps it",
    "rename that sheet, or give another name",
  );
}

function marked(book: Names, start: string): { name: DefinedName; sheet: string; area: Area }[] {
  return book.names.flatMap((name) => {
    if (!name.name.startsWith(start)) return [];
    const place = parseSheetArea(name.refersTo);
    const sheet = place && book.sheets.find((s) => s.name.toLowerCase() === place.sheet.toLowerCase());
    return sheet ? [{ name, sheet: sheet.name, area: place.area }] : [];
  });
}
