import { useMemo, useState } from "preact/hooks";
import { changedSettings, settingEdits, settingSays } from "../filling/settingEdits";
import { DEFINITIONS, type SettingKey } from "../settings/schema";
import { SETTING_GROUPS } from "../settings/settingGroups";
import { ChoiceField } from "./ChoiceField";
import type { WorkbookUnit } from "../measure/units";
import { makeSheets } from "./makeSheets";
import type { PaneModel, PaneSurvey } from "./paneState";
import { choiceOptions, otherChoice } from "./settingChoices";
import { UnitQuestion } from "./UnitQuestion";
import { writeAgain } from "./writeFigures";

interface FormProps {
  readonly model: PaneModel;
  readonly survey: PaneSurvey;
  readonly busy: boolean;
}

/** Every setting with what it means beside it; a choice goes into the settings sheet. */
export function SettingsForm({ model, survey, busy }: FormProps) {
  const [wanted, setWanted] = useState("");
  const { stock } = survey.sized.settings;
  const [to, setTo] = useState<WorkbookUnit>();
  const words = wanted.toLowerCase().trim().split(/\s+/);
  const fits = (key: SettingKey): boolean => {
    const { name, meaning } = DEFINITIONS[key];
    return words.every((word) => `${name} ${meaning}`.toLowerCase().includes(word));
  };
  const { surveyUnit } = survey.sized.settings;
  const change = (key: SettingKey, text: string) =>
    void model.write(
      `Setting ${DEFINITIONS[key].name}: ${text === "" ? "usual" : text}`,
      makeSheets,
      (now) => ({
        edits: settingEdits(now, { [key]: text }),
      }),
      (now) => (key === "answerUnit" && now.standing.length > 0 ? writeAgain(now, now.standing) : undefined),
    );
  const askUnit = (text: string): void => {
    const unit = text === "" ? DEFINITIONS.surveyUnit.fallback : (text as WorkbookUnit);
    setTo(unit === surveyUnit ? undefined : unit);
  };
  const changed = useMemo(() => changedSettings(survey), [survey]);
  const groups = SETTING_GROUPS.map(({ title, keys }) => ({
    title,
    keys: keys.filter(fits),
    changed: keys.filter((key) => changed.has(key)).length,
  })).filter(({ keys }) => keys.length > 0);
  return (
    <>
      <h2>Settings</h2>
      <label class="field">
        Find a setting
        <input
          type="search"
          value={wanted}
          placeholder="such as currency, turn-in, fit"
          onInput={(event) => setWanted(event.currentTarget.value)}
        />
      </label>
      {groups.length === 0 && <p>No setting has “{wanted.trim()}” in its name or meaning.</p>}
      {groups.map(({ title, keys, changed }) => (
        <details key={title} class="group" open={wanted.trim() !== ""}>
          <summary>
            {title} {changed > 0 && <span class="quiet">{changed} changed</span>}
          </summary>
          {keys.map((key) => {
            const { name, meaning, defaultText, unit } = DEFINITIONS[key];
            return (
              <div key={key} class="setting">
                <ChoiceField
                  label={labelOf(name, unit)}
                  value={settingSays(survey, key)}
                  usual={`usual: ${defaultText}`}
                  options={choiceOptions(key, stock)}
                  {...otherChoice(key)}
                  busy={busy}
                  choose={(text) => (key === "surveyUnit" ? askUnit(text) : change(key, text))}
                />
                <p class="quiet">{meaning}</p>
                {key === "surveyUnit" && to !== undefined && (
                  <UnitQuestion
                    model={model}
                    before={survey.sized}
                    to={to}
                    busy={busy}
                    done={() => setTo(undefined)}
                    giveUp={`Leave it at ${surveyUnit}`}
                  />
                )}
              </div>
            );
          })}
        </details>
      ))}
    </>
  );
}

/** Lengths and masses are written with a unit of their own, or in that of the shop. */
function labelOf(name: string, unit: string): string {
  return ["", "length", "mass"].includes(unit) ? name : `${name}, ${unit}`;
}
