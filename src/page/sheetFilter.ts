import type { IFilterColumn } from "@univerjs/sheets-filter";
import type { FRange, FWorksheet } from "@univerjs/sheets/facade";
import type { Area } from "../workbook/cellRef";

type Filter = NonNullable<ReturnType<FWorksheet["getFilter"]>>;

export function areaOf(range: FRange): Area {
  return {
    top: range.getRow() + 1,
    left: range.getColumn() + 1,
    bottom: range.getLastRow() + 1,
    right: range.getLastColumn() + 1,
  };
}

/** What a filter goes by, column by column. */
export function criteriaOf(filter: Filter, { left, right }: Area): readonly IFilterColumn[] {
  return Array.from({ length: right - left + 1 }, (_, place) => left - 1 + place).flatMap((colId) => {
    const criteria = filter.getColumnFilterCriteria(colId);
    return criteria === null || criteria === undefined ? [] : [{ ...criteria, colId }];
  });
}
