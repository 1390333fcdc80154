import type { Mm } from "../../measure/units";
import type { SettledSettings } from "../../settings/schema";
import type { Tray } from "../assembly";
import type { BlankLine } from "../placedPart";
import { AT_ORIGIN, boundingBox, cuboid, placed, type Cuboid, type Place, type Vec } from "../space";

/** How much narrower what folds over is than the space between the head walls. Common practice, no source. */
const TONGUE_LESS_MM: Mm = 1;

/** Half of an end of a blank, from the crease of its spine outward (u) and from its middle to one edge (v). */
export interface Leaf {
  readonly length: Mm;
  /** Creases across it. */
  readonly creases: readonly [foreEdge: Mm, rim: Mm, over: Mm];
  /** Where its head wall is creased, from the middle. */
  readonly headCrease: Mm;
  /** How far it reaches from its middle, stretch by stretch. */
  readonly reach: readonly { readonly to: Mm; readonly half: Mm }[];
  readonly lines: readonly BlankLine[];
  readonly tab: { readonly long: Mm; readonly high: Mm };
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
  name: string,
  [width, height, depth]: Vec,
  { wallBoard: board, turnIn }: SettledSettings,
  place: Place = AT_ORIGIN,
): { readonly tray: (of: Tray["spans"][0]["part"]) => Tray; readonly panels: readonly Cuboid[]; readonly leaf: Leaf } {
  const t = board.caliper;
  const [tabFrom, wallFrom, end] = [width + t, width + 2 * t, width + 3 * t];
  const less = Math.min(TONGUE_LESS_MM, height / 2) / 2;
  const high = depth - t;
  const long = Math.min(turnIn, depth, height / 2);
  // Measured from the crease in mid-thickness of the head wall.
  const reach = long - t / 2;
  const tab = (from: Mm) => cuboid(tabFrom, wallFrom, from, from + reach, 0, high);
  const panels = [
    cuboid(0, wallFrom, 0, height, -t, 0),
    cuboid(wallFrom, end, -t, height + t, -t, depth),
    cuboid(width, wallFrom, less, height - less, high, depth),
    cuboid(width, tabFrom, less, height - less, 0, high),
    cuboid(0, wallFrom, -t, 0, -t, depth),
    cuboid(0, wallFrom, height, height + t, -t, depth),
    ...(reach > 0 ? [tab(0), tab(height - reach)] : []),
  ].map((panel) => placed(panel, place));

  // From the crease of the spine, half a board outside the clear space.
  const creased = width + 2 * t;
  const foreEdge = creased + t;
  const rim = foreEdge + depth;
  const over = rim + 2 * t;
  const length = over + depth - t / 2;
  const [headCrease, foot, tabTop, head] = [
    (height + t) / 2,
    height / 2 + t,
    height / 2 + depth,
    height / 2 + depth + t,
  ];
  const tongue = height / 2 - less;
  const tip = creased + long;
  const both = (kind: BlankLine["kind"], [u0, v0]: Point, [u1, v1]: Point): readonly BlankLine[] => [
    { kind, from: [u0, v0], to: [u1, v1] },
    { kind, from: [u0, -v0], to: [u1, -v1] },
  ];
  const across = (u: Mm, half: Mm): BlankLine => ({ kind: "fold", from: [u, -half], to: [u, half] });
  return {
    panels,
    leaf: {
      length,
      creases: [foreEdge, rim, over],
      headCrease,
      reach: [
        { to: t / 2, half: headCrease },
        { to: creased, half: head },
        { to: tip, half: tabTop },
        { to: rim, half: foot },
        { to: length, half: tongue },
      ],
      lines: [
        across(foreEdge, foot),
        across(rim, tongue),
        across(over, tongue),
        ...both("fold", [t / 2, headCrease], [creased, headCrease]),
        ...both("fold", [creased, foot], [creased, tabTop]),
        ...both("cut", [creased, foot], [tip, foot]),
        ...both("cut", [creased, headCrease], [creased, foot]),
      ],
      tab: { long, high },
    },
    tray: (part) => ({
      name,
      openSpine: true,
      mouth: undefined,
      construction: undefined,
      rings: [],
      closedCorners: true,
      inside: placed(cuboid(0, width, 0, height, 0, depth), place),
      outside: boundingBox(panels),
      // In width half a board at either crease, and the tabs and what is folded over them.
      spans: [
        { part, boards: 3, of: part },
        { part, boards: 1, of: part },
        { part, boards: 1 / 2, of: part },
      ],
      covering: 0,
      coveredFaces: [0, 0, 0],
      rim: t,
      tabs: 0,
      floor: t,
    }),
  };
}

type Point = BlankLine["from"];
