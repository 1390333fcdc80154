import { formatLength } from "./formatLength";
import type { PlacedDimensions, Refuse } from "./placeDimensions";
import { PLAIN_LIMIT_MM } from "./readLength";
import type { Figure } from "./scanMeasure";
import { isOddMetricFraction, ODD_FRACTION } from "./scanNumber";
import { MM_PER, type LengthUnit, type Mm } from "./units";

/** A figure as a length. */
export interface FigureLength {
  readonly mm: Mm;
  /** What its last digit counts. */
  readonly stepMm: Mm;
}

/** Larger than a gallery: what is above is a slip of the pen. */
const LIMIT_MM: Mm = 100000;
/** Binary noise in a comparison of lengths. */
const NOISE_MM: Mm = 1e-6;
const UNIT_CURE = "write the unit behind the numbers, such as 31.5 x 24 x 4.2 cm";

/**
 * The lengths of figures that share a unit (`31.5 x 24 x 4.2 cm`) or carry each their own.
 *
 * @param heading the unit that the words before them give
 * @param fallback the unit of a text that gives none
 */
export function figureLengths(
  figures: readonly Figure[],
  heading: LengthUnit | undefined,
  fallback: LengthUnit | undefined,
  refuse: Refuse,
): readonly FigureLength[] {
  const written = new Set(figures.flatMap((figure) => figure.unit ?? []));
  if (heading !== undefined) written.add(heading);
  const [shared = fallback] = written;
  const bare = figures.some((figure) => figure.unit === undefined);
  if (shared === undefined || (written.size > 1 && (bare || heading !== undefined))) {
    return refuse(
      shared === undefined ? "no unit is given" : "numbers without a unit stand beside two units",
      UNIT_CURE,
    );
  }
  const limit = written.size === 0 ? PLAIN_LIMIT_MM : LIMIT_MM;
  return figures.map(({ value, step, unit = shared }) => {
    if (isOddMetricFraction({ step }, unit)) return refuse(ODD_FRACTION);
    const mm = value * MM_PER[unit];
    if (mm === 0) return refuse("a measure of zero");
    if (mm > limit) return refuse(`a measure above ${limit / MM_PER.m} m`, written.size === 0 ? UNIT_CURE : undefined);
    return { mm, stepMm: step * MM_PER[unit] };
  });
}

/** Refuses when a length and the same length in another unit differ by more than the rounding of both. */
export function requireAgreement(first: Reading, second: Reading, refuse: Refuse): void {
  const tolerance = (first.stepMm + second.stepMm) / 2 + NOISE_MM;
  const agrees =
    first.lengths.length === second.lengths.length &&
    first.lengths.every((mm, index) => Math.abs(mm - (second.lengths[index] ?? 0)) <= tolerance);
  if (!agrees) {
    refuse(
      `the first reading is ${shownInMm(first)}, the second ${shownInMm(second)}`,
      "correct the one that is wrong",
    );
  }
}

/** One reading of an item: its lengths, and the finest step that they are given to. */
export interface Reading {
  readonly lengths: readonly Mm[];
  readonly stepMm: Mm;
}

/** Lengths as one reading: as they stand, or placed. */
export function asReading(lengths: readonly FigureLength[], placed?: PlacedDimensions): Reading {
  const stepMm = Math.min(...lengths.map((length) => length.stepMm));
  if (placed === undefined) return { lengths: lengths.map((length) => length.mm), stepMm };
  const { height, width, depth } = placed;
  return { lengths: depth === undefined ? [height, width] : [height, width, depth], stepMm };
}

function shownInMm({ lengths }: Reading): string {
  return `${lengths.map((mm) => formatLength(mm, "mm")).join(" x ")} mm`;
}
