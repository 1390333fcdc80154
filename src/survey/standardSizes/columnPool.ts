import type { GroupGrid } from "./costTable";
import { fits, type InsideSize, type SizesProblem } from "./sizesProblem";

/** A size with the needs that it holds. */
export interface SizeColumn extends InsideSize {
  readonly cost: number;
  readonly holds: Int32Array;
}

/** Sizes met in the search, each once. */
export interface ColumnPool {
  /** The column of a size; one that was met before is not made again. */
  readonly add: (size: InsideSize) => SizeColumn;
  readonly columns: () => readonly SizeColumn[];
  /** Keeps only these. */
  readonly keep: (columns: readonly SizeColumn[]) => void;
}

export function createColumnPool({ needs, slack, cost }: SizesProblem, grids: readonly GroupGrid[]): ColumnPool {
  const byKey = new Map<string, SizeColumn>();
  const placesOf = new Map(grids.map((grid) => [grid.group, grid.needs]));
  return {
    add(size) {
      const key = `${size.group} ${size.x} ${size.y} ${size.z}`;
      const known = byKey.get(key);
      if (known !== undefined) return known;
      const holds = Int32Array.from(
        (placesOf.get(size.group) ?? []).filter((place) => fits(needs[place]!, size, slack)),
      );
      const { group, x, y, z } = size;
      const column = { group, x, y, z, cost: cost(size), holds };
      byKey.set(key, column);
      return column;
    },
    columns: () => [...byKey.values()],
    keep(columns) {
      byKey.clear();
      for (const column of columns) byKey.set(`${column.group} ${column.x} ${column.y} ${column.z}`, column);
    },
  };
}
