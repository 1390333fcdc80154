import { Unanswered, choice, type Question } from "./questions";
import { readHeading, wordsForLanguage, type Heading } from "./headings";
import { languageOf, unitWord, wordsOf } from "./lexicon";
import type { RecogniseOptions } from "./recognition";
import { columnLetters } from "../workbook/cellRef";

/** The headings of a survey by column, counted from 1. */
export type Headings = ReadonlyMap<number, Heading>;

/** Columns below one heading that names their unit. */
export interface Group {
  readonly from: number;
  readonly to: number;
  readonly unit: string;
}

/** @throws Unanswered when no row looks like headings */
export function findHeadings(
  rows: readonly (readonly unknown[])[],
  options: RecogniseOptions,
): { headingRow: number; headings: Headings } {
  if (options.noHeadings === true) return lettersAsHeadings(rows);
  const given = options.region?.headingRow ?? options.headingRow;
  if (given !== undefined) return { headingRow: given, headings: headingsAt(rows, given, options).headings };
  let best = { headingRow: 0, headings: new Map() as Headings, worth: 0 };
  for (let row = 1; row <= Math.min(rows.length, SEARCHED); row++) {
    const { headings, worth } = headingsAt(rows, row, options);
    if (worth > best.worth) best = { headingRow: row, headings, worth };
  }
  if (best.worth >= ENOUGH) return best;
  throw noHeadingRow(rows);
}

/** A row of units right below the headings: `cm`, `cm`, `kg`, and no measure. */
export function unitsBelow(rows: readonly (readonly unknown[])[], headingRow: number, headings: Headings) {
  const below = rows[headingRow] ?? [];
  const units = new Map<number, string>();
  let others = 0;
  for (const column of headings.keys()) {
    const cell = below[column - 1];
    if (isBlank(cell)) continue;
    const unit = typeof cell === "string" ? unitWord(cell.replace(/^[([（]|[)\]）]$/g, "")) : undefined;
    if (unit === undefined) others++;
    else if (headings.get(column)!.readings.some(({ field }) => field !== "unit")) units.set(column, unit);
  }
  const isUnitsRow = headingRow > 0 && units.size > 0 && others === 0;
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
    if (!isGroup(cell, above)) return [];
    const [unit, ...more] = readHeading(cell, vocabularyOf(above)).units;
    const next = above.findIndex((other, i) => i > c && !isBlank(other));
    return unit === undefined || more.length > 0 ? [] : [{ from: c + 1, to: next < 0 ? last : next, unit }];
  });
}

/** Units that a title above the headings gives for all: `all measurements in inches`. Two of a kind say nothing. */
export function unitsOfTitle(rows: readonly (readonly unknown[])[], headingRow: number): ReadonlySet<string> {
  const found = new Set<string>();
  for (const row of rows.slice(0, Math.max(0, headingRow - 1)))
    for (const cell of row) {
      if (typeof cell !== "string" || cell.length > LONGEST_TITLE) continue;
      for (const [, word] of cell.normalize("NFKC").matchAll(TITLE_UNIT)) {
        const unit = unitWord(word!);
        if (unit !== undefined) found.add(unit);
      }
    }
  return found;
}

export function isBlank(value: unknown): boolean {
  return value === null || value === undefined || value === "" || (typeof value === "string" && value.trim() === "");
}

const LONGEST_TITLE = 200;
/** A unit behind a word such as `in`, or alone in brackets. */
const TITLE_UNIT =
  /(?:(?<!\p{L})(?:in|en|em|i|w|в|units?:?|unit =|بـ?|单位[:：]?)\s{0,3}(?=[\s(]|\p{Script=Han})\s{0,3}\(?|[（(])(\p{L}{1,14}|")\.?(?!\p{L})/giu;

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
  const cells = rows[row - 1] ?? [];
  const isGiven = (options.region?.headingRow ?? options.headingRow) !== undefined;
  if (!isGiven && isMostlyNumbers(cells)) return { headings: new Map(), worth: 0 };
  const single = headingsIn(cells, [], options);
  const worth = worthOf(single, options);
  const above = rows[row - 2] ?? [];
  if (options.region || worth < WORTH.letter || !isGrouped(cells, above)) return { headings: single, worth };
  const double = headingsIn(cells, above, options);
  const doubleWorth = worthOf(double, options);
  return doubleWorth > worth ? { headings: double, worth: doubleWorth } : { headings: single, worth };
}

function headingsIn(row: readonly unknown[], above: readonly unknown[], options: RecogniseOptions): Headings {
  const headings = new Map<number, Heading>();
  const vocabulary = vocabularyOf([...row, ...above]);
  const { firstColumn = 1, lastColumn = Math.max(row.length, above.length) } = options.region ?? {};
  for (let column = firstColumn; column <= lastColumn; column++) {
    const value = isBlank(row[column - 1]) ? above[column - 1] : row[column - 1];
    if (options.ignore?.includes(column) || isBlank(value)) continue;
    headings.set(column, readHeading(typeof value === "number" ? String(value) : value, vocabulary));
  }
  return headings;
}

function vocabularyOf(cells: readonly unknown[]) {
  return languageOf(cells.map(wordsForLanguage).filter((words) => words !== ""));
}

/** The row above has a word on dimensions that stands over headings, and headings of its own over nothing. */
function isGrouped(row: readonly unknown[], above: readonly unknown[]): boolean {
  const over = above.some((cell, c) => !isBlank(cell) && !isBlank(row[c]) && isGroup(cell, above));
  const alone = above.some((cell, c) => !isBlank(cell) && isBlank(row[c]));
  return over && alone;
}

function isGroup(cell: unknown, row: readonly unknown[]): boolean {
  return readHeading(cell, vocabularyOf(row)).readings.some(({ field }) => field === "dimensions");
}

function isMostlyNumbers(row: readonly unknown[]): boolean {
  const cells = row.filter((cell) => !isBlank(cell));
  return cells.filter((cell) => typeof cell !== "string" || /^[\d.,/ ]+$/.test(cell)).length * 3 > cells.length;
}

function worthOf(headings: Headings, options: RecogniseOptions): number {
  const best = new Map<string, number>();
  const names = new Set((options.settings ?? []).map(wordsOf));
  const wanted = new Set(
    [...Object.values(options.columns ?? {}), ...(options.words ?? []).map(({ word }) => word)].map((text) =>
      wordsOf(text ?? ""),
    ),
  );
  for (const heading of headings.values()) {
    for (const { field, strength } of heading.readings)
      best.set(field, Math.max(best.get(field) ?? 0, WORTH[strength]));
    if (names.has(heading.words)) best.set(heading.words, 1);
    const whole = wordsOf(heading.text);
    if (whole !== "" && wanted.has(whole)) best.set(whole, ENOUGH);
  }
  return [...best.values()].reduce((sum, worth) => sum + worth, 0);
}

/** Columns are called by their letters, and the survey begins with the first row that holds anything. */
function lettersAsHeadings(rows: readonly (readonly unknown[])[]): { headingRow: number; headings: Headings } {
  const first = Math.max(
    0,
    rows.findIndex((row) => row.some((cell) => !isBlank(cell))),
  );
  const widest = rows.reduce((most, row) => Math.max(most, row.length), 0);
  const headings = new Map(
    Array.from({ length: widest }, (_, i) => [
      i + 1,
      { ...readHeading(""), text: `column ${columnLetters(i + 1)}` } satisfies Heading,
    ]),
  );
  return { headingRow: first, headings };
}

const MOST_OFFERED = 3;

/** Asks for the row of the headings: rows of texts above numbers, or none. */
function noHeadingRow(rows: readonly (readonly unknown[])[]): Unanswered {
  const searched = Math.min(rows.length, SEARCHED);
  const texts = rows
    .slice(0, SEARCHED)
    .flatMap((row, i) => (row.filter((cell) => !isBlank(cell)).length > ENOUGH && !isMostlyNumbers(row) ? [i + 1] : []))
    .slice(0, MOST_OFFERED);
  const numbers = numericColumns(rows).slice(0, MOST_OFFERED);
  const measures = ["height", "width", "depth"].slice(0, numbers.length);
  const byLetters = measures.map((meaning, i) => ({ word: columnLetters(numbers[i]!), meaning }));
  const question: Question = {
    about: "heading row",
    text: "No row of headings was found. Which row holds them?",
    rows: texts,
    choices: [
      ...texts.map((row) => {
        const shown = (rows[row - 1] ?? []).filter((cell) => !isBlank(cell)).slice(0, MOST_OFFERED);
        const words = measures.length === MOST_OFFERED ? byLetters : [];
        return choice(`row ${row}: ${shown.map(String).join(", ")}`, { headingRow: row, words });
      }),
      ...(measures.length === MOST_OFFERED
        ? [choice("no row: the columns are called by their letters", { noHeadings: true, words: byLetters })]
        : []),
    ],
  };
  return new Unanswered(
    {
      argument: "heading row",
      got: rows.length === 0 ? "a sheet without cells" : `no row with headings in the first ${searched}`,
      expected: "needs a row with headings such as call number, height, width, thickness, enclosure",
      cure: "add one, or say which row and which headings",
    },
    question.choices.length === 0 ? [] : [question],
  );
}

/** Columns that hold numbers in most of their first rows. */
export function numericColumns(rows: readonly (readonly unknown[])[]): readonly number[] {
  const some = rows.slice(0, SEARCHED);
  const widest = some.reduce((most, row) => Math.max(most, row.length), 0);
  return Array.from({ length: widest }, (_, i) => i + 1).filter((column) => {
    const cells = some.map((row) => row[column - 1]).filter((cell) => !isBlank(cell));
    const numbers = cells.filter((cell) => typeof cell === "number" || /^\d+(?:[.,]\d+)?$/.test(String(cell).trim()));
    return cells.length > 0 && numbers.length * 2 > cells.length;
  });
}
