import { FINEST_DENOMINATOR } from "./benchFraction";
import type { LengthUnit } from "./units";

/** A number found in a text. */
export interface ScannedNumber {
  readonly value: number;
  /** What the last figure counts: 0.1 in `31.5`, 1/8 in `10 3/8`. */
  readonly step: number;
  /** Where the number ends in the text. */
  readonly end: number;
}

/** A comma before three figures: thousands to one reader, thousandths to another. */
export const AMBIGUOUS_COMMA = /\d,\d{3}(?!\d)/;

const NUMBER = /(\d+)(?: |- ?)(\d+)\/(\d+)|(\d+)\/(\d+)|(\d+)(?:([.,])(\d+))?|\.(\d+)/y;
const LONGEST_DECIMAL_COMMA = 2;
/** Parts of a metric unit that people write as fractions; 10 is also the step of one decimal. */
const METRIC_PARTS: readonly number[] = [1, 2, 4, 10];

/**
 * Reads the number that starts at `at` of a plain text: `12`, `12.5`, `.5`, `12,5`, `3/8`, `10 3/8`, `10-3/8`.
 *
 * @returns undefined where there is none, and for what can be read two ways: a comma before three figures, and a fraction
 * of one or more (`20/30` may be two measures, `103/8` is what copying makes of 10⅜)
 */
export function scanNumber(text: string, at: number): ScannedNumber | undefined {
  NUMBER.lastIndex = at;
  const found = NUMBER.exec(text);
  if (found === null) return undefined;
  const [, whole, over, under, loneOver, loneUnder, integer, mark, decimals, bareDecimals] = found;
  const end = NUMBER.lastIndex;
  if (over !== undefined) return fraction(Number(whole), Number(over), Number(under), end);
  if (loneOver !== undefined) return fraction(0, Number(loneOver), Number(loneUnder), end);
  if (mark === "," && decimals !== undefined && decimals.length > LONGEST_DECIMAL_COMMA) return undefined;
  const places = decimals ?? bareDecimals ?? "";
  return { value: Number(`${integer ?? 0}.${places}`), step: 10 ** -places.length, end };
}

/** Why a fraction is refused where `isOddMetricFraction`. */
export const ODD_FRACTION = "fractions other than halves and quarters are read in inches only";

/**
 * Whether a number is a fraction that nobody writes of this unit: `10 3/8 mm` was measured in inches, and `20/30 cm` may be
 * two measures with a stroke between.
 */
export function isOddMetricFraction({ step }: Pick<ScannedNumber, "step">, unit: LengthUnit): boolean {
  const parts = Math.round(1 / step);
  const isMetric = unit === "mm" || unit === "cm" || unit === "m";
  return isMetric && parts <= FINEST_DENOMINATOR && !METRIC_PARTS.includes(parts);
}

function fraction(whole: number, over: number, under: number, end: number): ScannedNumber | undefined {
  if (under > FINEST_DENOMINATOR || over === 0 || over >= under) return undefined;
  return { value: whole + over / under, step: 1 / under, end };
}
