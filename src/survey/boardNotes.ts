import { addedToGuide } from "../board/preparedGuide";
import { isByGuide } from "../board/boardInForce";
import { DEFINITIONS, type SettingKey } from "../settings/schema";
import { listed } from "../settings/names";
import type { SizedSurvey } from "./sizeSurvey";

/**
 * What a run says once about its boards: what was added to the guide, settings that overrule it for every row or have no
 * effect, and how many rows were chosen by size alone.
 */
export function boardNotes({ settings, outcomes }: SizedSurvey): readonly string[] {
  const { guide, origins } = settings;
  const retired = [...origins.keys()].filter((key) => DEFINITIONS[key].retired).map((key) => DEFINITIONS[key].name);
  const unweighed = outcomes.filter(
    (outcome) =>
      outcome.state === "sized" &&
      outcome.sized.weightKg === undefined &&
      outcome.sized.settings.itemDensity === undefined &&
      isByGuide(outcome.sized.kind, outcome.sized.requested),
  ).length;
  const named = (key: SettingKey) => origins.has(key) && settings[key] !== "auto";
  return [
    ...(guide === undefined ? [] : addedToGuide(guide)),
    ...(named("wallBoard") ? ["settings name one board for every box; write auto for the guide"] : []),
    ...(named("wrapperCard") ? ["settings name one card for every wrapper; write default for the guide"] : []),
    ...(retired.length === 0
      ? []
      : [
          `${listed(retired, "and")} ${retired.length === 1 ? "has" : "have"} no effect any more: the board guide chooses`,
        ]),
    ...(unweighed === 0
      ? []
      : [`${unweighed} ${unweighed === 1 ? "row has" : "rows have"} no weight: the board is chosen by size alone`]),
  ];
}
