import { straight, type Shape } from "./picture";
import type { Point } from "./projection";

const TICK = 3;
const MEASURING_STROKE = 0.6;
const LARGEST_HEAD = 5;
const HEAD_WIDTH = 0.6;
const GRAIN_STROKE = { ink: 1, width: 1.2 } as const;
const HATCH_STROKE = { ink: 0.45, width: 0.7 } as const;

/** A measuring line: a slanting tick at both ends. */
export function measuringLine(from: Point, to: Point): readonly Shape[] {
  const tick = ([x, y]: Point) => straight([x - TICK, y + TICK], [x + TICK, y - TICK]);
  return [straight(from, to, { width: MEASURING_STROKE }), tick(from), tick(to)];
}

/** A double-headed arrow along the grain; its heads shrink on a narrow piece. */
export function grainArrow([x, y]: Point, along: "x" | "y", length: number, room: number): readonly Shape[] {
  const head = Math.min(LARGEST_HEAD, room / 4, length / 3);
  const at = (a: number, b: number): Point => (along === "x" ? [x + a, y + b] : [x + b, y + a]);
  const half = length / 2;
  const tip = (end: number, back: number) => [at(back, -head * HEAD_WIDTH), at(end, 0), at(back, head * HEAD_WIDTH)];
  return [[at(-half, 0), at(half, 0)], tip(-half, head - half), tip(half, half - head)].map((points) => ({
    kind: "polyline",
    points,
    stroke: GRAIN_STROKE,
  }));
}

/** Slanting lines inside a rectangle: what falls away. */
export function hatchedRect(x: number, y: number, width: number, height: number, every: number): readonly Shape[] {
  const lines: (readonly [Point, Point])[] = [];
  for (let at = every; at < width + height; at += every)
    lines.push([
      at <= width ? [x + at, y] : [x + width, y + at - width],
      at <= height ? [x, y + at] : [x + at - height, y + height],
    ]);
  return lines.length === 0 ? [] : [{ kind: "hatch", lines, stroke: HATCH_STROKE }];
}
