import type { Cuboid, Vec } from "../enclosure/space";
import { PEN, type Shape } from "./picture";
import { facesOf, onFace, project, type Face, type Point } from "./projection";

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
  /** Ink laid on every face besides its tone, to tell one tray from another. */
  readonly tint?: number;
}

/** A cuboid: three faces on opaque paper, each a tone of its own. */
export function solid(
  body: Cuboid,
  frame: Frame,
  { hatch, stroke = PEN.width, tint = 0 }: SolidStyle,
): readonly Shape[] {
  return facesOf(body).flatMap((face): readonly Shape[] => {
    const points = outline(face, frame);
    return [
      { kind: "polygon", points, fill: 0 },
      { kind: "polygon", points, fill: TONE[face.normal] + tint, stroke: { ink: 1, width: stroke } },
      ...(hatch === undefined ? [] : hatched(face, frame, hatch)),
    ];
  });
}

function outline(face: Face, frame: Frame): readonly Point[] {
  return [onFace(face, 0, 0), onFace(face, 1, 0), onFace(face, 1, 1), onFace(face, 0, 1)].map((place) =>
    onDrawing(place, frame),
  );
}

/** Slanting lines over a face, from its lower edge to its upper one. */
function hatched(face: Face, frame: Frame, every: number): readonly Shape[] {
  const [first, second] = [length(face.first) * frame.scale, length(face.second) * frame.scale];
  const lines: (readonly [Point, Point])[] = [];
  for (let at = every; at < first + second; at += every) {
    const [u0, v0] = at <= first ? [at / first, 0] : [1, (at - first) / second];
    const [u1, v1] = at <= second ? [0, at / second] : [(at - second) / first, 1];
    lines.push([onDrawing(onFace(face, u0, v0), frame), onDrawing(onFace(face, u1, v1), frame)]);
  }
  return lines.length === 0 ? [] : [{ kind: "hatch", lines, stroke: { ink: HATCH_TONE, width: HATCH_STROKE } }];
}

function length([x, y, z]: Vec): number {
  return Math.hypot(x, y, z);
}
