/// <reference types="office-js" />
import { cellName, MOST_COLUMNS, MOST_ROWS } from "../workbook/cellRef";

/** Rows above and columns at the left that stay in sight when a sheet is scrolled. */
export interface InSight {
  readonly rows: number;
  readonly columns: number;
}

export async function inSight(context: Excel.RequestContext, sheet: string): Promise<InSight> {
  const panes = context.workbook.worksheets.getItem(sheet).freezePanes;
  const place = panes.getLocationOrNullObject().load(["rowCount", "columnCount"]);
  await context.sync();
  if (place.isNullObject) return { rows: 0, columns: 0 };
  const { rowCount, columnCount } = place;
  // Excel answers whole columns where no row is frozen, and whole rows where no column is.
  return { rows: rowCount === MOST_ROWS ? 0 : rowCount, columns: columnCount === MOST_COLUMNS ? 0 : columnCount };
}

export function keepInSight(context: Excel.RequestContext, sheet: string, { rows, columns }: InSight): void {
  const panes = context.workbook.worksheets.getItem(sheet).freezePanes;
  if (rows > 0 && columns > 0) panes.freezeAt(`A1:${cellName(rows, columns)}`);
  else if (rows > 0) panes.freezeRows(rows);
  else if (columns > 0) panes.freezeColumns(columns);
  else panes.unfreeze();
}
