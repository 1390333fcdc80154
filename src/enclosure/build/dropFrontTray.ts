import type { Mm } from "../../measure/units";
import type { Tray } from "../assembly";
import { flatPart, lyingPart, panelsOf, type PartSpec, type PlacedPart } from "../placedPart";
import { boundingBox, cuboid, extent, X, Y, Z, type Cuboid, type Vec } from "../space";
import type { TrayMaterials } from "./trayBoards";

/**
 * A tray of three fixed walls and a front wall that stands between the side walls, in front of the base.
 *
 *     +-+--------------+-+
 *     | |     back     | |
 *     | +--------------+ |
 *     | |     base     | |   side walls run through
 *     | +--------------+ |
 *     +-+ ==== front = +-+   two coverings off the covered edge of the base, and off each side wall
 *
 * @param inside clear space between the fixed boards
 * @param frontWidth of the front wall
 */
export function dropFrontTray(
  tray: string,
  [width, height, depth]: Vec,
  flanged: boolean,
  { wallBoard, baseBoard, card, cardTrim, covering: c }: TrayMaterials,
  frontWidth: Mm,
): {
  readonly parts: readonly PlacedPart[];
  readonly tray: Tray;
  readonly base: PlacedPart;
  readonly front: PlacedPart;
} {
  const [t, b] = [wallBoard.caliper, baseBoard.caliper];
  const k = flanged ? card.caliper : 0;
  const spec = (name: string, role: PartSpec["role"], board = wallBoard): PartSpec => ({
    name,
    tray,
    role,
    material: "board",
    board,
    trim: 0,
  });
  const base = lyingPart(spec("base", "base", baseBoard), "long", [cuboid(0, width, 0, height, -b, 0)]);
  const side = (x: Mm) => cuboid(x, x + t, -t, height + t, -b, depth);
  const sides = uprightPart(spec("side wall", "wall"), Y, [side(-t), side(width)]);
  const back = uprightPart(spec("back wall", "wall"), X, [cuboid(0, width, -t, 0, -b, depth)]);
  const cards = flanged
    ? [
        lyingPart({ ...spec("flange card", "card", card), material: "card", trim: cardTrim }, "long", [
          cuboid(-t, width + t, -t, height, -b - k, -b),
        ]),
      ]
    : [];
  const [from, near] = [(width - frontWidth) / 2, height + 2 * c];
  const front = uprightPart(spec("front wall", "case"), X, [
    cuboid(from, from + frontWidth, near, near + t, -b - k, depth),
  ]);
  const parts = [base, sides, back, ...cards, front];
  return {
    parts,
    base,
    front,
    tray: {
      name: tray,
      openSpine: false,
      mouth: undefined,
      construction: flanged ? "flanged base" : "around base",
      rings: [[sides, back]],
      closedCorners: false,
      inside: cuboid(0, width, 0, height, 0, depth),
      outside: boundingBox(panelsOf(parts)),
      spans: [
        { part: base, boards: 0, of: sides },
        { part: base, boards: 0, of: sides },
        { part: sides, boards: 1, of: base },
      ],
      covering: c,
      coveredFaces: [2, 2, 1],
      rim: t,
      tabs: 0,
      floor: b + k,
    },
  };
}

/** Opened, the front wall lies in front of the box, having turned about its outer lower edge. */
export function frontLaidDown(front: Cuboid): Cuboid {
  const { min, max } = front;
  const thick = extent(front, Y);
  return cuboid(min[0], max[0], max[1], max[1] + extent(front, Z), min[2], min[2] + thick);
}

/** A wall across x or along y; long grain, so upright in a wall that is higher than long. */
function uprightPart(spec: PartSpec, run: typeof X | typeof Y, panels: readonly [Cuboid, ...Cuboid[]]): PlacedPart {
  const higher = extent(panels[0], Z) > extent(panels[0], run);
  return flatPart(spec, run, Z, higher ? Z : run, panels);
}
