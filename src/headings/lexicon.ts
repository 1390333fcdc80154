import { LENGTH_WORDS, MASS_WORDS } from "../measure/unitWords";
import { arabic } from "./vocabulary/arabic";
import { chinese } from "./vocabulary/chinese";
import { dutch } from "./vocabulary/dutch";
import { english } from "./vocabulary/english";
import { french } from "./vocabulary/french";
import { german } from "./vocabulary/german";
import { italian } from "./vocabulary/italian";
import { polish } from "./vocabulary/polish";
import { portuguese } from "./vocabulary/portuguese";
import { russian } from "./vocabulary/russian";
import { spanish } from "./vocabulary/spanish";
import { swedish } from "./vocabulary/swedish";
import type { Field, Vocabulary } from "./vocabulary/vocabulary";

/** Every language, the first winning where two fit a survey alike. */
export const VOCABULARIES: readonly Vocabulary[] = [
  ...[english, french, german, spanish, italian, portuguese, dutch, swedish, polish, russian, arabic, chinese],
];

/**
 * How sure a heading is. `letter` is a single letter that needs company (H beside W); `maybe` is never taken unasked.
 */
export type Strength = "sure" | "letter" | "maybe";

export interface HeadingReading {
  readonly field: Field;
  readonly strength: Strength;
  /** Among several headings for one label, the lower rank wins: an accession number over a bare number. */
  readonly rank: number;
}

/** Words of a text that is compared with a heading: lower case, no accents, no points, single spaces. */
export function wordsOf(text: string): string {
  return foldedWords(text.slice(0, MOST_LETTERS))
    .replace(/[.'’`]/g, "")
    .replace(/(\p{L})\s*#/gu, "$1 no")
    .replace(/[^\p{L}\p{N}#№]+/gu, " ")
    .trim();
}

/** Letters of a heading that are looked at. */
const MOST_LETTERS = 500;

/** The unit that a word names; undefined when it is none. */
export function unitWord(word: string): string | undefined {
  return UNITS.get(foldedWords(word).trim().replace(/\.$/, ""));
}

/** Units of mass; the others are of length. */
export const MASS_UNITS: ReadonlySet<string> = new Set(Object.keys(MASS_WORDS));

/** The language whose words fit most of the headings, whole words before single letters. */
export function languageOf(words: readonly string[]): Vocabulary {
  const worth = VOCABULARIES.map((vocabulary) => ({ vocabulary, fits: 0 }));
  for (const each of words)
    for (const { place, strength } of INDEX.get(each) ?? []) worth[place]!.fits += strength === "letter" ? LETTER : 1;
  return worth.reduce((best, each) => (each.fits > best.fits ? each : best)).vocabulary;
}

/** What a heading of exactly these words means in a language, else in the others where they agree. */
export function readingsOf(words: string, { language }: Vocabulary): readonly HeadingReading[] {
  const known = INDEX.get(words) ?? [];
  const own = known.filter(({ place }) => VOCABULARIES[place]!.language === language);
  if (own.length > 0) return own.map(reading);
  const foreign = known.filter(({ strength }) => strength !== "letter");
  const fields = new Set(foreign.map(({ field }) => field));
  const [first] = foreign;
  if (first === undefined) return [];
  if (fields.size === 1) return [reading(foreign.find(({ strength }) => strength === "sure") ?? first)];
  return [...fields].map((field) => ({ field, strength: "maybe", rank: first.rank }));
}

/** The measures of which a longer heading holds a word, in a language or in English. */
export function measuresWithin(words: string, vocabulary: Vocabulary): readonly Field[] {
  const within = words.split(" ");
  return MEASURED.filter((field) =>
    [vocabulary, english].some((each) =>
      (FIELD_WORDS.get(each)!.get(field) ?? []).some((word) =>
        isHan(word) ? words.includes(word) : word.length > 1 && within.includes(word),
      ),
    ),
  );
}

/** Everything that a column can be. */
export const FIELDS = Object.keys(english.headings) as readonly Field[];

/** Fields that are measured: a longer heading with one of their words may be another measure, so it is asked about. */
export const MEASURED: readonly Field[] = ["height", "width", "depth", "length", "weight", "dimensions"];

/** Whether a word around a measure changes nothing: `max` in `max height`. */
export function isHarmless(word: string): boolean {
  return HARMLESS.has(word);
}

/** The letter of the direction that a word or letter of an order names: H, W, D or L. */
export function orderLetter(word: string, vocabulary: Vocabulary): string | undefined {
  const found = readingsOf(word, vocabulary).find(({ field, strength }) => field in LETTERS && strength !== "maybe");
  return found === undefined ? undefined : LETTERS[found.field as keyof typeof LETTERS];
}

/** The setting that a heading names in any language: `matériau` is `material`. */
export function settingWord(words: string): string | undefined {
  return SETTING_WORDS.get(words);
}

/** No word for sums is longer, and none has a figure: most cells are judged by that alone. */
const MOST_OF_TOTALS = 40;

/** Whether the first words of a row say that it holds sums. */
export function isTotalsWord(cell: unknown): boolean {
  return typeof cell === "string" && cell.length <= MOST_OF_TOTALS && !/\d/.test(cell) && TOTALS.has(wordsOf(cell));
}

/** The words of a list in a vocabulary. */
export function listOf(text: string): readonly string[] {
  return text.split(/, ?/).filter((word) => word !== "");
}

const LETTERS = { height: "H", width: "W", depth: "D", length: "L" } as const;
/** A single letter says less about the language than a word does. */
const LETTER = 0.3;

interface Entry extends HeadingReading {
  /** Of the language in the list. */
  readonly place: number;
}

function reading({ field, strength, rank }: Entry): HeadingReading {
  return { field, strength, rank };
}

const LETTER_CASES = /ł/g;

/** Lower case without accents: `Épaisseur` is read as `epaisseur`, `Größe` as `grosse`. */
function foldedWords(text: string): string {
  return PLAIN.test(text)
    ? text.toLowerCase()
    : text
        .normalize("NFKC")
        .toLowerCase()
        .replace(LETTER_CASES, "l")
        .replace(/ß/g, "ss")
        .normalize("NFD")
        .replace(/[\p{M}ـ]/gu, "")
        .normalize("NFC");
}

const PLAIN = /^[ -~]*$/;

function isHan(word: string): boolean {
  return /\p{Script=Han}/u.test(word);
}

const INDEX: ReadonlyMap<string, readonly Entry[]> = indexed();
const FIELD_WORDS = new Map(
  VOCABULARIES.map((vocabulary) => [
    vocabulary,
    new Map(
      Object.entries(vocabulary.headings).map(([field, lines]) => [
        field as Field,
        lines.flatMap((line) => listOf(line).map(wordsOf)),
      ]),
    ),
  ]),
);
const HARMLESS: ReadonlySet<string> = new Set(
  VOCABULARIES.flatMap(({ harmless }) => listOf(harmless).flatMap((each) => wordsOf(each).split(" "))),
);
const TOTALS: ReadonlySet<string> = new Set(VOCABULARIES.flatMap(({ totals }) => listOf(totals).map(wordsOf)));
const SETTING_WORDS: ReadonlyMap<string, string> = new Map(
  VOCABULARIES.flatMap(({ settings }) =>
    Object.entries(settings).flatMap(([name, text]) => listOf(text).map((word) => [wordsOf(word), name] as const)),
  ),
);
const UNITS: ReadonlyMap<string, string> = new Map([
  ...[...Object.entries(LENGTH_WORDS), ...Object.entries(MASS_WORDS)].flatMap(([unit, list]) =>
    list.map((word) => [foldedWords(word), unit] as const),
  ),
  ...['"', "″", "′′", "''"].map((mark) => [mark, "in"] as const),
  ...["'", "′"].map((mark) => [mark, "ft"] as const),
]);

function indexed(): ReadonlyMap<string, readonly Entry[]> {
  const index = new Map<string, Entry[]>();
  VOCABULARIES.forEach(({ headings, letters, maybe }, place) => {
    const put = (text: string | undefined, entry: Omit<Entry, "place">): void => {
      for (const word of listOf(text ?? "").map(wordsOf)) {
        const known = index.get(word);
        if (known === undefined) index.set(word, [{ ...entry, place }]);
        else if (!known.some((other) => other.place === place && other.field === entry.field))
          known.push({ ...entry, place });
      }
    };
    for (const [field, lines] of Object.entries(headings) as [Field, readonly string[]][])
      lines.forEach((line, rank) => put(line, { field, strength: "sure", rank }));
    for (const [field, line] of Object.entries(letters) as [Field, string][])
      put(line, { field, strength: "letter", rank: 0 });
    for (const [field, line] of Object.entries(maybe) as [Field, string][])
      put(line, { field, strength: "maybe", rank: headings[field]?.length ?? 1 });
  });
  return index;
}
