import type { BookTable, Book } from "./book";
import { areaName, columnLetters, overlap, type Area } from "./cellRef";
import type { OwnColumn } from "./ownMarks";

interface RoomRequest {
  readonly top: number;
  readonly bottom: number;
  readonly after: number;
  readonly count: number;
  readonly gone: readonly OwnColumn[];
  readonly table: BookTable | undefined;
  readonly covered: readonly Area[];
}

/** The first of `count` free columns: right after `after`, or past everything in the sheet when something stands there. */
export function findRoom(
  { book, sheet, used: usedIn }: SheetInUse,
  request: RoomRequest,
): { start: number; note?: string } {
  const { top, bottom, after, count, gone, table, covered } = request;
  const start = after + 1;
  if (count === 0) return { start };
  const { used, last } = usedIn(top, bottom, after);
  const freed = new Set(gone.map((mark) => mark.column));
  const wanted = { top, bottom, left: start, right: after + count };
  const others = book.tables.filter((t) => t.sheet === sheet && t !== table).map((t) => t.area);
  const blocked =
    [...covered, ...others].some((area) => overlap(area, wanted)) ||
    [...used].some((column) => column >= wanted.left && column <= wanted.right && !freed.has(column));
  if (!blocked) return { start };
  const past = [...covered, ...others].reduce((most, { right }) => Math.max(most, right), Math.max(last, after)) + 1;
  const standing = `something stands right of the ${table ? `table ${table.name}` : "survey"} (${areaName(wanted)})`;
  return { start: past, note: `${standing}, so the new columns begin at column ${columnLetters(past)}` };
}

/** The sheet that takes the columns. */
export interface SheetInUse {
  readonly book: Book;
  /** The sheet, as the workbook writes its name. */
  readonly sheet: string;
  readonly headings: readonly unknown[];
  readonly merged: readonly Area[];
  /** Cells that charts and pictures cover. */
  readonly floating: readonly Area[];
  /** The sheet's own filter. */
  readonly filter: Area | undefined;
  /** Columns right of one that hold something in some rows, and the last column of the sheet that holds anything. */
  readonly used: (top: number, bottom: number, after: number) => { used: ReadonlySet<number>; last: number };
}
