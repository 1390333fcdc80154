import { NoAnswer } from "../measure/errors";
import type { SizedSurvey } from "./sizeSurvey";
import type { SurveyTable } from "./surveyAnswers";

/** Rows named one by one. */
const MOST_NAMED = 5;
const LONGEST = 140;

/**
 * Figures that rows which can be sized have no answer to, each in a line that says where and why: a blank or `#N/A` in
 * a column has no words of its own.
 *
 * @param table the figures of the survey, under their names
 */
export function unanswered({ survey, outcomes }: SizedSurvey, table: SurveyTable): readonly string[] {
  const [names = [], ...rows] = table;
  return names.flatMap((name, column) => {
    const without = survey.items.flatMap(({ row }, index) => {
      const cell = rows[index]![column];
      return cell instanceof NoAnswer && outcomes[index]!.state === "sized"
        ? [{ row, why: cell.message.replace(/^part: /, "") }]
        : [];
    });
    const [first] = without;
    if (first === undefined) return [];
    const named = without.slice(0, MOST_NAMED).map(({ row }) => row);
    const more = without.length > MOST_NAMED ? ", ..." : "";
    const several = new Set(without.map(({ why }) => why)).size > 1;
    const where = without.length === 1 ? `row ${first.row}` : `${without.length} rows (${named.join(", ")}${more})`;
    return [`no ${String(name)} for ${where}: ${several ? `in row ${first.row} ` : ""}${inShort(first.why)}`];
  });
}

/** The reason, without the end of a long list such as all parts of a kind. */
function inShort(why: string): string {
  return why.length <= LONGEST ? why : `${why.slice(0, why.lastIndexOf(" ", LONGEST)).replace(/[,;]$/, "")}, ...`;
}
