import type { Mm } from "../measure/units";
import { SIZES, type AmountRow, type AmountSurvey, type Size } from "./amounts";
import { median, rounded, within } from "./statistics";
import { density, isDistinct, likelihood, type Measures } from "./likelihood";
import { choice, ODD_SIZES, type Question } from "./questions";
import { rowsText } from "./rowsText";
import { scaled } from "./scaledMeasures";
import { FEWEST, measuresOf, type Scales } from "./scales";

/** Rows with a measure far from all others, unless the object is plainly of another sort, or of an impossible density. */
export function oddRows(survey: AmountSurvey, scale: Scales): readonly number[] {
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

export function oddQuestion(odd: readonly number[], survey: AmountSurvey, scale: Scales): Question {
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

export function unusual(survey: AmountSurvey, scale: Scales): readonly string[] {
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

/** Density of a row, kg/m3, outside which it is odd; outside the narrower pair it is noted. */
const POSSIBLE_DENSITY: readonly [number, number] = [2, 25_000];

const NOTED_DENSITY: readonly [number, number] = [50, 8000];

/** A plain number above this is refused anyway, mm. */
const REFUSED: Mm = 5000;

/** Scaled median absolute deviations, and the ratio to the median, from which a measure is odd. */
const DEVIATIONS = 3.5;

const RATIO = 8;

const MAD_SCALE = 1.4826;

/** Of a column; where more are odd, that is how the collection is. */
const ODD_SHARE = 0.02;

/** An odd row must fit that much better with one measure some other number of times as large. */
const BETTER_ODD = 2;

const SLIPS: readonly number[] = [10, 1 / 10, 100, 1 / 100, 25.4, 1 / 25.4];

function isSlip(measures: Measures, size: Size): boolean {
  const asIs = likelihood(measures);
  return SLIPS.some((factor) => likelihood(scaled(measures, { sizes: [size], factor })) - asIs >= BETTER_ODD);
}

function densityOf(row: AmountRow, scale: Scales): number | undefined {
  const measures = measuresOf(row, scale);
  return measures === undefined ? undefined : density(measures);
}
