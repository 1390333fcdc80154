import { worthOf } from "./worth";
import { touch, putInSlot } from "./history";
import { NONE, type Forest } from "./forest";

/** Enters a panel among the leftovers. What a trim after the last stage leaves is waste. */
export function openLeftover(forest: Forest, panel: number): void {
  const length = forest.length[panel]!;
  const width = forest.width[panel]!;
  if (forest.depth[panel]! > forest.limits.stages) {
    forest.worth[panel] = 0;
    return;
  }
  const worth = worthOf(length * width);
  forest.worth[panel] = worth;
  forest.totalWorth += worth;
  if (length < forest.leastLength || width < forest.leastWidth) return;
  putInSlot(forest, panel, forest.openCount++);
}

/** Takes a panel from the leftovers. The caller has touched it. */
export function closeLeftover(forest: Forest, panel: number): void {
  forest.totalWorth -= forest.worth[panel]!;
  const slot = forest.slot[panel]!;
  if (slot === NONE) return;
  const last = forest.open[--forest.openCount]!;
  if (last !== panel) {
    touch(forest, last);
    putInSlot(forest, last, slot);
  }
  forest.slot[panel] = NONE;
}

/** Neither a piece nor cut into parts. */
export function isLeftover(forest: Forest, panel: number): boolean {
  return forest.piece[panel] === NONE && forest.first[panel] === NONE;
}

/** The open leftover of the least worth. */
export function smallestOpen(forest: Forest): number {
  let smallest = 0;
  for (let slot = 1; slot < forest.openCount; slot++)
    if (forest.worth[forest.open[slot]!]! < forest.worth[forest.open[smallest]!]!) smallest = slot;
  return forest.open[smallest]!;
}
