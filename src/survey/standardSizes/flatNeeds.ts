import type { GroupGrid } from "./costTable";
import type { SizesProblem } from "./sizesProblem";

/** The needs of a problem side by side, for the loops that look at each of them many million times. */
export interface FlatNeeds {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly z: Float64Array;
  readonly quantity: Float64Array;
  /** Place of the depth in the grid of the need's group. */
  readonly zAt: Int32Array;
}

export function flatNeeds({ needs }: SizesProblem, grids: readonly GroupGrid[]): FlatNeeds {
  const zAt = new Int32Array(needs.length);
  for (const { needs: places, zs } of grids) {
    const at = new Map([...zs].map((z, place) => [z, place]));
    for (const place of places) zAt[place] = at.get(needs[place]!.z)!;
  }
  return {
    x: Float64Array.from(needs, ({ x }) => x),
    y: Float64Array.from(needs, ({ y }) => y),
    z: Float64Array.from(needs, ({ z }) => z),
    quantity: Float64Array.from(needs, ({ quantity }) => quantity),
    zAt,
  };
}
