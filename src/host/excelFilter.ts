/// <reference types="office-js" />
import type { RowsByColumn } from "./port";
import { lookAt, rangeAt } from "./excelRead";

/**
 * Filters a survey by a number of one of its columns: its table, or the filter of the sheet.
 *
 * @param number undefined to show every row again
 */
export async function showOnly(
  context: Excel.RequestContext,
  { sheet, column, headingRow, lastRow, firstColumn, lastColumn }: RowsByColumn,
  number: number | undefined,
): Promise<void> {
  const { tables } = await lookAt(context);
  const inTable = tables.find(
    ({ sheet: own, area }) => own === sheet && area.top === headingRow && area.left <= column && column <= area.right,
  );
  if (inTable !== undefined) {
    const { filter } = context.workbook.tables.getItem(inTable.name).columns.getItemAt(column - inTable.area.left);
    if (number === undefined) filter.clear();
    else filter.applyCustomFilter(`=${number}`);
  } else {
    const { autoFilter } = context.workbook.worksheets.getItem(sheet);
    const left = Math.min(firstColumn, column);
    const area = { top: headingRow, left, bottom: lastRow, right: Math.max(lastColumn, column) };
    const criteria = number === undefined ? undefined : { filterOn: "Custom" as const, criterion1: `=${number}` };
    if (criteria === undefined) autoFilter.clearCriteria();
    else autoFilter.apply(rangeAt(context, sheet, area), column - left, criteria);
  }
  await context.sync();
}
