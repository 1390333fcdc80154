import type { Limits } from "./limits";
import { worthOf } from "./worth";

/** Nothing: no piece, no parent, no neighbour, no slot. */
export const NONE = -1;

/** The parts of a panel follow one another along its length, or along its width. */
export const ALONG_LENGTH = 0;
export const ALONG_WIDTH = 1;

/**
 * The sheets being cut, as trees of panels: a panel is cut into parts side by side, is a piece, or is left over.
 *
 * The one mutable structure of the solver: a search makes some hundred thousand changes a second and takes most of them
 * back, so panels are numbers that index flat arrays and `rollback` undoes everything since `begin`.
 */
export interface Forest {
  readonly length: Int32Array;
  readonly width: Int32Array;
  readonly piece: Int32Array;
  readonly axis: Int32Array;
  readonly parent: Int32Array;
  readonly first: Int32Array;
  readonly next: Int32Array;
  readonly previous: Int32Array;
  /** Stage of the cut that freed the panel: changes of direction from the sheet on, 0 for the sheet itself. */
  readonly depth: Int32Array;
  /** Place of a leftover in `open`, NONE for other panels. */
  readonly slot: Int32Array;
  readonly worth: Float64Array;
  /** Of a whole sheet: what is cut away at its edges. */
  readonly edgeTrim: Int32Array;
  /** The leftovers that some piece may fit, the first `openCount` of the array. */
  readonly open: Int32Array;
  /** Their sizes, side by side, for the search's innermost loop. */
  readonly openLength: Int32Array;
  readonly openWidth: Int32Array;
  openCount: number;
  /** Sum of the worths of all leftovers. */
  totalWorth: number;
  readonly leastLength: number;
  readonly leastWidth: number;
  readonly limits: Limits;
  readonly history: History;
}

interface History {
  recording: boolean;
  step: number;
  readonly touchedAt: Int32Array;
  log: Int32Array;
  worthLog: Float64Array;
  logged: number;
  readonly unused: Int32Array;
  unusedCount: number;
  made: number[];
  dropped: number[];
  openCount: number;
  totalWorth: number;
}

const FIELDS = 11;

/** Arrays of whole numbers that a forest has. */
const ARRAYS = 16;

/** Entries that the log of a step has room for at first: most forests never take a step back. */
const FIRST_ENTRIES = 4;

/** Panels that inserting one piece can add. */
const PANELS_PER_PIECE = 4;

/** An empty forest with room for `pieces` pieces on at most as many sheets, however it is changed. */
export function createForest(pieces: number, leastLength: number, leastWidth: number, limits: Limits): Forest {
  // Twice: what is dropped in a step cannot be used again before the step is committed.
  const room = 2 * PANELS_PER_PIECE * pieces + 2 * pieces + 16;
  // One buffer for all: a plan makes a thousand small forests.
  const buffer = new ArrayBuffer(room * ARRAYS * Int32Array.BYTES_PER_ELEMENT);
  let taken = 0;
  const numbers = () => new Int32Array(buffer, room * Int32Array.BYTES_PER_ELEMENT * taken++, room);
  const unused = numbers();
  for (let index = 0; index < room; index++) unused[index] = room - 1 - index;
  return {
    length: numbers(),
    width: numbers(),
    piece: numbers(),
    axis: numbers(),
    parent: numbers(),
    first: numbers(),
    next: numbers(),
    previous: numbers(),
    depth: numbers(),
    slot: numbers(),
    worth: new Float64Array(room),
    edgeTrim: numbers(),
    open: numbers(),
    openLength: numbers(),
    openWidth: numbers(),
    openCount: 0,
    totalWorth: 0,
    leastLength,
    leastWidth,
    limits,
    history: {
      recording: false,
      step: 0,
      touchedAt: numbers(),
      log: new Int32Array(FIELDS * FIRST_ENTRIES),
      worthLog: new Float64Array(FIRST_ENTRIES),
      logged: 0,
      unused,
      unusedCount: room,
      made: [],
      dropped: [],
      openCount: 0,
      totalWorth: 0,
    },
  };
}

/** Starts a step that can be taken back. */
export function begin(forest: Forest): void {
  const past = forest.history;
  past.recording = true;
  past.step++;
  past.logged = 0;
  past.made.length = 0;
  past.dropped.length = 0;
  past.openCount = forest.openCount;
  past.totalWorth = forest.totalWorth;
}

/** Keeps what was done since `begin`. */
export function commit(forest: Forest): void {
  const past = forest.history;
  for (const panel of past.dropped) past.unused[past.unusedCount++] = panel;
  past.dropped.length = 0;
  past.recording = false;
}

/** Takes back what was done since `begin`. */
export function rollback(forest: Forest): void {
  const past = forest.history;
  const { log } = past;
  for (let entry = 0, at = 0; entry < past.logged; entry++, at += FIELDS) {
    const panel = log[at]!;
    const slot = log[at + 9]!;
    forest.length[panel] = log[at + 1]!;
    forest.width[panel] = log[at + 2]!;
    forest.piece[panel] = log[at + 3]!;
    forest.axis[panel] = log[at + 4]!;
    forest.parent[panel] = log[at + 5]!;
    forest.first[panel] = log[at + 6]!;
    forest.next[panel] = log[at + 7]!;
    forest.previous[panel] = log[at + 8]!;
    forest.slot[panel] = slot;
    forest.depth[panel] = log[at + 10]!;
    forest.worth[panel] = past.worthLog[entry]!;
    if (slot !== NONE) putInSlot(forest, panel, slot);
  }
  for (const panel of past.made) past.unused[past.unusedCount++] = panel;
  forest.openCount = past.openCount;
  forest.totalWorth = past.totalWorth;
  past.recording = false;
}

/** Notes a panel as it is, once a step, before it changes. */
export function touch(forest: Forest, panel: number): void {
  const past = forest.history;
  if (!past.recording || past.touchedAt[panel] === past.step) return;
  past.touchedAt[panel] = past.step;
  if ((past.logged + 1) * FIELDS > past.log.length) growLog(past);
  const { log } = past;
  const at = past.logged * FIELDS;
  log[at] = panel;
  log[at + 1] = forest.length[panel]!;
  log[at + 2] = forest.width[panel]!;
  log[at + 3] = forest.piece[panel]!;
  log[at + 4] = forest.axis[panel]!;
  log[at + 5] = forest.parent[panel]!;
  log[at + 6] = forest.first[panel]!;
  log[at + 7] = forest.next[panel]!;
  log[at + 8] = forest.previous[panel]!;
  log[at + 9] = forest.slot[panel]!;
  log[at + 10] = forest.depth[panel]!;
  past.worthLog[past.logged++] = forest.worth[panel]!;
}

/** A new panel on its own, neither piece nor leftover yet. */
export function makePanel(forest: Forest, length: number, width: number, piece: number, depth: number): number {
  const past = forest.history;
  const panel = past.unused[--past.unusedCount]!;
  if (past.recording) {
    past.touchedAt[panel] = past.step;
    past.made.push(panel);
  }
  forest.length[panel] = length;
  forest.width[panel] = width;
  forest.piece[panel] = piece;
  forest.depth[panel] = depth;
  forest.parent[panel] = NONE;
  forest.first[panel] = NONE;
  forest.next[panel] = NONE;
  forest.previous[panel] = NONE;
  forest.slot[panel] = NONE;
  return panel;
}

/** Gives a panel up; its place in the tree and among the leftovers is settled by the caller. */
export function dropPanel(forest: Forest, panel: number): void {
  const past = forest.history;
  if (past.recording) past.dropped.push(panel);
  else past.unused[past.unusedCount++] = panel;
}

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

export function isLeftover(forest: Forest, panel: number): boolean {
  return forest.piece[panel] === NONE && forest.first[panel] === NONE;
}

function putInSlot(forest: Forest, panel: number, slot: number): void {
  forest.slot[panel] = slot;
  forest.open[slot] = panel;
  forest.openLength[slot] = forest.length[panel]!;
  forest.openWidth[slot] = forest.width[panel]!;
}

function growLog(past: History): void {
  const log = new Int32Array(past.log.length * 2);
  const worthLog = new Float64Array(past.worthLog.length * 2);
  log.set(past.log);
  worthLog.set(past.worthLog);
  past.log = log;
  past.worthLog = worthLog;
}

/** The open leftover of the least worth. */
export function smallestOpen(forest: Forest): number {
  let smallest = 0;
  for (let slot = 1; slot < forest.openCount; slot++)
    if (forest.worth[forest.open[slot]!]! < forest.worth[forest.open[smallest]!]!) smallest = slot;
  return forest.open[smallest]!;
}
