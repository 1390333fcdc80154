import { InputError } from "../measure/errors";
import { headingReadings, readHeading, unitWord, wordsOf, type Heading } from "./headings";
import type { RecogniseOptions } from "./recognition";

/** The headings of a survey by column, counted from 1. */
export type Headings = ReadonlyMap<number, Heading>;

/** Columns below one heading that names their unit. */
export interface Group {
  readonly from: number;
  readonly to: number;
  readonly unit: string;
}

export function findHeadings(
  rows: readonly (readonly unknown[])[],
  options: RecogniseOptions,
): { headingRow: number; headings: Headings } {
  const given = options.region?.headingRow ?? options.headingRow;
  if (given !== undefined) return { headingRow: given, headings: headingsAt(rows, given, options).headings };
  let best = { headingRow: 0, headings: new Map() as Headings, worth: 0 };
  for (let row = 1; row <= Math.min(rows.length, SEARCHED); row++) {
    const { headings, worth } = headingsAt(rows, row, options);
    if (worth > best.worth) best = { headingRow: row, headings, worth };
  }
  if (best.worth >= ENOUGH) return best;
  throw new InputError(
    "heading row",
    rows.length === 0
      ? "a sheet without cells"
      : `no row with headings in the first ${Math.min(rows.length, SEARCHED)}`,
    "needs a row with headings such as call number, height, width, thickness, enclosure",
    "add one, or say which row and which headings",
  );
}

/** A row of units right below the headings: `cm`, `cm`, `kg`, and no measure. */
export function unitsBelow(rows: readonly (readonly unknown[])[], headingRow: number, headings: Headings) {
  const below = rows[headingRow] ?? [];
  const units = new Map<number, string>();
  let others = 0;
  for (const column of headings.keys()) {
    const cell = below[column - 1];
    if (isBlank(cell)) continue;
    const unit = typeof cell === "string" ? unitWord(cell.replace(/^[([]|[)\]]$/g, "")) : undefined;
    if (unit === undefined) others++;
    else if (headingReadings(headings.get(column)!).some(({ field }) => field !== "unit")) units.set(column, unit);
  }
  const isUnitsRow = units.size > 0 && others === 0;
  return { units: isUnitsRow ? units : new Map<number, string>(), firstRow: headingRow + (isUnitsRow ? 2 : 1) };
}

/** The unit that a heading above says for the columns below it. */
export function groupsAbove(
  rows: readonly (readonly unknown[])[],
  headingRow: number,
  headings: Headings,
): readonly Group[] {
  const above = rows[headingRow - 2] ?? [];
  const last = [...headings.keys()].reduce((most, column) => Math.max(most, column), 0);
  return above.flatMap((cell, c) => {
    if (!isGroup(cell)) return [];
    const [unit, ...more] = readHeading(cell).units;
    const next = above.findIndex((other, i) => i > c && !isBlank(other));
    return unit === undefined || more.length > 0 ? [] : [{ from: c + 1, to: next < 0 ? last : next, unit }];
  });
}

export function isBlank(value: unknown): boolean {
  return value === null || value === undefined || value === "" || (typeof value === "string" && value.trim() === "");
}

/** Rows in which headings are looked for. */
const SEARCHED = 100;
/** Two fields at least make a heading row. */
const ENOUGH = 2;
const WORTH = { sure: 1, letter: 0.7, maybe: 0.2 } as const;

/** The headings of a row; of two rows together when the one above groups them (`Dimensions` over `H`, `W`, `D`). */
function headingsAt(
  rows: readonly (readonly unknown[])[],
  row: number,
  options: RecogniseOptions,
): { headings: Headings; worth: number } {
  const single = headingsIn(rows[row - 1] ?? [], [], options);
  const worth = worthOf(rows[row - 1] ?? [], single, options);
  const above = rows[row - 2] ?? [];
  if (options.region || worth < WORTH.letter || !isGrouped(rows[row - 1] ?? [], above))
    return { headings: single, worth };
  const double = headingsIn(rows[row - 1] ?? [], above, options);
  const doubleWorth = worthOf(rows[row - 1] ?? [], double, options);
  return doubleWorth > worth ? { headings: double, worth: doubleWorth } : { headings: single, worth };
}

function headingsIn(row: readonly unknown[], above: readonly unknown[], options: RecogniseOptions): Headings {
  const headings = new Map<number, Heading>();
  const { firstColumn = 1, lastColumn = Math.max(row.length, above.length) } = options.region ?? {};
  for (let column = firstColumn; column <= lastColumn; column++) {
    const value = isBlank(row[column - 1]) ? above[column - 1] : row[column - 1];
    if (options.ignore?.includes(column) || isBlank(value)) continue;
    headings.set(column, readHeading(typeof value === "number" ? String(value) : value));
  }
  return headings;
}

/** The row above has a word on dimensions that stands over headings, and headings of its own over nothing. */
function isGrouped(row: readonly unknown[], above: readonly unknown[]): boolean {
  const over = above.some((cell, c) => !isBlank(cell) && !isBlank(row[c]) && isGroup(cell));
  const alone = above.some((cell, c) => !isBlank(cell) && isBlank(row[c]));
  return over && alone;
}

function isGroup(cell: unknown): boolean {
  return headingReadings(readHeading(cell)).some(({ field }) => field === "dimensions");
}

function worthOf(row: readonly unknown[], headings: Headings, options: RecogniseOptions): number {
  const cells = row.filter((cell) => !isBlank(cell));
  if (cells.filter((cell) => typeof cell !== "string" || /^[\d.,/ ]+$/.test(cell)).length * 3 > cells.length) return 0;
  const best = new Map<string, number>();
  const names = new Set((options.settings ?? []).map(wordsOf));
  const wanted = new Set(Object.values(options.columns ?? {}).map((text) => wordsOf(text ?? "")));
  for (const heading of headings.values()) {
    for (const { field, strength } of headingReadings(heading))
      best.set(field, Math.max(best.get(field) ?? 0, WORTH[strength]));
    if (names.has(heading.words)) best.set(heading.words, 1);
    const whole = wordsOf(heading.text);
    if (whole !== "" && wanted.has(whole)) best.set(whole, ENOUGH);
  }
  return [...best.values()].reduce((sum, worth) => sum + worth, 0);
}

/** Rows in which headings are looked for, and rows by which a column is judged. */
