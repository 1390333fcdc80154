import type { Point } from "./projection";
import { lineBetween, written } from "./solid";
import { element } from "./svg";

const TICK = 3;
const LARGEST_HEAD = 5;
const HEAD_WIDTH = 0.6;

/** A measuring line: a slanting tick at both ends. */
export function measuringLine(from: Point, to: Point): string {
  const tick = ([x, y]: Point) => lineBetween([x - TICK, y + TICK], [x + TICK, y - TICK], {});
  return lineBetween(from, to, { "stroke-width": 0.6 }) + tick(from) + tick(to);
}

/** A double-headed arrow along the grain; its heads shrink on a narrow piece. */
export function grainArrow([x, y]: Point, along: "x" | "y", length: number, room: number): string {
  const head = Math.min(LARGEST_HEAD, room / 4, length / 3);
  const at = (a: number, b: number): Point => (along === "x" ? [x + a, y + b] : [x + b, y + a]);
  const half = length / 2;
  const tip = (end: number, back: number) => [at(back, -head * HEAD_WIDTH), at(end, 0), at(back, head * HEAD_WIDTH)];
  return [[at(-half, 0), at(half, 0)], tip(-half, head - half), tip(half, half - head)]
    .map((points) => element("polyline", { points: points.map(written).join(" "), "stroke-width": 1.2 }))
    .join("");
}

/** Slanting lines inside a rectangle: what falls away. */
export function hatchedRect(x: number, y: number, width: number, height: number, every: number): string {
  const lines: string[] = [];
  for (let at = every; at < width + height; at += every) {
    const from: Point = at <= width ? [x + at, y] : [x + width, y + at - width];
    const to: Point = at <= height ? [x, y + at] : [x + at - height, y + height];
    lines.push(`M${written(from)}L${written(to)}`);
  }
  return lines.length === 0 ? "" : element("path", { d: lines.join(""), "stroke-opacity": 0.45, "stroke-width": 0.7 });
}
