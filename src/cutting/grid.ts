/**
 * Steps of the grid to a millimetre. A hundredth of a millimetre (16 steps) and 1/64 in (0.396875 mm, 635 steps) both lie
 * on it, so that metric and inch sizes, gaps and trims are exact. A kilometre of roll is 1.6e9 steps: it fits 31 bits.
 */
export const UNITS_PER_MM = 1600;

/** Areas that are weighed against each other are taken in tenths of a millimetre squared, so that sums of thousands stay exact. */
export const UNITS2_PER_TENTH2 = (UNITS_PER_MM / 10) ** 2;

/** A number of units that differs from a whole one by less than this is taken as that whole one (binary fractions). */
const ROUNDING = 1e-6;

/** Whole units that hold a length: rounded up. */
export function unitsUp(mm: number): number {
  return Math.ceil(mm * UNITS_PER_MM - ROUNDING);
}

/** Whole units within a length: rounded down. */
export function unitsDown(mm: number): number {
  return Math.floor(mm * UNITS_PER_MM + ROUNDING);
}
