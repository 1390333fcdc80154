import type { Assembly, Plate } from "../enclosure/assembly";
import { extent, X, Y } from "../enclosure/space";
import type { Mm } from "../measure/units";
import type { LoadedPlate } from "./plateSag";

/** A base as a plate: its clear span, where it is free, how its grain lies, what it is glued to. */
export interface BasePlate extends Pick<LoadedPlate, "spanX" | "spanY" | "freeEdge"> {
  /** The axis that the board's grain runs along. */
  readonly grain: "x" | "y";
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

/** A board that carries something, as a plate. */
export function bending({ part, over, freeSpine, gluedTo }: Plate): BasePlate {
  return {
    spanX: extent(over, X),
    spanY: extent(over, Y),
    freeEdge: freeSpine ? "x0" : "none",
    grain: part.grainAxis === X ? "x" : "y",
    gluedTo: gluedTo === undefined ? 0 : gluedTo.caliper,
  };
}
