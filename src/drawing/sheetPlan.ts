import { benchLength, nearestMark } from "../measure/benchLength";
import type { Mm, WorkbookUnit } from "../measure/units";
import { fitted, lettering, textWidth } from "./lettering";
import { grainArrow, hatchedRect } from "./marks";
import { CUT_NUMBER_RADIUS, numberedCuts, type DrawnCut } from "./numberedCuts";
import { PEN, picture, type Picture, type Shape, type TextShape } from "./picture";
import { pieceLabel, type Box, type LabelledPiece } from "./pieceLabel";

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

export interface SheetPlanOptions {
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
const KEY_TEXT = 11;
const HATCH = 8;
const EDGE = { ink: 1, width: 1.6 } as const;
const PIECE_TONE = 0.05;

/**
 * One sheet with what is cut out of it: every piece with item, part and size, off-cuts hatched, the grain of the sheet,
 * and its cuts numbered in order. A piece too small for its words bears a letter that is explained below.
 */
export function sheetPlan(sheet: DrawnSheet, options: SheetPlanOptions): Picture {
  const { unit, width = USUAL_WIDTH, heading = "" } = options;
  const room = width - 2 * (MARGIN + CUT_NUMBER_RADIUS);
  const scale = Math.min(room / sheet.length, (room * TALLEST) / sheet.width);
  const [w, h] = [sheet.length * scale, sheet.width * scale];
  const [left, top] = [MARGIN + CUT_NUMBER_RADIUS, MARGIN + LINE + CUT_NUMBER_RADIUS * 2];
  const size = `${nearestMark(sheet.length, unit)} × ${nearestMark(sheet.width, unit)} ${unit}`;
  const name = [heading, sheet.stock].filter((each) => each !== "").join(": ");
  const named = fitted(name, width - 2 * MARGIN - textWidth(`, ${size}`, TEXT), TEXT);
  const title = lettering(`${named}, ${size}`, MARGIN, MARGIN + TEXT, { size: TEXT, bold: true });

  const boxes = sheet.placements.map(({ x, y, length, width: across }): Box => ({
    x: left + x * scale,
    y: top + y * scale,
    width: length * scale,
    height: across * scale,
  }));
  const labelled = sheet.placements.map((placement, index): LabelledPiece => {
    const { piece, length, width: across } = placement;
    const size = `${benchLength(length, unit)} × ${benchLength(across, unit)}`;
    return pieceLabel([...namesOf(piece), size], boxes[index]!);
  });
  const keyed = sheet.placements.flatMap((_, index) => (labelled[index]!.room === undefined ? [index] : []));
  const keys = keyOf(keyed, sheet.placements, unit);
  const pieces = boxes.flatMap((box, index) => {
    const key = keys.letters.get(index);
    return [...pieceBox(box), ...(key === undefined ? labelled[index]!.texts : [keyLetter(key, box)])];
  });
  const taken = labelled.flatMap(({ room: box }, index) => [box ?? letterBox(boxes[index]!)]);
  const cuts = numberedCuts(sheet.cuts ?? [], { left, top, scale }, taken);
  const foot = top + h + CUT_NUMBER_RADIUS * 2 + LINE / 2;
  const list = keys.lines.map((line, index) =>
    lettering(fitted(line, width - 2 * MARGIN, KEY_TEXT), MARGIN, foot + LINE * (index + 2), { size: KEY_TEXT }),
  );
  const legend = lettering("grain of the sheet; hatched: left over", left + ARROW + MARGIN / 2, foot + TEXT / 3, {
    size: KEY_TEXT,
  });
  const shapes: readonly Shape[] = [
    title,
    ...hatchedRect(left, top, w, h, HATCH),
    ...pieces,
    { kind: "rectangle", corner: [left, top], width: w, height: h, stroke: EDGE },
    ...cuts,
    ...grainArrow([left + ARROW / 2, foot], "x", ARROW, LINE),
    legend,
    ...list,
  ];
  return picture(`Cutting plan: ${named}`, width, foot + LINE * (list.length + 1) + MARGIN, shapes);
}

/** Item and part, where both are given. */
function namesOf({ item, part }: DrawnPlacement["piece"]): readonly string[] {
  return [item, part].filter((each) => each !== "");
}

function pieceBox({ x, y, width, height }: Box): readonly Shape[] {
  const place = { kind: "rectangle", corner: [x, y], width, height } as const;
  return [
    { ...place, fill: 0 },
    { ...place, fill: PIECE_TONE, stroke: PEN },
  ];
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
    const size = `${benchLength(length, unit)} × ${benchLength(width, unit)} ${unit}`;
    const words = [...namesOf(piece), size].join(", ");
    const letter = byWords.get(words) ?? letterOf(byWords.size);
    byWords.set(words, letter);
    letters.set(index, letter);
  }
  return { letters, lines: [...byWords].map(([words, letter]) => `${letter}: ${words}`) };
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

function keyLetter(letter: string, { x, y, width, height }: Box): TextShape {
  const size = Math.min(LETTER_TEXT, height, width / textWidth(letter, 1));
  return lettering(letter, x + width / 2, y + height / 2 + size / 3, { size, anchor: "middle" });
}
