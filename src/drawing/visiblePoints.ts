import type { PlacedPart } from "../enclosure/placedPart";
import type { Cuboid } from "../enclosure/space";
import {
  bandsOf,
  covers,
  drawnExtent,
  facesOf,
  onFace,
  passesThrough,
  project,
  type Bands,
  type Face,
  type Point,
} from "./projection";
import type { Piece } from "../enclosure/view";
import type { Frame } from "./solid";

/** Shares of a face at which it is looked at. */
const SHARES = [0.04, 0.12, 0.2, 0.28, 0.36, 0.44, 0.5, 0.56, 0.64, 0.72, 0.8, 0.88, 0.96] as const;
/** A copy with this much of the best copy's visible points will do, if it lies nearer to the labels. */
const ENOUGH_SEEN = 0.5;

/** Whether a point of the model's drawing is hidden by what is drawn after the piece of that index. */
export type Hides = (point: Point, index: number) => boolean;

/** @param drawn in painting order */
export function hidesOf(drawn: readonly Piece[]): Hides {
  const bands = drawn.map(({ body }) => bandsOf(body));
  return (point, index) => {
    for (let later = index + 1; later < bands.length; later++) if (covers(bands[later]!, point)) return true;
    return false;
  };
}

/** For each part a point of the model's drawing on it that can be seen, of all its copies on the one that lies furthest out. */
export function anchorsOf(parts: readonly PlacedPart[], drawn: readonly Piece[]): readonly Point[] {
  const { left, right } = drawnExtent(drawn.map(({ body }) => body));
  const middle = (left + right) / 2;
  const hides = hidesOf(drawn);
  const bands = drawn.map(({ body }) => bandsOf(body));
  return parts.map((part) => {
    const seen = drawn.flatMap((piece, index) => (piece.part === part ? [seenOf(piece.body, index, hides)] : []));
    const most = Math.max(...seen.map((points) => points.length));
    const good = seen.filter((points) => points.length > 0 && points.length >= most * ENOUGH_SEEN);
    const [best] = good.sort((one, other) => outward(other, middle) - outward(one, middle));
    if ((best ?? []).length === 0) return project(part.panels[0]!.min);
    const points = freest(
      best!,
      bands.filter((_, index) => drawn[index]!.part !== part),
      [left, right],
    );
    return deepest(points);
  });
}

/** Every point looked at that can be seen of a part, on all its copies. */
export function visiblePointsOf(part: PlacedPart, drawn: readonly Piece[], { scale, x, y }: Frame): readonly Point[] {
  const hides = hidesOf(drawn);
  return drawn.flatMap((piece, index) =>
    piece.part !== part
      ? []
      : [...seenOf(piece.body, index, hides)]
          .sort((one, other) => other.depth - one.depth)
          .map(({ point: [px, py] }): Point => [x + px * scale, y + py * scale]),
  );
}

/** Those from which a level line to one side passes over the fewest other boards. */
function freest(points: readonly Seen[], others: readonly Bands[], sides: readonly number[]): readonly Seen[] {
  let fewest = Infinity;
  const crossed = points.map(({ point }) => {
    // More than the fewest so far is not counted out: this runs for every point of every board.
    const here = Math.min(...sides.map((x) => crossings(others, point, [x, point[1]], fewest)));
    fewest = Math.min(fewest, here);
    return here;
  });
  return points.filter((_, index) => crossed[index] === fewest);
}

/** How many of the boards a line passes over; counting stops at one more than `enough`. */
function crossings(boards: readonly Bands[], from: Point, to: Point, enough: number): number {
  let count = 0;
  for (const bands of boards) if (passesThrough(bands, from, to) && ++count > enough) break;
  return count;
}

/** How many boards of other parts a leader passes over. */
export function crossedBoards(
  parts: readonly PlacedPart[],
  drawn: readonly Piece[],
  { scale, x, y }: Frame,
): (index: number, from: Point, to: Point) => number {
  const bands = drawn.map(({ body }) => bandsOf(body));
  const model = ([px, py]: Point): Point => [(px - x) / scale, (py - y) / scale];
  return (index, from, to) =>
    bands.filter((each, at) => drawn[at]!.part !== parts[index] && passesThrough(each, model(from), model(to))).length;
}

interface Seen {
  readonly point: Point;
  /** How many steps of the grid it lies from the nearest hidden point or edge of the face. */
  readonly depth: number;
}

/** The points of its largest face that are seen, or of the next where the largest is hidden. */
function seenOf(body: Cuboid, index: number, hides: Hides): readonly Seen[] {
  const faces = [...facesOf(body)].sort((one, other) => areaOf(other) - areaOf(one));
  for (const face of faces) {
    const grid = SHARES.map((u) => SHARES.map((v) => project(onFace(face, u, v))));
    const shows = grid.map((row) => row.map((point) => !hides(point, index)));
    const seen = grid.flatMap((row, i) =>
      row.flatMap((point, j) => (shows[i]![j]! ? [{ point, depth: depthAt(shows, i, j) }] : [])),
    );
    if (seen.length > 0) return seen;
  }
  return [];
}

function depthAt(shows: readonly (readonly boolean[])[], i: number, j: number): number {
  for (let reach = 1; ; reach++)
    for (let di = -reach; di <= reach; di++)
      for (let dj = -reach; dj <= reach; dj++) if (shows[i + di]?.[j + dj] !== true) return reach;
}

function areaOf({ first, second }: Face): number {
  return Math.hypot(...first) * Math.hypot(...second);
}

function outward(points: readonly Seen[], middle: number): number {
  return Math.abs(points.reduce((sum, { point: [x] }) => sum + x, 0) / points.length - middle);
}

/** The point that lies deepest in what is seen; of several the one nearest to the middle of it all. */
function deepest(points: readonly Seen[]): Point {
  const mean = (axis: 0 | 1) => points.reduce((sum, { point }) => sum + point[axis], 0) / points.length;
  const [mx, my] = [mean(0), mean(1)];
  const offMiddle = ({ point: [x, y] }: Seen) => Math.hypot(x - mx, y - my);
  return points.reduce((best, each) =>
    each.depth > best.depth || (each.depth === best.depth && offMiddle(each) < offMiddle(best)) ? each : best,
  ).point;
}
