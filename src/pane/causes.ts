import { nameFor } from "../headings/columnQuestions";
import { columnLetters } from "../workbook/cellRef";
import { wordsOf } from "../headings/lexicon";
import type { Effect } from "../headings/questions";
import { KINDS } from "../enclosure/registry";
import { NO_ENCLOSURE } from "../item/sizeItem";
import { cellText } from "../measure/blank";
import { InputError } from "../measure/errors";
import { massUnitsBeside } from "../measure/unitWords";
import type { WorkbookUnit } from "../measure/units";
import type { SizedSurvey } from "../survey/sizeSurvey";
import type { SurveyItem } from "../survey/surveyItems";

/** Something that one choice sets right in every row that has it. */
export interface Cause {
  readonly text: string;
  readonly choices: readonly { readonly label: string; readonly effect: Effect }[];
}

const LENGTHS = ["mm", "cm", "m", "in", "ft"] as const;
const MEASURES = ["height", "width", "depth", "weight"] as const;
type Measure = (typeof MEASURES)[number];

/** What problems of rows have in common: a word for an enclosure or a unit, numbers of a column that fit no object. */
export function causesOf({ survey, outcomes, settings }: SizedSurvey): readonly Cause[] {
  const kinds = new Map<string, Counted>();
  const units = new Map<string, Counted>();
  const columns = new Map<Measure, number>();
  outcomes.forEach((outcome, index) => {
    if (outcome.state !== "problem" || !(outcome.error instanceof InputError)) return;
    const { cells } = survey.items[index]!;
    const { argument } = outcome.error;
    if (argument === "enclosure") count(kinds, cellText(cells.enclosure));
    if (argument === "unit") count(units, cellText(cells.unit));
    const measure = MEASURES.find((each) => each === argument);
    // Plain numbers are refused by their size alone, which another unit changes.
    if (measure !== undefined && isPlainNumber(measure, cells)) columns.set(measure, (columns.get(measure) ?? 0) + 1);
  });
  return [
    ...words(kinds, [...KINDS.map(({ name }) => name), NO_ENCLOSURE]),
    ...words(units, LENGTHS),
    ...[...columns].flatMap(([measure, rows]) => columnCause(measure, rows, survey, settings.surveyUnit)),
  ];
}

function isPlainNumber(measure: Measure, cells: SurveyItem["cells"]): boolean {
  const cell = cells[measure];
  return typeof cell === "number" ? cell > 0 : /^\d+(?:[.,]\d+)?$/.test(cellText(cell));
}

/** A word as its first row writes it, and how many rows say it. */
interface Counted {
  readonly word: string;
  readonly rows: number;
}

function count(counts: Map<string, Counted>, word: string): void {
  const key = wordsOf(word);
  if (key === "") return;
  const { word: first, rows } = counts.get(key) ?? { word, rows: 0 };
  counts.set(key, { word: first, rows: rows + 1 });
}

function words(counts: ReadonlyMap<string, Counted>, meanings: readonly string[]): readonly Cause[] {
  return [...counts.values()].map(({ word, rows }) => ({
    text: `${rows === 1 ? "One row says" : `${rows} rows say`} “${word}”. In all of them it means`,
    choices: meanings.map((meaning) => ({ label: meaning, effect: { words: [{ word, meaning }] } })),
  }));
}

function columnCause(
  measure: Measure,
  rows: number,
  { recognition: { columns, others }, units }: SizedSurvey["survey"],
  surveyUnit: WorkbookUnit,
): readonly Cause[] {
  const column = columns[measure];
  if (column === undefined) return [];
  const headings = new Map([...Object.values(columns), ...others].map((each) => [each.column, each.heading]));
  const word = nameFor(column.column, headings);
  const now = units[measure] === undefined ? "" : ` in ${units[measure]}`;
  return [
    {
      text: `${rows === 1 ? "One number" : `${rows} numbers`} of column ${columnLetters(column.column)} “${column.heading}” cannot be a ${measure}${now}. Plain numbers of that column are in`,
      choices: (measure === "weight" ? massUnitsBeside(surveyUnit) : LENGTHS)
        .filter((unit) => unit !== units[measure])
        .map((unit) => ({ label: unit, effect: { words: [{ word, unit }] } })),
    },
  ];
}
