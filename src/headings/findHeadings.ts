import { isEmpty } from "../measure/blank";
import { Unanswered, choice, type Question } from "./questions";
import { readHeading, wordsForLanguage, type Heading } from "./headings";
import { languageOf, wordsOf } from "./lexicon";
import type { RecogniseOptions } from "./recognition";
import { columnLetters } from "../workbook/cellRef";

/** The headings of a survey by column, counted from 1. */
export type Headings = ReadonlyMap<number, Heading>;

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
    const value = isEmpty(row[column - 1]) ? above[column - 1] : row[column - 1];
    if (options.ignore?.includes(column) || isEmpty(value)) continue;
    headings.set(column, readHeading(typeof value === "number" ? String(value) : value, vocabulary));
  }
  return headings;
}

export function vocabularyOf(cells: readonly unknown[]) {
  return languageOf(cells.map(wordsForLanguage).filter((words) => words !== ""));
}

/** The row above has a word on dimensions that stands over headings, and headings of its own over nothing. */
function isGrouped(row: readonly unknown[], above: readonly unknown[]): boolean {
  const over = above.some((cell, c) => !isEmpty(cell) && !isEmpty(row[c]) && isGroup(cell, above));
  const alone = above.some((cell, c) => !isEmpty(cell) && isEmpty(row[c]));
  return over && alone;
}

export function isGroup(cell: unknown, row: readonly unknown[]): boolean {
  return readHeading(cell, vocabularyOf(row)).readings.some(({ field }) => field === "dimensions");
}

function isMostlyNumbers(row: readonly unknown[]): boolean {
  const cells = row.filter((cell) => !isEmpty(cell));
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
    rows.findIndex((row) => row.some((cell) => !isEmpty(cell))),
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
    .flatMap((row, i) => (row.filter((cell) => !isEmpty(cell)).length > ENOUGH && !isMostlyNumbers(row) ? [i + 1] : []))
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
        const shown = (rows[row - 1] ?? []).filter((cell) => !isEmpty(cell)).slice(0, MOST_OFFERED);
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
    const cells = some.map((row) => row[column - 1]).filter((cell) => !isEmpty(cell));
    const numbers = cells.filter((cell) => typeof cell === "number" || /^\d+(?:[.,]\d+)?$/.test(String(cell).trim()));
    return cells.length > 0 && numbers.length * 2 > cells.length;
  });
}
