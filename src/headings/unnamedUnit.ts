import { MM_PER, type LengthUnit, type Mm, type WorkbookUnit } from "../measure/units";
import { massUnitsBeside } from "../measure/unitWords";
import { SIZES, type AmountSurvey, type Size } from "./amounts";
import { columnLetters } from "../workbook/cellRef";
import { median, rounded, within } from "./statistics";
import { choice, type Question } from "./questions";
import { defaultMass, medianDensity, scalesOf, type Scales } from "./scales";

/**
 * The units of sizes that nothing names. Texts that carry theirs tell that of the other numbers of their column, whatever
 * the unit of the workbook: columns that were written for such a reading must be read so again.
 */
export function settleUnits(survey: AmountSurvey) {
  const { columns, unit, unitGiven } = survey;
  const units = new Map<number, string>();
  const notes: string[] = [];
  const questions: Question[] = [];
  for (const [column, mixed] of mixedUnits(survey)) {
    if (mixed.fits) {
      units.set(column, mixed.unit);
      notes.push(
        `column ${columnLetters(column)}: numbers without a unit are read in ${mixed.unit}, as the others of that column`,
      );
    } else if (!unitGiven) questions.push(mixedQuestion(column, mixed.unit, survey));
  }
  const open = plainSizes(survey).filter((size) => !units.has(columns[size]!.column));
  if (unitGiven || open.length === 0 || questions.length > 0) return { units, notes, questions };
  const fitting = CANDIDATES.filter((each) =>
    within(medianDensity(survey, scalesOf(survey, units, each)), USUAL_DENSITY),
  );
  const largest = median(
    survey.rows.flatMap((row) => {
      const mm = SIZES.flatMap((size) => (row[size] === undefined ? [] : scalesOf(survey, units).of(size, row[size])));
      return mm.length === 0 ? [] : [Math.max(...mm)];
    }),
  );
  // Weights without a unit of their own settle nothing: grams would make inches of millimetres.
  const weightsTell = columns.weight?.unit !== undefined && fitting.length > 0;
  if (largest === undefined || (within(largest, USUAL_LARGEST) && (!weightsTell || fitting.includes(unit))))
    return { units, notes, questions };
  const [only] = fitting;
  const sizeThen = only === undefined ? 0 : (largest / MM_PER[unit]) * MM_PER[only];
  if (weightsTell && fitting.length === 1 && only !== undefined && within(sizeThen, POSSIBLE_LARGEST)) {
    if (only !== unit) {
      for (const size of open) units.set(columns[size]!.column, only);
      notes.push(`no unit is named: sizes are read in ${only}, since only then the weights fit them`);
    }
    return { units, notes, questions };
  }
  const names = open.map((size) => columns[size]!.name);
  return { units, notes, questions: [unitQuestion([...new Set(names)], largest, survey)] };
}

/** Sizes in columns whose unit is not named, with numbers that name none either. */
function plainSizes({ columns, rows }: AmountSurvey): readonly Size[] {
  return SIZES.filter(
    (size) =>
      columns[size]?.unit === undefined && rows.some((row) => row[size] !== undefined && row[size].unit === undefined),
  );
}

/** Columns of plain numbers between texts that carry another unit, which those may be in too. */
export function mixedUnits(survey: AmountSurvey): ReadonlyMap<number, MixedUnit> {
  const sizes = plainSizes(survey);
  const at = (size: Size) => survey.columns[size]!.column;
  return new Map(
    [...new Set(sizes.map(at))].flatMap((column) => {
      const mixed = mixedUnit(
        sizes.filter((size) => at(size) === column),
        survey,
      );
      return mixed === undefined ? [] : [[column, mixed] as const];
    }),
  );
}

export interface MixedUnit {
  /** Of most texts. */
  readonly unit: LengthUnit;
  /** The plain numbers fit it, and not the unit of the workbook. */
  readonly fits: boolean;
}

/** Weights without a unit that fit another unit of mass alone. */
export function askWeights(survey: AmountSurvey, scale: Scales): Question | undefined {
  const column = survey.columns.weight;
  const isPlain = survey.rows.some(({ weight }) => weight !== undefined && weight.unit === undefined);
  if (column === undefined || column.unit !== undefined || !isPlain) return undefined;
  const own = defaultMass(survey);
  const asIs = medianDensity(survey, scale);
  if (asIs === undefined || within(asIs, USUAL_DENSITY)) return undefined;
  const fitting = massUnitsBeside(survey.unit).filter(
    (each) => each === own || within(medianDensity(survey, scale, each), USUAL_DENSITY),
  );
  if (fitting.length === 1) return undefined;
  return {
    about: "weight",
    text: `No unit of weight is named. Read in ${own}, a typical object would weigh ${rounded(asIs)} kg/m3; a book weighs about 650. In which unit is "${column.name}"?`,
    rows: [],
    choices: fitting.map((each) => choice(each, { words: [{ word: column.name, unit: each }] })),
  };
}

/** Median of the largest measure of an object, mm: outside these a unit that nothing names is asked about. */
const USUAL_LARGEST: readonly [Mm, Mm] = [150, 1500];

/** The same for a unit that weights settle. */
const POSSIBLE_LARGEST: readonly [Mm, Mm] = [15, 3000];

/** Median density, kg/m3, of objects in the right unit. */
const USUAL_DENSITY: readonly [number, number] = [30, 6000];

const CANDIDATES: readonly WorkbookUnit[] = ["mm", "cm", "in"];

/** Numbers of one column may lie this far apart in the middle and still be in one unit. */
const SAME_UNIT = 4;

/** Texts with a unit beside plain numbers, from which those are asked about where they fit in neither unit. */
const CARRIED_SHARE = 0.25;

/** The unit that most texts of a column carry, and whether its plain numbers fit that. */
function mixedUnit(sizes: readonly Size[], { rows, unit }: AmountSurvey): MixedUnit | undefined {
  const carried = new Map<LengthUnit, number[]>();
  const plain: number[] = [];
  for (const row of rows)
    for (const size of sizes) {
      const amount = row[size];
      if (amount === undefined) continue;
      if (amount.unit === undefined) plain.push(amount.value);
      else carried.set(amount.unit, [...(carried.get(amount.unit) ?? []), amount.value]);
    }
  const [most] = [...carried].sort(([, a], [, b]) => b.length - a.length);
  if (most === undefined || most[0] === unit || plain.length === 0) return undefined;
  const [other, values] = most;
  const ratio = median(plain)! / median(values)!;
  const asWorkbook = (median(plain)! * MM_PER[unit]) / (median(values)! * MM_PER[other]);
  const fits = ratio <= SAME_UNIT && ratio >= 1 / SAME_UNIT;
  const fitsAsIs = asWorkbook <= SAME_UNIT && asWorkbook >= 1 / SAME_UNIT;
  // Plain numbers that are as large as the others only in the workbook's own unit are in that.
  if (fitsAsIs && !fits) return undefined;
  const takes = fits && !fitsAsIs;
  return takes || values.length >= plain.length * CARRIED_SHARE ? { unit: other, fits: takes } : undefined;
}

function mixedQuestion(column: number, unit: LengthUnit, survey: AmountSurvey): Question {
  const { name } = Object.values(survey.columns).find((each) => each.column === column)!;
  return {
    about: "unit",
    text: `Some cells of column ${columnLetters(column)} "${name}" give their unit, such as ${unit}; others do not. In which unit are these?`,
    rows: [],
    choices: [...new Set([unit, ...CANDIDATES])].map((each) => choice(each, { words: [{ word: name, unit: each }] })),
  };
}

function unitQuestion(names: readonly string[], largest: Mm, { unit }: AmountSurvey): Question {
  const size = Math.round(largest * 10) / 10;
  return {
    about: "unit",
    text: `No unit is named. Read in ${unit}, a typical object would be ${size} mm at its longest. In which unit is ${names.join(", ")}?`,
    rows: [],
    choices: CANDIDATES.map((each) => choice(each, { unit: each })),
  };
}
