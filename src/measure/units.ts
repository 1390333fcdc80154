/** A length in millimetres, the only unit of the core. */
export type Mm = number;

/** A unit that a length may be written in. */
export type LengthUnit = "mm" | "cm" | "m" | "in" | "ft";

/** What plain item numbers mean and what answers are in. */
export type WorkbookUnit = "mm" | "cm" | "in";

/** A unit that plain masses may be in. */
export type MassUnit = "kg" | "lb";

/** Millimetres in one of each unit; exact. Source: 16 CFR 500.19 and NIST SP 811. */
export const MM_PER: Readonly<Record<LengthUnit, Mm>> = { mm: 1, cm: 10, m: 1000, in: 25.4, ft: 304.8 };

/** Millimetres in one point of board caliper, 0.001 in. Source: Roberts and Etherington, 1982. */
export const MM_PER_POINT: Mm = 0.0254;

/** Kilograms in one pound, exact. Source: NIST SP 811. */
export const KG_PER_LB = 0.45359237;

/** Square metres in one square foot, exact: 0.3048 squared. */
export const M2_PER_FT2 = 0.09290304;

const NOISE_STEPS_PER_UNIT = 1e9;
/** Above this a double is itself coarser than the noise that `tidy` removes. */
const LARGEST_TIDIED = Number.MAX_SAFE_INTEGER / NOISE_STEPS_PER_UNIT;

/** A length in mm as a number of `unit`. */
export function fromMm(mm: Mm, unit: LengthUnit): number {
  return mm / MM_PER[unit];
}

/** An area in m2 as the workbook answers it: ft2 when the unit is `in`, else m2. */
export function areaIn(areaM2: number, unit: WorkbookUnit): number {
  return unit === "in" ? areaM2 / M2_PER_FT2 : areaM2;
}

/** A mass in kg as the workbook answers it: lb when the unit is `in`, else kg. */
export function massIn(kg: number, unit: WorkbookUnit): number {
  return massUnitOf(unit) === "lb" ? kg / KG_PER_LB : kg;
}

/** The unit of masses in a workbook of that unit. */
export function massUnitOf(unit: WorkbookUnit): MassUnit {
  return unit === "in" ? "lb" : "kg";
}

/** An answer without binary noise, to nine decimals: 263.52499999999998 is 263.525. Never minus zero. */
export function tidy(x: number): number {
  return Math.abs(x) > LARGEST_TIDIED ? x : Math.round(x * NOISE_STEPS_PER_UNIT) / NOISE_STEPS_PER_UNIT + 0;
}
