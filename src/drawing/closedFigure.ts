import { closureShares } from "../covering/closurePieces";
import type { Assembly } from "../enclosure/assembly";
import { panelsOf } from "../enclosure/placedPart";
import { boundingBox, X, Y, Z, type Cuboid, type Vec } from "../enclosure/space";
import { lettering, textWidth } from "./lettering";
import { paintOrder } from "./paintOrder";
import { straight, type Shape } from "./picture";
import { drawnExtent } from "./projection";
import { onDrawing, solid, type Frame } from "./solid";

const STROKE = 0.8;
const ITEM_HATCH = 5;
const BAND = { ink: 1, width: 1.6 } as const;
const MARK_SIZE = 11;
const MARK_GAP = 3;
/** How far a tie or strap reaches over the upper face, as a share of its width; and how large a bow is. */
const REACH = 0.2;
const BOW = 0.05;

/** Where a figure is drawn. */
export interface FigureRoom {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Some bodies as large as a room allows, in its middle. */
export function frameFor(bodies: readonly Cuboid[], { x, y, width, height }: FigureRoom): Frame {
  const { left, right, top, bottom } = drawnExtent(bodies);
  const scale = Math.min(width / (right - left), height / (bottom - top));
  return {
    scale,
    x: x + width / 2 - ((left + right) / 2) * scale,
    y: y + height / 2 - ((top + bottom) / 2) * scale,
  };
}

/** Shut, with what holds it shut; head and spine are named at their edges. */
export function closedFigure({ parts, holder, kind, closure, restsOn }: Assembly, room: FigureRoom): readonly Shape[] {
  const panels = panelsOf(parts);
  const book =
    holder.mouth === undefined || parts.some(({ role }) => role === "folded" || role === "case") ? [] : [holder.inside];
  const bodies = [...panels, ...book];
  const frame = frameFor(bodies, { ...room, x: room.x + MARK_SIZE, width: room.width - 2 * MARK_SIZE });
  const boards = paintOrder(bodies).flatMap((index) =>
    solid(bodies[index]!, frame, { stroke: STROKE, ...(index >= panels.length ? { hatch: ITEM_HATCH } : {}) }),
  );
  const box = boundingBox(bodies);
  return [
    ...boards,
    ...(closure === "none" ? [] : held(box, kind.closes!.edges, closure, frame)),
    ...edgeNames(box, frame, room, restsOn),
  ];
}

/**
 * The words at the edges of head and spine, beside the drawing and within its room. What stands on its foot has its head
 * on top; of what stands on its edge the spine may be above or below.
 */
export function edgeNames(
  { min, max }: Cuboid,
  frame: Frame,
  room: FigureRoom,
  restsOn: Assembly["restsOn"],
): readonly Shape[] {
  const named = (word: string, from: Vec, to: Vec, drop: number) => {
    const [[x0, y0], [x1, y1]] = [onDrawing(from, frame), onDrawing(to, frame)];
    const long = textWidth(word, MARK_SIZE);
    // Beside a short edge a word stands at its outer corner, or it would lie on the drawing.
    const [x, y] = x1 - x0 < long ? [x0, y0] : [(x0 + x1) / 2, (y0 + y1) / 2];
    const left = Math.max(x - MARK_GAP, room.x + long);
    const base = Math.min(Math.max(y + drop, room.y + MARK_SIZE), room.y + room.height - MARK_GAP);
    return lettering(word, left, base, { size: MARK_SIZE, anchor: "end" });
  };
  return [
    named("head", [min[X], min[Y], max[Z]], [max[X], min[Y], max[Z]], -MARK_GAP),
    ...(restsOn === "edge" ? [] : [named("spine", [min[X], min[Y], min[Z]], [min[X], max[Y], min[Z]], MARK_SIZE)]),
  ];
}

/** Bands round the whole, or ties and straps at the edges that open; a bow where it is tied. */
function held(
  box: Cuboid,
  edges: number,
  closure: Exclude<Assembly["closure"], "none">,
  frame: Frame,
): readonly Shape[] {
  const { min, max } = box;
  const [width, height] = [max[X] - min[X], max[Y] - min[Y]];
  const line = (...points: readonly Vec[]): Shape => ({
    kind: "polyline",
    points: points.map((point) => onDrawing(point, frame)),
    stroke: BAND,
  });
  const bow = (at: Vec): readonly Shape[] => {
    if (closure !== "ties") return [];
    const [x, y] = onDrawing(at, frame);
    const size = BOW * (width + height) * frame.scale;
    return [-1, 1].flatMap((side) => [
      straight([x, y], [x + side * size, y - size / 2], BAND),
      straight([x + side * size, y - size / 2], [x + side * size, y + size / 4], BAND),
      straight([x + side * size, y + size / 4], [x, y], BAND),
    ]);
  };
  const top = (x: number, y: number): Vec => [x, y, max[Z]];
  const alongSpine = closureShares(height).map((share) => min[Y] + share * height);
  if (edges === 0 || closure === "band")
    return alongSpine.flatMap((y) => [
      line([min[X], y, min[Z]], top(min[X], y), top(max[X], y)),
      ...bow(top((min[X] + max[X]) / 2, y)),
    ]);
  const fore = alongSpine.flatMap((y) => {
    const end = top(max[X] - REACH * width, y);
    return [line(top(max[X], y), end), ...bow(end)];
  });
  if (edges < 3) return fore;
  const ends = closureShares(width).flatMap((share) => {
    const x = min[X] + share * width;
    const [head, tail] = [top(x, min[Y] + REACH * height), top(x, max[Y] - REACH * height)];
    return [line(top(x, min[Y]), head), ...bow(head), line([x, max[Y], min[Z]], top(x, max[Y]), tail), ...bow(tail)];
  });
  return [...fore, ...ends];
}

/** The edges of an object, dashed over what hides it. */
export function outlined(body: Cuboid, frame: Frame): readonly Shape[] {
  const { min, max } = body;
  const corner = (x: 0 | 1, y: 0 | 1, z: 0 | 1) =>
    onDrawing([x ? max[X] : min[X], y ? max[Y] : min[Y], z ? max[Z] : min[Z]], frame);
  const rim = [corner(0, 0, 1), corner(1, 0, 1), corner(1, 1, 1), corner(0, 1, 1), corner(0, 0, 1)];
  const side = [corner(0, 0, 1), corner(0, 0, 0), corner(0, 1, 0), corner(1, 1, 0), corner(1, 1, 1)];
  return [rim, side, [corner(0, 1, 1), corner(0, 1, 0)]].map((points) => ({
    kind: "polyline",
    points,
    stroke: { ink: 1, width: STROKE, dash: OUTLINE_DASH },
  }));
}

const OUTLINE_DASH = [4, 2] as const;
