import { columnPlaces, type ColumnPlaces } from "../workbook/columnPlaces";
import { columnWidth } from "../workbook/columnWidth";
import { parseArea, type Area } from "../workbook/cellRef";
import { isFormula, type ColumnsEdit } from "../workbook/edits";
import { ownColumns, type OwnColumn } from "../workbook/ownMarks";
import { isDateFormat } from "../workbook/sheetValue";
import { entered, points, writeCells, type Sender } from "./excelCells";
import { askFloating, floatingBeside } from "./excelFloating";
import { formerCells, type Former, type FormerWidth } from "./excelFormer";
import { areaOf, CORNERS, rangeAt, readCells, type HostView, type Matrix, type CellRequest } from "./excelRead";

/** Where columns go in the open workbook, and what stands there now. */
export interface ColumnPlan {
  readonly sheet: string;
  readonly edit: ColumnsEdit;
  readonly places: ColumnPlaces;
  /** Cells of columns that are written again, emptied or dropped. */
  readonly former: readonly Former[];
  readonly widths: readonly FormerWidth[];
  /** Columns that were not there. */
  readonly fresh: readonly Area[];
  /** Number formats of the columns whose look is taken, beside the survey's rows. */
  readonly formats: ReadonlyMap<number, Matrix>;
  readonly filtered: boolean;
}

/**
 * Finds places for the columns by what stands on the sheet.
 *
 * @throws InputError when the columns do not fit the sheet
 */
export async function planExcelColumns(
  context: Excel.RequestContext,
  look: HostView,
  sheet: string,
  edit: ColumnsEdit,
): Promise<ColumnPlan> {
  const used = look.used.get(sheet);
  const table = look.tables.find(({ name }) => name.toLowerCase() === edit.table?.toLowerCase());
  const own = ownColumns(look).filter((mark) => mark.sheet === sheet && mark.headingRow === edit.headingRow);
  const from = Math.min((table?.area.right ?? edit.lastColumn) + 1, ...own.map(({ column }) => column));
  const beside: Area = {
    top: Math.min(edit.headingRow, table?.area.top ?? edit.headingRow),
    bottom: Math.max(edit.lastRow, table?.area.bottom ?? 0, ...own.map(({ lastRow }) => lastRow)),
    left: from,
    right: Math.max(from, used?.right ?? 0),
  };
  const right = Math.max(beside.right, table?.area.right ?? edit.lastColumn);
  const worksheet = context.workbook.worksheets.getItem(sheet);
  const filter = worksheet.autoFilter.load("isDataFiltered");
  const filterRange = filter.getRangeOrNullObject().load(CORNERS);
  const merges = rangeAt(context, sheet, beside).getMergedAreasOrNullObject().load("address");
  const floats = askFloating(context, sheet);
  const [headings, standing] = await readCells(context, [
    { sheet, area: { top: edit.headingRow, bottom: edit.headingRow, left: 1, right }, what: "values" },
    { sheet, area: beside, what: "formulas" },
  ]);
  const floating = await floatingBeside(context, floats, beside);
  const places = columnPlaces(
    {
      book: { ...look, grid: noGrid },
      sheet,
      headings: headings![0]!,
      merged: merges.isNullObject ? [] : areasIn(merges.address),
      floating,
      filter: filterRange.isNullObject ? undefined : areaOf(filterRange),
      used: (top, bottom, after) => ({
        used: usedColumns(standing!.slice(top - beside.top, bottom - beside.top + 1), from, after),
        last: used?.right ?? 0,
      }),
    },
    edit,
  );
  return { sheet, edit, places, filtered: filter.isDataFiltered, ...(await standingNow(context, sheet, edit, places)) };
}

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
    if (!at.replaced) await writeCells(sender, sheet, heading, "formulas", [[entered(at.heading)]]);
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

function noGrid(): never {
  throw new RangeError("places are found without the cells");
}

/** `Survey!A1:F1,Survey!A3:B3`: the rectangles of several. */
function areasIn(address: string): Area[] {
  return [...address.matchAll(/!\$?([A-Z]+\$?\d+(?::\$?[A-Z]+\$?\d+)?)(?=,|$)/g)].flatMap(
    ([, area]) => parseArea(area!) ?? [],
  );
}

function usedColumns(rows: Matrix, from: number, after: number): ReadonlySet<number> {
  const used = new Set<number>();
  for (const row of rows)
    row.forEach((cell, place) => {
      if (from + place > after && cell !== "") used.add(from + place);
    });
  return used;
}

async function standingNow(
  context: Excel.RequestContext,
  sheet: string,
  edit: ColumnsEdit,
  { placed, dropped, emptied, table, like }: ColumnPlaces,
): Promise<Pick<ColumnPlan, "former" | "widths" | "fresh" | "formats">> {
  const again = placed.flatMap(({ before }) =>
    before === undefined ? [] : [ownArea(before, Math.max(before.lastRow, edit.lastRow))],
  );
  const standing = [
    ...again,
    ...dropped.map((mark) => droppedArea(mark, table)),
    ...emptied.map((mark) => ownArea(mark, mark.lastRow)),
  ];
  const fresh = placed.filter(({ at }) => !at.replaced);
  const widths = fresh.map(({ at }) => ({
    column: at.column,
    format: rangeAt(context, sheet, cellArea(1, at.column)).format.load("columnWidth"),
  }));
  const likes = new Set(
    fresh.flatMap(({ column }) => (column.format === undefined ? (column.like ?? like ?? []) : [])),
  );
  const requests = [...likes].map((column): CellRequest => ({
    sheet,
    area: { top: edit.firstRow, bottom: edit.lastRow, left: column, right: column },
    what: "numberFormat",
  }));
  const formats = await readCells(context, requests);
  const former = await formerCells(
    context,
    standing.map((area) => ({ sheet, area })),
  );
  if (requests.length + standing.length === 0) await context.sync();
  const bottom = Math.max(edit.lastRow, table?.grows ? table.area.bottom : 0);
  return {
    former: withoutFilled(former, [...dropped, ...placed.flatMap(({ before }) => before ?? [])], edit.firstRow),
    widths: widths.map(({ column, format }) => ({ sheet, column, points: format.columnWidth })),
    fresh: fresh.map(({ at }) => ({ top: edit.headingRow, bottom, left: at.column, right: at.column })),
    formats: new Map([...likes].map((column, place) => [column, formats[place]!])),
  };
}

/** Cells that one formula fills come back with it: written again, they would be in its way. */
function withoutFilled(former: readonly Former[], marks: readonly OwnColumn[], firstRow: number): readonly Former[] {
  const filled = marks.filter(({ holds }) => holds === "one formula").map(({ column }) => column);
  const first = Math.min(...filled);
  return former.map((cells) => {
    const { left, top } = cells.area;
    if (!filled.includes(left)) return cells;
    const isKept = (row: number) => row < firstRow || (left === first && row === firstRow);
    return { ...cells, formulas: cells.formulas.map((row, r) => (isKept(top + r) ? row : row.map(() => ""))) };
  });
}

/** The formats of the neighbour; one of a date or a text becomes General. */
function plainFormats(formats: Matrix | undefined): Matrix | undefined {
  return formats?.map((row) =>
    row.map((format) => (format === "@" || isDateFormat(String(format)) ? "General" : format)),
  );
}

function ownArea({ column, headingRow }: OwnColumn, bottom: number): Area {
  return { top: headingRow, bottom, left: column, right: column };
}

function droppedArea(mark: OwnColumn, table: ColumnPlaces["table"]): Area {
  return ownArea(mark, table ? table.info.area.bottom : mark.lastRow);
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

function cellArea(row: number, column: number): Area {
  return { top: row, bottom: row, left: column, right: column };
}
