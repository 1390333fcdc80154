import {
  isHarmless,
  MASS_UNITS,
  MEASURED,
  measuresWithin,
  orderLetter,
  readingsOf,
  unitWord,
  wordsOf,
  type HeadingReading,
} from "./lexicon";
import { english } from "./vocabulary/english";
import type { Vocabulary } from "./vocabulary/vocabulary";

/** A heading taken apart: its words without unit and brackets, the units it names, the order of a dimension text. */
export interface Heading {
  readonly text: string;
  readonly words: string;
  readonly units: readonly string[];
  /** `HWD`, as letters of height, width, depth (thickness is D) and length. */
  readonly order?: string;
  /** It has a remark in brackets that is neither a unit nor harmless: `Height (open)`. */
  readonly remark: boolean;
  /** It asks a question: `Enclosure needed?` holds yes and no. */
  readonly question: boolean;
  /** What its words mean in the language of the survey. */
  readonly readings: readonly HeadingReading[];
}

/** Takes a heading apart. */
export function readHeading(value: unknown, vocabulary: Vocabulary = english): Heading {
  const text = typeof value === "string" ? plainHeading(value) : "";
  const spaced = text.replace(/_/g, " ").replace(/(?<=\p{Ll}{2})(?=\p{Lu})/gu, " ");
  const units: string[] = [];
  const orders: string[] = [];
  let remark = false;
  const open = spaced.replace(/[([{]([^)\]}]{0,300})[)\]}]/g, (_, inside: string) => {
    // An order comes first: the letter of a direction may be a unit too, as Г is grams and a depth.
    const parts = inside.split(/[,;，、]/);
    const ordered = parts.map((part) => readOrder(part, vocabulary));
    const left = takeUnits(parts.filter((_part, i) => ordered[i] === undefined).join(" "), units);
    const order = ordered.find((each) => each !== undefined) ?? readOrder(left, vocabulary);
    if (order !== undefined) orders.push(order);
    else if (!left.split(" ").every((word) => word === "" || isHarmless(wordsOf(word)))) remark = true;
    return " ";
  });
  const bare = open.replace(/[*:†]{1,9}\s{0,9}$/, "").trim();
  // An order first here too: its last word may be a unit elsewhere, as `gr.` is.
  const whole = takeOrder(bare, vocabulary);
  const { rest, order } = whole.order === undefined ? takeOrder(takeTrailingUnit(bare, units), vocabulary) : whole;
  if (order !== undefined) orders.unshift(order);
  const words = wordsOf(rest) || (orders.length > 0 ? "dimensions" : "");
  const heading = {
    text,
    words,
    units: [...new Set(units)],
    ...(orders[0] === undefined ? {} : { order: orders[0] }),
    remark,
    question: /[?？؟]/.test(text),
  };
  return { ...heading, readings: headingReadings(heading, vocabulary) };
}

/** Letters of a heading that are looked at: twice what Excel takes for the heading of a table. */
const MOST_LETTERS = 500;

function plainHeading(value: string): string {
  const plain = value.slice(0, MOST_LETTERS).normalize("NFKC").slice(0, MOST_LETTERS);
  return plain.replace(/\s+/g, " ").trim();
}

/** The words by which a language is chosen, without reading the whole heading. */
export function wordsForLanguage(value: unknown): string {
  return typeof value !== "string" || value.length > LONGEST_HEADING ? "" : withoutUnit(value);
}

function withoutUnit(text: string): string {
  return wordsOf(
    takeTrailingUnit(
      text
        .normalize("NFKC")
        .replace(/[([{][^)\]}]{0,300}[)\]}]/g, " ")
        .trim(),
      [],
    ),
  );
}

/** Letters of a heading; what is longer is a note. */
const LONGEST_HEADING = 80;
const LONGEST_MEASURE = 5;

function headingReadings(heading: Omit<Heading, "readings">, vocabulary: Vocabulary): readonly HeadingReading[] {
  const { words } = heading;
  if (words === "") return [];
  const exact = readingsFor(words, vocabulary, heading.order);
  if (exact.length > 0) return exact.map((reading) => doubted(reading, heading));
  const kept = words
    .split(" ")
    .filter((word) => !isHarmless(word))
    .join(" ");
  const plain = readingsOf(kept, vocabulary)
    .filter(({ field }) => MEASURED.includes(field))
    .map((reading) => doubted(reading, heading));
  if (plain.length > 0) return plain;
  if (words.split(" ").length > LONGEST_MEASURE) return [];
  return measuresWithin(words, vocabulary).map((field) => ({ field, strength: "maybe", rank: 1 }));
}

/** A heading that says an order is one of dimensions, whatever its other words are called. */
function readingsFor(words: string, vocabulary: Vocabulary, order: string | undefined): readonly HeadingReading[] {
  const found = readingsOf(words, vocabulary);
  const isSize = found.some(({ field }) => field === "dimensions");
  return order !== undefined && isSize ? [{ field: "dimensions", strength: "sure", rank: 0 }] : found;
}

/** A remark, a question, two units at once, or a unit of the wrong kind leaves a doubt. */
function doubted(
  reading: HeadingReading,
  { units, remark, question, words }: Omit<Heading, "readings">,
): HeadingReading {
  const mass = units.some((unit) => MASS_UNITS.has(unit));
  const length = units.some((unit) => !MASS_UNITS.has(unit));
  const isWeight =
    (reading.field === "width" && words === "w") || (reading.field === "dimensions" && words === "masse");
  if (isWeight && mass && !length) return { field: "weight", strength: "sure", rank: 0 };
  const measured = MEASURED.includes(reading.field);
  const wrongKind = measured && (reading.field === "weight" ? length : mass && reading.field !== "dimensions");
  const twoUnits = measured && units.filter((unit) => !MASS_UNITS.has(unit)).length > 1;
  const doubt = (measured && remark) || (question && reading.field === "enclosure") || wrongKind || twoUnits;
  return doubt ? { ...reading, strength: "maybe" } : reading;
}

/** The text in brackets without its unit words. */
function takeUnits(inside: string, units: string[]): string {
  // In `in cm` the first word is no inch.
  const trimmed = inside.trim().replace(/^(?:in|en|em|i|w|в|ب)\s+(?=\p{L})/iu, "");
  const direct = unitWord(trimmed);
  if (direct !== undefined) {
    units.push(direct);
    return "";
  }
  const kept = trimmed.split(/[\s,;/]+|\bor\b|\band\b/).filter((word) => {
    const unit = unitWord(word);
    if (unit !== undefined) units.push(unit);
    return unit === undefined && word !== "";
  });
  return kept.join(" ");
}

/** A heading with more units than this does not name a measure. */
const MOST_UNITS = 8;

/** Words that join a measure to its unit: `Height in mm`, `Hauteur en cm`, `Высота в см`. */
const JOINING = / (?:in|en|em|i|w|в|ب)$/iu;

/** `Height cm`, `Weight, g`, `H/mm`, `Ht. in.`, `Height in mm`, `H"`, `Hmm`. */
function takeTrailingUnit(text: string, units: string[]): string {
  if (units.length >= MOST_UNITS) return text;
  const glued =
    /^([\p{L}])(mm|cm)$/iu.exec(text) ?? /^(\p{Script=Han}+?)(mm|cm|毫米|厘米|公分|kg|g|公斤|千克|克)$/iu.exec(text);
  const marked = /^(.*[\p{L}.])\s*("|″|'')$/u.exec(text);
  const match =
    glued ??
    marked ??
    /^(.+?)(?:\s{0,3}[,;:/|،]\s{0,3}|\s{1,3}-\s{0,3}|-(?!in\b)|\s{1,3})(\p{L}{1,40}\.?)$/iu.exec(text);
  const unit = match ? unitWord(match[2]!) : undefined;
  if (!match || unit === undefined) return text;
  units.push(unit);
  const rest = match[1]!.replace(JOINING, "");
  return rest === match[1] ? takeTrailingUnit(rest, units) : rest;
}

const STEP = "[\\p{L}.]{1,14}";
const TIMES = "\\s*[x×*/хX✕]\\s*";
const CHAIN = new RegExp(`(?:^|[\\s,:;-])(${STEP}(?:${TIMES}${STEP}){1,2})\\s*$`, "iu");
/** `HWD`, `高宽厚`. */
const LETTER_CHAIN = /(?:^|\s)(\p{L}{3})$/iu;

/** `Dimensions H x W x D` -> the words before, and `HWD`. */
function takeOrder(text: string, vocabulary: Vocabulary): { rest: string; order?: string } {
  for (const pattern of [CHAIN, LETTER_CHAIN]) {
    const chain = pattern.exec(text);
    const order = chain === null ? undefined : readOrder(chain[1]!, vocabulary);
    if (order !== undefined) return { rest: text.slice(0, chain!.index), order };
  }
  return { rest: text };
}

function readOrder(text: string, vocabulary: Vocabulary): string | undefined {
  const trimmed = text.trim();
  const spelled = trimmed.split(/[x×*/✕]|(?<=\p{L}\s{0,3})х(?=\s{0,3}\p{L})/iu);
  const steps = spelled.length === 1 && /^\p{L}{3}$/u.test(trimmed) ? [...trimmed] : spelled;
  if (steps.length < 2) return undefined;
  const letters = steps.map((step) => orderLetter(wordsOf(step), vocabulary) ?? orderLetter(wordsOf(step), english));
  if (letters.some((letter) => letter === undefined)) return undefined;
  return new Set(letters).size === letters.length ? letters.join("") : undefined;
}
