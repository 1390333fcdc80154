import type { Assembly, PlacedPart, Tray } from "../enclosure/assembly";
import { cuboid, X, Y, Z, type Axis, type Cuboid, type Vec } from "../enclosure/space";
import type { Mm } from "../measure/units";

/** One copy of a part, or one panel of a folded one, where it is drawn. */
export interface Piece {
  readonly body: Cuboid;
  readonly part: PlacedPart;
}

/** A tray with its pieces. */
export interface TrayPieces {
  readonly tray: Tray;
  readonly pieces: readonly Piece[];
}

export interface Scene {
  readonly trays: readonly TrayPieces[];
  /** The case of a clamshell; empty without one. */
  readonly cover: readonly Piece[];
}

/** An assembly as it stands; one with a case is laid open flat, both trays upright on their boards. */
export function sceneOf(assembly: Assembly): Scene {
  const { parts, trays, cover } = assembly;
  const ofTray = (tray: Tray) =>
    parts.filter((part) => part.role !== "case" && part.tray === tray.name).flatMap(piecesOf);
  const standing = trays.map((tray) => ({ tray, pieces: ofTray(tray) }));
  if (cover === undefined) return { trays: standing, cover: [] };
  const [boards, spine] = ["case board", "case spine"].map((name) => parts.find((part) => part.name === name)!);
  const [back, front] = boards!.panels as readonly [Cuboid, Cuboid];
  const hinge: Hinge = { across: 2 * cover.joint + cover.spineWidth, floor: back.max[Z], up: cover.spineWidth };
  const flatSpine = cuboid(
    -cover.joint - cover.spineWidth,
    -cover.joint,
    back.min[Y],
    back.max[Y],
    back.min[Z],
    back.max[Z],
  );
  return {
    trays: standing.map((each) => (isTurnedOver(each.tray) ? swungTray(each, hinge) : each)),
    cover: [
      { body: back, part: boards! },
      { body: swung(front, hinge), part: boards! },
      { body: flatSpine, part: spine! },
    ],
  };
}

/** A lid, or a tray that closes over another: its rim is its lowest edge. */
export function isTurnedOver({ inside, outside }: Tray): boolean {
  return inside.min[Z] <= outside.min[Z];
}

export function moved(body: Cuboid, by: Vec): Cuboid {
  const add = ([x, y, z]: Vec): Vec => [x + by[0], y + by[1], z + by[2]];
  return { min: add(body.min), max: add(body.max) };
}

/** A step along one axis. */
export function along(axis: Axis, by: Mm): Vec {
  return [axis === X ? by : 0, axis === Y ? by : 0, axis === Z ? by : 0];
}

function piecesOf(part: PlacedPart): readonly Piece[] {
  return part.panels.map((body) => ({ body, part }));
}

/** What a front board turns round when the case is laid open: half a turn about the spine. */
interface Hinge {
  readonly across: Mm;
  readonly floor: Mm;
  readonly up: Mm;
}

function swung({ min, max }: Cuboid, { across, floor, up }: Hinge): Cuboid {
  const top = 2 * floor + up;
  return cuboid(-across - max[0], -across - min[0], min[1], max[1], top - max[2], top - min[2]);
}

function swungTray({ tray, pieces }: TrayPieces, hinge: Hinge): TrayPieces {
  return {
    tray: { ...tray, inside: swung(tray.inside, hinge), outside: swung(tray.outside, hinge) },
    pieces: pieces.map(({ body, part }) => ({ body: swung(body, hinge), part })),
  };
}
