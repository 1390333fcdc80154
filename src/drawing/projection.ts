import { X, Y, Z, type Axis, type Cuboid, type Vec } from "../enclosure/space";

/** A point of the drawing, y downwards. */
export type Point = readonly [x: number, y: number];

/** How high the eye stands over the table. */
const ELEVATION = Math.PI / 6;
const ACROSS = Math.SQRT1_2;
const DOWN = Math.SQRT1_2 * Math.sin(ELEVATION);
const UP = Math.cos(ELEVATION);

/** What one mm along each axis is on the drawing, mm. */
const STEP: readonly [Point, Point, Point] = [
  [ACROSS, -DOWN],
  [ACROSS, DOWN],
  [0, -UP],
];

/** How far something a mm higher is drawn higher, and something a mm further along x or y. */
export const RISE = { z: UP, plan: DOWN } as const;

/**
 * Seen from above the corner of spine and tail, so that what opens at the spine is seen into. Parallel lines stay
 * parallel.
 *
 *          head . fore-edge
 *             .   .
 *     spine .       . fore-edge     x runs right and up, y right and down, z up
 *             .   .
 *         spine . tail
 */
export function project([x, y, z]: Vec): Point {
  return [ACROSS * (x + y), DOWN * (y - x) - UP * z];
}

export interface Face {
  readonly normal: Axis;
  readonly corner: Vec;
  /** The two directions that span it, with their lengths. */
  readonly first: Vec;
  readonly second: Vec;
}

/** The three faces turned to the eye: spine, tail and top. */
export function facesOf({ min, max }: Cuboid): readonly Face[] {
  const [x, y, z] = [max[0] - min[0], max[1] - min[1], max[2] - min[2]];
  return [
    { normal: X, corner: min, first: [0, y, 0], second: [0, 0, z] },
    { normal: Y, corner: [min[0], max[1], min[2]], first: [x, 0, 0], second: [0, 0, z] },
    { normal: Z, corner: [min[0], min[1], max[2]], first: [x, 0, 0], second: [0, y, 0] },
  ];
}

/** A point on a face, at shares of its two directions. */
export function onFace({ corner, first, second }: Face, u: number, v: number): Vec {
  return [
    corner[0] + u * first[0] + v * second[0],
    corner[1] + u * first[1] + v * second[1],
    corner[2] + u * first[2] + v * second[2],
  ];
}

/** Where a drawing lies along the normals of its three edges. */
export type Bands = readonly (readonly [low: number, high: number])[];

/** Where a cuboid lies along the normal of each pair of its drawn edges: two drawings overlap where all three do. */
export function bandsOf({ min, max }: Cuboid): Bands {
  return STEP.map(([dx, dy]) => {
    let [low, high] = [0, 0];
    STEP.forEach(([ex, ey], axis) => {
      const along = ex * -dy + ey * dx;
      const [from, to] = [along * (min[axis] as number), along * (max[axis] as number)];
      low += Math.min(from, to);
      high += Math.max(from, to);
    });
    return [low, high] as const;
  });
}

/** Whether the drawing of a cuboid with these bands covers a point. */
export function covers(bands: Bands, [x, y]: Point): boolean {
  // A loop over indices: this runs for every point of every face.
  for (let axis = 0; axis < bands.length; axis++) {
    const [dx, dy] = STEP[axis as Axis];
    const at = y * dx - x * dy;
    if (at < bands[axis]![0] || at > bands[axis]![1]) return false;
  }
  return true;
}

/** Whether a straight line passes through the drawing of a cuboid with these bands. */
export function passesThrough(bands: Bands, [x0, y0]: Point, [x1, y1]: Point): boolean {
  let from = 0;
  let to = 1;
  for (let axis = 0; axis < bands.length; axis++) {
    const [dx, dy] = STEP[axis as Axis];
    const start = y0 * dx - x0 * dy;
    const end = y1 * dx - x1 * dy;
    const [low, high] = bands[axis]!;
    if ((start < low && end < low) || (start > high && end > high)) return false;
    const along = end - start;
    if (Math.abs(along) < FLAT) {
      if (start < low || start > high) return false;
      continue;
    }
    const enter = (low - start) / along;
    const leave = (high - start) / along;
    from = Math.max(from, Math.min(enter, leave));
    to = Math.min(to, Math.max(enter, leave));
    if (from >= to) return false;
  }
  return true;
}

const FLAT = 1e-9;

export interface Extent {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** The smallest upright rectangle around the drawing of some cuboids. */
export function drawnExtent(bodies: readonly Cuboid[]): Extent {
  const points = bodies.flatMap(({ min, max }) => [
    project(min),
    project(max),
    project([min[0], max[1], min[2]]),
    project([max[0], min[1], max[2]]),
  ]);
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}
