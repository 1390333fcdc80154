import type { Inside } from "../../item/standardSize";
import type { Mm } from "../../measure/units";

/** Room that wants a filler, in one direction. */
const FILLER_MM: Mm = 3;

/** Steps of the noise of sums, mm. */
const NOISE_MM: Mm = 1e-6;

/** In how many directions an item that needs so much has room in a size that wants a filler. */
export function fillersOf(need: Inside, size: Inside): number {
  return (["x", "y", "z"] as const).filter((side) => size[side] - need[side] >= FILLER_MM - NOISE_MM).length;
}
