import type { SurveyItem } from "../survey/surveyItems";
import { sizeFormulas, weightFormula, type FormulaPlace } from "./rowMeasures";

/** Measures of a row, or of rows that share a box, as formulas. */
export interface RowMeasures {
  readonly sizes: readonly string[];
  readonly weight: string;
  /** The weight as a text. */
  readonly weightText: string;
}

/**
 * Measures of rows that share a box, each size one text: `310*2|290|`, with the copies of each row. How they lie is for
 * the cell functions to know, so that the formulas follow every cell of every row.
 */
export function boxMeasures(set: readonly SurveyItem[], place: FormulaPlace): RowMeasures {
  const { quantity } = place.survey.recognition.columns;
  const joined = (values: readonly string[], counted = false) =>
    values
      .map((value, index) =>
        counted && quantity !== undefined
          ? `${value}&"*"&${place.cell(quantity.column, set[index]!.row)}&"|"`
          : `${value}&"|"`,
      )
      .join("&");
  const rows = set.map((item) => sizeFormulas(item, place, true));
  const of = (way: number) => rows.map((sizes) => sizes[way]!);
  const weights = set.map((item) => weightFormula(item, place, true));
  const weight = weights.every((each) => each === NOTHING) ? NOTHING : joined(weights, true);
  return {
    sizes: [joined(of(0), true), joined(of(1)), joined(of(2))],
    weight,
    weightText: weight,
  };
}

const NOTHING = '""';
