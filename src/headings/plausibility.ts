import type { AmountSurvey } from "./amounts";
import { askColumn } from "./misfitColumn";
import { oddQuestion, oddRows, unusual } from "./oddRows";
import type { Question } from "./questions";
import { rowsText } from "./rowsText";
import { scalesOf } from "./scales";
import { askWeights, settleUnits } from "./unnamedUnit";

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
