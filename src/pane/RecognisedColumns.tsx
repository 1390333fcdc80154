import { columnLetters } from "../workbook/cellRef";
import { nameFor } from "../headings/columnQuestions";
import { FIELDS, MEASURED } from "../headings/lexicon";
import { massUnitsBeside } from "../measure/unitWords";
import { NOT_USED, type Word } from "../headings/questions";
import type { ViewProps } from "./viewProps";

const LENGTHS = ["mm", "cm", "in"] as const;

/** Every column of the survey with what it is and its unit, to be changed. */
export function RecognisedColumns({ model, survey, state }: Pick<ViewProps, "model" | "survey" | "state">) {
  const { recognition, units } = survey.sized.survey;
  const settingsUnit = survey.sized.settings.surveyUnit;
  const { columns, settings, others } = recognition;
  const lines = [
    ...Object.entries(columns).map(([role, { column, heading }]) => ({
      column,
      heading,
      role,
      unit: units[role as never],
    })),
    ...settings.map(({ column, heading, setting }) => ({ column, heading, role: setting, unit: undefined })),
    ...others.map(({ column, heading }) => ({ column, heading, role: NOT_USED, unit: undefined })),
  ].sort((a, b) => a.column - b.column);
  const headings = new Map(lines.map(({ column, heading }) => [column, heading]));
  const say = (column: number, said: Omit<Word, "word">) =>
    void model.answer({ words: [{ word: nameFor(column, headings), ...said }] });
  const roles = (role: string) => [...new Set([NOT_USED, role, ...FIELDS])];
  return (
    <ul class="lines columns">
      {lines.map(({ column, heading, role, unit }) => {
        const letters = columnLetters(column);
        // Without headings columns are called by their letters.
        const name = heading === `column ${letters}` ? heading : `${letters} ${heading}`;
        const isMeasured = MEASURED.includes(role as never);
        const choices: readonly string[] = role === "weight" ? massUnitsBeside(settingsUnit) : LENGTHS;
        return (
          <li key={column}>
            <label class="field">
              <span>{name}</span>
              <select
                value={role}
                disabled={state.doing !== undefined}
                onChange={(e) => say(column, { meaning: e.currentTarget.value })}
              >
                {roles(role).map((each) => (
                  <option key={each}>{each}</option>
                ))}
              </select>
            </label>
            {isMeasured && (
              <select
                aria-label={`Unit of ${name}`}
                value={unit ?? ""}
                disabled={state.doing !== undefined}
                onChange={(e) => say(column, { unit: e.currentTarget.value })}
              >
                {unit === undefined && (
                  <option value="">{columns.unit === undefined ? `${settingsUnit}, usual` : "by row"}</option>
                )}
                {[...new Set([...choices, ...(unit === undefined ? [] : [unit])])].map((each) => (
                  <option key={each}>{each}</option>
                ))}
              </select>
            )}
          </li>
        );
      })}
    </ul>
  );
}
