import type { GroupGrid } from "./costTable";
import type { FlatNeeds } from "./flatNeeds";
import type { InsideSize, SizesProblem } from "./sizesProblem";

/** A size with the needs that it holds. */
export interface SizeColumn extends InsideSize {
  readonly cost: number;
  readonly holds: Int32Array;
}

/** Sizes met in the search, each once. */
export interface ColumnPool {
  /** The column of a size; one that was met before is not made again. */
  readonly add: (size: InsideSize) => SizeColumn;
  readonly has: (size: InsideSize) => boolean;
  readonly drop: (size: InsideSize) => void;
  readonly columns: () => readonly SizeColumn[];
  /** Keeps only these. */
  readonly keep: (columns: readonly SizeColumn[]) => void;
}

export function createColumnPool(
  { slack, cost }: SizesProblem,
  grids: readonly GroupGrid[],
  flat: FlatNeeds,
): ColumnPool {
  const byKey = new Map<string, SizeColumn>();
  const placesOf = new Map(grids.map((grid) => [grid.group, grid.needs]));
  const room = slack ?? Number.POSITIVE_INFINITY;
  return {
    has: (size) => byKey.has(keyOf(size)),
    add(size) {
      const key = keyOf(size);
      const known = byKey.get(key);
      if (known !== undefined) return known;
      const { group, x, y, z } = size;
      const places = placesOf.get(group) ?? [];
      const holds = new Int32Array(places.length);
      let held = 0;
      for (const place of places) {
        const [dx, dy, dz] = [x - flat.x[place]!, y - flat.y[place]!, z - flat.z[place]!];
        if (dx >= 0 && dy >= 0 && dz >= 0 && dx <= room && dy <= room && dz <= room) holds[held++] = place;
      }
      const column = { group, x, y, z, cost: cost(size), holds: holds.slice(0, held) };
      byKey.set(key, column);
      return column;
    },
    drop: (size) => void byKey.delete(keyOf(size)),
    columns: () => [...byKey.values()],
    keep(columns) {
      byKey.clear();
      for (const column of columns) byKey.set(keyOf(column), column);
    },
  };
}

function keyOf({ group, x, y, z }: InsideSize): string {
  return `${group} ${x} ${y} ${z}`;
}
