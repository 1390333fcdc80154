import type { IFilterColumn } from "@univerjs/sheets-filter";
import type { FWorksheet } from "@univerjs/sheets/facade";
import { filterWith } from "../host/filterWith";
import type { RowsByColumn } from "../host/port";
import { areaOf, criteriaOf } from "./sheetFilter";

/**
 * Filters a survey in the grid by what one of its columns holds: its table, or the filter of the sheet. A filter of the user
 * that ends before the column takes it in, and goes on by what it went by.
 *
 * @param value undefined to show every row again
 * @throws InputError when the sheet has a filter elsewhere
 */
export async function showOnly(
  sheet: FWorksheet,
  { column, headingRow, lastRow, firstColumn, lastColumn }: RowsByColumn,
  value: number | string | undefined,
): Promise<void> {
  const table = sheet.getTableByCell(headingRow - 1, column - 1);
  if (table !== undefined) {
    const at = column - 1 - table.range.startColumn;
    if (value === undefined) await sheet.resetFilter(table.id, at);
    else {
      // A plain number is compared as one, a formatted one by its text.
      const manual = { filterType: "manual", values: [value, String(value)] } as unknown as Parameters<
        typeof sheet.setTableFilter
      >[2];
      await sheet.setTableFilter(table.id, at, manual);
    }
    return;
  }
  const found = sheet.getFilter();
  if (value === undefined) return void found?.removeColumnFilterCriteria(column - 1);
  const survey = {
    top: headingRow,
    bottom: lastRow,
    left: Math.min(firstColumn, column),
    right: Math.max(lastColumn, column),
  };
  const standing = found === null ? undefined : areaOf(found.getRange());
  const area = filterWith(survey, standing);
  const kept = found === null ? [] : criteriaOf(found, standing!);
  if (area !== standing) found?.remove();
  const filter =
    area === standing
      ? found
      : sheet
          .getRange(area.top - 1, area.left - 1, area.bottom - area.top + 1, area.right - area.left + 1)
          .createFilter();
  if (area !== standing) for (const each of kept) filter?.setColumnFilterCriteria(each.colId, each);
  // The filter of a sheet goes by what cells show, that of a table by what they hold.
  const cells = sheet.getRange(headingRow, column - 1, lastRow - headingRow, 1);
  const shown = cells.getDisplayValues().flat();
  const wanted = [...new Set(cells.getValues().flatMap(([held], row) => (held === value ? [shown[row]!] : [])))];
  const criteria: IFilterColumn = { colId: column - 1, filters: { filters: wanted } };
  filter?.setColumnFilterCriteria(column - 1, criteria);
}
