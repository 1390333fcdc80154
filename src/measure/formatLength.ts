import { benchFraction, FINEST_DENOMINATOR } from "./benchFraction";
import { fromMm, tidy, type LengthUnit, type Mm } from "./units";

/** Decimals shown: a tenth of a millimetre or finer in every unit, which is finer than board is cut. */
const DECIMALS: Readonly<Record<LengthUnit, number>> = { mm: 2, cm: 2, m: 4, in: 3, ft: 4 };

/** How far a length may lie from a mark of the rule and still be read as that mark, in (0.13 mm). Common practice, no source. */
const READS_AS_MARK_IN = 0.005;

/**
 * A length for a message or a bench instruction, without its unit: `44.5`, `10 3/8`.
 *
 * Inches are given as the bench fraction when the length lies within 0.005 in of a 1/64 in mark, because that is what is
 * read off a rule; a length between marks is given in decimals (`0.039`), never forced onto a mark that it is not on.
 *
 * @param mm length, mm
 */
export function formatLength(mm: Mm, unit: LengthUnit): string {
  return (unit === "in" ? markOfRule(mm) : undefined) ?? decimals(fromMm(mm, unit), DECIMALS[unit]);
}

/** The same with its unit: `44.5 mm`, `10 3/8 in`. */
export function formatLengthWithUnit(mm: Mm, unit: LengthUnit): string {
  return `${formatLength(mm, unit)} ${unit}`;
}

function markOfRule(mm: Mm): string | undefined {
  const inches = fromMm(mm, "in");
  const mark = Math.round(inches * FINEST_DENOMINATOR) / FINEST_DENOMINATOR;
  const isNothing = mark === 0 && mm !== 0;
  const isOnMark = !isNothing && Math.abs(inches - mark) <= READS_AS_MARK_IN;
  return isOnMark ? benchFraction(mm, FINEST_DENOMINATOR) : undefined;
}

function decimals(value: number, places: number): string {
  const steps = 10 ** places;
  return String(Math.round(tidy(value * steps)) / steps + 0);
}
