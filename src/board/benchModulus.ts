import type { Mm } from "../measure/units";
import { GRAVITY, MPA_PER_GPA } from "./plateSag";
import { requireAboveZero } from "./requireAboveZero";

/** A strip of board laid across two supports, a weight hung from its middle, the sag read with a ruler. */
export interface BenchTest {
  /** between the two supports, not of the strip */
  readonly length: Mm;
  readonly width: Mm;
  readonly caliper: Mm;
  readonly loadKg: number;
  /** that the weight adds, at the middle */
  readonly sag: Mm;
}

/**
 * The modulus of elasticity of a board, along the strip: E = F L^3 / (48 I sag), I = width caliper^3 / 12. Cut one
 * strip along the grain and one across. Holds for a slender strip and a small sag: width and sag under a tenth of the
 * length (common practice, no source).
 *
 * @returns GPa
 * @throws InputError naming whichever is not above zero
 * Source: elementary beam theory.
 */
export function benchModulus({ length, width, caliper, loadKg, sag }: BenchTest): number {
  requireAboveZero("length", length);
  requireAboveZero("width", width);
  requireAboveZero("caliper", caliper);
  requireAboveZero("load", loadKg);
  requireAboveZero("sag", sag);
  const secondMoment = (width * caliper ** 3) / 12;
  return (loadKg * GRAVITY * length ** 3) / (48 * secondMoment * sag) / MPA_PER_GPA;
}
