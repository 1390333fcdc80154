import { shown } from "../measure/errors";
import { columnLetters } from "../workbook/cellRef";
import { columnOfLetters } from "./columnOfLetters";
import { isEmpty } from "../measure/blank";
import { numericColumns, type Headings } from "./findHeadings";
import { yesOrNo } from "./kindWords";
import { FIELDS } from "./lexicon";
import { choice, NOT_USED, TICKS, type Choice, type Question, type Word } from "./questions";
import type { Ask, Recognition } from "./recognition";
import { DIRECTIONS } from "./candidates";

/** Kinds offered where nothing says which is meant. */
export const OFFERED_KINDS = ["clamshell box", "lidded box", "four-flap wrapper", "slipcase", "tray"] as const;

/** What to ask where the heading of a column leaves in doubt what it is. */
export function columnQuestions(
  ask: readonly Ask[],
  headings: Headings,
  declined: ReadonlySet<number>,
  cellsOf: (column: number) => readonly unknown[],
): readonly Question[] {
  const needed = ask.filter((each) => each.needed);
  const columnsOf = ({ candidates }: Ask) => candidates.map(({ column }) => column).join();
  // One column that may be several fields is asked about once: each of them is among the choices.
  const first = needed.filter((each, i) => needed.findIndex((other) => columnsOf(other) === columnsOf(each)) === i);
  return first.map((each) => questionOf(each, headings, declined, cellsOf));
}

const MEASURES = ["height", "width", "depth", "dimensions"] as const;

/** Asks which columns the missing measures are; undefined where no column of numbers is left. */
export function missingQuestion(
  missing: readonly string[],
  recognition: Recognition,
  rows: readonly (readonly unknown[])[],
  isOptional = false,
): Question | undefined {
  const { columns, settings, declined, firstRow, others } = recognition;
  const known = [...Object.values(columns), ...settings].map(({ column }) => column);
  const taken = new Set([...known, ...declined]);
  const free = numericColumns(rows.slice(firstRow - 1)).filter((column) => !taken.has(column));
  if (free.length < missing.length) return undefined;
  const [first] = missing;
  const nameOf = (column: number) => nameFor(column, new Map(others.map((other) => [other.column, other.heading])));
  const rest = (from: number) => missing.map((field, i) => ({ word: nameOf(free[from + i]!), meaning: field }));
  // Columns to the right of the known measures come first.
  const last = Math.max(0, ...MEASURES.map((field) => columns[field]?.column ?? 0));
  const starts = Array.from({ length: free.length - missing.length + 1 }, (_, from) => from).sort(
    (a, b) => Math.abs(free[a]! - last - 1) - Math.abs(free[b]! - last - 1),
  );
  return {
    about: first!,
    text: `No column is headed as the ${missing.join(", ")}. Which is it?`,
    rows: [],
    choices: [
      ...starts.map((from) =>
        choice(
          rest(from)
            .map(({ word, meaning }) => `${meaning}: ${word}`)
            .join(", "),
          { words: rest(from) },
        ),
      ),
      ...(isOptional
        ? [choice("no column holds it", { words: free.map((column) => ({ word: nameOf(column), meaning: NOT_USED })) })]
        : []),
    ],
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
  const decline: Choice = choice(candidates.length === 1 ? "it is not used" : "none of them is used", {
    words: candidates.map(({ column }) => ({ word: nameOf(column), meaning: NOT_USED })),
  });
  const ticked = candidates.length > 1 && candidates.every((each) => "kind" in each);
  const choices = ticked
    ? [choice("the ticks say the enclosure", { words: [{ word: TICKS, meaning: "ticks" }] })]
    : field === "length"
      ? lengthChoices(candidates[0]!.column, nameOf, texts, used)
      : field === "depth" && candidates.length === 1 && isLength(candidates[0]!.column, headings)
        ? depthChoices(candidates[0]!.column, nameOf, texts, used)
        : candidates.flatMap(({ column, heading }) =>
            fieldsOf(field, column, headings).flatMap((meaning) =>
              choicesFor(meaning, nameOf(column), heading, cellsOf(column)),
            ),
          );
  return {
    about: field,
    text: doubtText({ field, candidates, reason }),
    rows: [],
    choices: [...choices, decline],
  };
}

/** What is asked about a doubtful column, and why, in whole sentences. */
export function doubtText({ field, candidates, reason }: Pick<Ask, "field" | "candidates" | "reason">): string {
  const places = candidates.map(({ column, heading }) => `column ${columnLetters(column)} ${shown(heading)}`);
  const what = whatIs(field);
  const asked =
    field === "length"
      ? `Which measure is ${places.join(" or ")}?`
      : places.length === 1
        ? `Is ${places[0]!} ${what}?`
        : `Which is ${what}: ${places.join(" or ")}?`;
  return `${asked} ${reason.charAt(0).toUpperCase()}${reason.slice(1)}.`;
}

function whatIs(meaning: string): string {
  // "The box" alone may be any enclosure.
  if (meaning === "box") return "the box that items share";
  return FIELDS.includes(meaning as (typeof FIELDS)[number]) ? `the ${meaning}` : `the setting ${meaning}`;
}

/** What the user asked for first, then what else the heading may mean. */
function fieldsOf(field: string, column: number, headings: Headings): readonly string[] {
  const others = headings.get(column)?.readings.map((reading) => reading.field) ?? [];
  // A length may be any of the three directions.
  return [...new Set([field, ...others.filter((other) => other !== "length")])];
}

function choicesFor(meaning: string, word: string, heading: string, cells: readonly unknown[]): readonly Choice[] {
  const filled = cells.filter((cell) => !isEmpty(cell));
  const isYesNo = filled.length > 0 && filled.every((cell) => yesOrNo(cell) !== undefined);
  const own: Word = { word, meaning };
  if (meaning !== "enclosure" || !isYesNo) return [choice(`${shown(heading)} is ${whatIs(meaning)}`, { words: [own] })];
  return OFFERED_KINDS.map((kind) =>
    choice(`${shown(heading)}: yes is a ${kind}`, { words: [own, { word: "yes", meaning: kind }] }),
  );
}

function isLength(column: number, headings: Headings): boolean {
  return headings.get(column)?.readings.some(({ field }) => field === "length") === true;
}

/** A length beside a height and a width: the thickness, or the height of an object that lies on its back. */
function depthChoices(
  column: number,
  nameOf: (column: number) => string,
  texts: ReadonlyMap<number, string>,
  headings: Headings,
): readonly Choice[] {
  const own = shown(texts.get(column));
  const [height] = [...headings].find(([, { readings }]) => readings.some(({ field }) => field === "height")) ?? [];
  const lying =
    height === undefined
      ? []
      : [
          choice(`${own} is the height, and ${shown(texts.get(height))} is the thickness`, {
            words: [
              { word: nameOf(column), meaning: "height" },
              { word: nameOf(height), meaning: "depth" },
            ],
          }),
        ];
  return [choice(`${own} is the depth`, { words: [{ word: nameOf(column), meaning: "depth" }] }), ...lying];
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
