import { formatLength } from "../measure/formatLength";
import type { WorkbookUnit } from "../measure/units";
import { fitted, lettering, textWidth } from "./lettering";
import type { Look } from "./look";
import type { Point } from "./projection";
import { lineBetween, written } from "./solid";
import { spreadOut } from "./spreadOut";
import { element } from "./svg";
import type { Corner, Stretch, Template } from "./template";

/** A drawing to be placed in another: markup around an origin at its upper left. */
export interface Figure {
  readonly markup: string;
  readonly width: number;
  readonly height: number;
}

const TEXT = 11;
const LINE = 15;
const GAP = 6;
const TICK = 3;
/** Between the blank and the lines that measure it. */
const STAND_OFF = 12;
const FOLD_DASH = "7 3 1.5 3";
const CUT_STROKE = 1.6;
const LEAST_SIDE = 12;
const ARROW = 44;
const TEXT_DROP = 0.35;

/**
 * A flat piece to scale: outline, folds in dash and dot, what is cut away hatched, the run of stretches along two
 * edges and the whole size along the other two, grain in the middle.
 *
 * @param width room for it
 * @param height room for the piece itself, without what is written around it
 */
export function flatFigure(
  template: Template,
  {
    unit,
    width,
    height,
    look,
  }: { readonly unit: WorkbookUnit; readonly width: number; readonly height: number; readonly look: Look },
): Figure {
  const shown = (size: number) => formatLength(size, unit);
  const stretchText = ({ name, length }: Stretch) => `${name} ${shown(length)}`;
  const textRoom = (texts: readonly string[]) =>
    texts.length === 0 ? 0 : Math.max(...texts.map((text) => textWidth(text, TEXT))) + GAP;
  const rows = template.alongWidth.map(stretchText);
  const left = rows.length === 0 ? GAP : textRoom(rows) + STAND_OFF + GAP;
  const right = textRoom([shown(template.width)]) + STAND_OFF + GAP;
  const room = Math.max(LEAST_SIDE, width - left - right);
  const scale = Math.min(room / template.length, height / template.width);
  const [w, h] = [template.length * scale, template.width * scale];
  const title = `${template.name}${template.count > 1 ? ` × ${template.count}` : ""}, ${shown(template.length)} × ${shown(template.width)} ${unit}`;
  const top = LINE + GAP + LINE + STAND_OFF;
  const need = rows.length * LINE;
  const x = left;
  const y = top + Math.max(0, (need - h) / 2);
  const bottom = y + h;

  const parts: string[] = [];
  const write = (text: string, at: Point, anchor: "start" | "middle" | "end", bold = false) =>
    parts.push(lettering(text, at[0], at[1] + TEXT * TEXT_DROP, { size: TEXT, anchor, bold }, look));
  write(fitted(title, width, TEXT), [0, LINE / 2], "start", true);
  parts.push(...pieceOf(template, { x, y, scale }, look));

  parts.push(measure([x, y - STAND_OFF], [x + w, y - STAND_OFF]));
  write(
    shown(template.length),
    [Math.min(x + w / 2, width - textWidth(shown(template.length), TEXT) / 2), y - STAND_OFF - LINE / 2],
    "middle",
  );
  parts.push(measure([x + w + STAND_OFF, y], [x + w + STAND_OFF, bottom]));
  write(shown(template.width), [x + w + STAND_OFF + GAP, y + h / 2], "start");

  if (rows.length > 0) {
    const edge = x - STAND_OFF;
    const marks = [0, ...cumulative(template.alongWidth)].map((at) => y + Math.min(at * scale, h));
    const middles = spreadOut(
      marks.slice(1).map((mark, index) => ({ wanted: (mark + marks[index]!) / 2, size: LINE })),
      top - STAND_OFF,
      Math.max(bottom, y + h / 2 + need / 2) + STAND_OFF,
    );
    rows.forEach((text, index) => {
      const middle = (marks[index]! + marks[index + 1]!) / 2;
      parts.push(measure([edge, marks[index]!], [edge, marks[index + 1]!]));
      if (Math.abs(middles[index]! - middle) > 1)
        parts.push(lineBetween([edge, middle], [edge - GAP + 1, middles[index]!], { "stroke-width": 0.6 }));
      write(text, [edge - GAP, middles[index]!], "end");
    });
  }
  let foot = Math.max(bottom, y + h / 2 + need / 2) + GAP;
  let reach = x + w + right;
  if (template.alongLength.length > 0) {
    const line = bottom + STAND_OFF;
    const marks = [0, ...cumulative(template.alongLength)].map((at) => x + Math.min(at * scale, w));
    const texts = template.alongLength.map(stretchText);
    const boxes = rowsOf(
      texts.map((text, index) => ({ middle: (marks[index]! + marks[index + 1]!) / 2, width: textWidth(text, TEXT) })),
      Math.max(width, reach),
    );
    // Below everything written beside the piece, so that the two runs never meet.
    const first = Math.max(line, foot - GAP + (need > h ? STAND_OFF : 0));
    texts.forEach((text, index) => {
      const { row, middle } = boxes[index]!;
      const at = first + GAP + LINE * (row + 0.5);
      const place = (marks[index]! + marks[index + 1]!) / 2;
      parts.push(measure([marks[index]!, line], [marks[index + 1]!, line]));
      if (row > 0 || first > line || Math.abs(place - middle) > 1)
        parts.push(lineBetween([place, line], [middle, at - LINE / 2 + 1], { "stroke-width": 0.6 }));
      write(text, [middle, at], "middle");
      foot = Math.max(foot, at + LINE / 2);
      reach = Math.max(reach, middle + textWidth(text, TEXT) / 2);
    });
  }
  for (const note of notesOf(template, shown)) {
    write(fitted(note, width, TEXT), [0, foot + LINE / 2], "start");
    foot += LINE;
  }
  return {
    markup: parts.join(""),
    width: Math.max(reach, Math.min(width, textWidth(title, TEXT))),
    height: foot + GAP,
  };
}

/** A measuring line: a slanting tick at both ends. */
function measure(from: Point, to: Point): string {
  const tick = ([x, y]: Point) => lineBetween([x - TICK, y + TICK], [x + TICK, y - TICK], { "stroke-width": 1 });
  return lineBetween(from, to, { "stroke-width": 0.6 }) + tick(from) + tick(to);
}

function cumulative(stretches: readonly Stretch[]): readonly number[] {
  let at = 0;
  return stretches.map(({ length }) => (at += length));
}

interface Frame2 {
  readonly x: number;
  readonly y: number;
  readonly scale: number;
}

function pieceOf(template: Template, { x, y, scale }: Frame2, look: Look): readonly string[] {
  const { length, width, corners, lines, grain } = template;
  const [w, h] = [length * scale, width * scale];
  const away = corners.flatMap(({ farLength, farWidth, length: a, width: b }) => {
    const [left, top] = [farLength ? x + w - a * scale : x, farWidth ? y + h - b * scale : y];
    return [
      element("rect", {
        x: left,
        y: top,
        width: a * scale,
        height: b * scale,
        "stroke-width": 0.6,
        "stroke-dasharray": "2 2",
      }),
      hatchedRect(left, top, a * scale, b * scale),
    ];
  });
  const outline = element("polygon", {
    points: outlineOf(corners, length, width)
      .map(([px, py]) => written([x + px * scale, y + py * scale]))
      .join(" "),
    fill: look.ink,
    "fill-opacity": 0.05,
    "stroke-width": CUT_STROKE,
  });
  const drawn = lines.map(({ kind, from, to }) =>
    lineBetween(
      [x + Math.min(from[0] * scale, w), y + Math.min(from[1] * scale, h)],
      [x + Math.min(to[0] * scale, w), y + Math.min(to[1] * scale, h)],
      kind === "cut" ? { "stroke-width": CUT_STROKE } : { "stroke-width": 1, "stroke-dasharray": FOLD_DASH },
    ),
  );
  const along = grain === "along width" ? "y" : "x";
  const arrow =
    grain === "either"
      ? ""
      : grainArrow([x + w / 2, y + h / 2], along, Math.min(ARROW, (along === "x" ? w : h) * 0.6), Math.min(w, h));
  return [...away, outline, ...drawn, arrow];
}

/** A double-headed arrow along the grain; its heads shrink on a narrow piece. */
export function grainArrow([x, y]: Point, along: "x" | "y", length: number, room: number): string {
  const head = Math.min(5, room / 4, length / 3);
  const at = (a: number, b: number): Point => (along === "x" ? [x + a, y + b] : [x + b, y + a]);
  const half = length / 2;
  const path = [
    [at(-half, 0), at(half, 0)],
    [at(-half + head, -head * 0.6), at(-half, 0), at(-half + head, head * 0.6)],
    [at(half - head, -head * 0.6), at(half, 0), at(half - head, head * 0.6)],
  ];
  return path
    .map((points) => element("polyline", { points: points.map(written).join(" "), "stroke-width": 1.2 }))
    .join("");
}

/** Slanting lines inside a rectangle: what falls away. */
export function hatchedRect(x: number, y: number, width: number, height: number, every = 6): string {
  const lines: string[] = [];
  for (let at = every; at < width + height; at += every) {
    const from: Point = at <= width ? [x + at, y] : [x + width, y + at - width];
    const to: Point = at <= height ? [x, y + at] : [x + at - height, y + height];
    lines.push(`M${written(from).replace(",", " ")}L${written(to).replace(",", " ")}`);
  }
  return lines.length === 0 ? "" : element("path", { d: lines.join(""), "stroke-opacity": 0.45, "stroke-width": 0.7 });
}

/** The outline clockwise from the near corner, stepping in where a corner is cut away. */
function outlineOf(corners: readonly Corner[], length: number, width: number): readonly Point[] {
  const cutAt = (farLength: boolean, farWidth: boolean) =>
    corners.find((corner) => corner.farLength === farLength && corner.farWidth === farWidth);
  const step = (farLength: boolean, farWidth: boolean, lengthFirst: boolean): readonly Point[] => {
    const [cx, cy] = [farLength ? length : 0, farWidth ? width : 0];
    const corner = cutAt(farLength, farWidth);
    if (corner === undefined) return [[cx, cy]];
    const [ix, iy] = [
      farLength ? length - corner.length : corner.length,
      farWidth ? width - corner.width : corner.width,
    ];
    return lengthFirst
      ? [
          [ix, cy],
          [ix, iy],
          [cx, iy],
        ]
      : [
          [cx, iy],
          [ix, iy],
          [ix, cy],
        ];
  };
  return [
    ...step(false, false, false),
    ...step(true, false, true),
    ...step(true, true, false),
    ...step(false, true, true),
  ];
}

/** Rows for texts under a line: each in the first row where it does not touch the one before it. */
function rowsOf(texts: readonly { readonly middle: number; readonly width: number }[], width: number) {
  const ends: number[] = [];
  return texts.map(({ middle, width: own }) => {
    const at = Math.min(Math.max(middle, own / 2), width - own / 2);
    const free = ends.findIndex((end) => end + GAP <= at - own / 2);
    const row = free === -1 ? ends.length : free;
    ends[row] = at + own / 2;
    return { row, middle: at };
  });
}

function notesOf({ corners, note }: Template, shown: (size: number) => string): readonly string[] {
  const corner = corners[0];
  const cut =
    corner === undefined
      ? []
      : [`${corners.length} corners cut away, ${shown(corner.length)} × ${shown(corner.width)} each (hatched)`];
  // The covering's own note on corners says the same.
  return [...cut, ...(note === "" || corner !== undefined ? [] : [note])];
}
