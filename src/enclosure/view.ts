import type { PlacedPart } from "./placedPart";
import type { Cuboid } from "./space";

/** One copy of a part, or one panel of a folded one, where a drawing shows it. */
export interface Piece {
  readonly body: Cuboid;
  readonly part: PlacedPart;
}

/** A body of an open enclosure. */
export interface OpenBody {
  readonly body: Cuboid;
  /** The object, not the enclosure. */
  readonly isItem: boolean;
  /** Shares of the width (x) of its upper face at which it is creased. */
  readonly creases: readonly number[];
}

/** How an enclosure is drawn apart. */
export interface Apart {
  /** Above each other, the lowest first; or beside each other, each on its board of a case. */
  readonly arranged: "above" | "beside";
  readonly groups: readonly ApartGroup[];
  /** Boards of a case between those of the groups: its spine. */
  readonly between: readonly Piece[];
}

/** Pieces that are drawn apart among themselves. */
export interface ApartGroup {
  readonly pieces: readonly Piece[];
  /** The space that flat pieces move away from; undefined where folded pieces are drawn one above the other. */
  readonly around: Cuboid | undefined;
  /** Boards of a case under this group. */
  readonly bed: readonly Piece[];
}

export function piecesOf(parts: readonly PlacedPart[]): readonly Piece[] {
  return parts.flatMap((part) => part.panels.map((body) => ({ body, part })));
}

/** Bodies of the enclosure without creases. */
export function openBodies(bodies: readonly Cuboid[]): readonly OpenBody[] {
  return bodies.map((body) => ({ body, isItem: false, creases: [] }));
}
