import { InputError, shown } from "./errors";
import { fromMm, type Mm } from "./units";

/** The finest division of a bench rule, 1/64 in. */
export const FINEST_DENOMINATOR = 64;

/**
 * A length as a bench reading in inches: nearest fraction, reduced, without a unit.
 *
 *     benchFraction(263.5, 16) // "10 3/8"
 *
 * @param mm length, mm
 * @param denominator parts of an inch to round to, a whole number from 2 to 64
 * @throws InputError when the denominator is anything else, or the length is not a finite number
 */
export function benchFraction(mm: Mm, denominator: number): string {
  if (!Number.isInteger(denominator) || denominator < 2 || denominator > FINEST_DENOMINATOR) {
    throw new InputError("denominator", shown(denominator), "give a whole number from 2 to 64");
  }
  if (!Number.isFinite(mm)) throw new InputError("length", shown(mm), "give a length");
  const parts = Math.round(fromMm(Math.abs(mm), "in") * denominator);
  const whole = Math.floor(parts / denominator);
  const rest = parts - whole * denominator;
  const sign = mm < 0 && parts > 0 ? "-" : "";
  if (rest === 0) return `${sign}${whole}`;
  const divisor = greatestCommonDivisor(rest, denominator);
  return `${sign}${whole === 0 ? "" : `${whole} `}${rest / divisor}/${denominator / divisor}`;
}

function greatestCommonDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestCommonDivisor(b, a % b);
}
