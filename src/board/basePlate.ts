import type { Assembly, Plate } from "../enclosure/assembly";
import { extent, X, Y } from "../enclosure/space";
import type { Mm } from "../measure/units";
import type { BaseUnderLoad } from "./boardSag";

/** A base as a plate: its clear span, where it is free, how its grain lies, what it is glued to. */
export interface BasePlate extends Pick<BaseUnderLoad, "spanX" | "spanY" | "freeEdge" | "grain"> {
  /** Case board under a clamshell's tray; 0 elsewhere. */
  readonly gluedTo: Mm;
}

/**
 * The base of the tray that holds the item, held up on every edge that has a wall; undefined for an enclosure without
 * such a board (a wrapper, a folded tray).
 */
export function basePlate({ base }: Assembly): BasePlate | undefined {
  return base === undefined ? undefined : bending(base);
}

/** The board on top, which carries a stack: of the lid, the large tray, or the upper side of a slipcase. */
export function topPlate({ top }: Assembly): BasePlate | undefined {
  return top === undefined ? undefined : bending(top);
}

function bending({ part, over, freeSpine, gluedTo }: Plate): BasePlate {
  return {
    spanX: extent(over, X),
    spanY: extent(over, Y),
    freeEdge: freeSpine ? "x0" : "none",
    grain: part.grainAxis === X ? "x" : "y",
    gluedTo: gluedTo === undefined ? 0 : gluedTo.caliper,
  };
}
