import {
  CanceledError,
  ICommandService,
  IUniverInstanceService,
  UniverInstanceType,
  type Injector,
  type IRange,
  type Workbook,
} from "@univerjs/core";
import { expandToContinuousRange } from "@univerjs/sheets";
import { SheetsSortService, SortType } from "@univerjs/sheets-sort";
import type { FWorkbook } from "@univerjs/sheets/facade";
import { BOOK_ID } from "../gridTerms";

/** Entries of the menus that sort: up or down, of whole rows (`ext`), or by a choice of columns. */
const SORTING = /^sheet\.command\.sort-range-(?:(asc|desc)-ext|custom)(?:-ctx)?$/;

/**
 * A sort takes whole rows, so that no size leaves its object: those of the table, else of everything around the selected
 * cells, without the headings. Only the entries of the menu that say so sort the selected cells alone.
 */
export function sortWholeRows(injector: Injector, workbook: () => FWorkbook): void {
  injector.get(ICommandService).beforeCommandExecuted(({ id }) => {
    const sorting = SORTING.exec(id);
    if (sorting === null) return;
    const sheet = workbook().getActiveSheet();
    const selected = sheet.getSelection()?.getActiveRange()?.getRange();
    if (selected === undefined) return;
    const range = rowsAround(injector, sheet.getSheetId(), selected, sheet.getSubTableInfos());
    // The choice of columns sorts what is selected.
    if (sorting[1] === undefined)
      return void sheet
        .getRange(
          range.startRow,
          range.startColumn,
          range.endRow - range.startRow + 1,
          range.endColumn - range.startColumn + 1,
        )
        .activate();
    const orderRules = [{ type: sorting[1] === "asc" ? SortType.ASC : SortType.DESC, colIndex: selected.startColumn }];
    injector.get(SheetsSortService).applySort({ range, orderRules }, BOOK_ID, sheet.getSheetId());
    throw new CanceledError();
  });
}

function rowsAround(
  injector: Injector,
  sheetId: string,
  selected: IRange,
  tables: readonly { readonly range: IRange }[],
): IRange {
  const table = tables.find(
    ({ range }) =>
      selected.startRow <= range.endRow &&
      selected.endRow >= range.startRow &&
      selected.startColumn <= range.endColumn &&
      selected.endColumn >= range.startColumn,
  );
  if (table !== undefined) return within({ ...table.range, startRow: table.range.startRow + 1 }, selected);
  const book = injector.get(IUniverInstanceService).getCurrentUnitOfType<Workbook>(UniverInstanceType.UNIVER_SHEET);
  const sheet = book?.getSheetBySheetId(sheetId);
  if (!sheet) return selected;
  const around = expandToContinuousRange(selected, { up: true, down: true, left: true, right: true }, sheet);
  const isText = (row: number, column: number): boolean => {
    const value = sheet.getCell(row, column)?.v;
    return typeof value === "string" && Number.isNaN(Number(value));
  };
  const columns = Array.from({ length: around.endColumn - around.startColumn + 1 }, (_, i) => around.startColumn + i);
  const filled = (row: number) => columns.filter((column) => (sheet.getCell(row, column)?.v ?? "") !== "");
  const heads = filled(around.startRow);
  const isHeading =
    around.endRow > around.startRow &&
    heads.every((column) => isText(around.startRow, column)) &&
    filled(around.startRow + 1).some((column) => !isText(around.startRow + 1, column));
  return within(isHeading ? { ...around, startRow: around.startRow + 1 } : around, selected);
}

/** Where several rows are selected, those alone. */
function within(whole: IRange, { startRow, endRow }: IRange): IRange {
  const [first, last] = [Math.max(whole.startRow, startRow), Math.min(whole.endRow, endRow)];
  const { startColumn, endColumn } = whole;
  return last > first
    ? { startRow: first, endRow: last, startColumn, endColumn }
    : { startRow: whole.startRow, endRow: whole.endRow, startColumn, endColumn };
}
