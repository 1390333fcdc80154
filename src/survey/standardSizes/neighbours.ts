import type { SizeColumn } from "./columnPool";
import { held } from "./held";
import type { SizesSearch } from "./sizesSearch";

/** Into the pool: each size drawn in to what it holds, and the sizes one step of the grid away on each side. */
export function addNeighbours({ problem, grids, madeCost, pool }: SizesSearch, sizes: readonly SizeColumn[]): void {
  const { needs } = problem;
  const { first } = held(problem, madeCost, sizes);
  sizes.forEach((size, at) => {
    const drawn = { group: size.group, x: 0, y: 0, z: 0 };
    for (const need of size.holds) {
      if (first[need] !== at) continue;
      drawn.x = Math.max(drawn.x, needs[need]!.x);
      drawn.y = Math.max(drawn.y, needs[need]!.y);
      drawn.z = Math.max(drawn.z, needs[need]!.z);
    }
    if (drawn.x === 0) return;
    pool.add(drawn);
    const grid = grids.find(({ group }) => group === size.group)!;
    for (const [side, values] of [
      ["x", grid.xs],
      ["y", grid.ys],
      ["z", grid.zs],
    ] as const) {
      const place = values.indexOf(drawn[side]);
      for (const step of [-2, -1, 1, 2]) {
        const value = values[place + step];
        if (value !== undefined) pool.add({ ...drawn, [side]: value });
      }
    }
  });
}
