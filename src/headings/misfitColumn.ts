import { MM_PER } from "../measure/units";
import { SIZES, type AmountColumn, type AmountSurvey } from "./amounts";
import { median, rounded } from "./statistics";
import { density, likelihood, type Measures } from "./likelihood";
import { choice, ODD_SIZES, type Choice, type Question } from "./questions";
import { scaled, type Other } from "./scaledMeasures";
import { defaultMass, FEWEST, KG_PER, measured, type Scales } from "./scales";

/** Asks about the column, or the sizes together, that fit far better in another unit. */
export function askColumn(survey: AmountSurvey, scale: Scales): Question | undefined {
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

function columnQuestion(other: Other, all: readonly Measures[], survey: AmountSurvey): Question {
  const { sizes } = other;
  const columns = [...new Set(sizes.flatMap((size) => survey.columns[size] ?? []))];
  const names = columns.map(({ name }) => `"${name}"`).join(", ");
  const heavy = median(all.flatMap((each) => density(each) ?? []));
  const then = median(all.flatMap((each) => density(scaled(each, other)) ?? []));
  const weight =
    heavy === undefined || then === undefined
      ? ""
      : ` A typical object would weigh ${rounded(heavy)} kg/m3 as written, and ${rounded(then)} in the other unit.`;
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
