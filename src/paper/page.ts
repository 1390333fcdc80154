import type { Picture } from "../drawing/picture";
import type { Mm } from "../measure/units";

/** A rectangle on a page, from its upper left corner. */
export interface Box {
  readonly x: Mm;
  readonly y: Mm;
  readonly width: Mm;
  readonly height: Mm;
}

/** What a line of type is to a screen reader. */
export interface TextTag {
  /** As PDF names them; an artifact is not read. */
  readonly role: "H1" | "H2" | "P" | "TH" | "TD" | "Artifact";
  /** Lines with the same one are one paragraph, heading or cell. */
  readonly of: object;
  /** The row and the table of a cell: the same for all their cells. */
  readonly row?: object;
  readonly table?: object;
  /** What is said in place of what is drawn. */
  readonly alt?: string;
}

/** One line of type in its box. */
export interface PlacedText {
  readonly kind: "text";
  readonly box: Box;
  readonly text: string;
  /** Points. */
  readonly size: number;
  readonly bold: boolean;
  readonly align: "start" | "middle" | "end";
  /** Read from the right: its paragraph begins in Arabic or Hebrew. */
  readonly fromRight: boolean;
  /** The name of a page that a press on it leads to. */
  readonly goTo?: string;
  /** A paragraph by itself where it is missing. */
  readonly tag?: TextTag;
}

/** A drawing scaled into its box. */
export interface PlacedDrawing {
  readonly kind: "drawing";
  readonly box: Box;
  readonly picture: Picture;
}

export interface PlacedLine {
  readonly kind: "line";
  readonly from: readonly [x: Mm, y: Mm];
  readonly to: readonly [x: Mm, y: Mm];
  readonly weight: Mm;
  readonly dashed: boolean;
}

/** A closed outline; `shade` is how much ink lies within, 0 to 1. */
export interface PlacedOutline {
  readonly kind: "outline";
  readonly points: readonly (readonly [x: Mm, y: Mm])[];
  readonly weight: Mm;
  readonly shade: number;
  /** Hatched with slanting lines, for what is cut away: it differs without colour. */
  readonly hatched: boolean;
}

/** A code that a scanner reads back as the text. */
export interface PlacedCode {
  readonly kind: "code";
  readonly box: Box;
  readonly text: string;
}

export type Placed = PlacedText | PlacedDrawing | PlacedLine | PlacedOutline | PlacedCode;

/** A page as it is printed, everything on it in its place. */
export interface Page {
  readonly width: Mm;
  readonly height: Mm;
  readonly placed: readonly Placed[];
  /** What a reader's table of contents says; empty for a page that continues the one before. */
  readonly bookmark: string;
  /** Its heading in the table of contents; undefined for a page without a section. */
  readonly section?: string;
  /** By which an index leads to it; several where it holds two half pages. */
  readonly names?: readonly string[];
}

export const PAPERS = {
  A4: { width: 210, height: 297 },
  Letter: { width: 215.9, height: 279.4 },
} as const;

export type Paper = keyof typeof PAPERS;

/** Thin, for rules and tick boxes; and for outlines to cut along. */
export const HAIRLINE: Mm = 0.2;
export const OUTLINE: Mm = 0.35;

export function line(
  from: readonly [Mm, Mm],
  to: readonly [Mm, Mm],
  { weight = HAIRLINE, dashed = false } = {},
): PlacedLine {
  return { kind: "line", from, to, weight, dashed };
}

export function rectangle({ x, y, width, height }: Box, { weight = HAIRLINE, shade = 0 } = {}): PlacedOutline {
  const [right, bottom] = [x + width, y + height];
  return {
    kind: "outline",
    points: [
      [x, y],
      [right, y],
      [right, bottom],
      [x, bottom],
    ],
    weight,
    shade,
    hatched: false,
  };
}

/** Things with what their text is to a screen reader. */
export function withTag(placed: readonly Placed[], tag: TextTag): readonly Placed[] {
  return placed.map((each) => (each.kind === "text" ? { ...each, tag } : each));
}

/** The same things, shifted. */
export function shifted(placed: readonly Placed[], dx: Mm, dy: Mm): readonly Placed[] {
  const point = ([x, y]: readonly [Mm, Mm]): readonly [Mm, Mm] => [x + dx, y + dy];
  return placed.map((each): Placed => {
    if (each.kind === "line") return { ...each, from: point(each.from), to: point(each.to) };
    if (each.kind === "outline") return { ...each, points: each.points.map(point) };
    return { ...each, box: { ...each.box, x: each.box.x + dx, y: each.box.y + dy } };
  });
}
