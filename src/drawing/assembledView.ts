import type { Assembly } from "../enclosure/assembly";
import { boundingBox, cuboid, extent, X, Y, Z, type Cuboid } from "../enclosure/space";
import { paintOrder } from "./paintOrder";
import { picture, straight, type Picture } from "./picture";
import { drawnExtent, onFace, facesOf } from "./projection";
import { along, isTurnedOver, moved, sceneOf, type Piece, type Scene } from "./scene";
import { onDrawing, solid } from "./solid";
import { thickened } from "./thickened";

const WIDTH = 160;
const HEIGHT = 110;
const MARGIN = 5;
/** Share of the longest side below which something is drawn thicker. */
const LEAST_THICK = 0.08;
/** How far a lid is lifted, and a book drawn out of its slipcase, as shares of what they move along. */
const LIFT = 0.16;
const DRAWN_OUT = 0.4;
const STROKE = 0.8;
const CARD_HATCH = 5;
const FOLD_DASH = [3, 2] as const;

export interface AssembledOptions {
  readonly width?: number;
  readonly height?: number;
}

/**
 * A small drawing of the enclosure put together, open as far as shows what it is: lid lifted, book half out of its
 * slipcase, case open flat, near walls of a folded tray and flaps of a wrapper laid down.
 */
export function assembledView(assembly: Assembly, { width = WIDTH, height = HEIGHT }: AssembledOptions = {}): Picture {
  const shapes = shapesOf(assembly);
  const longest = Math.max(...([X, Y] as const).map((axis) => extent(boundingBox(shapes.map(bodyOf)), axis)));
  const bodies = thickened(shapes.map(bodyOf), longest * LEAST_THICK);
  const { left, right, top, bottom } = drawnExtent(bodies);
  const scale = Math.min((width - 2 * MARGIN) / (right - left), (height - 2 * MARGIN) / (bottom - top));
  const frame = {
    scale,
    x: width / 2 - ((left + right) / 2) * scale,
    y: height / 2 - ((top + bottom) / 2) * scale,
  };
  const shown = paintOrder(bodies).flatMap((index) => {
    const style = { stroke: STROKE, ...(shapes[index]!.hatched ? { hatch: CARD_HATCH } : {}) };
    const top = facesOf(bodies[index]!)[Z]!;
    const creases = shapes[index]!.creases.map((share) => {
      const [from, to] =
        shapes[index]!.creasesAcross === X
          ? [onFace(top, share, 0), onFace(top, share, 1)]
          : [onFace(top, 0, share), onFace(top, 1, share)];
      return straight(onDrawing(from, frame), onDrawing(to, frame), { width: STROKE, dash: FOLD_DASH });
    });
    return [...solid(bodies[index]!, frame, style), ...creases];
  });
  return picture(`A ${assembly.kind}`, width, height, shown);
}

interface Shape {
  readonly body: Cuboid;
  readonly hatched: boolean;
  /** Shares of its upper face at which it is creased. */
  readonly creases: readonly number[];
  readonly creasesAcross: typeof X | typeof Y;
}

function shapesOf(assembly: Assembly): readonly Shape[] {
  const scene = sceneOf(assembly);
  const { holder } = assembly;
  if (holder.shape === "sleeve") return [...plain(piecesOf(scene)), bookDrawnOut(holder.inside)];
  if (holder.shape === "wrapper") return wrapperOpened(assembly);
  if (assembly.parts.some(({ role }) => role === "folded")) return nearWallsDown(scene);
  if (assembly.cover !== undefined) return plain(piecesOf(scene));
  return plain(lidsLifted(scene));
}

function plain(pieces: readonly Piece[]): readonly Shape[] {
  return pieces.map(({ body }) => shape(body));
}

function shape(body: Cuboid): Shape {
  return { body, hatched: false, creases: [], creasesAcross: X };
}

function piecesOf({ trays, cover }: Scene): readonly Piece[] {
  return [...trays.flatMap(({ pieces }) => pieces), ...cover];
}

function lidsLifted({ trays }: Scene): readonly Piece[] {
  return trays.flatMap(({ tray, pieces }) => {
    if (!isTurnedOver(tray)) return pieces;
    const upright = trays.filter((each) => !isTurnedOver(each.tray));
    const rim = Math.max(...upright.map((each) => each.tray.outside.max[Z]));
    const clear = Math.max(0, rim - tray.outside.min[Z]);
    const plan = extent(tray.outside, X) + extent(tray.outside, Y);
    return pieces.map(({ body, part }) => ({ body: moved(body, along(Z, clear + LIFT * plan)), part }));
  });
}

/** A book as thick and tall as the inside, part of it out at the mouth. */
function bookDrawnOut({ min, max }: Cuboid): Shape {
  const out = DRAWN_OUT * (max[X] - min[X]);
  return { ...shape(cuboid(min[X] - out, max[X] - out, min[Y], max[Y], min[Z], max[Z])), hatched: true };
}

/** The walls at spine and tail laid out flat beside the base, as before they are folded up. */
function nearWallsDown({ trays }: Scene): readonly Shape[] {
  const [{ tray, pieces }] = trays as readonly [Scene["trays"][number]];
  const { inside } = tray;
  return pieces.map(({ body: { min, max } }) => {
    const thick = inside.min[Z] - tray.outside.min[Z];
    const [floor, high] = [tray.outside.min[Z], max[Z] - inside.min[Z]];
    if (max[X] <= inside.min[X]) return shape(cuboid(max[X] - high, max[X], min[Y], max[Y], floor, floor + thick));
    if (min[Y] >= inside.max[Y]) return shape(cuboid(min[X], max[X], min[Y], min[Y] + high, floor, floor + thick));
    return shape({ min, max });
  });
}

/** The inner piece folded over; the outer piece flat under it, its flaps at spine and fore-edge. */
function wrapperOpened({ parts }: Assembly): readonly Shape[] {
  const [inner, outer] = parts as readonly [Assembly["parts"][number], Assembly["parts"][number]];
  const base = outer.panels[2] as Cuboid;
  const [first, second, third, last] = outer.folds.alongLength as readonly [number, number, number, number];
  const start = (base.min[X] + base.max[X]) / 2 - (second + third) / 2;
  const flat = cuboid(start, start + outer.length, base.min[Y], base.max[Y], base.min[Z], base.max[Z]);
  const creases = [first, second, third, last].map((at) => at / outer.length);
  return [...inner.panels.map(shape), { body: flat, hatched: false, creases, creasesAcross: X }];
}

function bodyOf({ body }: Shape): Cuboid {
  return body;
}
