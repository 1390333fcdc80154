/** A word that says which way a measure runs. */
export type DimensionTerm = "height" | "width" | "depth" | "length" | "diameter";

/** A term ends where no letter follows, or at the `x` of `HxW` and `30Hx20W`. */
const TERM =
  /(?:(height|high|tall|hgt|ht|h)|(width|wide|breadth|broad|wd|w)|(thickness|thick|thk|th|depth|deep|dp|d)|(length|long|l)|(diameter|diam|dia))(?=$|[^\p{L}]|x)(?:\.(?!\d))?|([øØ⌀])/iuy;
const TERM_OF_GROUP: readonly DimensionTerm[] = ["height", "width", "depth", "length", "diameter", "diameter"];
const TIMES = / ?(?:x|\*|by(?!\p{L})) ?/iuy;
/** An order written in one word, such as HWD. */
const LETTERS = /[hlwd]{2,3}(?!\p{L})/iuy;
const WORD_START = /(?<!\p{L})\p{L}|[øØ⌀]/giu;

/** Reads the dimension term that starts at `at` of a plain text: `H`, `Ht.`, `wide`, `diam.`, `Ø`. */
export function termAt(text: string, at: number): { readonly term: DimensionTerm; readonly end: number } | undefined {
  TERM.lastIndex = at;
  const groups = TERM.exec(text)?.slice(1);
  const term = TERM_OF_GROUP[groups?.findIndex((group) => group !== undefined) ?? -1];
  return term === undefined ? undefined : { term, end: TERM.lastIndex };
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
