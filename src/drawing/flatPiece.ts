import type { Mm } from "../measure/units";
import { edgeOutline, edgesAway } from "./edgeOutline";
import { grainArrow, hatchedRect } from "./marks";
import { straight, type Shape } from "./picture";
import type { Point } from "./projection";
import type { Corner, Stretch, Template } from "./template";

const FOLD = { dash: [7, 3, 1.5, 3] } as const;
const CUT = { ink: 1, width: 1.6 } as const;
const AWAY = { ink: 1, width: 0.6, dash: [2, 2] } as const;
const PIECE_TONE = 0.05;
const ARROW = 44;
const ARROW_SHARE = 0.6;
const HATCH = 6;

/** Where a flat piece lies on a drawing, and its scale. */
export interface FlatFrame {
  readonly x: number;
  readonly y: number;
  readonly scale: number;
}

/** Outline, folds, cuts, what is cut away, and grain. */
export function flatPiece(template: Template, { x, y, scale }: FlatFrame): readonly Shape[] {
  const { length, width, corners, edges, lines, grain } = template;
  const [w, h] = [length * scale, width * scale];
  const away = [
    ...corners.map(({ farLength, farWidth, length: a, width: b }) => ({
      corner: [farLength ? length - a : 0, farWidth ? width - b : 0] as const,
      width: a,
      height: b,
    })),
    ...(edges === undefined ? [] : edgesAway(edges, length, width)),
  ].flatMap((rect): readonly Shape[] => {
    const corner: Point = [x + rect.corner[0] * scale, y + rect.corner[1] * scale];
    const [a, b] = [rect.width * scale, rect.height * scale];
    return [{ kind: "rectangle", corner, width: a, height: b, stroke: AWAY }, ...hatchedRect(...corner, a, b, HATCH)];
  });
  const rim = edges === undefined ? outlineOf(corners, length, width) : edgeOutline(edges, length, width);
  const outline: Shape = {
    kind: "polygon",
    points: rim.map(([px, py]) => [x + px * scale, y + py * scale]),
    fill: PIECE_TONE,
    stroke: CUT,
  };
  const drawn = lines.map(({ kind, from, to }) =>
    straight(
      [x + Math.min(from[0] * scale, w), y + Math.min(from[1] * scale, h)],
      [x + Math.min(to[0] * scale, w), y + Math.min(to[1] * scale, h)],
      kind === "cut" ? CUT : FOLD,
    ),
  );
  return [...away, outline, ...drawn, ...(grain === "either" ? [] : grainOn(template, { x, y, scale }))];
}

/** The grain arrow, in the middle of the longest stretch each way, clear of folds. */
function grainOn(
  { length, width, alongLength, alongWidth, grain }: Template,
  { x, y, scale }: FlatFrame,
): readonly Shape[] {
  const [across, down] = [longestOf(alongLength, length), longestOf(alongWidth, width)];
  const along = grain === "along width" ? "y" : "x";
  const [run, side] = along === "x" ? [across.size, down.size] : [down.size, across.size];
  const middle: Point = [x + across.middle * scale, y + down.middle * scale];
  return grainArrow(middle, along, Math.min(ARROW, run * scale * ARROW_SHARE), side * scale);
}

function longestOf(stretches: readonly Stretch[], whole: Mm): { readonly middle: Mm; readonly size: Mm } {
  let [at, best] = [0, { middle: whole / 2, size: stretches.length === 0 ? whole : 0 }];
  for (const { length } of stretches) {
    if (length > best.size) best = { middle: at + length / 2, size: length };
    at += length;
  }
  return best;
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
