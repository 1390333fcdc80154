import { lettering, textWidth } from "./lettering";
import type { Shape } from "./picture";
import type { Point } from "./projection";

const SIZE = 12;
const GAP = 3;
/** Distance to what else is drawn. Any nearer, and its words read as the name of a part. */
const CLEAR = 10;
/** A plan of an object, as it lies: spine towards the lower left, head towards the upper left. */
const PLAN: readonly Point[] = [
  [0, 9],
  [16, 0],
  [38, 11],
  [22, 20],
  [0, 9],
];
const [PLAN_WIDTH, PLAN_HEIGHT] = [38, 20];
const STROKE = { ink: 1, width: 0.8 } as const;

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/**
 * A small plan with the words head and spine at their edges, in a corner of a drawing in which nothing else is; none
 * where every corner is taken.
 */
export function directionKey(drawn: readonly Shape[], { left, right, top, bottom }: Box): readonly Shape[] {
  const words = Math.max(textWidth("head", SIZE), textWidth("spine", SIZE)) + GAP;
  const [width, height] = [words + PLAN_WIDTH, PLAN_HEIGHT + SIZE];
  const taken = drawn.flatMap((shape) => outlineOf(shape));
  const isFree = ([x, y]: Point) => {
    const own = boxed({ left: x - CLEAR, right: x + width + CLEAR, top: y - CLEAR, bottom: y + height + CLEAR });
    return taken.every((outline) => hasEdgeBetween(outline, own) || hasEdgeBetween(own, outline));
  };
  const corners: readonly Point[] = [
    [left, top],
    [left, bottom - height],
    [right - width, bottom - height],
    [right - width, top],
  ];
  const free = corners.find(isFree);
  if (free === undefined) return [];
  const [x, y] = free;
  const at = ([px, py]: Point): Point => [x + words + px, y + SIZE / 2 + py];
  return [
    { kind: "polyline", points: PLAN.map(at), stroke: STROKE },
    lettering("head", x + words, y + SIZE, { size: SIZE, anchor: "end" }),
    lettering("spine", x + words, y + height, { size: SIZE, anchor: "end" }),
  ];
}

/** Convex outlines of what is drawn, clockwise or not. */
function outlineOf(shape: Shape): readonly (readonly Point[])[] {
  if (shape.kind === "text") {
    const long = textWidth(shape.text, shape.size);
    const from = { start: 0, middle: -long / 2, end: -long }[shape.anchor];
    const [x, y] = shape.at;
    return [boxed({ left: x + from, right: x + from + long, top: y - shape.size, bottom: y + shape.size / 2 })];
  }
  if (shape.kind === "circle") {
    const { radius } = shape;
    const [x, y] = shape.middle;
    return [boxed({ left: x - radius, right: x + radius, top: y - radius, bottom: y + radius })];
  }
  return shape.kind === "polygon" || shape.kind === "polyline" ? [shape.points] : [];
}

function boxed({ left, right, top, bottom }: Box): readonly Point[] {
  return [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ];
}

/** Whether some edge of a convex outline has all of it on one side and all of another on the other. */
function hasEdgeBetween(outline: readonly Point[], other: readonly Point[]): boolean {
  return outline.some(([x0, y0], index) => {
    const [x1, y1] = outline[(index + 1) % outline.length]!;
    const sides = (points: readonly Point[]) => points.map(([x, y]) => (x1 - x0) * (y - y0) - (y1 - y0) * (x - x0));
    const [own, far] = [sides(outline), sides(other)];
    const isLeft = Math.max(...own) < NOISE && Math.min(...far) >= 0 && Math.max(...far) > NOISE;
    const isRight = Math.min(...own) > -NOISE && Math.max(...far) <= 0 && Math.min(...far) < -NOISE;
    return isLeft || isRight;
  });
}

const NOISE = 1e-6;
