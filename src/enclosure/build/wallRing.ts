import type { Mm } from "../../measure/units";
import { cuboid, type Cuboid } from "../space";

/** A rectangle seen from above. */
export interface Footprint {
  readonly x0: Mm;
  readonly x1: Mm;
  readonly y0: Mm;
  readonly y1: Mm;
}

export interface WallRing {
  /** Walls along y: two, or the one at the fore-edge (the back of a slipcase). */
  readonly side: readonly Cuboid[];
  /** Walls along x, at head and tail. */
  readonly head: readonly Cuboid[];
  /** What the ring reaches out to. */
  readonly footprint: Footprint;
}

/**
 * Walls standing around a footprint.
 *
 *     through = side            through = head           open at the spine, through = side
 *     +-+--------+-+            +------------+           +--------+-+
 *     | |        | |            +-+--------+-+           +--------+ |
 *     | |        | |            | |        | |                    | |
 *     | |        | |            +-+--------+-+           +--------+ |
 *     +-+--------+-+            +------------+           +--------+-+
 *
 * @param within the footprint that the walls stand around
 * @param foot where they stand, mm
 * @param rim where they end, mm
 * @param caliper board thickness, mm
 */
export function wallRing(
  within: Footprint,
  foot: Mm,
  rim: Mm,
  caliper: Mm,
  { through, openSpine }: { readonly through: "side" | "head"; readonly openSpine: boolean },
): WallRing {
  const { x0, x1, y0, y1 } = within;
  const footprint = {
    x0: openSpine ? x0 : x0 - caliper,
    x1: x1 + caliper,
    y0: y0 - caliper,
    y1: y1 + caliper,
  };
  const side = through === "side" ? footprint : within;
  const head = through === "head" ? footprint : within;
  const foreEdge = cuboid(x1, footprint.x1, side.y0, side.y1, foot, rim);
  return {
    side: openSpine ? [foreEdge] : [cuboid(footprint.x0, x0, side.y0, side.y1, foot, rim), foreEdge],
    head: [
      cuboid(head.x0, head.x1, footprint.y0, y0, foot, rim),
      cuboid(head.x0, head.x1, y1, footprint.y1, foot, rim),
    ],
    footprint,
  };
}
