import { X, Z, type Cuboid } from "../../src/enclosure/space";

export const TOUCHING = 1e-6;

/** Seen along y: x, z. */
export type Point = readonly [number, number];
/** A convex outline. */
export type Outline = readonly Point[];

/** A point on from another: angle 0 is away from the trays, a right angle is up. */
export function along([x, z]: Point, length: number, angle: number): Point {
  return [x - length * Math.cos(angle), z + length * Math.sin(angle)];
}

/** Takes the body point `from` to `to` and turns the body about it; a negative angle turns up towards -x. */
export function carried(from: Point, to: Point, angle: number): (point: Point) => Point {
  const [cos, sin] = [Math.cos(-angle), Math.sin(-angle)];
  return ([x, z]) => {
    const [dx, dz] = [x - from[0], z - from[1]];
    return [to[0] + dx * cos - dz * sin, to[1] + dx * sin + dz * cos];
  };
}

/** Covered on every face, seen along y. */
export function section({ min, max }: Cuboid, c: number): Outline {
  const [x0, x1, z0, z1] = [min[X] - c, max[X] + c, min[Z] - c, max[Z] + c];
  return [
    [x0, z0],
    [x1, z0],
    [x1, z1],
    [x0, z1],
  ];
}

/** Two convex outlines are apart when some edge of one has the other wholly on its outer side. */
export function apart(a: Outline, b: Outline, what: string, open: number): void {
  if (boxesApart(a, b)) return;
  const gap = Math.max(widestGap(a, b), widestGap(b, a));
  if (gap < -TOUCHING) throw new Error(`${what} meet by ${-gap} mm when open by ${(open * 180).toFixed(0)} degrees`);
}

/** Most are far from each other: the upright boxes around them tell so at once. Plain loops, as millions are looked at. */
function boxesApart(a: Outline, b: Outline): boolean {
  for (const axis of [0, 1] as const) {
    let lowA = Infinity;
    let highA = -Infinity;
    let lowB = Infinity;
    let highB = -Infinity;
    for (const point of a) {
      if (point[axis] < lowA) lowA = point[axis];
      if (point[axis] > highA) highA = point[axis];
    }
    for (const point of b) {
      if (point[axis] < lowB) lowB = point[axis];
      if (point[axis] > highB) highB = point[axis];
    }
    if (lowA >= highB || lowB >= highA) return true;
  }
  return false;
}

function widestGap(a: Outline, b: Outline): number {
  let widest = -Infinity;
  for (let index = 0; index < a.length; index++) {
    const [x0, z0] = a[index]!;
    const [x1, z1] = a[(index + 1) % a.length]!;
    const length = Math.hypot(x1 - x0, z1 - z0);
    const [nx, nz] = [(z1 - z0) / length, (x0 - x1) / length];
    let least = Infinity;
    for (const [x, z] of b) least = Math.min(least, (x - x0) * nx + (z - z0) * nz);
    widest = Math.max(widest, least);
  }
  return widest;
}
