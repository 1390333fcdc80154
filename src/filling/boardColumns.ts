import { PREFERRED_BOARD } from "../settings/definitions/materialSettings";
import { settingKey } from "../settings/given";
import { boardName, boardOf, LEAST_PLIES } from "../settings/boards";
import { plainName } from "../settings/names";
import { GREATEST_BOARD_MM, type Material } from "../settings/stock";
import type { SizedSurvey } from "../survey/sizeSurvey";
import type { NewColumn, NewSheet } from "../workbook/edits";

/** The figure that all others of a row take: the board in force. */
export const BOARD = "board";
const CALIPER = "caliper";

/** The figures with the board first and its caliper beside it, since every other figure of a row takes that board. */
export function withBoards(figures: readonly string[]): readonly string[] {
  if (figures.length === 0) return figures;
  const others = figures.filter((name) => ![BOARD, CALIPER].includes(plainName(name)));
  return [BOARD, CALIPER, ...others];
}

/** The column for the keeper's own decision, empty: it is never written again. */
export function preferenceColumn({ survey }: Pick<SizedSurvey, "survey">): NewColumn {
  return {
    heading: PREFERRED_BOARD,
    cells: survey.items.map(() => null),
    ofUser: true,
    choices: CHOICES_FORMULA,
    width: PREFERENCE_WIDTH,
  };
}

/** Whether a survey that gets figures lacks the column for its keeper's own decision. */
export function lacksPreference({ survey }: SizedSurvey, figures: readonly string[]): boolean {
  return figures.length > 0 && !survey.recognition.settings.some(({ setting }) => settingKey(setting) === "wallBoard");
}

/** The sheet of the boards to choose from, written again at every fill, so that it follows the stock. */
const CHOICES_SHEET = "board choices";
const CHOICES_FORMULA = `OFFSET('${CHOICES_SHEET}'!$A$2,0,0,COUNTA('${CHOICES_SHEET}'!$A:$A)-1,1)`;

/** The stocked boards and cards, and each board doubled: what the column of preferences offers. */
export function choicesSheet(survey: SizedSurvey): NewSheet {
  const all = boardsOnOffer(survey);
  return { name: CHOICES_SHEET, rows: [["boards to choose from"], ...all.map((name) => [name])], replaceable: true };
}

/** The names of what that sheet offers. */
export function boardsOnOffer({ settings: { stock } }: Pick<SizedSurvey, "settings">): readonly string[] {
  const names = (material: Material) => [
    ...new Set(stock.flatMap((row) => (row.material === material ? [row.stock] : []))),
  ];
  const doubled = [
    ...new Set(
      stock.flatMap((row) =>
        row.material === "board" && LEAST_PLIES * row.caliper <= GREATEST_BOARD_MM
          ? [boardName(boardOf(row, LEAST_PLIES))]
          : [],
      ),
    ),
  ];
  return [...names("board"), ...doubled, ...names("card")];
}

/** Wide enough for the name of a board, in characters. */
const PREFERENCE_WIDTH = 24;
