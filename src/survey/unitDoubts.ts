import { SIZES } from "../headings/amounts";
import { mixedUnits } from "../headings/unnamedUnit";
import type { LengthUnit } from "../measure/units";
import type { SurveyReading } from "./sizeSurvey";
import { surveyAmounts } from "./surveyAmounts";

/**
 * What a cell function, which cannot ask, says of rows whose plain numbers lie between texts in another unit.
 *
 * @returns by the row of the table; empty where there is no doubt
 */
export function unitDoubts({
  survey,
  settings,
}: Pick<SurveyReading, "survey" | "settings">): ReadonlyMap<number, string> {
  const isText = (cell: unknown): boolean => typeof cell === "string" && cell !== "";
  const { items } = survey;
  // Numbers alone name no unit: most surveys are not read twice.
  if (!items.some(({ cells }) => SIZES.some((size) => isText(cells[size])) || isText(cells.dimensions)))
    return new Map();
  const amounts = { ...surveyAmounts(survey, settings, settings.origins.has("surveyUnit")), odd: undefined };
  const mixed = [...mixedUnits(amounts)].filter(([, { fits }]) => fits || !amounts.unitGiven);
  if (mixed.length === 0) return new Map();
  return new Map(
    amounts.rows.flatMap((row) => {
      const said = mixed.flatMap(([column, { unit }]) => {
        const own = SIZES.filter((size) => amounts.columns[size]?.column === column);
        if (own.every((size) => row[size] === undefined || row[size].unit !== undefined)) return [];
        const { name } = amounts.columns[own[0]!]!;
        return [
          `${name} is read in ${named(amounts.unit)}, but texts of its column are in ${named(unit)}: write the unit in the heading or in this cell`,
        ];
      });
      return said.length === 0 ? [] : [[row.row, said.join("; ")] as const];
    }),
  );
}

/** `in` twice in a sentence cannot be read. */
function named(unit: LengthUnit): string {
  return unit === "in" ? "inches" : unit;
}
