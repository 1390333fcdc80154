import bidiFactory from "bidi-js";
import type { FontName } from "./fonts";

/** Letters of one font, in the order in which they are printed. */
export interface Run {
  readonly font: FontName;
  readonly text: string;
  /** A letter that no font has, shown as its code point in a frame. */
  readonly framed: boolean;
}

const bidi = bidiFactory();

/** Marks that steer other letters and are not printed themselves. */
const UNSEEN = /[\p{Default_Ignorable_Code_Point}]/gu;
/** Of those, what joins and parts letters of a word. */
const JOINERS = /\u200c|\u200d/u;
/** Whatever ends a line or moves the pen is one space on a page. */
const CONTROLS = /[\p{Cc}\u2028\u2029]+/gu;
const RIGHT_TO_LEFT = /[\p{Script=Arabic}\p{Script=Hebrew}\p{Script=Syriac}\p{Script=Thaana}\p{Script=Nko}]/u;
/** All that can move a letter: strong letters and figures of the right-to-left scripts, and marks of direction (UAX 9). */
const MOVING =
  /[\p{Script=Arabic}\p{Script=Hebrew}\p{Script=Syriac}\p{Script=Thaana}\p{Script=Nko}\u0590-\u08ff\u200f\u202a-\u202e\u2066-\u2069\ufb1d-\ufdff\ufe70-\ufeff\u{10800}-\u{10fff}\u{1e800}-\u{1efff}]/u;
const SIMPLE = /^[\u0020-\u007e\u00a0-\u024f]*$/;

/** Whether a paragraph is read from the right: its first letter with a direction is. */
export function readsFromRight(text: string): boolean {
  if (SIMPLE.test(text)) return false;
  const first = /\p{L}/u.exec(text);
  return first !== null && RIGHT_TO_LEFT.test(first[0]);
}

/** A text as it is set: one line, unseen marks gone. */
export function printable(text: string): string {
  return text
    .replace(CONTROLS, " ")
    .replace(UNSEEN, (mark) => (JOINERS.test(mark) ? mark : ""))
    .trim();
}

/**
 * One line of text in the order in which it is printed from left to right, by fonts. Letters keep their order within a
 * word, whichever way it reads: the shaper turns Arabic and Hebrew words round.
 *
 * @param has whether a font has a letter
 */
export function visualRuns(
  text: string,
  { bold, fromRight }: { readonly bold: boolean; readonly fromRight: boolean },
  fonts: readonly FontName[],
  has: (font: FontName, codePoint: number) => boolean,
): readonly Run[] {
  const first = bold ? "bold" : "regular";
  if (SIMPLE.test(text) && !fromRight) return text === "" ? [] : [{ font: first, text, framed: false }];
  const order = [first, ...fonts.filter((font) => font !== "regular" && font !== "bold")] as const;
  const levels = fromRight || MOVING.test(text) ? bidi.getEmbeddingLevels(text, fromRight ? "rtl" : "ltr").levels : [];
  const pieces: Levelled[] = [];
  let at = 0;
  for (const letter of text) {
    const level = levels[at] ?? 0;
    at += letter.length;
    const last = pieces.at(-1);
    const font = fontOf(letter, last, order, has);
    if (font === undefined && JOINERS.test(letter)) continue;
    const framed = font === undefined;
    const shown = framed ? codePointOf(letter) : letter;
    if (last !== undefined && !last.framed && last.level === level && last.font === font && !framed) last.text += shown;
    else pieces.push({ level, font: font ?? first, framed, text: shown });
  }
  return reordered(pieces).flatMap(wordsOf);
}

interface Levelled extends Run {
  text: string;
  readonly level: number;
}

/** The font in hand as far as it goes, so that a space or comma does not change it; but a letter asks for its own. */
function fontOf(
  letter: string,
  last: Levelled | undefined,
  order: readonly FontName[],
  has: (font: FontName, codePoint: number) => boolean,
): FontName | undefined {
  const codePoint = letter.codePointAt(0)!;
  if (last !== undefined && !last.framed && !/[\p{L}\p{N}]/u.test(letter) && has(last.font, codePoint))
    return last.font;
  return order.find((font) => has(font, codePoint));
}

/** `U+1F4D6`. */
function codePointOf(letter: string): string {
  return `U+${letter.codePointAt(0)!.toString(16).toUpperCase().padStart(4, "0")}`;
}

/** Rule L2 of the Unicode Bidirectional Algorithm (UAX 9): from the highest level down, runs at or above it turn round. */
function reordered(pieces: readonly Levelled[]): readonly Levelled[] {
  const visual = [...pieces];
  const highest = Math.max(0, ...pieces.map(({ level }) => level));
  for (let level = highest; level > 0; level--)
    for (let start = 0; start < visual.length; start++) {
      let end = start;
      while (end < visual.length && visual[end]!.level >= level) end++;
      if (end > start) visual.splice(start, end - start, ...visual.slice(start, end).reverse());
      start = end;
    }
  return visual;
}

/** A run that reads from the right, word by word, brackets mirrored. */
function wordsOf({ font, text, framed, level }: Levelled): readonly Run[] {
  if (framed || level % 2 === 0) return [{ font, text, framed }];
  const mirrored = [...text].map((letter) => bidi.getMirroredCharacter(letter) ?? letter).join("");
  return mirrored
    .split(/( )/)
    .filter((word) => word !== "")
    .reverse()
    .map((word) => ({ font, text: RIGHT_TO_LEFT.test(word) ? word : [...word].reverse().join(""), framed }));
}
