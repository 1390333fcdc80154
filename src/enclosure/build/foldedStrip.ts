import type { Mm } from "../../measure/units";
import { cuboid, type Cuboid } from "../space";

/** A point of a strip's cross-section, in the middle of its thickness: across (x or y), and z. */
export type Point = readonly [across: Mm, z: Mm];

export interface FoldedStrip {
  /** Length of the flat strip, end to end along the middle of the card. */
  readonly length: Mm;
  /** Crease positions from one end. */
  readonly folds: readonly Mm[];
  /** The panels as they stand. */
  readonly panels: readonly Cuboid[];
}

/**
 * A strip of card folded at right angles: creases run in mid-thickness, so the flat strip is as long as the path of its
 * middle.
 *
 *      ______      ___     path: flap end, crease, crease, crease, crease, flap end
 *     |           |
 *     |___________|
 *
 * @param path corners of the path, each step along one axis
 * @param caliper of the card
 * @param from where the strip's width begins, along the axis that it does not fold in
 * @param to where it ends
 * @param across the other axis of the path, with z
 */
export function foldedStrip(
  path: readonly Point[],
  caliper: Mm,
  { from, to, across }: { readonly from: Mm; readonly to: Mm; readonly across: "x" | "y" },
): FoldedStrip {
  const half = caliper / 2;
  const lengths: Mm[] = [];
  const panels: Cuboid[] = [];
  for (let i = 1; i < path.length; i++) {
    const [a0, z0] = path[i - 1]!;
    const [a1, z1] = path[i]!;
    lengths.push(Math.abs(a1 - a0) + Math.abs(z1 - z0));
    const standing = a0 === a1;
    // The corner itself belongs to the standing panel, so that no two panels share volume.
    const grow = standing ? half : -half;
    const startGrowth = i === 1 ? 0 : grow;
    const endGrowth = i === path.length - 1 ? 0 : grow;
    const rising = (standing ? z1 - z0 : a1 - a0) >= 0 ? 1 : -1;
    const start = (standing ? z0 : a0) - rising * startGrowth;
    const end = (standing ? z1 : a1) + rising * endGrowth;
    const [low, high] = start < end ? [start, end] : [end, start];
    const [b0, b1, y0, y1] = standing ? [a0 - half, a0 + half, low, high] : [low, high, z0 - half, z0 + half];
    panels.push(across === "x" ? cuboid(b0, b1, from, to, y0, y1) : cuboid(from, to, b0, b1, y0, y1));
  }
  const folds: Mm[] = [];
  let reached = 0;
  for (const length of lengths.slice(0, -1)) folds.push((reached += length));
  return { length: lengths.reduce((sum, length) => sum + length, 0), folds, panels };
}
