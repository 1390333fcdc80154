import type { Mm } from "../measure/units";
import type { Typesetter } from "./typesetter";
import { printable } from "./visualRuns";

/** Letters between which a line may end: Chinese and Japanese are written without spaces. */
const NO_SPACES = /[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\u3000-\u303f\uff00-\uffef]/u;
/** These do not begin a line. */
const CLOSING = /^[\u3001\u3002\uff0c\uff0e\uff1a\uff1b\uff01\uff1f\u300d\u300f\u3011\uff09)\]}.,;:!?]/u;

export interface TypeStyle {
  readonly size: number;
  readonly bold?: boolean;
}

/** A text in lines no wider than `width`: whole words; a word wider than a line is broken, nothing is left out. */
export function wrapText(
  text: string,
  width: Mm,
  { size, bold = false }: TypeStyle,
  type: Typesetter,
): readonly string[] {
  const fits = (line: string) => type.width(line, size, bold) <= width;
  const clean = printable(text);
  if (fits(clean)) return clean === "" ? [] : [clean];
  const lines: string[] = [];
  let line = "";
  for (const { word, spaced } of unitsOf(clean)) {
    const longer = line === "" ? word : `${line}${spaced ? " " : ""}${word}`;
    if (fits(longer)) {
      line = longer;
      continue;
    }
    if (line !== "") lines.push(line);
    line = word;
    while (line !== "" && !fits(line)) {
      const letters = [...line];
      const kept = lettersThatFit(letters, fits);
      lines.push(letters.slice(0, kept).join(""));
      line = letters.slice(kept).join("");
    }
  }
  if (line !== "") lines.push(line);
  return lines;
}

/** One line, ended by an ellipsis where it is too long; for running heads, whose whole text stands elsewhere. */
export function shortened(text: string, width: Mm, { size, bold = false }: TypeStyle, type: Typesetter): string {
  const fits = (line: string) => type.width(line, size, bold) <= width;
  const clean = printable(text);
  if (fits(clean)) return clean;
  const letters = [...clean.slice(0, LONGEST_HEAD)];
  const kept = lettersThatFit(letters, (line) => fits(`${line}…`));
  return `${letters.slice(0, kept).join("").trimEnd()}…`;
}

const LONGEST_HEAD = 400;

/** At least one, so that a narrow column ends too. */
function lettersThatFit(letters: readonly string[], fits: (line: string) => boolean): number {
  let [low, high] = [1, letters.length];
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (fits(letters.slice(0, middle).join(""))) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** The spaces in a size such as `10 7/16 −` or `26.5 mm`: a line that ends there would read 10. */
const IN_SIZE = /(?<=\d) +(?=\d+\/\d|[+−](?!\S)|(?:mm|cm)(?![\p{L}\d]))/gu;
/** A space at which no line ends. */
export const NO_BREAK = "\u00a0";

function unitsOf(text: string): readonly { readonly word: string; readonly spaced: boolean }[] {
  return text
    .replace(IN_SIZE, NO_BREAK)
    .split(/ +/)
    .flatMap((word) => partsOf(word).map((part, index) => ({ word: part, spaced: index === 0 })));
}

function partsOf(word: string): readonly string[] {
  if (!NO_SPACES.test(word)) return [word];
  const parts: string[] = [];
  for (const letter of word) {
    const last = parts.at(-1);
    const joined = last !== undefined && (CLOSING.test(letter) || !(NO_SPACES.test(letter) || NO_SPACES.test(last)));
    if (joined) parts[parts.length - 1] += letter;
    else parts.push(letter);
  }
  return parts;
}
