import { MM_PER, type LengthUnit, type Mm, type WorkbookUnit } from "../measure/units";
import type { MassUnit } from "../measure/unitWords";
import { columnLetters } from "./columnLetters";
import { density, isDistinct, likelihood, type Measures } from "./likelihood";
import { choice, ODD_SIZES, type Choice, type Question } from "./questions";

/** A number of a row as it stands: with the unit that its own text gives, or none. */
export interface Amount<Unit> {
  readonly value: number;
  readonly unit: Unit | undefined;
}

type Size = "height" | "width" | "depth";
export const SIZES: readonly Size[] = ["height", "width", "depth"];

/** The measures of a row as they stand. */
export interface AmountRow {
  readonly row: number;
  readonly height: Amount<LengthUnit> | undefined;
  readonly width: Amount<LengthUnit> | undefined;
  readonly depth: Amount<LengthUnit> | undefined;
  readonly weight: Amount<MassUnit> | undefined;
}

/** Where measures come from. Three sizes may come from one column of dimension texts. */
export interface AmountColumn {
  readonly column: number;
  /** How an option names it. */
  readonly name: string;
  /** Named by its heading, or by the user. */
  readonly unit: string | undefined;
}

export interface AmountSurvey {
  readonly rows: readonly AmountRow[];
  readonly columns: Readonly<Partial<Record<Size | "weight", AmountColumn>>>;
  /** What plain sizes are in where nothing says it, and whether the user said so. */
  readonly unit: WorkbookUnit;
  readonly unitGiven: boolean;
  readonly odd: "keep" | "leave-out" | undefined;
}

export interface Plausibility {
  readonly questions: readonly Question[];
  /** Units that the measures themselves settle, by column. */
  readonly units: ReadonlyMap<number, string>;
  /** Rows that the user wants to leave out. */
  readonly leftOut: ReadonlySet<number>;
  readonly notes: readonly string[];
}

/**
 * Whether the measures of a survey can be true: what to ask, and the units that its own numbers settle.
 *
 * Source: derived; the limits are from memory and are proved by rescaling generated surveys in the tests.
 */
export function plausibility(survey: AmountSurvey): Plausibility {
  const settled = settleUnits(survey);
  const nothing = { units: settled.units, leftOut: new Set<number>(), notes: settled.notes };
  if (settled.questions.length > 0) return { ...nothing, questions: settled.questions };
  const scale = scalesOf(survey, settled.units);
  const weighed = askWeights(survey, scale);
  if (weighed !== undefined) return { ...nothing, questions: [weighed] };
  const misfit = survey.odd === undefined ? askColumn(survey, scale) : undefined;
  if (misfit !== undefined) return { ...nothing, questions: [misfit] };
  const odd = oddRows(survey, scale);
  const notes = [...settled.notes, ...unusual(survey, scale)];
  if (odd.length === 0 || survey.odd === "keep") return { ...nothing, notes, questions: [] };
  if (survey.odd === "leave-out")
    return {
      ...nothing,
      notes: [...notes, `left out, since their sizes are odd: ${rowsText(odd)}`],
      leftOut: new Set(odd),
      questions: [],
    };
  return { ...nothing, notes, questions: [oddQuestion(odd, survey, scale)] };
}

/** Median of the largest measure of an object, mm: outside these a unit that nothing names is asked about. */
const USUAL_LARGEST: readonly [Mm, Mm] = [150, 1500];
/** The same for a unit that weights settle. */
const POSSIBLE_LARGEST: readonly [Mm, Mm] = [15, 3000];
/** Median density, kg/m3, of objects in the right unit. */
const USUAL_DENSITY: readonly [number, number] = [30, 6000];
/** Density of a row, kg/m3, outside which it is odd; outside the narrower pair it is noted. */
const POSSIBLE_DENSITY: readonly [number, number] = [2, 25_000];
const NOTED_DENSITY: readonly [number, number] = [50, 8000];
const CANDIDATES: readonly WorkbookUnit[] = ["mm", "cm", "in"];
/** Numbers of one column may lie this far apart in the middle and still be in one unit. */
const SAME_UNIT = 4;
/** Texts with a unit beside plain numbers, from which those are asked about where they fit in neither unit. */
const CARRIED_SHARE = 0.25;
/** A plain number above this is refused anyway, mm. */
const REFUSED: Mm = 5000;
/** Rows by which a whole survey is judged. */
const SAMPLE = 80;
/** Rows that are too few to judge a column by. */
const FEWEST = 8;

const KG_PER: Readonly<Record<MassUnit, number>> = { g: 0.001, kg: 1, lb: 0.45359237, oz: 0.45359237 / 16 };
const MASSES: readonly MassUnit[] = ["kg", "g", "lb", "oz"];

interface Scales {
  readonly of: (size: Size, amount: Amount<LengthUnit>) => Mm;
  readonly kg: (amount: Amount<MassUnit>, unit?: MassUnit) => number;
}

function scalesOf(survey: AmountSurvey, units: ReadonlyMap<number, string>, plain: LengthUnit = survey.unit): Scales {
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

function defaultMass({ unit }: AmountSurvey): MassUnit {
  return unit === "in" ? "lb" : "kg";
}

function measuresOf(row: AmountRow, { of, kg }: Scales, mass?: MassUnit): Measures | undefined {
  const { height, width, depth, weight } = row;
  if (height === undefined || width === undefined || depth === undefined) return undefined;
  return {
    height: of("height", height),
    width: of("width", width),
    depth: of("depth", depth),
    weightKg: weight === undefined ? undefined : kg(weight, mass),
  };
}

function measured(survey: AmountSurvey, scale: Scales, mass?: MassUnit): readonly Measures[] {
  return sampled(survey.rows).flatMap((row) => measuresOf(row, scale, mass) ?? []);
}

function settleUnits(survey: AmountSurvey) {
  const { columns, unit, unitGiven } = survey;
  const units = new Map<number, string>();
  const notes: string[] = [];
  const questions: Question[] = [];
  const isPlain = (size: Size) =>
    columns[size] !== undefined &&
    columns[size].unit === undefined &&
    survey.rows.some((row) => row[size] !== undefined && row[size].unit === undefined);
  let open = unitGiven ? [] : SIZES.filter(isPlain);
  for (const column of new Set(open.map((size) => columns[size]!.column))) {
    const mixed = mixedUnit(
      open.filter((size) => columns[size]!.column === column),
      survey,
    );
    if (mixed === undefined) continue;
    if (mixed.fits) {
      units.set(column, mixed.unit);
      notes.push(
        `column ${columnLetters(column)}: numbers without a unit are read in ${mixed.unit}, as the others of that column`,
      );
    } else questions.push(mixedQuestion(column, mixed.unit, survey));
  }
  open = open.filter((size) => !units.has(columns[size]!.column));
  if (open.length === 0 || questions.length > 0) return { units, notes, questions };
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

/** The unit that most texts of a column carry, and whether its plain numbers fit that. */
function mixedUnit(sizes: readonly Size[], { rows, unit }: AmountSurvey) {
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

function medianDensity(survey: AmountSurvey, scale: Scales, mass?: MassUnit): number | undefined {
  return median(measured(survey, scale, mass).flatMap((each) => density(each) ?? []));
}

/** Weights without a unit that fit another unit of mass alone. */
function askWeights(survey: AmountSurvey, scale: Scales): Question | undefined {
  const column = survey.columns.weight;
  const isPlain = survey.rows.some(({ weight }) => weight !== undefined && weight.unit === undefined);
  if (column === undefined || column.unit !== undefined || !isPlain) return undefined;
  const own = defaultMass(survey);
  const asIs = medianDensity(survey, scale);
  if (asIs === undefined || within(asIs, USUAL_DENSITY)) return undefined;
  const others = MASSES.filter((each) => each !== own && within(medianDensity(survey, scale, each), USUAL_DENSITY));
  if (others.length === 0) return undefined;
  return {
    about: "weight",
    text: `No unit of weight is named. Read in ${own}, a typical object would weigh ${rounded(asIs)} kg/m3; a book weighs about 650. In which unit is "${column.name}"?`,
    rows: [],
    choices: [...others, own].map((each) => choice(each, { words: [{ word: column.name, unit: each }] })),
  };
}

/** What one column may be off by: its numbers are this many times too great. */
const LARGE_FACTORS: readonly number[] = [10, 1 / 10, 25.4, 1 / 25.4];
/** Weights tell centimetres from inches too. */
const FACTORS: readonly number[] = [...LARGE_FACTORS, 2.54, 1 / 2.54];
const MASS_FACTORS: readonly number[] = [1000, 1 / 1000];
/** By how much, a row in the middle and over all rows, another unit must fit better before it is asked about. */
const BETTER_A_ROW = 0.75;
const BETTER_IN_ALL = 7;
/** Without weights the shapes alone must say so. */
const BETTER_BY_SHAPE = 1.5;
/** An odd row must fit that much better with one measure some other number of times as large. */
const BETTER_ODD = 2;
const SLIPS: readonly number[] = [10, 1 / 10, 100, 1 / 100, 25.4, 1 / 25.4];

interface Other {
  readonly sizes: readonly (Size | "weight")[];
  readonly factor: number;
}

/** Asks about the column, or the sizes together, that fit far better in another unit. */
function askColumn(survey: AmountSurvey, scale: Scales): Question | undefined {
  const all = measured(survey, scale);
  if (all.length < FEWEST) return undefined;
  const asIs = all.map(likelihood);
  const weighed = all.filter(({ weightKg }) => weightKg !== undefined).length * 2 > all.length;
  const [best] = others(survey, weighed)
    .map((other) => {
      const gains = all.map((each, i) => likelihood(scaled(each, other)) - asIs[i]!);
      return { other, gain: gains.reduce((sum, gain) => sum + gain, 0) };
    })
    .sort((a, b) => b.gain - a.gain);
  if (
    best === undefined ||
    best.gain / all.length < (weighed ? BETTER_A_ROW : BETTER_BY_SHAPE) ||
    best.gain < BETTER_IN_ALL
  )
    return undefined;
  return columnQuestion(best.other, all, survey);
}

function others({ columns }: AmountSurvey, weighed: boolean): readonly Other[] {
  const own = new Set(SIZES.map((size) => columns[size]?.column)).size === SIZES.length;
  return [
    ...(own
      ? SIZES.flatMap((size) => (weighed ? FACTORS : LARGE_FACTORS).map((factor) => ({ sizes: [size], factor })))
      : []),
    ...(weighed ? FACTORS.map((factor) => ({ sizes: SIZES, factor })) : []),
    ...(weighed ? MASS_FACTORS.map((factor) => ({ sizes: ["weight"] as const, factor })) : []),
  ];
}

function scaled(each: Measures, { sizes, factor }: Other): Measures {
  const by = (size: Size | "weight", value: number) => (sizes.includes(size) ? value / factor : value);
  return {
    height: by("height", each.height),
    width: by("width", each.width),
    depth: by("depth", each.depth),
    weightKg: each.weightKg === undefined ? undefined : by("weight", each.weightKg),
  };
}

function columnQuestion(other: Other, all: readonly Measures[], survey: AmountSurvey): Question {
  const { sizes } = other;
  const columns = [...new Set(sizes.flatMap((size) => survey.columns[size] ?? []))];
  const names = columns.map(({ name }) => `"${name}"`).join(", ");
  const heavy = median(all.flatMap((each) => density(each) ?? []));
  const then = median(all.flatMap((each) => density(scaled(each, other)) ?? []));
  const weight =
    heavy === undefined || then === undefined
      ? ""
      : ` A typical object would weigh ${rounded(heavy)} kg/m3 as it stands, and ${rounded(then)} in the other unit.`;
  const fitting = columns.flatMap((column) => otherUnit(column, other, survey) ?? []);
  const words = columns.map(({ name }, i) => ({ word: name, unit: fitting[i]! }));
  const keep = choice("the numbers are right as they are", { words: [{ word: ODD_SIZES, meaning: "keep" }] });
  const change: readonly Choice[] =
    fitting.length === columns.length ? [choice(`${names} is in ${fitting[0]!}`, { words })] : [];
  return {
    about: sizes[0]!,
    text: `The numbers of ${names} do not fit the others: they look ${factorText(other.factor)}.${weight} In which unit are they?`,
    rows: [],
    choices: [...change, keep],
  };
}

/** The unit in which the numbers of a column would be right. */
function otherUnit({ unit }: AmountColumn, { sizes, factor }: Other, survey: AmountSurvey): string | undefined {
  const isWeight = sizes[0] === "weight";
  const per: Readonly<Record<string, number>> = isWeight ? KG_PER : MM_PER;
  const now = per[unit ?? (isWeight ? defaultMass(survey) : survey.unit)]!;
  const [nearest] = Object.entries(per)
    .map(([name, size]) => ({ name, off: Math.abs(Math.log(size / (now / factor))) }))
    .sort((a, b) => a.off - b.off);
  return nearest !== undefined && nearest.off < CLOSE ? nearest.name : undefined;
}

const CLOSE = 0.05;

function factorText(factor: number): string {
  const times = (n: number) => String(Math.round(n * 100) / 100);
  return factor > 1 ? `${times(factor)} times too large` : `${times(1 / factor)} times too small`;
}

/** Scaled median absolute deviations, and the ratio to the median, from which a measure is odd. */
const DEVIATIONS = 3.5;
const RATIO = 8;
const MAD_SCALE = 1.4826;
/** Of a column; where more are odd, that is how the collection is. */
const ODD_SHARE = 0.02;

/** Rows with a measure far from all others, unless the object is plainly of another sort, or of an impossible density. */
function oddRows(survey: AmountSurvey, scale: Scales): readonly number[] {
  const odd = new Set<number>();
  // A row that lacks a measure, or has one that is refused, is a problem as it is.
  const complete = survey.rows.flatMap((row) => {
    const measures = measuresOf(row, scale);
    const isWhole = measures !== undefined && SIZES.every((size) => measures[size] <= REFUSED);
    return isWhole ? [{ row, measures }] : [];
  });
  for (const size of SIZES) {
    const values = complete.map(({ row, measures }) => ({ row, measures, log: Math.log(measures[size]) }));
    if (values.length < FEWEST) continue;
    const middle = median(values.map(({ log }) => log))!;
    const spread = median(values.map(({ log }) => Math.abs(log - middle)))! * MAD_SCALE;
    const far = values.filter(({ log }) => {
      const away = Math.abs(log - middle);
      return away > DEVIATIONS * spread && away >= Math.log(RATIO);
    });
    if (far.length > Math.max(1, Math.floor(values.length * ODD_SHARE))) continue;
    for (const { row, measures } of far) if (!isDistinct(measures) && isSlip(measures, size)) odd.add(row.row);
  }
  for (const { row, measures } of complete) {
    const heavy = density(measures);
    if (heavy !== undefined && !within(heavy, POSSIBLE_DENSITY)) odd.add(row.row);
  }
  return [...odd].sort((a, b) => a - b);
}

function isSlip(measures: Measures, size: Size): boolean {
  const asIs = likelihood(measures);
  return SLIPS.some((factor) => likelihood(scaled(measures, { sizes: [size], factor })) - asIs >= BETTER_ODD);
}

function oddQuestion(odd: readonly number[], survey: AmountSurvey, scale: Scales): Question {
  const [first] = odd;
  const row = survey.rows.find((each) => each.row === first)!;
  const sizes = SIZES.map((size) => (row[size] === undefined ? "?" : rounded(scale.of(size, row[size]))));
  const heavy = densityOf(row, scale);
  const weight = heavy === undefined || within(heavy, POSSIBLE_DENSITY) ? "" : `, ${rounded(heavy)} kg/m3`;
  return {
    about: "odd sizes",
    text: `${odd.length === 1 ? "One row is" : `${odd.length} rows are`} far from all others (${rowsText(odd)}; row ${first}: ${sizes.join(" x ")} mm${weight}). Correct them, or keep them, or leave them out?`,
    rows: odd,
    choices: [
      choice("keep them: they are right", { words: [{ word: ODD_SIZES, meaning: "keep" }] }),
      choice("leave them out", { words: [{ word: ODD_SIZES, meaning: "leave-out" }] }),
    ],
  };
}

function unusual(survey: AmountSurvey, scale: Scales): readonly string[] {
  const rows = survey.rows.flatMap((row) => {
    const heavy = densityOf(row, scale);
    return heavy !== undefined && !within(heavy, NOTED_DENSITY) ? [row.row] : [];
  });
  return rows.length === 0
    ? []
    : [
        `very light or very heavy for their size: ${rowsText(rows)}. Hats are light, coins heavy; else look at size and weight`,
      ];
}

function densityOf(row: AmountRow, scale: Scales): number | undefined {
  const measures = measuresOf(row, scale);
  return measures === undefined ? undefined : density(measures);
}

const MOST_NAMED = 6;

/** `rows 3, 8, 12, ...`. */
export function rowsText(rows: readonly number[]): string {
  const named = rows.slice(0, MOST_NAMED).join(", ");
  return `row${rows.length === 1 ? "" : "s"} ${named}${rows.length > MOST_NAMED ? ", ..." : ""}`;
}

function within(value: number | undefined, [least, most]: readonly [number, number]): boolean {
  return value !== undefined && value >= least && value <= most;
}

function median(values: readonly number[]): number | undefined {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)];
}

function rounded(value: number): string {
  return String(value >= 100 ? Math.round(value) : Number(value.toPrecision(3)));
}

function sampled(rows: readonly AmountRow[]): readonly AmountRow[] {
  const step = Math.max(1, Math.floor(rows.length / SAMPLE));
  return step === 1 ? rows : rows.filter((_, i) => i % step === 0);
}
