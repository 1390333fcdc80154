import type { Font } from "fontkit";
import type { Mm } from "../measure/units";
import { FONT_NAMES, type FontLoader, type FontName } from "./fonts";
import { fontOfFile } from "./openFonts";
import { remembered } from "./remembered";
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
  for (const name of names) fonts.set(name, await fontOfFile(name, load));
  const used = FONT_NAMES.filter((name) => fonts.has(name));
  const letters = new Map(
    [...fonts].map(([name, font]) => [name, remembered((codePoint: number) => font.hasGlyphForCodePoint(codePoint))]),
  );
  const has = (name: FontName, codePoint: number) => letters.get(name)?.(codePoint) === true;
  const words = new Map(
    [...fonts].map(([name, font]) => [
      name,
      remembered((word: string) => font.layout(word).advanceWidth / font.unitsPerEm),
    ]),
  );
  // Regular and bold, from the left and from the right.
  const known = Array.from({ length: 4 }, () => new Map<string, readonly SetRun[]>());

  // Words are shaped one by one, as they are printed.
  const runWidth = ({ font, text, framed }: Run) => {
    const wordWidth = words.get(font)!;
    return (
      (text.match(/[^ \t]+[ \t]?|[ \t]/g) ?? []).reduce((sum, word) => sum + wordWidth(word), 0) +
      (framed ? 2 * FRAME_ROOM : 0)
    );
  };

  const runs = (text: string, bold: boolean, fromRight = readsFromRight(text)): readonly SetRun[] => {
    const lines = known[(bold ? 1 : 0) + (fromRight ? 2 : 0)]!;
    const before = lines.get(text);
    if (before !== undefined) return before;
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
