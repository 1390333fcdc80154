import type { TextShape } from "./picture";

/** Room taken by a text, in ems: no font is asked, so wide letters are assumed. */
const LETTER_EM = 0.6;
const WIDE_LETTER_EM = 1.1;
/** Beyond the alphabets of Europe a letter may be as wide as it is high. */
const LAST_NARROW_LETTER = 0x2fff;

export interface TextStyle {
  readonly size: number;
  readonly anchor?: "start" | "middle" | "end";
  readonly bold?: boolean;
  /** Upwards along the left edge of what it names. */
  readonly upright?: boolean;
}

/** One line of text, its baseline at y. */
export function lettering(
  text: string,
  x: number,
  y: number,
  { size, anchor = "start", bold = false, upright = false }: TextStyle,
): TextShape {
  return { kind: "text", at: [x, y], text, size, anchor, bold, upright };
}

/** The width that a text may take up, in the unit of `size`. */
export function textWidth(text: string, size: number): number {
  let ems = 0;
  for (const letter of text) ems += (letter.codePointAt(0) as number) > LAST_NARROW_LETTER ? WIDE_LETTER_EM : LETTER_EM;
  return ems * size;
}

/** One line, cut off with an ellipsis where it is too wide; line breaks and runs of space become one space. */
export function fitted(text: string, width: number, size: number): string {
  const line = [...text.slice(0, LONGEST_READ).replace(/\s+/gu, " ").trim()];
  if (text.length <= LONGEST_READ && textWidth(line.join(""), size) <= width) return line.join("");
  let [room, kept] = [width - textWidth("…", size), ""];
  for (const letter of line) {
    room -= textWidth(letter, size);
    if (room < 0) break;
    kept += letter;
  }
  return `${kept.trimEnd()}…`;
}

/** No line of a drawing holds more letters than this. */
const LONGEST_READ = 400;

/** A text in lines of whole words; a word wider than the line is cut off. */
export function wrapped(text: string, width: number, size: number): readonly string[] {
  const lines: string[] = [];
  for (const word of text.split(/\s+/u).filter((each) => each !== "")) {
    const longer = `${lines.at(-1) ?? ""} ${word}`;
    if (lines.length > 0 && textWidth(longer, size) <= width) lines[lines.length - 1] = longer;
    else lines.push(fitted(word, width, size));
  }
  return lines;
}
