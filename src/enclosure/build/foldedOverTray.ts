import type { Mm } from "../../measure/units";
import type { SettledSettings } from "../../settings/schema";
import { AT_ORIGIN, cuboid, placed, type Cuboid, type Place, type Vec } from "../space";

/** How much narrower what folds over is than the space between the head walls. Common practice, no source. */
const TONGUE_LESS_MM: Mm = 1;

/** Half of an end of a blank, from the crease of its spine outward and from its middle to one edge. */
export interface Leaf {
  /** Creases across it: at the foot of the fore-edge wall, and on either side of its rim. */
  readonly creases: readonly Mm[];
  /** Where its head wall is creased, from the middle. */
  readonly headCrease: Mm;
  /** To where it reaches how far from its middle. */
  readonly reach: readonly (readonly [to: Mm, half: Mm])[];
  readonly tab: { readonly long: Mm; readonly high: Mm; readonly crease: Mm; readonly foot: Mm };
}

/**
 * A tray of three walls at one end of a blank that goes on at its spine; creases in mid-thickness. Its fore-edge wall
 * folds over the tabs of the head walls and down to the base inside them, so that they are trapped.
 *
 *              | tab |  head wall |        seen from the head:    ___
 *     +----+---+-----+------------+                              | | |  wall, tab, and what is folded over
 *     |in- |   |fore-|            |                              | | |
 *     |side|rim|edge |    base    spine      spine ______________|_|_|
 *     +----+---+-----+------------+
 *
 * The rim lies on the tabs, which end a board below the rims of the head walls: Cz - t high.
 *
 * @param inside clear space, from the standing spine to what is folded over
 */
export function foldedOverTray(
  [width, height, depth]: Vec,
  { wallBoard: { caliper: t }, turnIn }: SettledSettings,
  place: Place = AT_ORIGIN,
): { readonly panels: readonly Cuboid[]; readonly leaf: Leaf } {
  const [tabFrom, wallFrom] = [width + t, width + 2 * t];
  const less = Math.min(TONGUE_LESS_MM, height / 2) / 2;
  const high = depth - t;
  const long = Math.min(turnIn, depth, height / 2);
  // Measured from the crease in mid-thickness of the head wall.
  const reach = long - t / 2;
  const tab = (from: Mm) => cuboid(tabFrom, wallFrom, from, from + reach, 0, high);
  const head = (from: Mm) => cuboid(0, wallFrom, from, from + t, -t, depth);
  const over = (to: Mm, from: Mm, rim: Mm) => cuboid(width, to, less, height - less, from, rim);
  // From the crease of the spine, half a board outside the clear space.
  const rim = width + 3 * t + depth;
  const middle = height / 2;
  const [headCrease, foot] = [middle + t / 2, middle + t];
  return {
    panels: [
      cuboid(0, wallFrom, 0, height, -t, 0),
      cuboid(wallFrom, wallFrom + t, -t, height + t, -t, depth),
      over(wallFrom, high, depth),
      over(tabFrom, 0, high),
      head(-t),
      head(height),
      ...(reach > 0 ? [tab(0), tab(height - reach)] : []),
    ].map((panel) => placed(panel, place)),
    leaf: {
      creases: [wallFrom + t, rim, rim + 2 * t],
      headCrease,
      reach: [
        [t / 2, headCrease],
        [wallFrom, foot + depth],
        [wallFrom + long, middle + depth],
        [rim, foot],
        [rim + 1.5 * t + depth, middle - less],
      ],
      tab: { long, high, crease: wallFrom, foot },
    },
  };
}
