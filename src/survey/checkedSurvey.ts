import { nameFor } from "../headings/columnQuestions";
import { kindMeaning } from "../headings/kindWords";
import { wordsOf } from "../headings/lexicon";
import { plausibility } from "../headings/plausibility";
import { rowsText } from "../headings/rowsText";
import { ALL_ROWS, choice, DECIMALS, ODD_SIZES, unanswered, type Question, type Word } from "../headings/questions";
import { isBlank } from "../measure/blank";
import { readGiven } from "../settings/given";
import { settingsForRows } from "../settings/settingsForRows";
import { noColumnQuestion } from "./enclosureWords";
import { keptOutcomes } from "./keptOutcomes";
import { readingOf, readSurvey, sizedAtOnce, type SizedSurvey } from "./sizeSurvey";
import { surveyAmounts } from "./surveyAmounts";
import type { Survey, SurveyOptions } from "./surveyItems";

/**
 * Sizes every row of a survey after asking whether it can be true: what commands, pane and page read. A cell function
 * cannot ask, and takes `sizeSurvey`.
 *
 * @param before an earlier reading with the same settings: its rows that read as they did are not sized again
 * @throws Unanswered with all questions that the user has not answered
 */
export function checkedSurvey(
  cells: readonly (readonly unknown[])[],
  settings: readonly unknown[],
  options: SurveyOptions = {},
  before?: SizedSurvey,
): SizedSurvey {
  const { survey, settings: shared } = readSurvey(cells, settings, { ...options, asks: true });
  const { words = [] } = options;
  const unitGiven = settings.some((each, place) => {
    const given = readGiven(each, `settings ${place + 1}`);
    return given.holds === "values" && given.values.some(({ key }) => key === "surveyUnit" || key === "textUnit");
  });
  const odd = words.findLast(({ word }) => word === ODD_SIZES)?.meaning;
  const found = plausibility({
    ...surveyAmounts(survey, shared, unitGiven),
    odd: odd === "keep" || odd === "leave-out" ? odd : undefined,
  });
  const [first, ...more] = [
    ...enclosureQuestion(survey, cells, words),
    ...survey.questions,
    ...decimalsQuestion(survey, words),
    ...found.questions,
  ];
  if (first !== undefined) throw unanswered([first, ...more]);
  const checked = {
    ...survey,
    units: { ...survey.units, ...settledUnits(survey, found.units) },
    notes: [...survey.notes, ...found.notes],
  };
  const leftOut = new Map([...found.leftOut].map((row) => [row, ODD]));
  const kept = before === undefined ? undefined : keptOutcomes(checked, before);
  return sizedAtOnce(readingOf(checked, settingsForRows(settings).withOwn, leftOut, kept));
}

const ODD = "odd size: left out";

function settledUnits({ recognition }: Survey, units: ReadonlyMap<number, string>): Survey["units"] {
  const { height, width, depth, dimensions } = recognition.columns;
  return Object.fromEntries(
    Object.entries({ height, width, depth, dimensions }).flatMap(([field, column]) => {
      const unit = column === undefined ? undefined : units.get(column.column);
      return unit === undefined ? [] : [[field, unit]];
    }),
  );
}

const MOST_CANDIDATES = 2;
/** Known words for an enclosure among the texts of a column that may be it. */
const LEAST_SHARE = 0.25;

function enclosureQuestion(
  { recognition }: Survey,
  cells: readonly (readonly unknown[])[],
  words: readonly Word[],
): readonly Question[] {
  const { columns, ticks, others, declined, firstRow, lastRow } = recognition;
  if (columns.enclosure !== undefined || ticks.length > 0 || lastRow < firstRow) return [];
  if (words.some(({ word }) => word === ALL_ROWS)) return [];
  const headings = new Map(others.map(({ column, heading }) => [column, heading]));
  const candidates = others.filter(({ column }) => {
    if (declined.includes(column)) return false;
    const filled = cells.slice(firstRow - 1, lastRow).flatMap((row) => {
      const cell = row[column - 1];
      return typeof cell === "string" && !isBlank(cell) ? [cell] : [];
    });
    const kinds = filled.filter((cell) => kindMeaning(wordsOf(cell)) !== undefined);
    return kinds.length > 0 && kinds.length >= filled.length * LEAST_SHARE;
  });
  return [
    noColumnQuestion(candidates.slice(0, MOST_CANDIDATES).map(({ column }) => ({ word: nameFor(column, headings) }))),
  ];
}

const DECIMAL_COMMA = /\d,\d{1,2}(?!\d)/;
/** `1.250`: thousands to one who writes decimal commas. */
const POINT_BEFORE_THREE = /(?<![\d.,])\d{1,3}\.\d{3}(?![\d.])/;

/** Asks about `1.250` in a survey that writes decimal commas. */
function decimalsQuestion({ items }: Survey, words: readonly Word[]): readonly Question[] {
  if (words.some(({ word }) => word === DECIMALS)) return [];
  let hasCommas = false;
  let example = "";
  const rows: number[] = [];
  for (const { row, cells, leftOut } of items) {
    if (leftOut !== "") continue;
    for (const cell of [cells.height, cells.width, cells.depth, cells.weight, cells.dimensions]) {
      if (typeof cell !== "string") continue;
      hasCommas ||= DECIMAL_COMMA.test(cell);
      const found = POINT_BEFORE_THREE.exec(cell)?.[0];
      if (found === undefined) continue;
      example ||= found;
      if (rows.at(-1) !== row) rows.push(row);
    }
  }
  if (!hasCommas || rows.length === 0) return [];
  const whole = example.replace(".", "");
  return [
    {
      about: "decimals",
      text: `This survey writes decimal commas. What is ${example} (${rowsText(rows)})?`,
      rows,
      choices: [
        choice(`${whole}: points stand before thousands`, { words: [{ word: DECIMALS, meaning: "comma" }] }),
        choice(`${Number(example)}: points are decimal points`, { words: [{ word: DECIMALS, meaning: "point" }] }),
      ],
    },
  ];
}
