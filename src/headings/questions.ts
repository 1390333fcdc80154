import { InputError } from "../measure/errors";

/** What a heading or a value means in a survey: an answer of the user, or a row of the sheet `words`. */
export interface Word {
  /** A heading (or the letters of its column), or a value such as `box`. */
  readonly word: string;
  /** A field, a setting, `not used`, a kind of enclosure, `none`; left out where only the unit is said. */
  readonly meaning?: string;
  readonly unit?: string;
  /** It was said for this run, so a heading that is not there is an error; a remembered one is passed over. */
  readonly given?: boolean;
}

/** The word under which a sheet remembers what is no heading and no value. */
export const ALL_ROWS = "(all rows)";
export const ODD_SIZES = "(odd sizes)";
export const DECIMALS = "(decimals)";
export const TICKS = "(ticks)";
export const NOT_USED = "not used";
/** `--all undecided`: each row then says that its enclosure is not chosen. */
export const UNDECIDED = "undecided";

/** What an answer changes. */
export interface Effect {
  readonly words?: readonly Word[];
  /** What plain sizes are in: the setting `unit`. */
  readonly unit?: string;
  readonly sheet?: string;
  readonly headingRow?: number;
  readonly noHeadings?: boolean;
}

/** One answer after another: what is said later is added, and holds. */
export function bothEffects(first: Effect, second: Effect): Effect {
  return { ...first, ...second, words: [...(first.words ?? []), ...(second.words ?? [])] };
}

export interface Choice {
  /** What a button says. */
  readonly label: string;
  readonly effect: Effect;
  /** What is typed on the command line: `--unit cm`. */
  readonly option: string;
}

/** Something that only the user can say. */
export interface Question {
  readonly about: string;
  readonly text: string;
  /** Rows that it is about, counted from 1; empty when it is about all. */
  readonly rows: readonly number[];
  readonly choices: readonly Choice[];
}

/** A survey that is not read before the user has answered. The message is that of the first question. */
export class Unanswered extends InputError {
  constructor(
    error: Pick<InputError, "argument" | "got" | "expected" | "cure">,
    readonly questions: readonly Question[],
  ) {
    super(error.argument, error.got, error.expected, error.cure);
  }
}

/** The questions as one error. */
export function unanswered(questions: readonly [Question, ...Question[]]): Unanswered {
  const [first] = questions;
  const [example] = first.choices;
  const cure = example === undefined ? "" : `for instance ${example.option}`;
  return new Unanswered({ argument: first.about, got: "no answer", expected: first.text, cure }, questions);
}

export function choice(label: string, effect: Effect): Choice {
  return { label, effect, option: optionOf(effect) };
}

/** Fields that have an option of their own on the command line. */
export const FIELD_OPTIONS: ReadonlySet<string> = new Set([
  ...[
    "height",
    "width",
    "depth",
    "length",
    "weight",
    "enclosure",
    "dimensions",
    "identifier",
    "title",
    "quantity",
    "box",
  ],
]);

/** The options that have the effect on the command line. */
export function optionOf({ words = [], unit, sheet, headingRow, noHeadings }: Effect): string {
  return [
    ...(sheet === undefined ? [] : [typed("sheet", sheet)]),
    ...(headingRow === undefined ? [] : [`--heading-row ${headingRow}`]),
    ...(noHeadings === true ? ["--no-headings"] : []),
    ...(unit === undefined ? [] : [`--unit ${unit}`]),
    ...words.map(wordOption),
  ].join(" ");
}

function wordOption({ word, meaning, unit }: Word): string {
  if (word === ALL_ROWS) return typed("all", meaning ?? "");
  if (word === ODD_SIZES) return `--odd ${meaning ?? ""}`;
  if (word === DECIMALS) return `--decimals ${meaning ?? ""}`;
  if (word === TICKS) return "--ticks";
  const named =
    meaning === undefined
      ? ""
      : meaning === NOT_USED
        ? typed("not", word)
        : FIELD_OPTIONS.has(meaning)
          ? typed(meaning, word)
          : typed("word", `${word}=${meaning}`);
  const measured = unit === undefined ? "" : typed("unit", `${word}=${unit}`);
  return [named, measured].filter((text) => text !== "").join(" ");
}

/** An option with its value; one that begins with a hyphen would read as an option of its own. */
function typed(name: string, value: string): string {
  return `--${name}${value.startsWith("-") ? "=" : " "}${shellQuoted(value)}`;
}

/** As a shell takes it. */
export function shellQuoted(text: string): string {
  if (/^[\w./:=-]+$/.test(text)) return text;
  return /["$`\\!]/.test(text) ? `'${text.replaceAll("'", `'\\''`)}'` : `"${text}"`;
}
