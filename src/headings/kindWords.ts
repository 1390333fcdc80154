import { listOf, VOCABULARIES, wordsOf } from "./lexicon";
import { distance } from "fastest-levenshtein";

/** What a value in the column of the enclosure means. */
export type KindMeaning =
  | { readonly kind: string; readonly near: boolean }
  | { readonly none: true }
  | { readonly unsure: readonly string[] }
  | { readonly notMade: true };

/**
 * What an everyday word for an enclosure means, in any language.
 *
 * @param words as `wordsOf` gives them
 * @returns undefined for a word that is not known
 */
export function kindMeaning(words: string): KindMeaning | undefined {
  if (words === "") return undefined;
  return KNOWN.get(words) ?? nearMiss(words);
}

/** Whether a cell says yes, or no, in any language. */
export function yesOrNo(cell: unknown): "yes" | "no" | undefined {
  if (typeof cell === "boolean") return cell ? "yes" : "no";
  if (cell === 1 || cell === 0) return cell === 1 ? "yes" : "no";
  if (typeof cell !== "string") return undefined;
  const text = cell.trim().toLowerCase();
  if (TICK_MARKS.has(text)) return "yes";
  const words = wordsOf(text);
  return YES.has(words) ? "yes" : NO.has(words) ? "no" : undefined;
}

/** The kind that a heading names, for columns of ticks. */
export function kindOfHeading(words: string): string | undefined {
  const known = KNOWN.get(words);
  return known !== undefined && "kind" in known ? known.kind : undefined;
}

/** Texts that are no enclosure although they hold no letter: `-`, `--`. */
export const NO_LETTERS = /^[-–—/\\.]+$/;

const TICK_MARKS: ReadonlySet<string> = new Set(["✓", "✔", "☑", "×", "√", "+", "●", "•"]);
const allWords = (of: (vocabulary: (typeof VOCABULARIES)[number]) => string): ReadonlySet<string> =>
  new Set(VOCABULARIES.flatMap((each) => listOf(of(each)).map(wordsOf)).filter((words) => words !== ""));
const YES = allWords(({ yes }) => yes);
const NO = allWords(({ no }) => no);

const KNOWN: ReadonlyMap<string, KindMeaning> = known();

function known(): ReadonlyMap<string, KindMeaning> {
  const map = new Map<string, KindMeaning>();
  const put = (word: string, meaning: KindMeaning): void => {
    const words = wordsOf(word);
    if (words !== "" && !map.has(words)) map.set(words, meaning);
  };
  for (const { kinds } of VOCABULARIES)
    for (const [kind, text] of Object.entries(kinds))
      for (const word of [kind, ...listOf(text)]) put(word, { kind, near: false });
  for (const word of VOCABULARIES.flatMap(({ none, no }) => [...listOf(none), ...listOf(no)]))
    put(word, { none: true });
  for (const { unsure } of VOCABULARIES)
    for (const [word, kinds] of Object.entries(unsure)) put(word, { unsure: kinds });
  for (const { notMade } of VOCABULARIES) for (const word of listOf(notMade)) put(word, { notMade: true });
  return map;
}

/** Letters that may differ in a word that is long enough to be known. */
const MOST_LETTERS = 2;
const LONG = 8;

/** A word one or two letters from the words of one kind alone. */
function nearMiss(words: string): KindMeaning | undefined {
  const most = words.length >= LONG ? MOST_LETTERS : words.length >= LONG / 2 + 1 ? 1 : 0;
  if (most === 0) return undefined;
  const kinds = new Set<string>();
  for (const [word, meaning] of KNOWN) {
    if (Math.abs(word.length - words.length) > most || distance(word, words) > most) continue;
    kinds.add("kind" in meaning ? meaning.kind : "");
  }
  const [kind = ""] = kinds;
  return kinds.size === 1 && kind !== "" ? { kind, near: true } : undefined;
}
