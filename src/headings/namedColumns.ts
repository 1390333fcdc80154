import { InputError, shown } from "../measure/errors";
import { columnLetters } from "../workbook/cellRef";
import { columnOfLetters } from "./columnOfLetters";
import { isEmpty } from "../measure/blank";
import { type Headings } from "./findHeadings";
import { readHeading } from "./headings";
import { FIELDS, settingWord, unitWord, wordsOf } from "./lexicon";
import { NOT_USED } from "./questions";
import type { Ask, RecogniseOptions, RecognisedSetting } from "./recognition";

/** The user said that the survey has no such column. */
export const NO_COLUMN = 0;

/** What the user said of columns, in this run or before. */
export interface NamedColumns {
  /** Columns by field or setting. */
  readonly chosen: ReadonlyMap<string, number>;
  readonly declined: ReadonlySet<number>;
  /** Units by column, and by field. */
  readonly units: ReadonlyMap<number | string, string>;
  /** Which column was taken where a name could be two. */
  readonly said: readonly string[];
}

/** The columns that the user named, by heading or letter. @throws InputError when one is not there, or there twice */
export function namedColumns(headings: Headings, width: number, options: RecogniseOptions): NamedColumns {
  const { columns = {}, words = [], settings = [] } = options;
  const chosen = new Map<string, number>();
  const declined = new Set<number>();
  const units = new Map<number | string, string>();
  const said = new Set<string>();
  const place = (text: string, field: string, given: boolean): number | undefined => {
    const found = columnNamed(text, headings, width);
    if (found.columns.length === 1) {
      const [column] = found.columns;
      const letter = columnOfLetters(text);
      if (found.by === "heading" && letter !== undefined && letter !== column && letter <= width)
        said.add(
          `${shown(text)} is the heading of column ${columnLetters(column!)}, which is taken; for the other say "column ${columnLetters(letter)}"`,
        );
      return column;
    }
    if (given) throw notOne(text, field, found.columns, headings);
    return undefined;
  };
  for (const [field, text] of Object.entries(columns)) if (text !== null) chosen.set(field, place(text, field, true)!);
  const known = new Set<string>([...FIELDS, ...settings]);
  for (const { word, meaning, unit, given = false } of words) {
    const isColumn = meaning === NOT_USED || (meaning !== undefined && known.has(meaning));
    if (!isColumn && unit === undefined) continue;
    const isField = FIELDS.includes(wordsOf(word) as (typeof FIELDS)[number]);
    const column = place(word, meaning ?? "unit", given && !isField);
    if (unit !== undefined) {
      const name = unitWord(unit);
      if (name === undefined)
        throw new InputError("unit", shown(unit), "give a unit such as mm, cm, in, g, kg or lb", `--unit "${word}=cm"`);
      units.set(column ?? wordsOf(word), name);
    }
    if (column === undefined || !isColumn || columns[meaning] !== undefined) continue;
    // What was said last of a column holds.
    for (const [other, at] of chosen) if (at === column) chosen.delete(other);
    declined.delete(column);
    if (meaning === NOT_USED) declined.add(column);
    else chosen.set(meaning, column);
  }
  for (const [field, text] of Object.entries(columns)) if (text === null) chosen.set(field, NO_COLUMN);
  return { chosen, declined, units, said: [...said] };
}

/** The columns headed with the name of a setting. */
export function settingColumns(
  headings: Headings,
  { settings = [], settingFits }: RecogniseOptions,
  { chosen, declined }: NamedColumns,
  cellsOf: (column: number) => readonly unknown[],
) {
  const found: RecognisedSetting[] = [];
  const ask: Ask[] = [];
  const left: string[] = [];
  for (const setting of settings) {
    const wanted = wordsOf(setting);
    const said = chosen.get(setting);
    if (said === NO_COLUMN) continue;
    const readings = readHeading(setting).readings.filter(({ strength }) => strength !== "maybe");
    // Dimension texts are headed so too: there each cell must be a value of the setting.
    const isEither = readings.length > 0 && readings.every(({ field }) => field === "dimensions");
    const isField = readings.length > 0 && !isEither;
    const same = [...headings].filter(([column, heading]) => {
      if (said !== undefined) return column === said;
      const isIt = [heading.words, wordsOf(heading.text)].some(
        (words) => words === wanted || settingWord(words) === setting,
      );
      if (isEither && shareFitting(setting, cellsOf(column), settingFits) < 1) return false;
      return !isField && isIt && !declined.has(column) && ![...chosen.values()].includes(column);
    });
    const candidates = same.map(([column, { text }]) => ({ column, heading: text }));
    if (same.length > 1) {
      ask.push({ field: setting, candidates, reason: "several columns are headed with that setting", needed: true });
      continue;
    }
    if (same[0] === undefined) continue;
    const [column, { text, units }] = same[0];
    const share = said === undefined && isOneWord(wanted) ? shareFitting(setting, cellsOf(column), settingFits) : 1;
    if (share >= MOSTLY)
      found.push({ setting, column, heading: text, ...(units[0] === undefined ? {} : { unit: units[0] }) });
    else if (share < RARELY)
      left.push(
        `column ${columnLetters(column)} ${shown(text)} is left alone: its cells are no values of the setting ${setting}`,
      );
    else
      ask.push({
        field: setting,
        candidates,
        reason: `${Math.round(share * 100)} % of its cells are values of the setting ${setting}`,
        needed: true,
      });
  }
  return { found, ask, left };
}

/** From this share of fitting cells on a single word is a setting; below the other it is left alone. */
const MOSTLY = 0.8;
const RARELY = 0.2;

/** Condition surveys head columns with these words too: construction, joint, lining. */
function isOneWord(words: string): boolean {
  return !words.includes(" ");
}

function shareFitting(setting: string, cells: readonly unknown[], fits: RecogniseOptions["settingFits"]): number {
  const filled = cells.filter((cell) => !isEmpty(cell) && cell !== 0);
  if (fits === undefined || filled.length === 0) return 1;
  const known = new Map<unknown, boolean>();
  return filled.filter((cell) => known.get(cell) ?? judged(cell)).length / filled.length;

  /** Thousands of rows have few different values. */
  function judged(cell: unknown): boolean {
    const fitting = fits!(setting, cell);
    known.set(cell, fitting);
    return fitting;
  }
}

function columnNamed(text: string, headings: Headings, width: number) {
  const wanted = wordsOf(text);
  const same = [...headings].filter(([, heading]) => heading.text.toLowerCase() === text.trim().toLowerCase());
  const found =
    same.length > 0
      ? same
      : [...headings].filter(
          ([, heading]) => wanted !== "" && (wordsOf(heading.text) === wanted || heading.words === wanted),
        );
  if (found.length > 0) return { columns: found.map(([column]) => column), by: "heading" as const };
  const letter = columnOfLetters(text);
  return { columns: letter !== undefined && letter <= width ? [letter] : [], by: "letter" as const };
}

function notOne(text: string, field: string, found: readonly number[], headings: Headings): InputError {
  if (found.length > 1)
    return new InputError(
      field,
      shown(text),
      `columns ${found.map(columnLetters).join(" and ")} both have that heading`,
      `give the column letter, such as ${columnLetters(found[0]!)}`,
    );
  const known = [...headings.values()].map((heading) => shown(heading.text)).join(", ");
  return new InputError(field, shown(text), `the headings are ${known}`, "name one of these, or a column letter");
}
