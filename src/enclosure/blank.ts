import type { Mm } from "../measure/units";

/** A length of a blank between two of its lines, and what it lies on. */
export interface Stretch {
  readonly name: string;
  readonly length: Mm;
}

/** A rectangle cut out of corners of a blank: of all four, or of the two at one end. */
export interface CornerCut {
  readonly along: Mm;
  readonly across: Mm;
  readonly at: "all" | "far along" | "far across";
}

/** A covering or lining blank before it is rounded and, where the sheet is too short, split. */
export interface Blank {
  readonly name: string;
  readonly tray: string;
  readonly material: "covering" | "lining";
  readonly count: number;
  readonly along: Mm;
  readonly across: Mm;
  /** Pieces that lie within a face are rounded down, all others up. */
  readonly within: boolean;
  readonly note: string;
  /** What `along` and `across` are summed from, where the blank has lines in that direction. */
  readonly runAlong?: readonly Stretch[] | undefined;
  readonly runAcross?: readonly Stretch[] | undefined;
  readonly cutAway?: CornerCut | undefined;
  /** Slit at each corner between two walls, so far in from the edge that is turned down inside. */
  readonly slit?: Mm | undefined;
  /** The board whose corners are mitred, turned in on both sides: its caliper. */
  readonly mitred?: Mm | undefined;
  /** Of a lining: what it lines, and whether it does so before the boards are put together. */
  readonly lines?: { readonly face: "floor" | "wall"; readonly first: boolean } | undefined;
}

/** The length of a run of stretches. */
export function runOf(stretches: readonly Stretch[]): Mm {
  let length = 0;
  for (const stretch of stretches) length += stretch.length;
  return length;
}

/** One stretch of a run. */
export function stretch(name: string, length: Mm): Stretch {
  return { name, length };
}

/** A run without the stretches that come to nothing. */
export function run(...stretches: readonly Stretch[]): readonly Stretch[] {
  return stretches.filter(({ length }) => length > 0);
}

/** A turn-in is never longer than half the face that it lies on. */
export function half(turnIn: Mm, face: Mm): Mm {
  return Math.min(turnIn, face / 2);
}
