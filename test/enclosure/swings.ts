import { X, Z, type Cuboid } from "../../src/enclosure/space";

export const TOUCHING = 1e-6;

/** In a test every use of a global name is a slow look-up. */
const { cos, sin, sqrt } = Math;

/** Seen along y: x, z. */
export type Point = readonly [number, number];
/** A convex outline. */
export type Outline = readonly Point[];

/** A point on from another: angle 0 is away from the trays, a right angle is up. */
export function along([x, z]: Point, length: number, angle: number): Point {
  return [x - length * cos(angle), z + length * sin(angle)];
}

/** Takes the body point `from` to `to` and turns the body about it; a negative angle turns up towards -x. */
export function carried(from: Point, to: Point, angle: number): (point: Point) => Point {
  const [c, s] = [cos(-angle), -sin(angle)];
  return ([x, z]) => {
    const [dx, dz] = [x - from[0], z - from[1]];
    return [to[0] + dx * c - dz * s, to[1] + dx * s + dz * c];
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
  if (boxesApart(a, b) || hasEdgeBetween(a, b) || hasEdgeBetween(b, a)) return;
  const by = -Math.max(...edgesOf(a).map((edge) => gapFrom(edge, b)), ...edgesOf(b).map((edge) => gapFrom(edge, a)));
  throw new Error(`${what} meet by ${by} mm when open by ${(open * 180).toFixed(0)} degrees`);
}

// Plain loops, since a soak looks at a billion pairs.

/** Most are far from each other: the upright boxes around them tell so at once. */
function boxesApart(a: Outline, b: Outline): boolean {
  return separate(a, b, 0) || separate(a, b, 1);
}

function separate(a: Outline, b: Outline, axis: 0 | 1): boolean {
  let lowA = a[0]![axis];
  let highA = lowA;
  let lowB = b[0]![axis];
  let highB = lowB;
  for (let index = 1; index < a.length; index++) {
    const at = a[index]![axis];
    if (at < lowA) lowA = at;
    if (at > highA) highA = at;
  }
  for (let index = 1; index < b.length; index++) {
    const at = b[index]![axis];
    if (at < lowB) lowB = at;
    if (at > highB) highB = at;
  }
  return lowA >= highB || lowB >= highA;
}

function hasEdgeBetween(a: Outline, b: Outline): boolean {
  for (let index = 0; index < a.length; index++) {
    const [from, to] = [a[index]!, a[index + 1 === a.length ? 0 : index + 1]!];
    const [nx, nz] = [to[1] - from[1], from[0] - to[0]];
    const least = -TOUCHING * sqrt(nx * nx + nz * nz);
    let isOutside = true;
    for (let other = 0; isOutside && other < b.length; other++) {
      const point = b[other]!;
      isOutside = (point[0] - from[0]) * nx + (point[1] - from[1]) * nz >= least;
    }
    if (isOutside) return true;
  }
  return false;
}

type Edge = readonly [from: Point, to: Point];

function edgesOf(outline: Outline): readonly Edge[] {
  return outline.map((from, index) => [from, outline[(index + 1) % outline.length]!]);
}

function gapFrom([[x0, z0], [x1, z1]]: Edge, outline: Outline): number {
  const length = Math.hypot(x1 - x0, z1 - z0);
  return Math.min(...outline.map(([x, z]) => ((x - x0) * (z1 - z0) + (z - z0) * (x0 - x1)) / length));
}
