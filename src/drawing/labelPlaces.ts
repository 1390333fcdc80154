import type { Point } from "./projection";
import { spreadOut } from "./spreadOut";

export interface LabelRoom {
  /** Inner edges of the two columns of labels. */
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** Height of one label, space to the next included. */
  readonly step: number;
}

export interface LabelPlace {
  readonly side: "left" | "right";
  /** Middle of the label. */
  readonly y: number;
}

type CrossedBoards = (index: number, from: Point, to: Point) => number;

/** A swap of two labels must save at least this much leader, in units of the drawing. */
const WORTH_A_SWAP = 0.5;
/** A leader that passes over a board is worth a longer one. */
const BOARD_COST = 400;
/** More than any leader is long: a crossing is never worth a shorter leader. */
const CROSSING_COST = 1e6;

/**
 * Places for labels in columns left and right of a drawing, so that the straight leaders to what they name do not
 * cross: wherever two cross, or are longer than need be, the labels change places.
 *
 * @param anchors what each label points at
 * @param boards how many other boards the leader of a label passes over
 */
export function labelPlaces(
  anchors: readonly Point[],
  room: LabelRoom,
  boards: CrossedBoards = () => 0,
): readonly LabelPlace[] {
  const byX = anchors.map((_, index) => index).sort((a, b) => anchors[a]![0] - anchors[b]![0]);
  const half = Math.ceil(anchors.length / 2);
  const byY = (one: number, other: number) => anchors[one]![1] - anchors[other]![1];
  const met = new Map<string, number>();
  const known: CrossedBoards = (index, from, to) => {
    const key = `${index} ${to.join(" ")}`;
    const seen = met.get(key) ?? boards(index, from, to);
    met.set(key, seen);
    return seen;
  };
  let order = [...byX.slice(0, half).sort(byY), ...byX.slice(half).sort(byY)];
  let places = placesIn(order, half, anchors, room);
  let cost = costOf(places, anchors, room, known);
  for (let better = true; better;) {
    better = false;
    for (let i = 0; i < order.length; i++)
      for (let j = 0; j < i; j++) {
        const swapped = order.map((each, index) => (index === i ? order[j]! : index === j ? order[i]! : each));
        const next = placesIn(swapped, half, anchors, room);
        const nextCost = costOf(next, anchors, room, known);
        if (nextCost < cost - WORTH_A_SWAP) [order, places, cost, better] = [swapped, next, nextCost, true];
      }
  }
  return places;
}

/** The end of a leader at its label. */
export function leaderEnd({ side, y }: LabelPlace, room: LabelRoom): Point {
  return [side === "left" ? room.left : room.right, y];
}

/** Whether two straight lines share a point. */
export function cross(a: Point, b: Point, c: Point, d: Point): boolean {
  return turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0;
}

function placesIn(
  order: readonly number[],
  half: number,
  anchors: readonly Point[],
  { top, bottom, step }: LabelRoom,
): readonly LabelPlace[] {
  const places: LabelPlace[] = [];
  const put = (labels: readonly number[], side: LabelPlace["side"]) => {
    const boxes = labels.map((label) => ({ wanted: anchors[label]![1], size: step }));
    spreadOut(boxes, top, bottom).forEach((y, index) => (places[labels[index]!] = { side, y }));
  };
  put(order.slice(0, half), "left");
  put(order.slice(half), "right");
  return places;
}

function costOf(
  places: readonly LabelPlace[],
  anchors: readonly Point[],
  room: LabelRoom,
  boards: CrossedBoards,
): number {
  const ends = places.map((place) => leaderEnd(place, room));
  let cost = 0;
  for (let i = 0; i < ends.length; i++) {
    cost += Math.hypot(ends[i]![0] - anchors[i]![0], ends[i]![1] - anchors[i]![1]);
    cost += BOARD_COST * boards(i, anchors[i]!, ends[i]!);
    for (let j = 0; j < i; j++) if (cross(anchors[i]!, ends[i]!, anchors[j]!, ends[j]!)) cost += CROSSING_COST;
  }
  return cost;
}

function turn([ax, ay]: Point, [bx, by]: Point, [cx, cy]: Point): number {
  return (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
}
