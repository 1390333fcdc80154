import type {
  BorderStyleTypes,
  HorizontalAlign,
  IBorderData,
  IStyleBase,
  IStyleData,
  VerticalAlign,
  WrapStrategy,
} from "@univerjs/core";
import type { Borders, CellLook, FontLook } from "../workbook/cellLooks";
import { YES } from "./gridTerms";

const ALIGN: Readonly<Record<string, HorizontalAlign>> = { left: 1, center: 2, right: 3 };
const VERTICAL: Readonly<Record<string, VerticalAlign>> = { top: 1, center: 2, bottom: 3 };
const WRAP: WrapStrategy = 3;

/** Lines of the file in the grid's numbers for them. */
const LINES: Readonly<Record<string, BorderStyleTypes>> = {
  thin: 1,
  hair: 2,
  dotted: 3,
  dashed: 4,
  dashDot: 5,
  dashDotDot: 6,
  double: 7,
  medium: 8,
  mediumDashed: 9,
  mediumDashDot: 10,
  mediumDashDotDot: 11,
  slantDashDot: 12,
  thick: 13,
};

const SIDES = { left: "l", right: "r", top: "t", bottom: "b" } as const;

/** The letters of a file have this size unless a style says otherwise; the grid has it too. */
const USUAL_SIZE = 11;

/** The look of a cell as the grid names it. */
export function styleData(look: CellLook): IStyleData {
  return {
    ...(look.format === "General" ? {} : { n: { pattern: look.format } }),
    ...fontData(look),
    ...(look.fill === undefined ? {} : { bg: { rgb: look.fill } }),
    ...borderData(look.borders),
    ...(look.align === undefined ? {} : { ht: ALIGN[look.align]! }),
    ...(look.vertical === undefined || look.vertical === "bottom" ? {} : { vt: VERTICAL[look.vertical]! }),
    ...(look.wrap ? { tb: WRAP } : {}),
  };
}

/** The font is the page's own, in the size, weight and colour of the file. */
export function fontData({ bold, italic, underlined, struck, colour, size }: FontLook): IStyleBase {
  return {
    ...(size === undefined || size === USUAL_SIZE ? {} : { fs: size }),
    ...(bold ? { bl: YES } : {}),
    ...(italic ? { it: YES } : {}),
    ...(underlined ? { ul: { s: YES } } : {}),
    ...(struck ? { st: { s: YES } } : {}),
    ...(colour === undefined || colour === "#000000" ? {} : { cl: { rgb: colour } }),
  };
}

export function borderData(borders: Borders): { readonly bd?: IBorderData } {
  const sides = Object.entries(borders).map(([side, { line, colour }]) => [
    SIDES[side as keyof typeof SIDES],
    { s: LINES[line] ?? LINES["thin"]!, cl: { rgb: colour ?? "#000000" } },
  ]);
  return sides.length === 0 ? {} : { bd: Object.fromEntries(sides) as IBorderData };
}
