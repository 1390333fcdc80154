import { create, type Font } from "fontkit";
import type { Mm } from "../measure/units";
import { FONT_NAMES, type FontLoader, type FontName } from "./fonts";
import { readsFromRight, visualRuns, type Run } from "./visualRuns";

/** A run with the room that it takes, in ems. */
export interface SetRun extends Run {
  readonly width: number;
}

/** Measures and shapes text with the fonts that it is printed in. */
export interface Typesetter {
  /** Opened once: to measure, and to print. */
  readonly fonts: ReadonlyMap<FontName, Font>;
  /** One line as it is printed; its paragraph's direction where it is a part of one. */
  readonly runs: (text: string, bold: boolean, fromRight?: boolean) => readonly SetRun[];
  /** Width of one line at a size in points. */
  readonly width: (text: string, size: number, bold?: boolean) => Mm;
}

export const MM_PER_PT: Mm = 25.4 / 72;

/** Room on each side of a letter's code point in its frame, ems. */
export const FRAME_ROOM = 0.12;

/** @param names the fonts to use: see `fontsNeeded` */
export async function createTypesetter(load: FontLoader, names: readonly FontName[]): Promise<Typesetter> {
  const fonts = new Map<FontName, Font>();
  for (const name of names) fonts.set(name, create((await load(name)) as Buffer) as Font);
  const used = FONT_NAMES.filter((name) => fonts.has(name));
  const has = (name: FontName, codePoint: number) => fonts.get(name)?.hasGlyphForCodePoint(codePoint) === true;
  const words = new Map(used.map((font) => [font, new Map<string, number>()]));
  // Regular and bold, from the left and from the right.
  const remembered = Array.from({ length: 4 }, () => new Map<string, readonly SetRun[]>());

  const wordWidth = (font: FontName, word: string): number => {
    const known = words.get(font)!.get(word);
    if (known !== undefined) return known;
    const face = fonts.get(font)!;
    const width = face.layout(word).advanceWidth / face.unitsPerEm;
    words.get(font)!.set(word, width);
    return width;
  };
  // Words are shaped one by one, as they are printed.
  const runWidth = ({ font, text, framed }: Run) =>
    (text.match(/[^ \t]+[ \t]?|[ \t]/g) ?? []).reduce((sum, word) => sum + wordWidth(font, word), 0) +
    (framed ? 2 * FRAME_ROOM : 0);

  const runs = (text: string, bold: boolean, fromRight = readsFromRight(text)): readonly SetRun[] => {
    const lines = remembered[(bold ? 1 : 0) + (fromRight ? 2 : 0)]!;
    const known = lines.get(text);
    if (known !== undefined) return known;
    const set = visualRuns(text, { bold, fromRight }, used, has).map((run) => ({ ...run, width: runWidth(run) }));
    if (lines.size > MOST_REMEMBERED) lines.clear();
    lines.set(text, set);
    return set;
  };
  const width = (text: string, size: number, bold = false) =>
    runs(text, bold).reduce((sum, run) => sum + run.width, 0) * size * MM_PER_PT;
  return { fonts, runs, width };
}

const MOST_REMEMBERED = 20_000;
