import type { Cell } from "../item/answers";
import { AXES, DIRECTIONS } from "../item/answers";
import { problemText } from "../item/sizeItem";
import { cellText } from "../measure/blank";
import { benchLength } from "../measure/benchLength";
import { boardName } from "../settings/boards";
import type { SizedSurvey } from "../survey/sizeSurvey";
import type { SurveyCells } from "../survey/surveyAnswers";
import { conditionOf } from "./conditionOf";

/** Every row of the survey with its enclosure, or why it has none: nothing is left out. */
export function itemList(survey: SizedSurvey, cells: SurveyCells): readonly (readonly Cell[])[] {
  const { answerUnit: unit } = survey.settings;
  const condition = conditionOf(survey, cells);
  const outside = DIRECTIONS.map((direction) => `outside ${direction}, ${unit}`);
  return [
    ["identifier", "title", "enclosure", "number", ...outside, "board", "batch", "priority", "condition", "note"],
    ...survey.survey.items.map((item, index) => {
      const outcome = survey.outcomes[index]!;
      const about = [cellText(item.cells.batch), cellText(item.cells.priority), condition(item.row)];
      if (outcome.state === "sized") {
        const { sized, quantity } = outcome;
        const sizes = DIRECTIONS.map((direction) => benchLength(sized.assembly.outside[AXES[direction]], unit));
        const made = [sized.kind.name, quantity, ...sizes, boardName(sized.board)];
        return [item.identifier, item.title, ...made, ...about, item.box === "" ? "" : `box ${item.box}`];
      }
      return [
        item.identifier,
        item.title,
        cellText(item.cells.enclosure),
        "",
        "",
        "",
        "",
        "",
        ...about,
        noteOf(outcome),
      ];
    }),
  ];
}

function noteOf(outcome: SizedSurvey["outcomes"][number]): string {
  if (outcome.state === "problem") return problemText(outcome.error);
  if (outcome.state === "in box") return `in box ${outcome.box}`;
  return outcome.state === "left out" ? outcome.why : "";
}
