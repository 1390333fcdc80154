import { figureOf } from "../item/figureCatalogue";
import type { SizedSurvey } from "../survey/sizeSurvey";
import { isFormula, type NewColumn } from "../workbook/edits";
import type { RowArguments } from "./rowArguments";

/** What is said of boxes of so many rows that a formula with all their cells would be too long: their figures are values. */
export function frozenBoxNotes(
  { survey, outcomes }: SizedSurvey,
  columns: readonly NewColumn[],
  rows: readonly (RowArguments | undefined)[],
): readonly string[] {
  return survey.items.flatMap(({ box }, index) => {
    const count = rows[index]?.set.length ?? 1;
    if (count === 1 || outcomes[index]!.state !== "sized") return [];
    const values = columns.flatMap(({ formerHeading, heading, cells }) =>
      figureOf(formerHeading ?? heading) === undefined || isFormula(cells[index]!) ? [] : [heading],
    );
    if (values.length === 0) return [];
    return `box ${box}: ${count} rows are too many for one formula, so values are written (${values.join(", ")}); when something changes, fill the columns again`;
  });
}
