import { DIMENSION_WORDS, LEADING_LETTERS, type DimensionTerm } from "./dimensionWords";
import { alternatives } from "./unitWords";

const TERMS: readonly DimensionTerm[] = ["height", "width", "depth", "length", "diameter"];
const TERM_OF_GROUP: readonly DimensionTerm[] = [...TERMS, "diameter"];
/** Behind a number, and before one. */
const TRAILING = patternOf((term) => DIMENSION_WORDS[term]);
const LEADING = patternOf((term) => [...DIMENSION_WORDS[term], ...(LEADING_LETTERS[term] ?? [])]);
const TIMES = / ?(?:x|\*|by(?!\p{L})) ?/iuy;
/** An order written in one word, such as HWD. */
const LETTERS = /(?:[hlwd]{2,3}|h[bl][tdp]|bht|вш[тг])(?!\p{L})/iuy;
const WORD_START = /(?<!\p{L})\p{L}|[øØ⌀]/giu;

/** A dimension term in a text, and where it ends. */
interface FoundTerm {
  readonly term: DimensionTerm;
  readonly end: number;
}

/** Reads the dimension term that starts at `at` of a plain text: `H`, `Ht.`, `wide`, `Höhe`, `diam.`, `Ø`. */
export function termAt(text: string, at: number): FoundTerm | undefined {
  return foundBy(LEADING, text, at);
}

/** The same behind a number: `30 high`. */
export function trailingTermAt(text: string, at: number): FoundTerm | undefined {
  return foundBy(TRAILING, text, at);
}

function foundBy(pattern: RegExp, text: string, at: number): FoundTerm | undefined {
  pattern.lastIndex = at;
  const groups = pattern.exec(text)?.slice(1);
  const term = TERM_OF_GROUP[groups?.findIndex((group) => group !== undefined) ?? -1];
  return term === undefined ? undefined : { term, end: pattern.lastIndex };
}

/** A term ends where no letter follows, or at the `x` of `HxW` and `30Hx20W`. */
function patternOf(wordsOf: (term: DimensionTerm) => readonly string[]): RegExp {
  const groups = TERMS.map((term) => `(${alternatives(wordsOf(term))})`).join("|");
  return new RegExp(`(?:${groups})(?=$|[^\\p{L}]|x)(?:\\.(?!\\d))?|([øØ⌀])`, "iuy");
}

/** Where the text goes on after a multiplication sign (`x`, `*`, `by`) at `at`, or undefined. */
export function afterTimes(text: string, at: number): number | undefined {
  TIMES.lastIndex = at;
  return TIMES.test(text) ? TIMES.lastIndex : undefined;
}

/** Reads the order of measures that starts at `at`: `H x W x D`, `height by width`, `LWD`. */
export function orderAt(
  text: string,
  at: number,
): { readonly terms: readonly DimensionTerm[]; readonly end: number } | undefined {
  LETTERS.lastIndex = at;
  const letters = LETTERS.exec(text)?.[0];
  if (letters !== undefined) {
    return { terms: [...letters].flatMap((letter) => termAt(letter, 0)?.term ?? []), end: LETTERS.lastIndex };
  }
  const terms: DimensionTerm[] = [];
  let end = at;
  for (let next: number | undefined = at; next !== undefined; next = afterTimes(text, end)) {
    const found = termAt(text, next);
    if (found === undefined) return undefined;
    terms.push(found.term);
    end = found.end;
  }
  return terms.length > 1 ? { terms, end } : undefined;
}

/** Whether any word of a text is a dimension term or an order. */
export function holdsTerm(text: string): boolean {
  return [...text.matchAll(WORD_START)].some(
    ({ index }) => termAt(text, index) !== undefined || orderAt(text, index) !== undefined,
  );
}
