import { SETTING_KEYS } from "./given";
import { DEFINITIONS, type SettingKey, type Settings } from "./schema";
import type { ValueType } from "./valueType";

export const SETTINGS_HEADINGS = ["setting", "value", "from", "default", "unit", "meaning", "standing"] as const;

/**
 * Every setting with the value in force, where it came from, default, unit, meaning and standing.
 * The values are written so that the table can be given back as a settings range.
 */
export function settingsTable(settings: Settings): readonly (readonly (number | string)[])[] {
  return [
    SETTINGS_HEADINGS,
    ...SETTING_KEYS.filter((key) => !DEFINITIONS[key].retired).map((key) => {
      const { name, defaultText, unit, meaning, standing } = DEFINITIONS[key];
      const from = settings.origins.get(key) ?? "default";
      return [name, valueText(key, settings), from, defaultText, unit, meaning, standing];
    }),
  ];
}

/** Left to the kind of enclosure, or to another setting. */
const NOT_GIVEN = "default";

/** Where nobody gives them, answers are in the unit of the items, the guide decides a card, the kind which way an object lies, and a well its own cushions. */
const DECIDED_ELSEWHERE: ReadonlySet<SettingKey> = new Set<SettingKey>([
  "answerUnit",
  "wrapperCard",
  "restsOn",
  "cushionBase",
  "cushionSides",
  "cushionTop",
]);

function valueText(key: SettingKey, settings: Settings): number | string {
  // Nobody named a board: the guide decides where there is one, and its own default where there is none.
  if (key === "wallBoard" && !settings.origins.has(key)) return settings.wallBoard === "auto" ? "auto" : NOT_GIVEN;
  if (DECIDED_ELSEWHERE.has(key) && !settings.origins.has(key)) return NOT_GIVEN;
  if (settings.leftAuto.has(key)) return "auto";
  const value = settings[key];
  if (value === undefined || value === "") return NOT_GIVEN;
  return (DEFINITIONS[key].takes as ValueType<unknown>).written(value, { ...settings, unit: settings.surveyUnit });
}
