import type { Limits } from "./limits";

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
  leastLength: number;
  leastWidth: number;
  limits: Limits;
  readonly history: History;
}

export interface History {
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

export const FIELDS = 11;

/** Arrays of whole numbers that a forest has. */
const ARRAYS = 16;

/** Entries that the log of a step has room for at first: most forests never take a step back. */
const FIRST_ENTRIES = 4;

/** Panels that inserting one piece can add. */
const PANELS_PER_PIECE = 4;

/** An empty forest with room for `pieces` pieces on at most as many sheets, however it is changed. */
export function createForest(pieces: number, leastLength: number, leastWidth: number, limits: Limits): Forest {
  const room = roomFor(pieces);
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

/**
 * An empty forest for pieces that are laid out once: the one given, where it has room for them.
 *
 * @param before a forest that no one needs any longer, and from which no panel was ever dropped
 */
export function emptyForest(
  before: Forest | undefined,
  pieces: number,
  leastLength: number,
  leastWidth: number,
  limits: Limits,
): Forest {
  if (before === undefined || before.length.length < roomFor(pieces))
    return createForest(pieces, leastLength, leastWidth, limits);
  const past = before.history;
  const room = before.length.length;
  before.axis.fill(ALONG_LENGTH, 0, room - past.unusedCount);
  past.unusedCount = room;
  before.openCount = 0;
  before.totalWorth = 0;
  before.leastLength = leastLength;
  before.leastWidth = leastWidth;
  before.limits = limits;
  return before;
}

/** Panels for so many pieces; twice, since what is dropped in a step cannot be used again before the step is committed. */
function roomFor(pieces: number): number {
  return 2 * PANELS_PER_PIECE * pieces + 2 * pieces + 16;
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
