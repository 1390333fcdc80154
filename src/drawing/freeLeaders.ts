import type { PlacedPart } from "../enclosure/placedPart";
import type { Piece } from "../enclosure/view";
import type { Leader } from "./grainMarks";
import { cross } from "./labelPlaces";
import type { Frame } from "./solid";
import { crossedBoards, visiblePointsOf } from "./visiblePoints";

/** A leader, and whether a straight line can be drawn for it. */
export interface FreeLeader extends Leader {
  /** It passes over no board of another part, and crosses no other leader. */
  readonly isFree: boolean;
}

/**
 * Leaders that pass over no board of another part. One that does moves to another point at which its part can be seen;
 * where none will do it is not free, and the part is named by a number on the board itself.
 */
export function freeLeaders(
  leaders: readonly Leader[],
  parts: readonly PlacedPart[],
  drawn: readonly Piece[],
  frame: Frame,
): readonly FreeLeader[] {
  const boards = crossedBoards(parts, drawn, frame);
  const meets = (one: Leader, other: Leader) => cross(one.from, one.to, other.from, other.to);
  const settled: FreeLeader[] = leaders.map((leader, index) => ({
    ...leader,
    isFree: boards(index, leader.from, leader.to) === 0,
  }));
  settled.forEach(({ to, isFree }, index) => {
    if (isFree) return;
    const from = visiblePointsOf(parts[index]!, drawn, frame).find(
      (point) =>
        boards(index, point, to) === 0 &&
        settled.every((other, at) => at === index || !other.isFree || !meets({ from: point, to }, other)),
    );
    if (from !== undefined) settled[index] = { from, to, isFree: true };
  });
  return settled;
}
