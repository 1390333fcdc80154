import type { Mm } from "../measure/units";
import { together, type Block } from "./blocks";
import { line, rectangle, type Placed, type PlacedText, type TextTag } from "./page";
import { MM_PER_PT, type Typesetter } from "./typesetter";
import { readsFromRight } from "./visualRuns";
import { wrapText, type TypeStyle } from "./wrapText";

/** From line to line, in ems: room for the marks of Arabic and for Chinese. */
export const LEADING = 1.26;

/** Sizes of type, points. */
export const TYPE = { large: 18, title: 15, figure: 13, figureNarrow: 12, heading: 10.5, body: 9, small: 7.5 } as const;

export interface ParagraphStyle extends TypeStyle {
  readonly align?: PlacedText["align"];
  readonly withNext?: boolean;
  /** What it is to a screen reader; a title is a heading of the first level by its size. */
  readonly role?: TextTag["role"];
}

export function lineHeight(size: number): Mm {
  return size * LEADING * MM_PER_PT;
}

/** One line of type, whatever its length: wrap first. */
export function textLine(
  text: string,
  box: { readonly x: Mm; readonly y: Mm; readonly width: Mm },
  { size, bold = false, align = "start" }: ParagraphStyle,
  fromRight = readsFromRight(text),
): PlacedText {
  return { kind: "text", box: { ...box, height: lineHeight(size) }, text, size, bold, align, fromRight };
}

/** A paragraph: one block, or a block for each line where it is long, so that it may go on on the next page. */
export function paragraph(text: string, width: Mm, style: ParagraphStyle, type: Typesetter): readonly Block[] {
  return unbroken(linesOf(text, width, style, type));
}

/** More lines than this may be parted between pages. */
const MOST_LINES = 10;

function unbroken(lines: readonly Block[]): readonly Block[] {
  return lines.length < 2 || lines.length > MOST_LINES ? lines : [together(lines)];
}

function linesOf(text: string, width: Mm, style: ParagraphStyle, type: Typesetter): readonly Block[] {
  const fromRight = readsFromRight(text);
  const tag = { role: style.size >= TYPE.title ? ("H1" as const) : (style.role ?? "P"), of: {} };
  return wrapText(text, width, style, type).map((words) => ({
    height: lineHeight(style.size),
    withNext: style.withNext === true,
    at: (x, y) => [{ ...textLine(words, { x, y, width }, style, fromRight), tag }],
  }));
}

export function heading(text: string, width: Mm, type: Typesetter): readonly Block[] {
  return [
    { height: SPACE_ABOVE, withNext: true, at: () => [] },
    ...paragraph(text, width, { size: TYPE.heading, bold: true, withNext: true, role: "H2" }, type),
    { height: SPACE_BELOW, withNext: true, at: () => [] },
  ];
}

const SPACE_ABOVE: Mm = 2.4;
const SPACE_BELOW: Mm = 0.6;

/** A paragraph with something before it: a number, a box to tick. */
export function marked(
  mark: (x: Mm, y: Mm) => readonly Placed[],
  indent: Mm,
  text: string,
  width: Mm,
  style: ParagraphStyle,
  type: Typesetter,
): readonly Block[] {
  const lines = linesOf(text, width - indent, style, type).map((block, index) => ({
    ...block,
    at: (x: Mm, y: Mm) => [...(index === 0 ? mark(x, y) : []), ...block.at(x + indent, y)],
  }));
  return unbroken(lines);
}

/** A square to tick, as high as the letters beside it. */
export function tickBox(x: Mm, y: Mm, size: number): Placed {
  const side = size * TICK_EM * MM_PER_PT;
  return rectangle({ x, y: y + (lineHeight(size) - side) / 2, width: side, height: side }, { weight: TICK_WEIGHT });
}

const TICK_EM = 0.95;
const TICK_WEIGHT: Mm = 0.3;

/** `label ________`: a line to write on. */
export function writeIn(
  label: string,
  { x, y, width }: { readonly x: Mm; readonly y: Mm; readonly width: Mm },
  size: number,
  type: Typesetter,
): readonly Placed[] {
  const taken = type.width(label, size) + WRITE_GAP;
  const base = y + lineHeight(size) * BASELINE_SHARE;
  return [
    textLine(label, { x, y, width: Math.min(taken, width) }, { size }),
    line([x + taken, base], [x + width, base]),
  ];
}

const WRITE_GAP: Mm = 1.5;
/** The baseline of letters in a line. */
export const BASELINE_SHARE = 0.78;
