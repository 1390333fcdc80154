import { MM_PER, type LengthUnit, type Mm } from "../measure/units";
import type { MassUnit } from "../measure/unitWords";
import { SIZES, type Amount, type AmountRow, type AmountSurvey, type Size } from "./amounts";
import { median } from "./statistics";
import { density, type Measures } from "./likelihood";

/** What the measures of a survey are in millimetres and kilograms, in the units that are taken for its columns. */
export interface Scales {
  readonly of: (size: Size, amount: Amount<LengthUnit>) => Mm;
  readonly kg: (amount: Amount<MassUnit>, unit?: MassUnit) => number;
}

export function scalesOf(
  survey: AmountSurvey,
  units: ReadonlyMap<number, string>,
  plain: LengthUnit = survey.unit,
): Scales {
  const unitOf = (size: Size | "weight") => {
    const column = survey.columns[size];
    return column === undefined ? undefined : (units.get(column.column) ?? column.unit);
  };
  const ofSize = Object.fromEntries(SIZES.map((size) => [size, (unitOf(size) as LengthUnit | undefined) ?? plain]));
  const ofWeight = (unitOf("weight") as MassUnit | undefined) ?? defaultMass(survey);
  return {
    of: (size, { value, unit }) => value * MM_PER[unit ?? ofSize[size]!],
    kg: ({ value, unit }, other) => value * KG_PER[unit ?? other ?? ofWeight],
  };
}

export function defaultMass({ unit }: AmountSurvey): MassUnit {
  return unit === "in" ? "lb" : "kg";
}

export function measuresOf(row: AmountRow, { of, kg }: Scales, mass?: MassUnit): Measures | undefined {
  const { height, width, depth, weight } = row;
  if (height === undefined || width === undefined || depth === undefined) return undefined;
  return {
    height: of("height", height),
    width: of("width", width),
    depth: of("depth", depth),
    weightKg: weight === undefined ? undefined : kg(weight, mass),
  };
}

export function measured(survey: AmountSurvey, scale: Scales, mass?: MassUnit): readonly Measures[] {
  return sampled(survey.rows).flatMap((row) => measuresOf(row, scale, mass) ?? []);
}

export function medianDensity(survey: AmountSurvey, scale: Scales, mass?: MassUnit): number | undefined {
  return median(measured(survey, scale, mass).flatMap((each) => density(each) ?? []));
}

export const KG_PER: Readonly<Record<MassUnit, number>> = { g: 0.001, kg: 1, lb: 0.45359237, oz: 0.45359237 / 16 };

/** Rows that are too few to judge a column by. */
export const FEWEST = 8;

/** Rows by which a whole survey is judged. */
const SAMPLE = 80;

function sampled(rows: readonly AmountRow[]): readonly AmountRow[] {
  const step = Math.max(1, Math.floor(rows.length / SAMPLE));
  return step === 1 ? rows : rows.filter((_, i) => i % step === 0);
}
