import { InputError, shown } from "../measure/errors";
import type { Mm } from "../measure/units";
import { requireAboveZero } from "./requireAboveZero";

/** One lift, at its origin or its destination. */
export interface Lift {
  /** hands in front of the ankles */
  readonly reach: Mm;
  /** hands above the floor */
  readonly height: Mm;
  /** between origin and destination, up or down */
  readonly travel: Mm;
  /** degrees that the load is turned away from straight ahead; 0 unless given */
  readonly twist?: number;
}

/** The equation's factors, each 0 (do not lift) to 1 (nothing against it). */
export interface LiftMultipliers {
  readonly horizontal: number;
  readonly vertical: number;
  readonly distance: number;
  readonly asymmetry: number;
}

/**
 * The multipliers of the revised NIOSH lifting equation: HM 25/H, VM 1 - .003|V - 75|, DM .82 + 4.5/D, AM 1 - .0032A
 * (cm, degrees), each at most 1, and 0 beyond the reach, height, travel or twist that the equation covers. How often
 * and by what handles are left out: an enclosure is lifted now and then.
 *
 * A caution, never a permission: local manual-handling rules come first.
 *
 * @throws InputError when the reach is not above zero, or a height, travel or twist is below zero
 * Source: NIOSH, Applications Manual for the Revised Lifting Equation, Pub. 94-110; the ranges covered (H to 63 cm,
 * V to 175 cm, D to 175 cm, A to 135 degrees) from memory.
 */
export function liftMultipliers({ reach, height, travel, twist = 0 }: Lift): LiftMultipliers {
  requireAboveZero("reach", reach);
  requireNotBelowZero("lift height", height);
  requireNotBelowZero("lift travel", travel);
  requireNotBelowZero("twist", twist);
  const [h, v, d] = [reach / MM_PER_CM, height / MM_PER_CM, travel / MM_PER_CM];
  return {
    horizontal: h > FURTHEST_REACH_CM ? 0 : NEAREST_REACH_CM / Math.max(h, NEAREST_REACH_CM),
    vertical: v > HIGHEST_CM ? 0 : 1 - VERTICAL_PER_CM * Math.abs(v - KNUCKLE_HEIGHT_CM),
    distance: d > LONGEST_TRAVEL_CM ? 0 : DISTANCE_BASE + DISTANCE_CM / Math.max(d, SHORTEST_TRAVEL_CM),
    asymmetry: twist > GREATEST_TWIST ? 0 : 1 - ASYMMETRY_PER_DEGREE * twist,
  };
}

const MM_PER_CM = 10;
const NEAREST_REACH_CM = 25;
const FURTHEST_REACH_CM = 63;
const KNUCKLE_HEIGHT_CM = 75;
const HIGHEST_CM = 175;
const VERTICAL_PER_CM = 0.003;
const DISTANCE_BASE = 0.82;
const DISTANCE_CM = 4.5;
const SHORTEST_TRAVEL_CM = 25;
const LONGEST_TRAVEL_CM = 175;
const ASYMMETRY_PER_DEGREE = 0.0032;
const GREATEST_TWIST = 135;

function requireNotBelowZero(argument: string, value: number): void {
  if (!(value >= 0 && value < Infinity)) throw new InputError(argument, shown(value), "give a number, zero or above");
}
