import { UNITS2_PER_TENTH2 } from "./grid";

/**
 * What a leftover of some area counts for: area to the power 1.25, so that one large leftover is worth more than two halves.
 *
 * Square roots only, which every machine rounds alike, and whole numbers, so that sums of worths are exact.
 * Source: the idea and a power near this one, Gardeyn and Wauters, "A goal-driven ruin and recreate heuristic for the
 * 2D variable-sized bin packing problem with guillotine constraints", European Journal of Operational Research 301, 2022.
 */
export function worthOf(area: number): number {
  const tenths = area / UNITS2_PER_TENTH2;
  return Math.floor(tenths * Math.sqrt(Math.sqrt(tenths)));
}
