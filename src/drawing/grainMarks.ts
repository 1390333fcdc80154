import type { Axis } from "../enclosure/space";
import type { Piece } from "../enclosure/view";
import { facesOf, onFace, project, type Face, type Point } from "./projection";
import type { Shape } from "./picture";
import { normalOf } from "./pulledApart";
import { onDrawing, type Frame } from "./solid";
import { hidesOf } from "./visiblePoints";

const LONGEST = 40;
const SHARE_OF_FACE = 0.55;
/** A face narrower than this has no room for an arrow. */
const LEAST_ROOM = 6;
const HEAD = 6;
const HEAD_WIDTH = 0.45;
const STROKE = { ink: 1, width: 1.3 } as const;
/** Beyond its ends an arrow leaves this share of its half length free, and this much on every side of leaders. */
const BEYOND_ENDS = 1.3;
const CLEAR_OF_LEADER = 7;
/** Tried outward from the middle of the face. */
const PLACES = [0.5, 0.38, 0.62, 0.26, 0.74, 0.16, 0.84] as const;

/**
 * Double-headed arrows on the boards, lying in their faces, along the grain; on every copy that shows room for one.
 *
 * @param drawn in painting order
 * @param leaders straight lines that an arrow keeps away from
 */
export function grainMarks(drawn: readonly Piece[], frame: Frame, leaders: readonly Leader[]): readonly Shape[] {
  const hides = hidesOf(drawn);
  return drawn.flatMap(({ part, body }, index) => {
    if (part.lengthAxis === undefined || part.widthAxis === undefined || part.board.listed?.grain === "free") return [];
    const face = facesOf(body)[normalOf(part.lengthAxis, part.widthAxis)] as Face;
    const axis = part.grain === "along length" ? part.lengthAxis : part.widthAxis;
    return markOn(face, axis, frame, leaders, (point) => !hides(point, index));
  });
}

export interface Leader {
  readonly from: Point;
  readonly to: Point;
}

function markOn(
  face: Face,
  grain: Axis,
  frame: Frame,
  leaders: readonly Leader[],
  seen: (point: Point) => boolean,
): readonly Shape[] {
  const alongFirst = face.first[grain] !== 0;
  const [run, side] = alongFirst ? [face.first, face.second] : [face.second, face.first];
  const [runLength, sideLength] = [Math.hypot(...run) * frame.scale, Math.hypot(...side) * frame.scale];
  if (sideLength < LEAST_ROOM || runLength < LEAST_ROOM * 2) return [];
  const half = Math.min(LONGEST, runLength * SHARE_OF_FACE) / 2 / runLength;
  const head = Math.min(HEAD, half * runLength);
  const wing = Math.min((HEAD_WIDTH * head) / sideLength, 0.4);
  const at = (u: number, v: number) => (alongFirst ? onFace(face, u, v) : onFace(face, v, u));
  const clear = (u: number, v: number) => {
    const points = [-BEYOND_ENDS, -0.5, 0, 0.5, BEYOND_ENDS].flatMap((share) =>
      [-wing, wing].map((out) => at(u + share * half, v + out)),
    );
    return (
      points.every((point) => seen(project(point))) &&
      points.every((point) => leaders.every((line) => distance(onDrawing(point, frame), line) > CLEAR_OF_LEADER))
    );
  };
  for (const v of PLACES)
    for (const u of PLACES) {
      if (u - half < 0 || u + half > 1 || !clear(u, v)) continue;
      const points = (corners: readonly (readonly [number, number])[]) =>
        corners.map(([a, b]) => onDrawing(at(a, b), frame));
      const tip = (direction: 1 | -1) => {
        const [end, back] = [u + direction * half, u + direction * (half - head / runLength)];
        return points([
          [back, v - wing],
          [end, v],
          [back, v + wing],
        ]);
      };
      const shaft = points([
        [u - half, v],
        [u + half, v],
      ]);
      return [shaft, tip(1), tip(-1)].map((each) => ({ kind: "polyline", points: each, stroke: STROKE }));
    }
  return [];
}

/** From a point to the nearest point of a straight line between two. */
function distance([x, y]: Point, { from: [x0, y0], to: [x1, y1] }: Leader): number {
  const [dx, dy] = [x1 - x0, y1 - y0];
  const length = dx * dx + dy * dy;
  const share = length === 0 ? 0 : Math.max(0, Math.min(1, ((x - x0) * dx + (y - y0) * dy) / length));
  return Math.hypot(x - x0 - share * dx, y - y0 - share * dy);
}
