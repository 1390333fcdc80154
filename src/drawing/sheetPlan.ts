import { formatLength, formatLengthWithUnit } from "../measure/formatLength";
import type { Mm, WorkbookUnit } from "../measure/units";
import { grainArrow, hatchedRect } from "./flatFigure";
import { fitted, lettering, textWidth } from "./lettering";
import { drawing, IN_PAGE, type DrawingOptions, type Look } from "./look";
import { pieceLabel, type Box, type LabelledPiece } from "./pieceLabel";
import type { Point } from "./projection";
import { lineBetween } from "./solid";
import { element } from "./svg";

/** What a drawing needs of a sheet's plan. */
export interface DrawnSheet {
  readonly stock: string;
  /** Along the grain. */
  readonly length: Mm;
  readonly width: Mm;
  readonly placements: readonly DrawnPlacement[];
  readonly cuts?: readonly DrawnCut[];
}

export interface DrawnPlacement {
  readonly piece: { readonly item: string; readonly part: string };
  readonly x: Mm;
  readonly y: Mm;
  /** Along the sheet's length, and along its width. */
  readonly length: Mm;
  readonly width: Mm;
}

export interface DrawnCut {
  readonly way: "across" | "along";
  readonly at: Mm;
  readonly from: Mm;
  readonly to: Mm;
}

export interface SheetPlanOptions extends DrawingOptions {
  readonly unit: WorkbookUnit;
  readonly width?: number;
  /** Said before the name of the stock: `Sheet 3 of 12`. */
  readonly heading?: string;
}

const USUAL_WIDTH = 720;
const TALLEST = 1.2;
const MARGIN = 12;
const TEXT = 12;
const LINE = 16;
const ARROW = 56;
const CUT_DASH = "6 3";
const CUT_RADIUS = 7;
const CUT_TEXT = 9;
const KEY_TEXT = 11;
/** Places tried for a cut's number, as shares of the cut from its start. */
const ALONG_CUT = [0, 0.06, 0.12, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1] as const;

/**
 * One sheet with what is cut out of it: every piece with item, part and size, off-cuts hatched, the grain of the sheet,
 * and its cuts numbered in order. A piece too small for its words bears a letter that is explained below.
 */
export function sheetPlan(sheet: DrawnSheet, options: SheetPlanOptions): string {
  const { unit, width = USUAL_WIDTH, heading = "", look = IN_PAGE } = options;
  const room = width - 2 * (MARGIN + CUT_RADIUS);
  const scale = Math.min(room / sheet.length, (room * TALLEST) / sheet.width);
  const [w, h] = [sheet.length * scale, sheet.width * scale];
  const [left, top] = [MARGIN + CUT_RADIUS, MARGIN + LINE + CUT_RADIUS * 2];
  const size = `${formatLength(sheet.length, unit)} × ${formatLength(sheet.width, unit)} ${unit}`;
  const name = [heading, sheet.stock].filter((each) => each !== "").join(": ");
  const named = fitted(name, width - 2 * MARGIN - textWidth(`, ${size}`, TEXT), TEXT);
  const title = lettering(`${named}, ${size}`, MARGIN, MARGIN + TEXT, { size: TEXT, bold: true }, look);

  const boxes = sheet.placements.map(({ x, y, length, width: across }): Box => ({
    x: left + x * scale,
    y: top + y * scale,
    width: length * scale,
    height: across * scale,
  }));
  const labelled = sheet.placements.map((placement, index): LabelledPiece => {
    const { piece, length, width: across } = placement;
    const lines = [piece.item, piece.part, `${formatLength(length, unit)} × ${formatLength(across, unit)}`];
    return pieceLabel(lines, boxes[index]!, look);
  });
  const keyed = sheet.placements.flatMap((_, index) => (labelled[index]!.room === undefined ? [index] : []));
  const keys = keyOf(keyed, sheet.placements, unit);
  const pieces = boxes.map((box, index) => {
    const key = keys.letters.get(index);
    return pieceBox(box, look) + (key === undefined ? labelled[index]!.markup : keyLetter(key, box, look));
  });
  const taken = labelled.flatMap(({ room: box }, index) => [box ?? letterBox(boxes[index]!)]);
  const cuts = numberedCuts(sheet.cuts ?? [], { left, top, scale }, taken, look);
  const foot = top + h + CUT_RADIUS * 2 + LINE / 2;
  const list = keys.lines.map((line, index) =>
    lettering(fitted(line, width - 2 * MARGIN, KEY_TEXT), MARGIN, foot + LINE * (index + 2), { size: KEY_TEXT }, look),
  );
  const grain =
    grainArrow([left + ARROW / 2, foot], "x", ARROW, LINE) +
    lettering(
      "grain of the sheet; hatched: left over",
      left + ARROW + MARGIN / 2,
      foot + TEXT / 3,
      { size: KEY_TEXT },
      look,
    );
  const frame = element("rect", { x: left, y: top, width: w, height: h, "stroke-width": 1.6 });
  const body = title + hatchedRect(left, top, w, h, 8) + pieces.join("") + frame + cuts + grain + list.join("");
  return drawing(`Cutting plan: ${named}`, width, foot + LINE * (list.length + 1) + MARGIN, body, look);
}

function pieceBox({ x, y, width, height }: Box, look: Look): string {
  const rect = { x, y, width, height };
  return (
    element("rect", { ...rect, fill: look.paper, stroke: "none" }) +
    element("rect", { ...rect, fill: look.ink, "fill-opacity": 0.05 })
  );
}

interface Key {
  readonly letters: ReadonlyMap<number, string>;
  readonly lines: readonly string[];
}

/** Letters for pieces without room for words; pieces that say the same share one. */
function keyOf(keyed: readonly number[], placements: readonly DrawnPlacement[], unit: WorkbookUnit): Key {
  const letters = new Map<number, string>();
  const byWords = new Map<string, string>();
  for (const index of keyed) {
    const { piece, length, width } = placements[index]!;
    const words = `${piece.item}, ${piece.part}, ${formatLength(length, unit)} × ${formatLengthWithUnit(width, unit)}`;
    const letter = byWords.get(words) ?? letterOf(byWords.size);
    byWords.set(words, letter);
    letters.set(index, letter);
  }
  return { letters, lines: [...byWords].map(([words, letter]) => `${letter}  ${words}`) };
}

const LETTERS = 26;

/** a to z, then aa, ab, ... */
function letterOf(index: number): string {
  const letter = String.fromCharCode("a".charCodeAt(0) + (index % LETTERS));
  return index < LETTERS ? letter : letterOf(Math.floor(index / LETTERS) - 1) + letter;
}

const LETTER_TEXT = 9;

function letterBox({ x, y, width, height }: Box): Box {
  return {
    x: x + width / 2 - LETTER_TEXT / 2,
    y: y + height / 2 - LETTER_TEXT / 2,
    width: LETTER_TEXT,
    height: LETTER_TEXT,
  };
}

function keyLetter(letter: string, { x, y, width, height }: Box, look: Look): string {
  const size = Math.min(LETTER_TEXT, height, width / textWidth(letter, 1));
  return lettering(letter, x + width / 2, y + height / 2 + size / 3, { size, anchor: "middle" }, look);
}

interface SheetFrame {
  readonly left: number;
  readonly top: number;
  readonly scale: number;
}

/** Cuts dashed, each with its number in a circle on it, where it hides no label and no other number if it can. */
function numberedCuts(
  cuts: readonly DrawnCut[],
  { left, top, scale }: SheetFrame,
  labels: readonly Box[],
  look: Look,
): string {
  const taken: Point[] = [];
  const lines: string[] = [];
  const numbers = cuts.map(({ way, at, from, to }, index) => {
    const onCut = (along: number): Point =>
      way === "across" ? [left + at * scale, top + along * scale] : [left + along * scale, top + at * scale];
    lines.push(lineBetween(onCut(from), onCut(to), { "stroke-width": 1.2, "stroke-dasharray": CUT_DASH }));
    const spots = ALONG_CUT.map((share) => onCut(from + share * (to - from)));
    const free = spots.find((spot) => isFree(spot, taken, labels)) ?? spots.find((spot) => isFree(spot, taken, []));
    const [cx, cy] = free ?? spots[0]!;
    taken.push([cx, cy]);
    return (
      element("circle", { cx, cy, r: CUT_RADIUS, fill: look.paper }) +
      lettering(String(index + 1), cx, cy + CUT_TEXT / 3, { size: CUT_TEXT, anchor: "middle", bold: true }, look)
    );
  });
  return lines.join("") + numbers.join("");
}

function isFree([x, y]: Point, taken: readonly Point[], labels: readonly Box[]): boolean {
  return (
    taken.every(([cx, cy]) => Math.hypot(cx - x, cy - y) > 2 * CUT_RADIUS) &&
    labels.every(
      (box) =>
        x + CUT_RADIUS < box.x ||
        x - CUT_RADIUS > box.x + box.width ||
        y + CUT_RADIUS < box.y ||
        y - CUT_RADIUS > box.y + box.height,
    )
  );
}
