import { InputError } from "../measure/errors";
import { areaName, columnLetters, overlap, refuseTooWide, type Area } from "./cellRef";
import { isFormula, type CellContent, type ColumnsEdit, type NewColumn, type PlacedColumn } from "./edits";
import type { TableInfo, Workbook } from "./openWorkbook";
import { ownColumns, type OwnColumn } from "./ownMarks";
import { readSheet } from "./readSheet";
import { sheetMatters, usedColumns, type CellChange, type SheetText } from "./sheetEditor";
import { columnWidth } from "./columnWidth";
import type { StyleEditor } from "./styleEditor";
import type { TableChange } from "./tableEditor";

/** What adding the columns changes: cells and widths of the sheet, its filter, its table, the marks. */
export interface ColumnPlan {
  readonly cells: ReadonlyMap<number, readonly CellChange[]>;
  readonly widths: ReadonlyMap<number, number>;
  readonly filter: { readonly from: Area; readonly to: Area } | undefined;
  readonly table: { readonly info: TableInfo; readonly change: TableChange } | undefined;
  readonly placed: readonly PlacedColumn[];
  /** Marks for the names: where each column now lies. */
  readonly marks: readonly { readonly asked: string; readonly area: Area }[];
  /** Marks of an earlier run that are written anew or gone with their column. */
  readonly staleMarks: readonly string[];
  readonly notes: readonly string[];
}

/**
 * Where the columns go. One from an earlier run, known by its mark, is written again in its place; a column of that
 * run that is no longer asked for goes, or is emptied when the user has put something right of it in the table.
 *
 * @throws InputError when the columns do not fit the sheet
 */
export function planColumns(workbook: Workbook, text: SheetText, edit: ColumnsEdit, styles: StyleEditor): ColumnPlan {
  const rowCount = edit.lastRow - edit.firstRow + 1;
  if (edit.columns.some((column) => column.cells.length !== rowCount))
    throw new RangeError("a column with other rows than the survey");
  const { table, note } = growableTable(workbook, edit);
  const { merged, filter } = sheetMatters(text);
  const headings = readSheet(workbook, edit.sheet, { lastRow: edit.headingRow }).rows[edit.headingRow - 1] ?? [];
  const headingAt = (column: number) => String(headings[column - 1] ?? "");
  const own = ownColumns(workbook).filter((mark) => mark.sheet === text.sheet && mark.headingRow === edit.headingRow);
  const { reused, left } = matched(edit.columns, own, headingAt);
  const dropped = table ? tail(left, table.area.right) : left;
  const emptied = left.filter((mark) => !dropped.includes(mark));
  const edge = Math.max(
    table ? table.area.right - dropped.length : edit.lastColumn,
    ...[...reused.values(), ...emptied].map((mark) => mark.column),
  );
  const fresh = edit.columns.filter((column) => !reused.has(column));
  const rows = { top: table?.area.top ?? edit.headingRow, bottom: table?.area.bottom ?? edit.lastRow };
  const room = findRoom(workbook, text, { ...rows, after: edge, count: fresh.length, gone: dropped, table, merged });
  const inTable = table !== undefined && room.start === edge + 1;
  refuseTooWide(room.start + fresh.length - 1);

  const gone = new Set(dropped.map((mark) => mark.column));
  const taken = new Set(headings.flatMap((_, i) => (gone.has(i + 1) ? [] : [headingAt(i + 1).toLowerCase()])));
  for (const name of table?.columns.slice(0, table.columns.length - dropped.length) ?? [])
    taken.add(name.toLowerCase());
  const placed = edit.columns.map((column) => {
    const mark = reused.get(column);
    if (mark)
      return {
        column,
        at: { heading: headingAt(mark.column), asked: column.heading, column: mark.column, replaced: true },
      };
    const heading = uniqueHeading(column.heading, taken);
    return {
      column,
      at: { heading, asked: column.heading, column: room.start + fresh.indexOf(column), replaced: false },
    };
  });

  const cells = new Map<number, CellChange[]>();
  const change = (row: number, made: CellChange) => {
    const list = cells.get(row);
    if (list) list.push(made);
    else cells.set(row, [made]);
  };
  const ownColumnsNow = new Set(own.map((mark) => mark.column));
  const like = lastOther(
    edge,
    ownColumnsNow,
    placed.map(({ at }) => at.column),
  );
  for (const mark of [...dropped, ...emptied]) emptyColumn(mark, dropped.includes(mark), table, change);
  for (const { column, at } of placed) {
    const styled = styler(styles, column);
    const from = at.replaced ? undefined : (column.like ?? like);
    const likeness = from === undefined ? {} : { like: from };
    if (!at.replaced)
      change(edit.headingRow, { column: at.column, content: at.heading, ...likeness, styled: (s) => s });
    column.cells.forEach((content, i) => {
      change(edit.firstRow + i, { column: at.column, content, ...likeness, styled: styled(content, at.replaced) });
    });
    const before = reused.get(column);
    for (let row = edit.lastRow + 1; before && row <= before.lastRow; row++) {
      if (!(table?.totalsRow && row === table.area.bottom))
        change(row, { column: at.column, content: null, styled: (s) => s });
    }
    if (inTable && table.totalsRow && !at.replaced) {
      change(table.area.bottom, { column: at.column, content: null, ...likeness, styled: (s) => s });
    }
  }
  for (const list of cells.values()) list.sort((a, b) => a.column - b.column);

  const right = Math.max(edge, ...placed.map(({ at }) => at.column));
  const movedNote = room.note === undefined ? [] : [room.note];
  return {
    cells,
    widths: new Map(
      placed
        .filter(({ at }) => !at.replaced)
        .map(({ column, at }) => [at.column, column.width ?? columnWidth(at.heading, column.cells)]),
    ),
    filter: table || !filter ? undefined : grownFilter(filter, edit, own, room.start === edge + 1 ? right : edge),
    table: table && {
      info: table,
      change: {
        area: { ...table.area, right: inTable ? edge + fresh.length : edge },
        totalsRow: table.totalsRow,
        dropped: dropped.length,
        added: inTable
          ? placed
              .filter(({ at }) => !at.replaced)
              .map(({ column, at }) => ({ name: at.heading, everyRow: column.everyRow }))
          : [],
        formulas: new Map(
          placed
            .filter(({ at }) => at.replaced && at.column <= table.area.right)
            .map(({ column, at }) => [at.column - table.area.left, column.everyRow]),
        ),
      },
    },
    placed: placed.map(({ at }) => at),
    marks: [
      ...placed.map(({ at }) => ({ asked: at.asked, area: columnArea(at.column, edit.headingRow, edit.lastRow) })),
      ...emptied.map((mark) => ({ asked: mark.asked, area: columnArea(mark.column, mark.headingRow, mark.lastRow) })),
    ],
    staleMarks: own.map((mark) => mark.mark),
    notes: [
      ...(note === undefined ? [] : [note]),
      ...movedNote,
      ...emptied.map(
        (mark) =>
          `column ${columnLetters(mark.column)} "${headingAt(mark.column)}" of an earlier run is emptied, not deleted: other columns follow it`,
      ),
    ],
  };
}

function growableTable(workbook: Workbook, edit: ColumnsEdit): { table: TableInfo | undefined; note?: string } {
  if (edit.table === undefined) return { table: undefined };
  const wanted = edit.table.toLowerCase();
  const table = workbook.tables.find((t) => t.name.toLowerCase() === wanted);
  if (!table)
    throw new InputError("table", `"${edit.table}"`, "must be a table of the workbook", "name the sheet instead");
  if (!table.plain)
    return {
      table: undefined,
      note: `the table ${table.name} is filled from a query, so the new columns stand beside it`,
    };
  if (!table.headerRow)
    return { table: undefined, note: `the table ${table.name} has no header row, so the new columns stand beside it` };
  return { table };
}

/** Which column of the earlier run each column takes over: by the heading asked for then, else by the one that stands there. */
function matched(columns: readonly NewColumn[], own: readonly OwnColumn[], headingAt: (column: number) => string) {
  const left = [...own];
  const reused = new Map<NewColumn, OwnColumn>();
  for (const column of columns) {
    const wanted = column.heading.toLowerCase();
    const at = left.findIndex((mark) => (mark.asked || headingAt(mark.column)).toLowerCase() === wanted);
    if (at >= 0) reused.set(column, left.splice(at, 1)[0]!);
  }
  return { reused, left };
}

/** Those columns that end the table without a gap. */
function tail(marks: readonly OwnColumn[], right: number): readonly OwnColumn[] {
  const found: OwnColumn[] = [];
  for (let column = right; ; column--) {
    const mark = marks.find((m) => m.column === column);
    if (!mark) return found;
    found.push(mark);
  }
}

interface RoomWish {
  readonly top: number;
  readonly bottom: number;
  readonly after: number;
  readonly count: number;
  readonly gone: readonly OwnColumn[];
  readonly table: TableInfo | undefined;
  readonly merged: readonly Area[];
}

/** The first of `count` free columns: right after `after`, or past everything in the sheet when something stands there. */
function findRoom(workbook: Workbook, text: SheetText, wish: RoomWish): { start: number; note?: string } {
  const { top, bottom, after, count, gone, table, merged } = wish;
  const start = after + 1;
  if (count === 0) return { start };
  const { used, last } = usedColumns(text, top, bottom, after);
  const freed = new Set(gone.map((mark) => mark.column));
  const wanted = { top, bottom, left: start, right: after + count };
  const others = workbook.tables.filter((t) => t.sheet === text.sheet && t !== table).map((t) => t.area);
  const blocked =
    [...merged, ...others].some((area) => overlap(area, wanted)) ||
    [...used].some((column) => column >= wanted.left && column <= wanted.right && !freed.has(column));
  if (!blocked) return { start };
  const past = Math.max(last, after, ...merged.map((area) => area.right), ...others.map((area) => area.right)) + 1;
  const standing = `something stands right of the ${table ? `table ${table.name}` : "survey"} (${areaName(wanted)})`;
  return { start: past, note: `${standing}, so the new columns begin at column ${columnLetters(past)}` };
}

function uniqueHeading(wanted: string, taken: Set<string>): string {
  let heading = wanted;
  for (let number = 2; taken.has(heading.toLowerCase()); number++) heading = `${wanted} ${number}`;
  taken.add(heading.toLowerCase());
  return heading;
}

/** The last column up to the edge that is not ours: the neighbour whose look is copied. */
function lastOther(edge: number, own: ReadonlySet<number>, placed: readonly number[]): number | undefined {
  for (let column = edge; column >= 1; column--) if (!own.has(column) && !placed.includes(column)) return column;
  return undefined;
}

function emptyColumn(
  mark: OwnColumn,
  whole: boolean,
  table: TableInfo | undefined,
  change: (row: number, made: CellChange) => void,
): void {
  const bottom = table && whole ? table.area.bottom : mark.lastRow;
  const styled = (style: number | undefined) => (whole ? undefined : style);
  // A column that stays in its table keeps its heading, which the table names.
  const top = whole || !table ? mark.headingRow : mark.headingRow + 1;
  for (let row = top; row <= bottom; row++) change(row, { column: mark.column, content: null, styled });
}

function styler(styles: StyleEditor, column: NewColumn) {
  return (content: CellContent, replaced: boolean) => (style: number | undefined) => {
    const format = column.format ?? (replaced ? undefined : "plain");
    const quoted = typeof content === "string" && /^[=+\-@\t\r']/.test(content);
    return styles.styled(style, {
      ...(format === undefined ? {} : { format }),
      ...(isFormula(content) ? {} : { quoted }),
    });
  };
}

/** The sheet's own filter, when it spans the survey, spans the new columns too, or sorting would tear the rows apart. */
function grownFilter(filter: Area, edit: ColumnsEdit, own: readonly OwnColumn[], right: number): ColumnPlan["filter"] {
  const ends = filter.right === edit.lastColumn || own.some((mark) => mark.column === filter.right);
  if (filter.top !== edit.headingRow || !ends || right === filter.right) return undefined;
  return { from: filter, to: { ...filter, right } };
}

function columnArea(column: number, top: number, bottom: number): Area {
  return { top, bottom, left: column, right: column };
}
