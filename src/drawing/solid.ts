import type { Axis, Cuboid, Vec } from "../enclosure/space";
import type { Look } from "./look";
import { facesOf, onFace, project, type Face, type Point } from "./projection";
import { element, rounded } from "./svg";

/** Ink laid on each visible face: spine, tail, top. */
const TONE: readonly [number, number, number] = [0.13, 0.24, 0.04];
const HATCH_TONE = 0.4;
const HATCH_STROKE = 0.6;

/** How a model in mm lies on the drawing. */
export interface Frame {
  readonly scale: number;
  readonly x: number;
  readonly y: number;
}

export function onDrawing(place: Vec, { scale, x, y }: Frame): Point {
  const [px, py] = project(place);
  return [x + px * scale, y + py * scale];
}

export interface SolidStyle {
  /** Card is hatched, a hatch every so many units of the drawing; undefined for plain board. */
  readonly hatch?: number;
  readonly stroke?: number;
}

/** A cuboid: three faces on opaque paper, each a tone of its own. */
export function solid(body: Cuboid, frame: Frame, { hatch, stroke = 1 }: SolidStyle, look: Look): string {
  return facesOf(body)
    .map((face) => {
      const corners = outline(face, frame);
      const points = corners.map(written).join(" ");
      return (
        element("polygon", { points, fill: look.paper, stroke: "none" }) +
        element("polygon", {
          points,
          fill: look.ink,
          "fill-opacity": TONE[face.normal as Axis],
          "stroke-width": stroke,
        }) +
        (hatch === undefined ? "" : hatched(face, frame, hatch, look))
      );
    })
    .join("");
}

export function written([x, y]: Point): string {
  return `${rounded(x)},${rounded(y)}`;
}

export function lineBetween(
  [x1, y1]: Point,
  [x2, y2]: Point,
  attributes: Readonly<Record<string, string | number>>,
): string {
  return element("line", { x1, y1, x2, y2, ...attributes });
}

function outline(face: Face, frame: Frame): readonly Point[] {
  return [onFace(face, 0, 0), onFace(face, 1, 0), onFace(face, 1, 1), onFace(face, 0, 1)].map((place) =>
    onDrawing(place, frame),
  );
}

/** Slanting lines over a face, from its lower edge to its upper one. */
function hatched(face: Face, frame: Frame, every: number, look: Look): string {
  const [first, second] = [length(face.first) * frame.scale, length(face.second) * frame.scale];
  const lines: string[] = [];
  for (let at = every; at < first + second; at += every) {
    const [u0, v0] = at <= first ? [at / first, 0] : [1, (at - first) / second];
    const [u1, v1] = at <= second ? [0, at / second] : [(at - second) / first, 1];
    const [[x1, y1], [x2, y2]] = [onDrawing(onFace(face, u0, v0), frame), onDrawing(onFace(face, u1, v1), frame)];
    lines.push(`M${rounded(x1)} ${rounded(y1)}L${rounded(x2)} ${rounded(y2)}`);
  }
  if (lines.length === 0) return "";
  return element("path", {
    d: lines.join(""),
    stroke: look.ink,
    "stroke-opacity": HATCH_TONE,
    "stroke-width": HATCH_STROKE,
  });
}

function length([x, y, z]: Vec): number {
  return Math.hypot(x, y, z);
}
