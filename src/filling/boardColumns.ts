import { PREFERRED_BOARD } from "../settings/definitions/materialSettings";
import { settingKey } from "../settings/given";
import { plainName } from "../settings/names";
import type { SizedSurvey } from "../survey/sizeSurvey";
import type { NewColumn } from "../workbook/edits";

/** The figure that all others of a row take: the board in force. */
export const BOARD = "board";
const CALIPER = "caliper";

/** The figures with the board first and its caliper beside it, since every other figure of a row takes that board. */
export function withBoards(figures: readonly string[]): readonly string[] {
  if (figures.length === 0) return figures;
  const others = figures.filter((name) => ![BOARD, CALIPER].includes(plainName(name)));
  return [BOARD, CALIPER, ...others];
}

/** The column for the keeper's own decision, empty, where the survey has none: it is never written again. */
export function preferenceColumn({ survey }: SizedSurvey, figures: readonly string[]): readonly NewColumn[] {
  const has = survey.recognition.settings.some(({ setting }) => settingKey(setting) === "wallBoard");
  if (has || figures.length === 0) return [];
  return [{ heading: PREFERRED_BOARD, cells: survey.items.map(() => null), ofUser: true, width: PREFERENCE_WIDTH }];
}

/** Wide enough for the name of a board, in characters. */
const PREFERENCE_WIDTH = 24;
