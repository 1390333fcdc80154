import type { Mm } from "../measure/units";

/** x from spine to fore-edge, y from head to tail, z from the floor up. */
export type Axis = 0 | 1 | 2;
export const X = 0;
export const Y = 1;
export const Z = 2;

export type Vec = readonly [x: Mm, y: Mm, z: Mm];

/** A body with faces along the axes, by two opposite corners. */
export interface Cuboid {
  readonly min: Vec;
  readonly max: Vec;
}

export function cuboid(x0: Mm, x1: Mm, y0: Mm, y1: Mm, z0: Mm, z1: Mm): Cuboid {
  return { min: [x0, y0, z0], max: [x1, y1, z1] };
}

/** The length of a cuboid along an axis. */
export function extent(body: Cuboid, axis: Axis): Mm {
  return body.max[axis] - body.min[axis];
}

export function moved({ min, max }: Cuboid, [x, y, z]: Vec): Cuboid {
  return { min: [min[0] + x, min[1] + y, min[2] + z], max: [max[0] + x, max[1] + y, max[2] + z] };
}

/** A step along one axis. */
export function along(axis: Axis, by: Mm): Vec {
  return [axis === X ? by : 0, axis === Y ? by : 0, axis === Z ? by : 0];
}

/** The smallest cuboid that holds them all. */
export function boundingBox(bodies: readonly Cuboid[]): Cuboid {
  let [x0, y0, z0] = [Infinity, Infinity, Infinity];
  let [x1, y1, z1] = [-Infinity, -Infinity, -Infinity];
  for (const { min, max } of bodies) {
    if (min[0] < x0) x0 = min[0];
    if (min[1] < y0) y0 = min[1];
    if (min[2] < z0) z0 = min[2];
    if (max[0] > x1) x1 = max[0];
    if (max[1] > y1) y1 = max[1];
    if (max[2] > z1) z1 = max[2];
  }
  return cuboid(x0, x1, y0, y1, z0, z1);
}

/** Where a tray stands: its inside corner, and whether it is turned over (a lid). */
export interface Place {
  readonly at: Vec;
  readonly turnedOver: boolean;
}

export const AT_ORIGIN: Place = { at: [0, 0, 0], turnedOver: false };

export function placed({ min, max }: Cuboid, { at: [x, y, z], turnedOver }: Place): Cuboid {
  return turnedOver
    ? cuboid(min[0] + x, max[0] + x, min[1] + y, max[1] + y, z - max[2], z - min[2])
    : cuboid(min[0] + x, max[0] + x, min[1] + y, max[1] + y, min[2] + z, max[2] + z);
}
