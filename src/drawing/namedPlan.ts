import type { Mm } from "../measure/units";
import { lettering, textWidth } from "./lettering";
import { grainArrow, hatchedRect } from "./marks";
import { PEN, picture, straight, type Picture, type Shape, type TextShape } from "./picture";
import { pieceLabel, type Box } from "./pieceLabel";

/** A piece or strip where it lies on its sheet, mm. */
export interface NamedPlace {
  readonly name: string;
  readonly x: Mm;
  readonly y: Mm;
  readonly length: Mm;
  readonly width: Mm;
}

export interface NamedSheet {
  readonly title: string;
  /** Along the grain. */
  readonly length: Mm;
  readonly width: Mm;
  readonly pieces: readonly (NamedPlace & { readonly words: readonly string[] })[];
  /** What comes off the sheet itself, in order. */
  readonly strips: readonly NamedPlace[];
  /** Which way those are cut off: "across" is a cut square to the length. */
  readonly firstWay: "across" | "along" | undefined;
}

export interface NamedPlanOptions {
  /** Units of the drawing; words are at least 10.8 of them high. */
  readonly width: number;
  readonly tallest: number;
}

/** A size of 9 points when 3.4 units are a millimetre. */
const TEXT = 10.8;
const SIZES = [12.5, TEXT] as const;
const LINE = 14;
const MARGIN = 3 * TEXT;
const RIGHT = 4;
const ARROW = 50;
const HATCH = 8;
const EDGE = { ink: 1, width: 1.4 } as const;
const FENCE = { ink: 1, width: 4 } as const;
const STRIP = { ink: 1, width: 1.6 } as const;
const PIECE_TONE = 0.05;
const LEADER = { width: 0.6 } as const;
const DROP = 0.36;
const LEAST_LETTERS = 5;

/**
 * A sheet with the names of its strips at its edge and those of its pieces within, off-cuts hatched, the two edges that go
 * against the fence heavy. A piece too small for its name has none: its strip's pieces are in order from the fence edge.
 */
export function namedPlan(sheet: NamedSheet, { width, tallest }: NamedPlanOptions): Picture {
  const foot = 2 * LINE;
  const scale = Math.min((width - MARGIN - RIGHT) / sheet.length, (tallest - MARGIN - foot) / sheet.width);
  const [w, h] = [sheet.length * scale, sheet.width * scale];
  const [left, top] = [(width - w - MARGIN - RIGHT) / 2 + MARGIN, MARGIN];
  const box = ({ x, y, length, width: across }: NamedPlace): Box => ({
    x: left + x * scale,
    y: top + y * scale,
    width: length * scale,
    height: across * scale,
  });
  const pieces = sheet.pieces.flatMap((piece): readonly Shape[] => [
    ...pieceBox(box(piece)),
    ...namesIn(piece, box(piece)),
  ]);
  const strips = sheet.strips.filter(({ name }) => name !== "");
  const shapes: readonly Shape[] = [
    ...hatchedRect(left, top, w, h, HATCH),
    ...pieces,
    ...strips.map((strip): Shape => {
      const { x, y, width: wide, height } = box(strip);
      return { kind: "rectangle", corner: [x, y], width: wide, height, stroke: STRIP };
    }),
    { kind: "rectangle", corner: [left, top], width: w, height: h, stroke: EDGE },
    straight([left - FENCE.width / 2, top - FENCE.width], [left - FENCE.width / 2, top + h], FENCE),
    straight([left - FENCE.width, top - FENCE.width / 2], [left + w, top - FENCE.width / 2], FENCE),
    ...stripNames(
      strips.map((strip) => ({ name: strip.name, box: box(strip) })),
      sheet.firstWay,
      { left, top, w, h },
    ),
    ...grainArrow([MARGIN + ARROW / 2, top + h + LINE], "x", ARROW, LINE),
    lettering(
      "grain; hatched: left over; heavy: edges at the fence",
      MARGIN + ARROW + TEXT,
      top + h + LINE + TEXT * DROP,
      {
        size: TEXT,
      },
    ),
  ];
  return picture(sheet.title, width, top + h + foot, shapes);
}

function pieceBox({ x, y, width, height }: Box): readonly Shape[] {
  const place = { kind: "rectangle", corner: [x, y], width, height } as const;
  return [
    { ...place, fill: 0 },
    { ...place, fill: PIECE_TONE, stroke: PEN },
  ];
}

/** The name with the words, or as much of them as there is room for. */
function namesIn({ name, words }: NamedSheet["pieces"][number], box: Box): readonly TextShape[] {
  const [first = ""] = words;
  for (const lines of [[name, ...words], [name, first], [`${name} ${first}`], [name]]) {
    const { texts, room } = pieceLabel(lines, box, SIZES);
    if (room !== undefined && !isCutShort(texts, `${name} ${first} `))
      return texts.map((text) => ({ ...text, bold: text.text.startsWith(name) }));
  }
  return [];
}

/** An identifier that is cut off names nothing, and neither does one letter of a name of a part. */
function isCutShort([top]: readonly TextShape[], whole: string): boolean {
  return top !== undefined && top.text.endsWith("…") && top.text.length < whole.length + LEAST_LETTERS;
}

/** Letters of the strips beside the sheet, each at the start of its strip or as near as the letters before it allow. */
function stripNames(
  strips: readonly { readonly name: string; readonly box: Box }[],
  way: NamedSheet["firstWay"],
  { left, top, w, h }: { readonly left: number; readonly top: number; readonly w: number; readonly h: number },
): readonly Shape[] {
  if (way === undefined) return [];
  const stacked = way === "along";
  const sizes = strips.map(({ name }) => (stacked ? LINE : textWidth(name, TEXT) + TEXT / 2));
  const middles = strips.map(({ box }) => (stacked ? box.y + box.height / 2 : box.x + box.width / 2));
  const [from, to] = stacked ? [top, top + h] : [left, left + w];
  const total = sizes.reduce((sum, size) => sum + size, 0);
  // Of more names than there is room for, every second or third is written.
  const every = Math.ceil(total / (to - from));
  const kept = strips.map((_, index) => index).filter((index) => index % every === 0);
  const places = spread(
    kept.map((index) => middles[index]!),
    kept.map((index) => sizes[index]!),
    from,
    to,
  );
  return kept.flatMap((index, place): readonly Shape[] => {
    const { name } = strips[index]!;
    const [at, middle] = [places[place]!, middles[index]!];
    const near = FENCE.width + 1;
    return stacked
      ? [
          straight([left - near, middle], [left - TEXT, at], LEADER),
          lettering(name, left - TEXT - 2, at + TEXT * DROP, { size: TEXT, bold: true, anchor: "end" }),
        ]
      : [
          straight([middle, top - near], [at, top - TEXT], LEADER),
          lettering(name, at, top - TEXT - 2, { size: TEXT, bold: true, anchor: "middle" }),
        ];
  });
}

/** Middles moved as little as keeps things of these sizes, in their order, off each other and between the ends. */
function spread(middles: readonly number[], sizes: readonly number[], from: number, to: number): readonly number[] {
  const places: number[] = [];
  middles.forEach((middle, index) => {
    const before = index === 0 ? from : places[index - 1]! + (sizes[index - 1]! + sizes[index]!) / 2;
    places.push(Math.max(middle, before));
  });
  let end = to;
  for (let index = places.length - 1; index >= 0; index--) {
    places[index] = Math.min(places[index]!, end - sizes[index]! / 2);
    end = places[index]! - sizes[index]! / 2;
  }
  return places;
}
