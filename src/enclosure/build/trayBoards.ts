import type { Mm } from "../../measure/units";
import { onePly, type Board } from "../../settings/boards";
import type { Construction } from "../../settings/schema";
import type { Tray } from "../assembly";
import { flatPart, longAxis, lyingPart, type PartSpec, type PlacedPart } from "../placedPart";
import { wallRing, type Footprint, type WallRing } from "./wallRing";
import { AT_ORIGIN, boundingBox, cuboid, extent, placed, X, Y, Z, type Cuboid, type Place, type Vec } from "../space";

/** How a tray is built. */
export interface TrayForm {
  readonly construction: Construction;
  readonly through: "side" | "head";
  readonly layers: number;
  readonly endCards: boolean;
  /** Three walls, open at the spine, glued to a case; grain parallel to the spine. */
  readonly openSpine: boolean;
}

/** What a tray is built of. */
export interface TrayMaterials {
  readonly wallBoard: Board;
  readonly baseBoard: Board;
  readonly card: Board;
  readonly cardTrim: Mm;
  /** On one face, all layers. */
  readonly covering: Mm;
}

export interface BuiltTray {
  readonly parts: readonly PlacedPart[];
  readonly tray: Tray;
  readonly base: PlacedPart;
}

/**
 * The boards of a tray, placed around its inside.
 *
 *      on base          around base       flanged base
 *     |        |        |        |        |        |
 *     |________|        |________|        |________|     walls
 *     [__base__]        |[_base_]|        |[_base_]|
 *                                         ============   card
 *
 * Two layers: an inner ring stands on a base that reaches under it; an outer ring stands around that base (or, `on
 * base`, on it too), with the other pair as its through walls so that the corners stagger.
 */
export function trayBoards(
  tray: string,
  inside: Vec,
  { construction, through, layers, endCards, openSpine }: TrayForm,
  { wallBoard: body, baseBoard, card, cardTrim, covering }: TrayMaterials,
  place: Place = AT_ORIGIN,
): BuiltTray {
  const [width, height, depth] = inside;
  // Two rings are stiff enough of one ply each.
  const wallBoard = layers === 1 ? body : onePly(body);
  const t = wallBoard.caliper;
  const b = baseBoard.caliper;
  const flange = construction === "flanged base" ? card.caliper : 0;
  const foot = construction === "on base" ? 0 : -b;
  const clear: Footprint = { x0: 0, x1: width, y0: 0, y1: height };

  const rings: (WallRing & { readonly layer: string })[] = [];
  let footprint = clear;
  for (let layer = 1; layer <= layers; layer++) {
    const outermost = layer === layers;
    const {
      side,
      head,
      footprint: reach,
    } = wallRing(footprint, outermost ? foot : 0, depth, t, {
      through: layer === 1 ? through : otherPair(through),
      openSpine,
    });
    rings.push({ side, head, footprint: reach, layer: layers === 1 ? "" : outermost ? "outer " : "inner " });
    footprint = reach;
  }
  const inner = rings.length > 1 ? rings[0]!.footprint : clear;
  const under = construction === "on base" ? footprint : inner;

  // Most trays stay where they are built: nothing is copied then.
  const put = (bodies: readonly Cuboid[]) =>
    (place === AT_ORIGIN ? bodies : bodies.map((body) => placed(body, place))) as [Cuboid, ...Cuboid[]];
  const wall = (name: string): PartSpec => ({
    name,
    tray,
    role: "wall",
    material: "board",
    board: wallBoard,
    trim: 0,
  });
  const cardPart = (name: string): PartSpec => ({
    name,
    tray,
    role: "card",
    material: "card",
    board: card,
    trim: cardTrim,
  });
  const floor = onFloor(under, -b, 0);
  const baseSpec: PartSpec = { name: "base", tray, role: "base", material: "board", board: baseBoard, trim: 0 };
  const base = lyingPart(baseSpec, openSpine ? "spine" : "long", put([floor]));
  const parts: PlacedPart[] = [base];
  const walls: (readonly [PlacedPart, PlacedPart])[] = [];
  for (const { layer, side, head } of rings) {
    const sideWall = flatPart(wall(openSpine ? "fore-edge wall" : `${layer}side wall`), Y, Z, Y, put(side));
    const headWall = flatPart(wall(`${layer}head wall`), X, Z, X, put(head));
    parts.push(sideWall, headWall);
    walls.push([sideWall, headWall]);
  }
  if (flange > 0) {
    const lyingCard = put([onFloor(footprint, -b - flange, -b)]);
    const grainAxis = openSpine ? Y : longAxis(floor);
    const along = longAxis(lyingCard[0]);
    parts.push(flatPart(cardPart("flange card"), along, along === X ? Y : X, grainAxis, lyingCard));
  }
  const bare = cuboid(footprint.x0, footprint.x1, footprint.y0, footprint.y1, -b - flange, depth);
  let outside = bare;
  if (endCards) {
    const outermost = layers === 1 ? through : otherPair(through);
    const faces = cardsOverEnds(bare, outermost, card.caliper);
    const run = outermost === "side" ? X : Y;
    parts.push(flatPart(cardPart("end card"), run, Z, run, put(faces)));
    outside = boundingBox([bare, ...faces]);
  }
  const firstWall = walls[0]![0];
  const ringsOnBase = construction === "on base" ? layers : layers - 1;
  return {
    parts,
    base,
    tray: {
      name: tray,
      openSpine,
      mouth: undefined,
      construction,
      rings: walls,
      closedCorners: true,
      inside: put([cuboid(0, width, 0, height, 0, depth)])[0],
      outside: put([outside])[0],
      spans: [
        { part: base, boards: ringsOnBase * (openSpine ? 1 : 2), of: firstWall },
        { part: base, boards: ringsOnBase * 2, of: firstWall },
        { part: firstWall, boards: construction === "on base" || layers > 1 ? 0 : 1, of: base },
      ],
      covering,
      // On both walls of a direction, and on the floor alone.
      coveredFaces: [2, 2, 1],
      rim: layers * t + (endCards ? card.caliper : 0),
      tabs: 0,
      floor: b + flange,
      outsideShown: undefined,
      filled: false,
    },
  };
}

/** Bare outside of a tray, as width, height, depth. */
export function outsideOf(tray: Tray): Vec {
  return [extent(tray.outside, X), extent(tray.outside, Y), extent(tray.outside, Z)];
}

function otherPair(through: "side" | "head"): "side" | "head" {
  return through === "side" ? "head" : "side";
}

function onFloor({ x0, x1, y0, y1 }: Footprint, z0: Mm, z1: Mm): Cuboid {
  return cuboid(x0, x1, y0, y1, z0, z1);
}

/** Cards on the two faces that show the ends of the through walls. */
function cardsOverEnds({ min, max }: Cuboid, through: "side" | "head", card: Mm): readonly Cuboid[] {
  return through === "side"
    ? [
        cuboid(min[0], max[0], min[1] - card, min[1], min[2], max[2]),
        cuboid(min[0], max[0], max[1], max[1] + card, min[2], max[2]),
      ]
    : [
        cuboid(min[0] - card, min[0], min[1], max[1], min[2], max[2]),
        cuboid(max[0], max[0] + card, min[1], max[1], min[2], max[2]),
      ];
}
