import type { ColumnPlaces } from "../workbook/columnPlaces";
import { columnWidth } from "../workbook/columnWidth";
import type { Area } from "../workbook/cellRef";
import { isFormula } from "../workbook/edits";
import type { OwnColumn } from "../workbook/ownMarks";
import { isDateFormat } from "../workbook/sheetValue";
import { entered, points, writeCells, type Sender } from "./excelCells";
import { rangeAt, type Matrix } from "./excelRead";
import { type ColumnPlan, ownArea, droppedArea } from "./planExcelColumns";

/**
 * Puts the columns there. Their look is copied before their number format, and that before their cells, because a cell
 * with a text format takes no formula.
 *
 * @returns what the user should be told
 */
export async function writeExcelColumns(sender: Sender, plan: ColumnPlan): Promise<readonly string[]> {
  const { context, put } = sender;
  const { sheet, edit, places } = plan;
  const { placed, dropped, emptied, table } = places;
  const step = (work: () => void) => put(SMALL, work);
  // Before anything is cleared: Excel gives every column of a table a heading at once.
  if (table && table.area.right !== table.info.area.right)
    await step(() => context.workbook.tables.getItem(table.info.name).resize(rangeAt(context, sheet, table.area)));
  for (const mark of dropped) await step(() => rangeAt(context, sheet, droppedArea(mark, table)).clear("All"));
  for (const mark of emptied)
    await step(() => rangeAt(context, sheet, emptiedArea(mark, table !== undefined)).clear("Contents"));
  for (const { column, at, before } of placed) {
    const at1 = { left: at.column, right: at.column };
    const heading = { ...at1, top: edit.headingRow, bottom: edit.headingRow };
    const cells = { ...at1, top: edit.firstRow, bottom: edit.lastRow };
    const like = at.replaced ? undefined : (column.like ?? places.like);
    if (like !== undefined) {
      for (const area of [heading, cells])
        await step(() =>
          rangeAt(context, sheet, area).copyFrom(
            rangeAt(context, sheet, { ...area, left: like, right: like }),
            "Formats",
          ),
        );
    }
    const { format } = column;
    const formats = format === undefined ? plainFormats(plan.formats.get(like ?? 0)) : column.cells.map(() => [format]);
    if (formats !== undefined) await writeCells(sender, sheet, cells, "numberFormat", formats);
    if (!at.replaced || at.renamedFrom !== undefined)
      await writeCells(sender, sheet, heading, "formulas", [[entered(at.heading)]]);
    // What one formula fills is left to Excel: a value in its way is #SPILL!.
    const filled = edit.holds === "one formula" ? column.cells.filter(isFormula) : column.cells;
    await writeCells(
      sender,
      sheet,
      { ...cells, bottom: cells.top + filled.length - 1 },
      "formulas",
      filled.map((content) => [entered(content)]),
    );
    const { choices } = column;
    if (choices !== undefined && !at.replaced && cells.bottom >= cells.top)
      await step(() => offerChoices(rangeAt(context, sheet, cells), choices));
    const below = { ...at1, top: edit.lastRow + 1, bottom: rowsBelow(before, table) };
    if (below.bottom >= below.top) await step(() => rangeAt(context, sheet, below).clear("Contents"));
    const width = points(column.width ?? columnWidth(at.heading, column.cells));
    if (!at.replaced) await step(() => (rangeAt(context, sheet, heading).format.columnWidth = width));
  }
  return [...places.notes, ...(await writeFilter(sender, plan))];
}

/** A list to choose from in each cell, which takes any other text too. */
function offerChoices({ dataValidation }: Excel.Range, formula: string): void {
  const words = /^"(.*)"$/.exec(formula)?.[1];
  dataValidation.rule = { list: { inCellDropDown: true, source: words ?? `=${formula}` } };
  dataValidation.ignoreBlanks = true;
  dataValidation.errorAlert = { showAlert: false, style: "Information", title: "", message: "" };
}

const SMALL = 200;

async function writeFilter({ context, put }: Sender, plan: ColumnPlan): Promise<readonly string[]> {
  const { filter } = plan.places;
  if (filter === undefined) return [];
  if (plan.filtered)
    return ["the filter of the sheet leaves the new columns out: clear it and set it again before you sort the rows"];
  await put(SMALL, () => {
    context.workbook.worksheets.getItem(plan.sheet).autoFilter.apply(rangeAt(context, plan.sheet, filter.to));
  });
  return [];
}

/** The formats of the neighbour; one of a date or a text becomes General. */
function plainFormats(formats: Matrix | undefined): Matrix | undefined {
  return formats?.map((row) =>
    row.map((format) => (format === "@" || isDateFormat(String(format)) ? "General" : format)),
  );
}

/** A column that stays in its table keeps its heading, which the table names. */
function emptiedArea(mark: OwnColumn, inTable: boolean): Area {
  const area = ownArea(mark, mark.lastRow);
  return inTable ? { ...area, top: area.top + 1 } : area;
}

/** The last row of the earlier run, but for a row of totals. */
function rowsBelow(before: OwnColumn | undefined, table: ColumnPlaces["table"]): number {
  const totals = table?.info.totalsRow ? table.info.area.bottom : Infinity;
  return Math.min(before?.lastRow ?? 0, totals - 1);
}
