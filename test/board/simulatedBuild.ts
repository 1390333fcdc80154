import type { Assembly, Tray } from "../../src/enclosure/assembly";
import type { EdgeCuts, PlacedPart } from "../../src/enclosure/placedPart";
import type { Item } from "../../src/enclosure/restingItem";
import { extent, X, Y, Z, type Axis } from "../../src/enclosure/space";
import type { Settings } from "../../src/settings/schema";

/** What differs from one build to the next: errors as shares of their tolerance, -1 to 1, and the air, %RH from making. */
export interface Luck {
  readonly error: () => number;
  readonly air: () => number;
  /** Either of two parts that both reach across the inside may be the one that decides. */
  readonly pick: <T>(from: readonly [T, ...T[]]) => T;
}

export interface Play {
  readonly height: number;
  readonly width: number;
  readonly depth: number;
}

/**
 * One build of an enclosure, cut from its cut list a little off, a while later in other air: the play that the item then
 * has. Worked out from the sizes of the parts and where they are, part by part; nothing here knows of chains or of
 * `src/board`.
 */
export function simulatedBuild(assembly: Assembly, item: Item, settings: Settings, luck: Luck): Play {
  const { covering, coveredFaces, wrapped = [0, 0, 0] } = assembly.holder;
  const { cushionBase, cushionSides, cushionTop } = settings;
  const taken = swollen(turned(item, settings.restsOn), settings, luck);
  const shop = { settings, luck };
  const clear = (axis: Axis) => clearInside(assembly, axis, shop) - coveredFaces[axis] * covering - wrapped[axis];
  return {
    height: clear(Y) - taken.height - 2 * cushionSides,
    width: clear(X) - taken.width - 2 * cushionSides,
    depth: clear(Z) - taken.depth - cushionBase - cushionTop,
  };
}

function turned({ height, width, depth }: Item, restsOn: Settings["restsOn"]): Item {
  if (restsOn === "foot") return { height: depth, width, depth: height };
  return restsOn === "edge" ? { height, width: depth, depth: width } : { height, width, depth };
}

/** The item as it truly is, where the measure was a little off, in the air of the day. */
function swollen(item: Item, { measuringError, itemExpansion }: Settings, luck: Luck): Item {
  const grown = (measured: number) =>
    (measured + measuringError * luck.error()) * (1 + (itemExpansion / 1000) * luck.air());
  return { height: grown(item.height), width: grown(item.width), depth: grown(item.depth) };
}

interface Shop {
  readonly settings: Settings;
  readonly luck: Luck;
}

const NOISE = 1e-6;

function clearInside({ parts, holder }: Assembly, axis: Axis, shop: Shop): number {
  const { part } = holder.spans[axis];
  if (part.role === "folded") return insideFolds(part, holder, axis, shop);
  const own = parts.filter(({ tray, panels }) => tray === holder.name && panels.length > 0);
  // What stands between two others holds them apart too; in depth every wall of the inner ring ends at the rim.
  const ring = holder.rings[0] ?? [];
  const size = extent(holder.inside, axis);
  const others = ring.filter(
    (wall) => reaches(wall, axis) && (axis === Z || Math.abs(extent(wall.panels[0]!, axis) - size) < NOISE),
  );
  const lengths = [part, ...others].map((each) => () => {
    let clear = cut(each, axis, shop);
    for (const board of boardsWithin(each, own, holder, axis)) clear -= thick(board, shop);
    return clear;
  });
  return shop.luck.pick(lengths as [() => number, ...(() => number)[]])();
}

function reaches({ lengthAxis, widthAxis }: PlacedPart, axis: Axis): boolean {
  return lengthAxis === axis || widthAxis === axis;
}

/** The boards that take up room within the length of a part, from the clear inside out to either of its ends. */
function boardsWithin(
  part: PlacedPart,
  own: readonly PlacedPart[],
  { inside }: Tray,
  axis: Axis,
): readonly PlacedPart[] {
  const { min, max } = part.panels[0]!;
  const found: PlacedPart[] = [];
  for (const [from, to, out] of [
    [inside.min[axis], min[axis], -1],
    [inside.max[axis], max[axis], 1],
  ] as const) {
    let at = from;
    while (out * (to - at) > NOISE) {
      const next = own.find(
        (each) =>
          each !== part &&
          !reaches(each, axis) &&
          each.panels.some((panel) => Math.abs((out < 0 ? panel.max[axis] : panel.min[axis]) - at) < NOISE),
      );
      if (next === undefined) throw new Error(`nothing fills the end of the ${part.name}`);
      found.push(next);
      at += out * next.board.caliper;
    }
  }
  return found;
}

/** A flat part as cut and grown. */
function cut(part: PlacedPart, axis: Axis, shop: Shop): number {
  const lengthways = part.lengthAxis === axis;
  return grown(lengthways ? part.length : part.width, lengthways === (part.grain === "along length"), shop);
}

function grown(size: number, along: boolean, { settings, luck }: Shop): number {
  const growth = along ? settings.expansionAlong : settings.expansionAcross;
  return (size + settings.cuttingError * luck.error()) * (1 + (growth / 1000) * luck.air());
}

function thick({ board }: PlacedPart, { settings, luck }: Shop): number {
  return board.caliper + settings.caliperTolerance * luck.error();
}

/**
 * A folded piece. Cut folds close on the inner face; creases are in mid-thickness, so that half the piece is lost at
 * each. Tabs lie inside the side walls.
 */
function insideFolds(piece: PlacedPart, holder: Tray, axis: Axis, shop: Shop): number {
  if (piece.corners?.form === "edge cuts") return insideOneBlank(piece, piece.corners, axis, shop);
  const { alongLength, alongWidth, by } = piece.folds;
  const floor = piece.panels.find(({ max }) => max[Z] <= holder.inside.min[Z] + NOISE)!;
  // A piece that folds one way has all its folds along its length; of one that folds both ways the longer side is.
  const lengthAxis = alongWidth.length === 0 ? axis : extent(floor, Y) >= extent(floor, X) ? Y : X;
  // Open at the spine, a piece has one fold across and two walls along.
  const [across, upright] = alongLength.length === 1 ? [alongLength, alongWidth] : [alongWidth, alongLength];
  const open = across.length === 1;
  const folds = open ? (axis === X ? across : upright) : axis === Z || axis === lengthAxis ? alongLength : alongWidth;
  const middle = folds.length / 2;
  const lost = (half: number) => (by === "cut" ? 0 : thick(piece, shop) * half);
  if (axis === Z) {
    // From the rim, or from the crease where a flap turns over, to the crease at the foot.
    const [foot, rim] = [folds[middle - 1]!, folds[middle - 2] ?? 0];
    return grown(foot - rim, false, shop) - lost(middle === 1 ? 1 / 2 : 1);
  }
  const along = piece.grainAxis === axis;
  // Open at one end, a piece has one fold in that direction.
  let clear =
    folds.length === 1
      ? grown(folds[0]!, along, shop) - lost(1 / 2)
      : grown(folds[middle]! - folds[middle - 1]!, along, shop) - lost(1);
  if (axis === X) for (let tabs = holder.tabs; tabs > NOISE; tabs -= piece.board.caliper) clear -= thick(piece, shop);
  return clear;
}

/**
 * Two trays of one blank, the small one first: inside, rim and wall of its fore-edge, base, spine. Head walls are creased
 * within those of the large tray.
 */
function insideOneBlank(piece: PlacedPart, { along, steps }: EdgeCuts, axis: Axis, shop: Shop): number {
  const { alongLength, alongWidth } = piece.folds;
  const [ends, heads] = along === "length" ? [alongLength, alongWidth] : [alongWidth, alongLength];
  const t = () => thick(piece, shop);
  // From the middle of the standing spine to that of the fore-edge wall, within which stand the tabs and what folds over.
  if (axis === X) return grown(ends[3]! - ends[2]!, false, shop) - 3 * t();
  if (axis === Y) return grown(heads[2]! - heads[1]!, true, shop) - t();
  // The rim of a head wall is cut where its edge is cut away least, but for the large tray's.
  const rim = Math.min(...steps.filter(({ to }) => to < ends[4]!).map(({ deep }) => deep));
  return grown(heads[1]! - rim, false, shop) - t() / 2;
}
