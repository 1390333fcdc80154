import { shown } from "../measure/errors";
import { columnLetters } from "../workbook/cellRef";
import { columnOfLetters } from "./columnOfLetters";
import { isBlank, numericColumns, type Headings } from "./findHeadings";
import { yesOrNo } from "./kindWords";
import { FIELDS } from "./lexicon";
import { choice, NOT_USED, TICKS, type Choice, type Question, type Word } from "./questions";
import type { Ask, Recognition } from "./recognition";
import { DIRECTIONS } from "./settleColumns";

/** Kinds offered where nothing says which is meant. */
export const OFFERED_KINDS = ["clamshell box", "lidded box", "four-flap wrapper", "slipcase", "tray"] as const;

/** What to ask where the heading of a column does not say surely what it is. */
export function columnQuestions(
  ask: readonly Ask[],
  headings: Headings,
  declined: ReadonlySet<number>,
  cellsOf: (column: number) => readonly unknown[],
): readonly Question[] {
  return ask.filter(({ needed }) => needed).map((each) => questionOf(each, headings, declined, cellsOf));
}

/** Asks which columns the missing measures are; undefined where no column of numbers is left. */
export function missingQuestion(
  missing: readonly string[],
  recognition: Recognition,
  rows: readonly (readonly unknown[])[],
): Question | undefined {
  const { columns, settings, declined, firstRow, others } = recognition;
  const known = [...Object.values(columns), ...settings].map(({ column }) => column);
  const taken = new Set([...known, ...declined]);
  const free = numericColumns(rows.slice(firstRow - 1)).filter((column) => !taken.has(column));
  if (free.length < missing.length) return undefined;
  const [first] = missing;
  const nameOf = (column: number) => nameFor(column, new Map(others.map((other) => [other.column, other.heading])));
  const rest = (from: number) => missing.map((field, i) => ({ word: nameOf(free[from + i]!), meaning: field }));
  return {
    about: first!,
    text: `No column is headed as the ${missing.join(", ")}. Which is it?`,
    rows: [],
    choices: Array.from({ length: free.length - missing.length + 1 }, (_, from) =>
      choice(
        rest(from)
          .map(({ word, meaning }) => `${meaning}: ${word}`)
          .join(", "),
        { words: rest(from) },
      ),
    ),
  };
}

function questionOf(
  { field, candidates, reason }: Ask,
  headings: Headings,
  declined: ReadonlySet<number>,
  cellsOf: (column: number) => readonly unknown[],
): Question {
  const used = new Map([...headings].filter(([column]) => !declined.has(column)));
  const texts = new Map([...headings].map(([column, { text }]) => [column, text]));
  const nameOf = (column: number) => nameFor(column, texts);
  const places = candidates.map(({ column, heading }) => `column ${columnLetters(column)} ${shown(heading)}`);
  const decline: Choice = choice(candidates.length === 1 ? "it is not used" : "none of them is used", {
    words: candidates.map(({ column }) => ({ word: nameOf(column), meaning: NOT_USED })),
  });
  const ticked = candidates.length > 1 && candidates.every((each) => "kind" in each);
  const choices = ticked
    ? [choice("the ticks say the enclosure", { words: [{ word: TICKS, meaning: "ticks" }] })]
    : field === "length"
      ? lengthChoices(candidates[0]!.column, nameOf, texts, used)
      : candidates.flatMap(({ column, heading }) =>
          fieldsOf(field, column, headings).flatMap((meaning) =>
            choicesFor(meaning, nameOf(column), heading, cellsOf(column)),
          ),
        );
  return {
    about: field,
    text: `${field}? ${places.join(" or ")}: ${reason}.`,
    rows: [],
    choices: [...choices, decline],
  };
}

/** What the user asked for first, then what else the heading may mean. */
function fieldsOf(field: string, column: number, headings: Headings): readonly string[] {
  const others = headings.get(column)?.readings.map((reading) => reading.field) ?? [];
  // A length may be any of the three directions.
  return [...new Set([field, ...others.filter((other) => other !== "length")])];
}

function choicesFor(meaning: string, word: string, heading: string, cells: readonly unknown[]): readonly Choice[] {
  const filled = cells.filter((cell) => !isBlank(cell));
  const isYesNo = filled.length > 0 && filled.every((cell) => yesOrNo(cell) !== undefined);
  const own: Word = { word, meaning };
  if (meaning !== "enclosure" || !isYesNo) {
    const what = FIELDS.includes(meaning as (typeof FIELDS)[number]) ? `the ${meaning}` : `the setting ${meaning}`;
    return [choice(`${shown(heading)} is ${what}`, { words: [own] })];
  }
  return OFFERED_KINDS.map((kind) =>
    choice(`${shown(heading)}: yes is a ${kind}`, { words: [own, { word: "yes", meaning: kind }] }),
  );
}

function lengthChoices(
  column: number,
  nameOf: (column: number) => string,
  texts: ReadonlyMap<number, string>,
  headings: Headings,
): readonly Choice[] {
  return DIRECTIONS.flatMap((field) => {
    const other = [...headings].find(
      ([each, { readings }]) => each !== column && readings.some((r) => r.field === field),
    );
    if (other === undefined) return [];
    const words = [
      { word: nameOf(column), meaning: field },
      { word: nameOf(other[0]), meaning: NOT_USED },
    ];
    return [choice(`${shown(texts.get(column))} is the ${field}, and ${shown(other[1].text)} is not used`, { words })];
  });
}

/** A column's heading, or its letters where the heading is not its own or could be letters. */
export function nameFor(column: number, texts: ReadonlyMap<number, string>): string {
  const text = texts.get(column) ?? "";
  const alike = [...texts.values()].filter((other) => other.toLowerCase() === text.toLowerCase()).length > 1;
  const isLetters = columnOfLetters(text) !== undefined;
  if (text !== "" && !alike && !isLetters) return text;
  const letters = columnLetters(column);
  const isHeading = [...texts.values()].some((other) => other.trim().toLowerCase() === letters.toLowerCase());
  return isHeading ? `column ${letters}` : letters;
}
