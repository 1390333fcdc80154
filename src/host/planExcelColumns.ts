import { columnPlaces, type ColumnPlaces } from "../workbook/columnPlaces";
import { parseArea, type Area } from "../workbook/cellRef";
import type { ColumnsEdit } from "../workbook/edits";
import { ownColumns, type OwnColumn } from "../workbook/ownMarks";
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

export function ownArea({ column, headingRow }: OwnColumn, bottom: number): Area {
  return { top: headingRow, bottom, left: column, right: column };
}

export function droppedArea(mark: OwnColumn, table: ColumnPlaces["table"]): Area {
  return ownArea(mark, table ? table.info.area.bottom : mark.lastRow);
}

function cellArea(row: number, column: number): Area {
  return { top: row, bottom: row, left: column, right: column };
}
