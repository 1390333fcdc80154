import { ALONG_LENGTH, ALONG_WIDTH, type Forest, makePanel, NONE } from "./forest";
import { closeLeftover, isLeftover, openLeftover } from "./leftovers";
import { touch } from "./history";

/** A panel of a finished plan: cut into parts along an axis, a piece, or (neither) left over. */
export interface Panel {
  readonly length: number;
  readonly width: number;
  readonly axis: number;
  readonly parts: readonly Panel[];
  readonly piece: number;
}

/** A sheet's usable size, and what was cut away at its edges. */
export interface SheetSize {
  readonly length: number;
  readonly width: number;
  readonly edgeTrim?: number;
}

/** The pieces of a plan's panel. */
export function piecesIn(panel: Panel): readonly number[] {
  const pieces: number[] = [];
  const visit = ({ piece, parts }: Panel) => {
    if (piece !== NONE) pieces.push(piece);
    else for (const part of parts) visit(part);
  };
  visit(panel);
  return pieces;
}

/** A whole sheet, left over. */
export function layOut(forest: Forest, { length, width, edgeTrim = 0 }: SheetSize): number {
  const sheet = makePanel(forest, length, width, NONE, 0);
  forest.edgeTrim[sheet] = edgeTrim;
  openLeftover(forest, sheet);
  return sheet;
}

/**
 * Cuts a piece from a corner of a leftover, which must hold it. The new leftovers are the last in `forest.open`.
 *
 *     axis ALONG_LENGTH              axis ALONG_WIDTH
 *     +-------+-----------+         +-------------------+
 *     | rest  |           |         |   remainder       |
 *     +-------+ remainder |         +-------+-----------+
 *     | piece |           |         | piece |   rest    |
 *     +-------+-----------+         +-------+-----------+
 */
export function cutPiece(
  forest: Forest,
  leftover: number,
  piece: number,
  length: number,
  width: number,
  axis: number,
): void {
  touch(forest, leftover);
  closeLeftover(forest, leftover);
  const fullLength = forest.length[leftover]!;
  const fullWidth = forest.width[leftover]!;
  if (fullLength === length && fullWidth === width) {
    forest.piece[leftover] = piece;
    return;
  }
  const byLength = axis === ALONG_LENGTH;
  const stage = stageOf(forest, leftover, axis);
  const remainder = byLength ? fullLength - length : fullWidth - width;
  const rest = byLength ? fullWidth - width : fullLength - length;
  if (remainder === 0) {
    // The strip is as long as the panel: the piece and the rest are all there is.
    const across = byLength ? ALONG_WIDTH : ALONG_LENGTH;
    const depth = stageOf(forest, leftover, across);
    splitOff(forest, leftover, makePanel(forest, length, width, piece, depth), across, rest);
    return;
  }
  const strip = makePanel(forest, byLength ? length : fullLength, byLength ? fullWidth : width, NONE, stage);
  splitOff(forest, leftover, strip, axis, remainder);
  if (rest === 0) {
    forest.piece[strip] = piece;
    return;
  }
  const across = byLength ? ALONG_WIDTH : ALONG_LENGTH;
  forest.axis[strip] = across;
  attach(forest, makePanel(forest, length, width, piece, stage + 1), strip);
  const spare = byLength
    ? makePanel(forest, length, rest, NONE, stage + 1)
    : makePanel(forest, rest, width, NONE, stage + 1);
  attach(forest, spare, strip);
  openLeftover(forest, spare);
}

/** The stage of a cut of a leftover that parts it along an axis. */
export function stageOf(forest: Forest, leftover: number, axis: number): number {
  const parent = forest.parent[leftover]!;
  const same = parent !== NONE && forest.axis[parent] === axis;
  return same ? forest.depth[leftover]! : forest.depth[leftover]! + 1;
}

/** Makes `part` a part of the leftover's panel and leaves `remainder` of the leftover. */
function splitOff(forest: Forest, leftover: number, part: number, axis: number, remainder: number): void {
  const parent = forest.parent[leftover]!;
  if (parent !== NONE && forest.axis[parent] === axis) {
    attach(forest, part, parent);
    if (axis === ALONG_LENGTH) forest.length[leftover] = remainder;
    else forest.width[leftover] = remainder;
    openLeftover(forest, leftover);
    return;
  }
  const byLength = axis === ALONG_LENGTH;
  const other = makePanel(
    forest,
    byLength ? remainder : forest.length[leftover]!,
    byLength ? forest.width[leftover]! : remainder,
    NONE,
    forest.depth[part]!,
  );
  forest.axis[leftover] = axis;
  attach(forest, part, leftover);
  attach(forest, other, leftover);
  openLeftover(forest, other);
}

/** The panel and its parts as a plan. */
export function exportPanel(forest: Forest, panel: number): Panel {
  return {
    length: forest.length[panel]!,
    width: forest.width[panel]!,
    axis: forest.axis[panel]!,
    parts: forest.first[panel] === NONE ? NO_PARTS : exportParts(forest, panel),
    piece: forest.piece[panel]!,
  };
}

/** An array of just the parts there are: one that grows has room for sixteen more, in each panel of a large plan. */
function exportParts(forest: Forest, panel: number): readonly Panel[] {
  let count = 0;
  for (let part = forest.first[panel]!; part !== NONE; part = forest.next[part]!) count++;
  const parts = new Array<Panel>(count);
  let part = forest.first[panel]!;
  for (let at = 0; at < count; at++, part = forest.next[part]!) parts[at] = exportPanel(forest, part);
  return parts;
}

const NO_PARTS: readonly Panel[] = [];

/** Plants a plan's panel and its parts. */
export function importPanel(forest: Forest, plan: Panel, depth = 0): number {
  const panel = makePanel(forest, plan.length, plan.width, plan.piece, depth);
  forest.axis[panel] = plan.axis;
  for (const part of plan.parts) attach(forest, importPanel(forest, part, depth + 1), panel);
  if (isLeftover(forest, panel)) openLeftover(forest, panel);
  return panel;
}

function attach(forest: Forest, part: number, parent: number): void {
  touch(forest, parent);
  const first = forest.first[parent]!;
  forest.parent[part] = parent;
  forest.previous[part] = NONE;
  forest.next[part] = first;
  if (first !== NONE) {
    touch(forest, first);
    forest.previous[first] = part;
  }
  forest.first[parent] = part;
}
