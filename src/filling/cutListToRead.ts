import { benchLength } from "../measure/benchLength";
import { MM_PER } from "../measure/units";
import { cutListTable, type SurveyTable } from "../survey/surveyAnswers";
import type { SizedSurvey } from "../survey/sizeSurvey";

/**
 * The cut list as it is written to a file. In inches its numbers, which can be added up, are followed by what is read off
 * a rule, with its unit, so that no program takes `3/8` for a date.
 */
export function cutListToRead(sized: SizedSurvey): SurveyTable {
  const [headings = [], ...rows] = cutListTable(sized);
  if (sized.settings.answerUnit !== "in") return [headings, ...rows];
  const places = ["length", "width"].map((name) => headings.indexOf(name));
  return [
    [...headings, "length, on a rule", "width, on a rule"],
    ...rows.map((row) => [
      ...row,
      ...places.map((place) => {
        const size = row[place];
        return typeof size === "number" ? `${benchLength(size * MM_PER.in, "in")} in` : "";
      }),
    ]),
  ];
}
