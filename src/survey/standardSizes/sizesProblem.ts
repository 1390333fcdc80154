import type { Inside } from "../../item/standardSize";
import type { Mm } from "../../measure/units";

export interface InsideSize extends Inside {
  /** Enclosures of one kind and construction: a size of one group never serves another. */
  readonly group: number;
}

/** The inside that an item needs, oriented, as sized and rounded, and how many of it there are. */
export interface NeededInside extends InsideSize {
  readonly quantity: number;
}

/**
 * At most `count` sizes for all items. An item goes into a size that is nowhere smaller than it needs and nowhere
 * larger by more than `slack`.
 */
export interface SizesProblem {
  readonly needs: readonly NeededInside[];
  readonly count: number;
  /** Undefined: a size may be larger by any amount. */
  readonly slack: Mm | undefined;
  /** What one enclosure of that inside costs, in any unit above zero: its board area, or the price of a ready-made box. */
  readonly cost: (size: InsideSize) => number;
  /** The sizes to choose among; undefined where they are made, so that any size will do. */
  readonly offered?: readonly InsideSize[];
}

/** The sizes chosen, and how far from the best they can be. */
export interface ChosenSizes {
  readonly sizes: readonly InsideSize[];
  /** For each need the place of its size; -1 where it is made to measure. */
  readonly sizeOf: readonly number[];
  /** Enclosures that no size holds. */
  readonly toMeasure: number;
  /** Cost of all enclosures; one made to measure costs what its own inside costs, or nothing beside ready-made ones. */
  readonly total: number;
  /** No choice of so many sizes leaves fewer to be made to measure. */
  readonly leastToMeasure: number;
  /** No choice that leaves so few costs less. */
  readonly leastTotal: number;
}

export function fits(need: InsideSize, size: InsideSize, slack: Mm | undefined): boolean {
  if (need.group !== size.group || need.x > size.x || need.y > size.y || need.z > size.z) return false;
  return slack === undefined || (size.x <= need.x + slack && size.y <= need.y + slack && size.z <= need.z + slack);
}
