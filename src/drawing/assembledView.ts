import type { Assembly } from "../enclosure/assembly";
import { boundingBox, extent, X, Y, Z, type Cuboid } from "../enclosure/space";
import type { OpenBody } from "../enclosure/view";
import { closedFigure, edgeNames, frameFor, outlined } from "./closedFigure";
import { paintOrder } from "./paintOrder";
import { picture, straight, type Picture } from "./picture";
import { onFace, facesOf } from "./projection";
import { onDrawing, solid } from "./solid";
import { thickened } from "./thickened";

const WIDTH = 160;
const HEIGHT = 110;
const MARGIN = 5;
/** Share of the longest side below which something is drawn thicker. */
const LEAST_THICK = 0.08;
const STROKE = 0.8;
const ITEM_HATCH = 5;
/** How much of its height the open enclosure takes where the closed one is drawn below it. */
const OPEN_SHARE = 0.58;
const GAP = 8;
const FOLD_DASH = [3, 2] as const;

export interface AssembledOptions {
  readonly width?: number;
  readonly height?: number;
  /** Below it the same closed, head and spine named, with what holds it shut; default false. */
  readonly closed?: boolean;
}

/**
 * A small drawing of the enclosure put together, open as far as shows what it is: lid lifted, book half out of its
 * slipcase, case open flat, near walls of a folded tray and flaps of a wrapper laid down; the object dashed in it.
 */
export function assembledView(
  assembly: Assembly,
  { width = WIDTH, height = HEIGHT, closed = false }: AssembledOptions = {},
): Picture {
  const shapes = assembly.kind.opened(assembly);
  const { holder, parts } = assembly;
  // A book drawn out is shown itself; among dividers there are several objects.
  const isShown = shapes.some(({ isItem }) => isItem) || parts.some(({ role }) => role === "divider");
  const longest = Math.max(...([X, Y] as const).map((axis) => extent(boundingBox(shapes.map(bodyOf)), axis)));
  const all = thickened([...shapes.map(bodyOf), holder.inside], longest * LEAST_THICK);
  const bodies = all.slice(0, -1);
  const inner = width - 2 * MARGIN;
  // What never closes is drawn once.
  const isShut = closed && shuts(assembly);
  const high = isShut ? (height - GAP) * OPEN_SHARE : height;
  const room = { x: MARGIN, y: MARGIN, width: inner, height: high - 2 * MARGIN };
  const frame = frameFor(isShown ? bodies : all, room);
  const shown = paintOrder(bodies).flatMap((index) => {
    const style = { stroke: STROKE, ...(shapes[index]!.isItem ? { hatch: ITEM_HATCH } : {}) };
    const top = facesOf(bodies[index]!)[Z]!;
    const creases = shapes[index]!.creases.map((share) => {
      const [from, to] = [onFace(top, share, 0), onFace(top, share, 1)];
      return straight(onDrawing(from, frame), onDrawing(to, frame), { width: STROKE, dash: FOLD_DASH });
    });
    return [...solid(bodies[index]!, frame, style), ...creases];
  });
  const below = { x: MARGIN, y: high + GAP, width: inner, height: height - high - GAP - MARGIN };
  const shut = isShut ? closedFigure(assembly, below) : [];
  return picture(`A ${assembly.kind.name}`, width, height, [
    ...shown,
    ...(isShown ? [] : outlined(all.at(-1)!, frame)),
    ...(closed && !isShut ? edgeNames(boundingBox(bodies), frame, room, assembly.restsOn) : []),
    ...shut,
  ]);
}

/** A small drawing of the enclosure closed, head and spine named; undefined of one that never closes. */
export function closedView(
  assembly: Assembly,
  { width, height }: Required<Pick<AssembledOptions, "width" | "height">>,
): Picture | undefined {
  if (!shuts(assembly)) return undefined;
  const room = { x: MARGIN, y: MARGIN, width: width - 2 * MARGIN, height: height - 2 * MARGIN };
  return picture(`A ${assembly.kind.name}, closed`, width, height, closedFigure(assembly, room));
}

function shuts({ kind, holder }: Assembly): boolean {
  return kind.closes !== undefined || holder.mouth !== undefined;
}

function bodyOf({ body }: OpenBody): Cuboid {
  return body;
}
