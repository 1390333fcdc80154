import type { Mm } from "../../measure/units";
import type { Assembly } from "../assembly";
import { cuboid, extent, X, Y, Z, type Cuboid } from "../space";
import { openBodies, type OpenBody } from "../view";
import { standOffOf } from "./joint";

/** What stands and lies on the back board of a portfolio; at head the first of two. */
export interface PortfolioParts {
  readonly headRiser: Cuboid;
  readonly headFlap: Cuboid;
  readonly foreEdgeRiser: Cuboid;
  readonly foreEdgeFlap: Cuboid;
  readonly flapCaliper: Mm;
  /** Between a riser and its flap, so that the closed flap begins at the edge of the back board. */
  readonly flapJoint: Mm;
}

export function portfolioParts({ parts, cover }: Assembly): PortfolioParts {
  const [, , headRiser, headFlap, foreEdgeRiser, foreEdgeFlap] = parts.map(({ panels }) => panels[0]!);
  const flapCaliper = extent(headFlap!, Z);
  return {
    headRiser: headRiser!,
    headFlap: headFlap!,
    foreEdgeRiser: foreEdgeRiser!,
    foreEdgeFlap: foreEdgeFlap!,
    flapCaliper,
    flapJoint: Math.hypot(standOffOf(cover!.joint, cover!.boardCaliper), flapCaliper),
  };
}

/** Everything laid flat round the back board, the item's side up. */
export function laidFlat(assembly: Assembly): readonly OpenBody[] {
  const { boardWidth: w, boardHeight: h, joint, spineWidth, boardCaliper: q } = assembly.cover!;
  const { headRiser, headFlap, foreEdgeRiser, foreEdgeFlap, flapCaliper: p, flapJoint } = portfolioParts(assembly);
  const board = (x: Mm, width: Mm) => cuboid(x, x + width, 0, h, 0, q);
  const [headRise, headLong] = [extent(headRiser, Z), extent(headFlap, Y)];
  const [foreEdgeRise, foreEdgeLong] = [extent(foreEdgeRiser, Z), extent(foreEdgeFlap, X)];
  const head = joint + headRise + flapJoint;
  const foreEdge = w + joint + foreEdgeRise + flapJoint;
  return openBodies([
    board(0, w),
    board(-joint - spineWidth, spineWidth),
    board(-2 * joint - spineWidth - w, w),
    cuboid(0, w, -joint - headRise, -joint, 0, p),
    cuboid(0, w, -head - headLong, -head, 0, p),
    cuboid(0, w, h + joint, h + joint + headRise, 0, p),
    cuboid(0, w, h + head, h + head + headLong, 0, p),
    cuboid(w + joint, w + joint + foreEdgeRise, 0, h, 0, p),
    cuboid(foreEdge, foreEdge + foreEdgeLong, 0, h, 0, p),
  ]);
}
