/// <reference types="office-js" />
import type { RowsByColumn } from "./port";
import { areaOf, CORNERS, lookAt, rangeAt } from "./excelRead";
import { filterWith } from "./filterWith";

/**
 * Filters a survey by what one of its columns holds: its table, or the filter of the sheet. A filter of the user that ends
 * before the column takes it in, and goes on by what it went by.
 *
 * @param value undefined to show every row again
 * @throws InputError when the sheet has a filter elsewhere
 */
export async function showOnly(
  context: Excel.RequestContext,
  { sheet, column, headingRow, lastRow, firstColumn, lastColumn }: RowsByColumn,
  value: number | string | undefined,
): Promise<void> {
  const { tables } = await lookAt(context);
  const inTable = tables.find(
    ({ sheet: own, area }) => own === sheet && area.top === headingRow && area.left <= column && column <= area.right,
  );
  if (inTable !== undefined) {
    const { filter } = context.workbook.tables.getItem(inTable.name).columns.getItemAt(column - inTable.area.left);
    if (value === undefined) filter.clear();
    else filter.applyCustomFilter(`=${value}`);
  } else {
    const { autoFilter } = context.workbook.worksheets.getItem(sheet);
    const survey = {
      top: headingRow,
      left: Math.min(firstColumn, column),
      bottom: lastRow,
      right: Math.max(lastColumn, column),
    };
    if (value === undefined) autoFilter.clearCriteria();
    else {
      autoFilter.load("criteria");
      const range = autoFilter.getRangeOrNullObject().load(CORNERS);
      await context.sync();
      const standing = range.isNullObject ? undefined : areaOf(range);
      const area = filterWith(survey, standing);
      const cells = rangeAt(context, sheet, area);
      // A filter over other cells starts empty, so what the former one went by is set again.
      if (area !== standing && standing !== undefined)
        autoFilter.criteria.forEach((criteria, place) => {
          if (criteria?.filterOn) autoFilter.apply(cells, standing.left + place - area.left, criteria);
        });
      autoFilter.apply(cells, column - area.left, { filterOn: "Custom", criterion1: `=${value}` });
    }
  }
  await context.sync();
}
