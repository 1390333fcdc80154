import type { IFilterColumn } from "@univerjs/sheets-filter";
import type { FWorksheet } from "@univerjs/sheets/facade";
import type { RowsByColumn } from "../host/port";

/**
 * Filters a survey in the grid by a number of one of its columns: its table, or the filter of the sheet.
 *
 * @param number undefined to show every row again
 */
export async function showOnly(
  sheet: FWorksheet,
  { column, headingRow, lastRow, firstColumn, lastColumn }: RowsByColumn,
  number: number | undefined,
): Promise<void> {
  const table = sheet.getTableByCell(headingRow - 1, column - 1);
  if (table !== undefined) {
    const at = column - 1 - table.range.startColumn;
    if (number === undefined) await sheet.resetFilter(table.id, at);
    else {
      // A plain number is compared as one, a formatted one by its text.
      const manual = { filterType: "manual", values: [number, String(number)] } as unknown as Parameters<
        typeof sheet.setTableFilter
      >[2];
      await sheet.setTableFilter(table.id, at, manual);
    }
    return;
  }
  const left = Math.min(firstColumn, column);
  const width = Math.max(lastColumn, column) - left + 1;
  const found = sheet.getFilter();
  const isOver = found !== null && found.getRange().getLastColumn() >= column - 1;
  if (number === undefined) return void found?.removeColumnFilterCriteria(column - 1);
  if (found !== null && !isOver) found.remove();
  const filter = isOver
    ? found
    : sheet.getRange(headingRow - 1, left - 1, lastRow - headingRow + 1, width).createFilter();
  // The filter of a sheet goes by what cells show, that of a table by what they hold.
  const cells = sheet.getRange(headingRow, column - 1, lastRow - headingRow, 1);
  const shown = cells.getDisplayValues().flat();
  const wanted = [...new Set(cells.getValues().flatMap(([value], row) => (value === number ? [shown[row]!] : [])))];
  const criteria: IFilterColumn = { colId: column - 1, filters: { filters: wanted } };
  filter?.setColumnFilterCriteria(column - 1, criteria);
}
