import type { ColumnPool } from "./columnPool";
import type { GroupGrid } from "./costTable";
import type { Effort } from "./effort";
import type { FlatNeeds } from "./flatNeeds";
import type { SizesProblem } from "./sizesProblem";

/** What every stage of one search works on. */
export interface SizesSearch {
  readonly problem: SizesProblem;
  readonly grids: readonly GroupGrid[];
  readonly flat: FlatNeeds;
  /** What it costs to make each need to measure. */
  readonly madeCost: Float64Array;
  readonly pool: ColumnPool;
  readonly effort: Effort;
}
