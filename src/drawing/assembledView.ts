import type { Assembly } from "../enclosure/assembly";
import { boundingBox, extent, X, Y, Z, type Cuboid } from "../enclosure/space";
import type { OpenBody } from "../enclosure/view";
import { paintOrder } from "./paintOrder";
import { picture, straight, type Picture } from "./picture";
import { drawnExtent, onFace, facesOf } from "./projection";
import { onDrawing, solid } from "./solid";
import { thickened } from "./thickened";

const WIDTH = 160;
const HEIGHT = 110;
const MARGIN = 5;
/** Share of the longest side below which something is drawn thicker. */
const LEAST_THICK = 0.08;
const STROKE = 0.8;
const ITEM_HATCH = 5;
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
  const shapes = assembly.kind.opened(assembly);
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
    const style = { stroke: STROKE, ...(shapes[index]!.isItem ? { hatch: ITEM_HATCH } : {}) };
    const top = facesOf(bodies[index]!)[Z]!;
    const creases = shapes[index]!.creases.map((share) => {
      const [from, to] = [onFace(top, share, 0), onFace(top, share, 1)];
      return straight(onDrawing(from, frame), onDrawing(to, frame), { width: STROKE, dash: FOLD_DASH });
    });
    return [...solid(bodies[index]!, frame, style), ...creases];
  });
  return picture(`A ${assembly.kind.name}`, width, height, shown);
}

function bodyOf({ body }: OpenBody): Cuboid {
  return body;
}
