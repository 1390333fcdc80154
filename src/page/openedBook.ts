import type { IWorkbookData, LocaleType } from "@univerjs/core";
import { cellLooksOf } from "../workbook/cellLooks";
import { conditionalFormatsOf } from "../workbook/conditionalFormats";
import { notesOf } from "../workbook/notes";
import { notShown } from "../workbook/notShown";
import type { Area } from "../workbook/cellRef";
import type { PlacedColumn } from "../workbook/edits";
import type { DefinedName, Workbook } from "../workbook/openWorkbook";
import type { TableInfo } from "../workbook/readTable";
import { sheetWithLook } from "../workbook/sheetLook";
import { DAYS_1904 } from "../workbook/sheetValue";
import { bookResources } from "./bookResources";
import { BOOK_ID, calendarShift, flag, styleKey } from "./gridTerms";
import { arraysOf, sheetSnapshot } from "./sheetSnapshot";
import { styleData } from "./styleData";

/** A sheet of the file as the page knows it. */
export interface OpenedSheet {
  readonly id: string;
  readonly name: string;
  readonly state: "visible" | "hidden" | "veryHidden";
  /** Protected in the file: shown, never changed. */
  readonly locked: boolean;
  /** Cells that one array formula fills, by the row and column of its first cell. */
  readonly arrays: readonly { readonly row: number; readonly column: number; readonly area: Area }[];
}

/** A workbook as the server hands it to the page. */
export interface OpenedBook {
  /** Name of the file. */
  readonly name: string;
  readonly snapshot: IWorkbookData;
  readonly sheets: readonly OpenedSheet[];
  readonly tables: readonly TableInfo[];
  readonly names: readonly DefinedName[];
  /** Its dates count from 1904, in the grid from 1900: see `calendarShift`. */
  readonly date1904: boolean;
  /** Messages for the user. */
  readonly said: readonly string[];
}

/** Changes of an earlier page that were not saved. */
export interface UnsavedChanges {
  /** Names the workbook of that page. */
  readonly document: string;
  readonly file: string;
  /** When they were last kept, ISO 8601. */
  readonly time: string;
  /** How many changed cells they hold, those that the pane wrote included. */
  readonly cells: number;
}

/** What a page begins with. */
export interface StartedBook {
  /** Names the workbook of this page alone. */
  readonly document: string;
  readonly opened: OpenedBook;
  /** Fingerprint of the file, as long as this workbook differs from it in cells alone. */
  readonly base?: string;
  /** Whether it has changes that are not saved. */
  readonly isUnsaved: boolean;
  /** Other workbooks that were made from the same file: each is open in another tab, or was. */
  readonly others: readonly string[];
  readonly unsaved: readonly UnsavedChanges[];
}

/** What the pane has written, and the workbook that the page is to show now. */
export interface WrittenBook {
  readonly opened: OpenedBook;
  readonly columns: readonly PlacedColumn[];
  /** Notes for the user, in plain words. */
  readonly notes: readonly string[];
}

/**
 * A workbook as a snapshot for the grid: values, formulas as they are typed, number formats, looks, widths, heights, merged
 * cells, frozen headings, names, tables, filters, lists of choices, conditional formats and comments.
 *
 * @throws InputError when a sheet is damaged
 */
export function openedBook(workbook: Workbook, name: string): OpenedBook {
  const looks = cellLooksOf(workbook);
  const read = workbook.sheets
    .filter((sheet) => sheet.cells)
    .map(({ name, state }, place) => ({
      id: `sheet-${place + 1}`,
      name,
      state,
      ...sheetWithLook(workbook, name),
      rules: conditionalFormatsOf(workbook, name),
      notes: notesOf(workbook, name),
    }));
  const charts = workbook.sheets.filter((sheet) => !sheet.cells).map((sheet) => `"${sheet.name}"`);
  const hidden = notShown(workbook);
  const dates = (style = 0): number => (workbook.date1904 ? calendarShift(looks[style]?.format ?? "") : 0);
  const snapshot: IWorkbookData = {
    id: BOOK_ID,
    name,
    appVersion: "",
    locale: "enUS" as LocaleType,
    styles: Object.fromEntries(looks.map((look, style) => [styleKey(style), styleData(look)])),
    sheetOrder: read.map(({ id }) => id),
    sheets: Object.fromEntries(
      read.map(({ id, name, state, grid, look }) => [
        id,
        { ...sheetSnapshot(grid, look, dates), id, name, hidden: flag(state !== "visible") },
      ]),
    ),
    resources: bookResources(workbook, read),
  };
  return {
    name,
    snapshot,
    sheets: read.map(({ id, name, state, grid, look }) => ({
      id,
      name,
      state,
      locked: grid.locked,
      arrays: arraysOf(look),
    })),
    tables: workbook.tables,
    names: workbook.names,
    date1904: workbook.date1904,
    said: [
      ...(workbook.date1904 ? [CALENDAR] : []),
      ...(charts.length === 0 ? [] : [`${charts.join(", ")}: a sheet of charts is not shown here; a save keeps it`]),
      ...(hidden.length === 0 ? [] : [`Not shown here, and kept by a save: ${hidden.join(", ")}`]),
      ...(workbook.macros ? ["The macros of this file do not run here; a save keeps them"] : []),
    ],
  };
}

const CALENDAR =
  "The dates of this file count from 1904: they are shown and saved as they are, but a date shown as a plain number is " +
  `${DAYS_1904} more here`;
