import { isEmpty } from "../measure/blank";
import { InputError } from "../measure/errors";
import type { Book, BookTable } from "./book";
import { columnLetters, refuseTooWide, type Area } from "./cellRef";
import { isFormula, type ColumnsEdit, type NewColumn, type PlacedColumn } from "./edits";
import { ownColumns, type OwnColumn } from "./ownMarks";
import { headingAgain, isNamedOtherwise } from "./headingAgain";
import { placedFormula } from "./siblingCell";
import { findRoom, type SheetInUse } from "./findRoom";
import { matchedColumns, tail, lastOther } from "./matchedColumns";

interface TakingTable {
  readonly info: BookTable;
  readonly grows: boolean;
  /** Its new rectangle, and how many columns of it go. */
  readonly area: Area;
  readonly dropped: number;
}

/** Where new columns go, in a file as in a spreadsheet that is open. */
export interface ColumnPlaces {
  readonly placed: readonly {
    readonly column: NewColumn;
    readonly at: PlacedColumn;
    /** The column of the earlier run that it takes over. */
    readonly before: OwnColumn | undefined;
  }[];
  /** Columns of an earlier run that go, and those that are emptied because others follow them. */
  readonly dropped: readonly OwnColumn[];
  readonly emptied: readonly OwnColumn[];
  /** The table that takes the columns in, or whose columns they are. */
  readonly table: TakingTable | undefined;
  /** The survey's own column whose look the new ones take. */
  readonly like: number | undefined;
  readonly filter: { readonly from: Area; readonly to: Area } | undefined;
  /** Marks for the names: where each column now lies. */
  readonly marks: readonly { readonly wantedName: string; readonly area: Area }[];
  /** Marks of an earlier run that are written again, or deleted with their column. */
  readonly staleMarks: readonly string[];
  readonly notes: readonly string[];
}

/**
 * Where the columns go. One from an earlier run, known by its mark, is written again in its place; a column of that
 * run that is no longer asked for goes, or is emptied when the user has put something right of it in the table.
 *
 * @throws InputError when the columns do not fit the sheet
 */
export function columnPlaces(inUse: SheetInUse, edit: ColumnsEdit): ColumnPlaces {
  const rowCount = edit.lastRow - edit.firstRow + 1;
  if (edit.columns.some((column) => column.cells.length !== rowCount))
    throw new RangeError("a column with other rows than the survey");
  const { book, sheet, headings, merged, floating, filter } = inUse;
  const { table, note } = growableTable(book, edit);
  const headingAt = (column: number) => {
    const heading = headings[column - 1];
    return isEmpty(heading) ? "" : String(heading);
  };
  const marks = ownColumns(book).filter((mark) => mark.sheet === sheet && mark.headingRow === edit.headingRow);
  // One mark a column: more of them come of a damaged workbook.
  const own = [...new Map(marks.map((mark) => [mark.column, mark])).values()];
  // A column of the user's own alone leaves those of an earlier run as they are.
  const isOfUser = edit.columns.length > 0 && edit.columns.every(({ ofUser }) => ofUser === true);
  // What one formula fills lies together: columns of an earlier run make room.
  const together = edit.holds === "one formula";
  const { reused, left } = matchedColumns(together ? [] : edit.columns, isOfUser ? [] : own, headingAt);
  const ofTable = table ? tail(left, table.area.right) : [];
  const dropped = table ? [...ofTable, ...left.filter(({ column }) => together && column > table.area.right)] : left;
  const emptied = left.filter((mark) => !dropped.includes(mark));
  // Columns of an earlier run may stand outside the table, past what was right of it.
  const surveyEdge = table ? table.area.right - ofTable.length : edit.lastColumn;
  const edge = Math.max(surveyEdge, ...(isOfUser ? own : [...reused.values(), ...emptied]).map((mark) => mark.column));
  const fresh = edit.columns.filter((column) => !reused.has(column));
  const rows = { top: table?.area.top ?? edit.headingRow, bottom: table?.area.bottom ?? edit.lastRow };
  const room = findRoom(inUse, {
    ...rows,
    // A column between, or Excel takes the new ones into the table.
    after: edge + (together && table ? 1 : 0),
    count: fresh.length,
    gone: dropped,
    table,
    covered: [...merged, ...floating],
  });
  const adjoins = !together && room.start === (table ? surveyEdge : edge) + 1;
  refuseTooWide(room.start + fresh.length - 1);

  const gone = new Set(dropped.map((mark) => mark.column));
  const taken = new Set(headings.flatMap((_, i) => (gone.has(i + 1) ? [] : [headingAt(i + 1).toLowerCase()])));
  for (const name of table?.columns.slice(0, table.columns.length - ofTable.length) ?? [])
    taken.add(name.toLowerCase());
  const placed = edit.columns.map((column) => {
    const before = reused.get(column);
    const at = before
      ? {
          ...headingAgain(column, headingAt(before.column), before, (standing) => {
            taken.delete(standing.toLowerCase());
            return uniqueHeading(column.heading, taken);
          }),
          column: before.column,
          replaced: true,
        }
      : {
          heading: uniqueHeading(column.heading, taken),
          wantedName: column.heading,
          column: room.start + fresh.indexOf(column),
          replaced: false,
        };
    return { column, at, before };
  });
  const columnOf = (wantedName: string) => {
    const sibling = placed.find(({ at }) => at.wantedName === wantedName);
    if (sibling === undefined)
      throw new RangeError(`a formula names the new column "${wantedName}", and no such column is written`);
    return sibling.at.column;
  };
  const right = Math.max(edge, ...placed.map(({ at }) => at.column));
  const ours = new Set([...own.map((mark) => mark.column), ...placed.map(({ at }) => at.column)]);
  return {
    placed: placed.map((each, index) => {
      const column = inPlace(each.column, columnOf);
      const filled = { top: edit.firstRow, bottom: edit.lastRow, left: each.at.column, right };
      return { ...each, column: together && index === 0 ? filling(column, filled) : column };
    }),
    dropped,
    emptied,
    table: table && {
      info: table,
      grows: adjoins,
      area: { ...table.area, right: surveyEdge + (adjoins ? fresh.length : 0) },
      dropped: ofTable.length,
    },
    like: lastOther(edge, ours),
    filter: table || !filter ? undefined : grownFilter(filter, edit, own, adjoins ? right : edge),
    marks: [
      ...placed
        .filter(({ column }) => column.ofUser !== true)
        .map(({ at }) => ({
          wantedName: at.wantedName,
          area: columnArea(at.column, edit.headingRow, edit.lastRow),
        })),
      ...emptied.map((mark) => ({
        wantedName: mark.wantedName,
        area: columnArea(mark.column, mark.headingRow, mark.lastRow),
      })),
    ],
    staleMarks: isOfUser ? [] : marks.map((mark) => mark.mark),
    notes: [
      ...(note === undefined ? [] : [note]),
      ...(room.note === undefined ? [] : [room.note]),
      ...placed.flatMap(({ column, at, before }) =>
        isNamedOtherwise(column, at, before)
          ? [
              `column ${columnLetters(at.column)} keeps your heading "${at.heading}": its answers are now "${column.heading}"`,
            ]
          : [],
      ),
      ...emptied.map(
        (mark) =>
          `column ${columnLetters(mark.column)} "${headingAt(mark.column)}" of an earlier run is emptied, not deleted: other columns follow it`,
      ),
    ],
  };
}

/** The column with its formulas naming the others where they now are. */
function inPlace(column: NewColumn, columnOf: (wantedName: string) => number): NewColumn {
  return {
    ...column,
    cells: column.cells.map((content) => {
      if (!isFormula(content)) return content;
      const formula = placedFormula(content.formula, columnOf);
      return formula === content.formula ? content : { ...content, formula };
    }),
  };
}

/** The column whose first cell fills an area. */
function filling(column: NewColumn, fills: Area): NewColumn {
  const [first, ...rest] = column.cells;
  return first === undefined || !isFormula(first) ? column : { ...column, cells: [{ ...first, fills }, ...rest] };
}

function growableTable(book: Book, edit: ColumnsEdit): { table: BookTable | undefined; note?: string } {
  if (edit.table === undefined) return { table: undefined };
  const wanted = edit.table.toLowerCase();
  const table = book.tables.find((t) => t.name.toLowerCase() === wanted);
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

function uniqueHeading(wanted: string, taken: Set<string>): string {
  let heading = wanted;
  for (let number = 2; taken.has(heading.toLowerCase()); number++) heading = `${wanted} ${number}`;
  taken.add(heading.toLowerCase());
  return heading;
}

/** The sheet's own filter, when it spans the survey, spans the new columns too, or sorting would tear the rows apart. */
function grownFilter(
  filter: Area,
  edit: ColumnsEdit,
  own: readonly OwnColumn[],
  right: number,
): ColumnPlaces["filter"] {
  const ends = filter.right === edit.lastColumn || own.some((mark) => mark.column === filter.right);
  if (filter.top !== edit.headingRow || !ends || right === filter.right) return undefined;
  return { from: filter, to: { ...filter, right } };
}

function columnArea(column: number, top: number, bottom: number): Area {
  return { top, bottom, left: column, right: column };
}
