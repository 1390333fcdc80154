import { ownColumns } from "../workbook/ownMarks";
import type { SheetValue } from "../workbook/sheetValue";
import type { PaneSurvey } from "./paneState";

/** Whether a column of ours holds a cell that is being calculated. */
export function isBusy({ book, chosen }: PaneSurvey): boolean {
  const own = ownColumns(book).filter(({ sheet }) => sheet === chosen.sheet.name);
  if (own.length === 0) return false;
  const { rows } = book.grid(chosen.sheet.name);
  return own.some(({ column, headingRow, lastRow }) =>
    rows.slice(headingRow, lastRow).some((row) => isBusyCell(row[column - 1])),
  );
}

function isBusyCell(value: SheetValue | undefined): boolean {
  return typeof value === "object" && value !== null && "error" in value && value.error === "#BUSY!";
}
