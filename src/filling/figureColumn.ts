import { InputError, NoAnswer } from "../measure/errors";
import type { Cell } from "../item/answers";
import type { Figure } from "../item/figure";
import { figureOf } from "../item/figureCatalogue";
import { rowFormula, untilQuantityMended } from "./rowFormula";
import { rowArguments, type RowArguments } from "./rowArguments";
import type { FormulaPlace } from "./rowMeasures";
import type { SizedSurvey } from "../survey/sizeSurvey";
import type { SurveyItem } from "../survey/surveyItems";
import { isFormula, type CellContent, type NewColumn, type PlainContent } from "../workbook/edits";
import { SHOWN_BLANK } from "../workbook/shownBlank";
import { headedFigure } from "./headedFigure";

/**
 * The column of one figure: live formulas with their results, or the results alone.
 *
 * @param index its place in the table of answers
 */
export function figureColumn(
  name: string,
  index: number,
  table: readonly (readonly Cell[])[],
  { survey, outcomes, settings }: SizedSurvey,
  formulas: { readonly place: FormulaPlace; readonly rows: readonly (RowArguments | undefined)[] } | undefined,
): NewColumn {
  const figure = figureOf(name);
  const cells = survey.items.map((item, row): CellContent => {
    const result = plainContent(table[row + 1]![index]!);
    const outcome = outcomes[row]!;
    // What is wrong with rows that share a box is said of them together, which no formula does.
    const live =
      outcome.state !== "left out" && outcome.state !== "in box" && (item.box === "" || outcome.state === "sized");
    const own = formulas?.rows[row];
    if (!live || formulas === undefined || own === undefined || figure === undefined) return result;
    const { place } = formulas;
    const formula = rowFormula(figure, item, place, own);
    if (formula.length > LONGEST_FORMULA) return result;
    const refused = outcome.state === "problem" && outcome.error === item.quantity;
    return {
      formula: refused ? untilQuantityMended(formula, item, place, result) : formula,
      result: result === "" ? SHOWN_BLANK : result,
    };
  });
  const format = figure === undefined ? undefined : FORMATS[figure.unit]?.[settings.answerUnit === "in" ? "in" : "mm"];
  const heading = headedFigure(name, settings.answerUnit);
  return {
    heading,
    formerHeading: name,
    ...(heading === name ? {} : { headingsElsewhere: headingsElsewhere(name, heading) }),
    cells,
    ...(format === undefined ? {} : { format }),
  };
}

/** The same figure in the other units that answers can be in. */
function headingsElsewhere(name: string, heading: string): readonly string[] {
  const all = WORKBOOK_UNITS.map((unit) => headedFigure(name, unit));
  return [...new Set(all)].filter((each) => each !== heading);
}

const WORKBOOK_UNITS = ["mm", "cm", "in"] as const;

/** The columns with one formula in their first cell, whose answers the others are. */
export function filledBy(formula: string, columns: readonly NewColumn[]): readonly NewColumn[] {
  return columns.map((column, index) => {
    const [first = "", ...rest] = column.cells;
    if (index > 0 || isFormula(first)) return column;
    return { ...column, cells: [{ formula, result: first === "" ? SHOWN_BLANK : first }, ...rest] };
  });
}

/** The cells of each row; of rows that share a box together, for its first row. */
export function argumentsOf(
  { survey, outcomes }: SizedSurvey,
  place: FormulaPlace,
): readonly (RowArguments | undefined)[] {
  const boxes = new Map<string, SurveyItem[]>();
  for (const item of survey.items)
    if (item.box !== "" && item.leftOut === "") boxes.set(item.box, [...(boxes.get(item.box) ?? []), item]);
  return survey.items.map((item, index) => {
    if (item.box === "" || item.leftOut !== "") return rowArguments(item, place);
    return outcomes[index]!.state === "in box" ? undefined : rowArguments(item, place, boxes.get(item.box));
  });
}

/** What Excel takes, less its own signs. A box of many rows may need more. */
const LONGEST_FORMULA = 8000;

const FORMATS: Readonly<Partial<Record<Figure["unit"], { readonly mm: string; readonly in: string }>>> = {
  length: { mm: "0.0", in: "# ??/32" },
  area: { mm: "0.000", in: "0.00" },
  count: { mm: "0", in: "0" },
  mass: { mm: "0.00", in: "0.00" },
};

function plainContent(cell: Cell): PlainContent {
  if (cell instanceof NoAnswer) return { error: "#N/A" };
  if (cell instanceof InputError) return { error: "#VALUE!" };
  return cell;
}
