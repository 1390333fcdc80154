import { ALONG_LENGTH, dropPanel, type Forest, NONE } from "./forest";
import { closeLeftover, isLeftover, openLeftover } from "./leftovers";
import { touch } from "./history";

/**
 * Takes a panel out: its pieces go to `pieces` from index `count` on, and what is left joins the leftover beside it.
 *
 * @returns the new number of pieces in the array
 */
export function takeOut(forest: Forest, panel: number, pieces: Int32Array, count: number): number {
  const after = clear(forest, panel, pieces, count);
  let at = panel;
  for (;;) {
    const parent = forest.parent[at]!;
    if (parent === NONE) break;
    const beside = leftoverBeside(forest, at, parent);
    if (beside !== NONE) mergeInto(forest, at, beside, forest.axis[parent]!);
    if (forest.first[parent] !== at || forest.next[at] !== NONE) break;
    dropPanel(forest, at);
    touch(forest, parent);
    forest.first[parent] = NONE;
    at = parent;
  }
  openLeftover(forest, at);
  return after;
}

/** Gives up a whole sheet and its panels; its pieces go to `pieces` from index `count` on. */
export function discard(forest: Forest, sheet: number, pieces: Int32Array, count: number): number {
  const after = isLeftover(forest, sheet) ? count : clear(forest, sheet, pieces, count);
  if (after === count) {
    touch(forest, sheet);
    closeLeftover(forest, sheet);
  }
  dropPanel(forest, sheet);
  return after;
}

/** Makes a touched panel a bare one, its pieces taken and its parts dropped; not yet among the leftovers. */
function clear(forest: Forest, panel: number, pieces: Int32Array, count: number): number {
  touch(forest, panel);
  let after = count;
  if (forest.piece[panel] !== NONE) {
    pieces[after++] = forest.piece[panel]!;
    forest.piece[panel] = NONE;
  }
  for (let part = forest.first[panel]!; part !== NONE;) {
    const next = forest.next[part]!;
    if (isLeftover(forest, part)) {
      touch(forest, part);
      closeLeftover(forest, part);
    } else after = clear(forest, part, pieces, after);
    dropPanel(forest, part);
    part = next;
  }
  forest.first[panel] = NONE;
  return after;
}

function leftoverBeside(forest: Forest, panel: number, parent: number): number {
  for (let part = forest.first[parent]!; part !== NONE; part = forest.next[part]!)
    if (part !== panel && isLeftover(forest, part)) return part;
  return NONE;
}

/** The panel, bare, takes over the room of the leftover beside it. */
function mergeInto(forest: Forest, panel: number, beside: number, axis: number): void {
  touch(forest, beside);
  closeLeftover(forest, beside);
  detach(forest, beside);
  if (axis === ALONG_LENGTH) forest.length[panel]! += forest.length[beside]!;
  else forest.width[panel]! += forest.width[beside]!;
  dropPanel(forest, beside);
}

function detach(forest: Forest, part: number): void {
  const previous = forest.previous[part]!;
  const next = forest.next[part]!;
  if (previous !== NONE) {
    touch(forest, previous);
    forest.next[previous] = next;
  } else {
    const parent = forest.parent[part]!;
    touch(forest, parent);
    forest.first[parent] = next;
  }
  if (next !== NONE) {
    touch(forest, next);
    forest.previous[next] = previous;
  }
}
