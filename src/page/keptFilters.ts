import type { Injector } from "@univerjs/core";
import { TableManager, type ITableFilterItem } from "@univerjs/sheets-table";
import type { FWorkbook, FWorksheet } from "@univerjs/sheets/facade";
import { areaOf, criteriaOf } from "./sheetFilter";

/**
 * What the rows of a workbook are filtered by. The file does not hold it, so a workbook that is shown again after a write
 * has lost it.
 *
 * @returns sets the same filters in the workbook that is shown by then: each at the column with its heading, or at its
 *   place where no heading is the same
 */
export function keptFilters(workbook: FWorkbook, injector: Injector): (again: FWorkbook) => Promise<void> {
  const set = workbook.getSheets().flatMap((sheet) => [...ofTables(sheet, injector), ...ofSheet(sheet)]);
  return async (again) => {
    for (const each of set) {
      const sheet = again.getSheetByName(each.sheet);
      if (sheet !== null) await each.setIn(sheet);
    }
  };
}

interface KeptFilter {
  readonly sheet: string;
  readonly setIn: (sheet: FWorksheet) => Promise<void> | void;
}

function ofTables(sheet: FWorksheet, injector: Injector): readonly KeptFilter[] {
  const manager = injector.get(TableManager);
  return sheet.getSubTableInfos().flatMap(({ unitId, id, name, columns }) => {
    const filters = manager.getTableById(unitId, id)?.getTableFilters();
    return columns.flatMap(({ displayName }, place): readonly KeptFilter[] => {
      const filter: ITableFilterItem | undefined = filters?.getColumnFilter(place);
      if (filter === undefined) return [];
      const setIn = async (same: FWorksheet): Promise<void> => {
        const table = same.getSubTableInfos().find((each) => each.name === name);
        const headings = table?.columns.map((column) => column.displayName) ?? [];
        if (table !== undefined) await same.setTableFilter(table.id, placeOf(displayName, place, headings), filter);
      };
      return [{ sheet: sheet.getSheetName(), setIn }];
    });
  });
}

function ofSheet(sheet: FWorksheet): readonly KeptFilter[] {
  const filter = sheet.getFilter();
  if (filter === null) return [];
  const area = areaOf(filter.getRange());
  const kept = criteriaOf(filter, area);
  if (kept.length === 0) return [];
  const { top, left, bottom, right } = area;
  const before = headingsOf(sheet, top);
  const setIn = (same: FWorksheet): void => {
    const now = headingsOf(same, top);
    const again =
      same.getFilter() ?? same.getRange(top - 1, left - 1, bottom - top + 1, right - left + 1).createFilter();
    for (const each of kept) {
      const colId = placeOf(before[each.colId] ?? "", each.colId, now);
      again?.setColumnFilterCriteria(colId, { ...each, colId });
    }
  };
  return [{ sheet: sheet.getSheetName(), setIn }];
}

function headingsOf(sheet: FWorksheet, row: number): readonly string[] {
  return sheet.getRange(row - 1, 0, 1, sheet.getMaxColumns()).getDisplayValues()[0] ?? [];
}

/** Where a heading is now: at its place, or the first that is the same; its place where none is. */
function placeOf(heading: string, place: number, now: readonly string[]): number {
  const found = now[place] === heading ? place : now.indexOf(heading);
  return found < 0 ? place : found;
}
