import type { BooleanNumber, IFreeze, IWorksheetData, Nullable } from "@univerjs/core";
import type { FrozenEdit, RowEdit, WidthEdit } from "../workbook/edits";
import { characters, PIXELS_A_POINT, YES } from "./gridTerms";

/** What has changed in a sheet beside its cells. */
export interface ChangedLayout {
  readonly widths: readonly WidthEdit[];
  readonly rows: readonly RowEdit[];
  readonly frozen: readonly FrozenEdit[];
}

type Sheet = Partial<IWorksheetData>;

/** Widths, heights, hidden rows and columns, and frozen parts that are others than in the file. */
export function changedLayout(name: string, old: Sheet, now: Sheet): ChangedLayout {
  const frozen = frozenOf(now.freeze);
  return {
    widths: changedWidths(name, old, now),
    rows: changedRows(name, old, now),
    frozen: same(frozenOf(old.freeze), frozen) ? [] : [{ sheet: name, ...frozen }],
  };
}

function changedWidths(sheet: string, old: Sheet, now: Sheet): WidthEdit[] {
  return placesOf(old.columnData, now.columnData).flatMap((place): WidthEdit[] => {
    const [before, after] = [old.columnData?.[place], now.columnData?.[place]];
    const usual = now.defaultColumnWidth;
    const [width, hidden] = [after?.w ?? usual, isOn(after?.hd)];
    if (width === undefined || (width === (before?.w ?? usual) && hidden === isOn(before?.hd))) return [];
    return [{ sheet, column: place + 1, width: characters(width), ...(hidden ? { hidden } : {}) }];
  });
}

function changedRows(sheet: string, old: Sheet, now: Sheet): RowEdit[] {
  return placesOf(old.rowData, now.rowData).flatMap((place): RowEdit[] => {
    const [before, after] = [old.rowData?.[place], now.rowData?.[place]];
    const [fixed, hidden] = [ownHeight(after), isOn(after?.hd)];
    const height: RowEdit["height"] = fixed === undefined ? "auto" : fixed / PIXELS_A_POINT;
    const change = {
      ...(fixed === ownHeight(before) ? {} : { height }),
      ...(hidden === isOn(before?.hd) ? {} : { hidden }),
    };
    return Object.keys(change).length === 0 ? [] : [{ sheet, row: place + 1, ...change }];
  });
}

/** The height of a row that does not follow what is in it, pixels. */
function ownHeight(row: Nullable<{ readonly h?: number; readonly ia?: BooleanNumber }>): number | undefined {
  return row?.ia === undefined || row.ia === YES ? undefined : row.h;
}

/** The grid counts the first row and column that are scrolled, -1 for none frozen. */
function frozenOf(freeze: Nullable<IFreeze>): Omit<FrozenEdit, "sheet"> {
  const { xSplit = 0, ySplit = 0, startRow = -1, startColumn = -1 } = freeze ?? {};
  return {
    rows: ySplit,
    columns: xSplit,
    firstRow: ySplit === 0 ? 1 : startRow - ySplit + 1,
    firstColumn: xSplit === 0 ? 1 : startColumn - xSplit + 1,
  };
}

function same(one: Omit<FrozenEdit, "sheet">, other: Omit<FrozenEdit, "sheet">): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}

function isOn(flag: Nullable<BooleanNumber>): boolean {
  return flag === YES;
}

function placesOf(...lists: readonly (object | undefined)[]): number[] {
  return [...new Set(lists.flatMap((list) => Object.keys(list ?? {})))].map(Number).sort((a, b) => a - b);
}
