import { useState } from "preact/hooks";
import { settingEdit, settingSays } from "../filling/settingEdits";
import { DEFINITIONS, type SettingKey } from "../settings/schema";
import { SETTING_GROUPS } from "../settings/settingGroups";
import { ChoiceField } from "./ChoiceField";
import { makeSheets } from "./makeSheets";
import type { PaneModel, PaneSurvey } from "./paneState";
import { choiceOptions, otherChoice } from "./settingChoices";

interface FormProps {
  readonly model: PaneModel;
  readonly survey: PaneSurvey;
  readonly busy: boolean;
}

/** Every setting with what it means beside it; a choice goes into the settings sheet. */
export function SettingsForm({ model, survey, busy }: FormProps) {
  const [wanted, setWanted] = useState("");
  const { stock } = survey.sized.settings;
  const words = wanted.toLowerCase().trim().split(/\s+/);
  const fits = (key: SettingKey): boolean => {
    const { name, meaning } = DEFINITIONS[key];
    return words.every((word) => `${name} ${meaning}`.toLowerCase().includes(word));
  };
  const change = (key: SettingKey, text: string) =>
    void model.write(`Setting ${DEFINITIONS[key].name}: ${text === "" ? "usual" : text}`, makeSheets, (now) => ({
      edits: { cells: [settingEdit(now, key, text)] },
    }));
  const groups = SETTING_GROUPS.map(({ title, keys }) => ({
    title,
    keys: keys.filter((key) => !FIXED.has(key) && fits(key)),
    changed: keys.filter((key) => isChanged(survey, key)).length,
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
                  choose={(text) => change(key, text)}
                />
                <p class="quiet">{meaning}</p>
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

/** What plain numbers of the survey mean is not changed in passing. */
const FIXED: ReadonlySet<SettingKey> = new Set(["surveyUnit"]);

function isChanged(survey: PaneSurvey, key: SettingKey): boolean {
  const says = settingSays(survey, key);
  return says !== "" && says !== DEFINITIONS[key].defaultText;
}
