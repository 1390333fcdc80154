import type { Injector } from "@univerjs/core";
import { TableManager, type ITableFilterItem } from "@univerjs/sheets-table";
import type { FWorkbook, FWorksheet } from "@univerjs/sheets/facade";
import { areaAfter, placeAfter, type Shift } from "../workbook/shift/shift";
import { areaOf, criteriaOf } from "./sheetFilter";

/**
 * What the rows of a workbook are filtered by. The file does not hold it, so a workbook that is shown again after a write
 * has lost it.
 *
 * @returns sets the same filters in the workbook that is shown by then: each at the column with its heading, or at its
 *   place where no heading is the same. Rows or columns may have come or gone; a filter of a column that went goes too.
 */
export function keptFilters(
  workbook: FWorkbook,
  injector: Injector,
): (again: FWorkbook, shift?: Shift) => Promise<void> {
  const set = workbook.getSheets().flatMap((sheet) => [...ofTables(sheet, injector), ...ofSheet(sheet)]);
  return async (again, shift) => {
    for (const each of set) {
      const sheet = again.getSheetByName(each.sheet);
      if (sheet !== null) await each.setIn(sheet, shift?.sheet === each.sheet ? shift : undefined);
    }
  };
}

interface KeptFilter {
  readonly sheet: string;
  readonly setIn: (sheet: FWorksheet, shift: Shift | undefined) => Promise<void> | void;
}

function ofTables(sheet: FWorksheet, injector: Injector): readonly KeptFilter[] {
  const manager = injector.get(TableManager);
  return sheet.getSubTableInfos().flatMap(({ unitId, id, name, columns }) => {
    const filters = manager.getTableById(unitId, id)?.getTableFilters();
    return columns.flatMap(({ displayName }, place): readonly KeptFilter[] => {
      const filter: ITableFilterItem | undefined = filters?.getColumnFilter(place);
      if (filter === undefined) return [];
      const setIn: KeptFilter["setIn"] = async (same, shift) => {
        const table = same.getSubTableInfos().find((each) => each.name === name);
        const headings = table?.columns.map((column) => column.displayName) ?? [];
        const at = placeOf(displayName, shift?.axis === "column" ? undefined : place, headings);
        if (table !== undefined && at !== undefined) await same.setTableFilter(table.id, at, filter);
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
  const before = headingsOf(sheet, area.top);
  const setIn: KeptFilter["setIn"] = (same, shift) => {
    const hasHeadings = shift?.axis !== "row" || placeAfter(area.top, shift) !== undefined;
    const moved = shift === undefined ? area : areaAfter(area, shift);
    if (moved === undefined || !hasHeadings) return;
    const { top, left, bottom, right } = moved;
    const now = headingsOf(same, top);
    const again =
      same.getFilter() ?? same.getRange(top - 1, left - 1, bottom - top + 1, right - left + 1).createFilter();
    for (const each of kept) {
      const colId =
        shift?.axis === "column" ? indexAfter(each.colId, shift) : placeOf(before[each.colId] ?? "", each.colId, now);
      if (colId !== undefined) again?.setColumnFilterCriteria(colId, { ...each, colId });
    }
  };
  return [{ sheet: sheet.getSheetName(), setIn }];
}

function headingsOf(sheet: FWorksheet, row: number): readonly string[] {
  return sheet.getRange(row - 1, 0, 1, sheet.getMaxColumns()).getDisplayValues()[0] ?? [];
}

/** Where a column is after columns came or went, both counted from 0. */
function indexAfter(index: number, shift: Shift): number | undefined {
  const place = placeAfter(index + 1, shift);
  return place === undefined ? undefined : place - 1;
}

/** Where a heading is now: at its place, or the first that is the same; its place, where that is known, if none is. */
function placeOf(heading: string, place: number | undefined, now: readonly string[]): number | undefined {
  if (place !== undefined && now[place] === heading) return place;
  const found = now.indexOf(heading);
  return found < 0 ? place : found;
}
