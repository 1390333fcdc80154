import { useState } from "preact/hooks";
import { FirstSteps } from "./FirstSteps";
import type { PaneModel, PaneState } from "./paneState";
import type { PanePlace } from "./viewProps";

interface QuestionsProps {
  readonly model: PaneModel;
  readonly state: PaneState;
  readonly place: PanePlace;
}

/** Why there is no survey to show, and every way on: the questions, else the sheet and the row of its headings. */
export function QuestionsView({ model, state, place }: QuestionsProps) {
  const { wrong, questions, answers, doing } = state;
  return (
    <>
      {questions.length === 0 && (
        <>
          <FirstSteps model={model} state={state} place={place} />
          <p class="wrong">{wrong}</p>
        </>
      )}
      {questions.map(({ text, choices }) => (
        <fieldset key={text} class="question">
          <legend>{text}</legend>
          {choices.map(({ label, effect, option }) => (
            <p key={option} class="row">
              <button type="button" disabled={doing !== undefined} onClick={() => void model.answer(effect)}>
                {label}
              </button>
            </p>
          ))}
        </fieldset>
      ))}
      {answers > 0 && (
        <p class="row">
          <button type="button" disabled={doing !== undefined} onClick={() => void model.takeBack()}>
            Take back the last answer
          </button>
        </p>
      )}
      <WhereItIs model={model} state={state} />
    </>
  );
}

function WhereItIs({ model, state }: Omit<QuestionsProps, "place">) {
  const { sheets, doing } = state;
  const [sheet, setSheet] = useState("");
  const [row, setRow] = useState("");
  const chosen = sheet || sheets[0] || "";
  const read = (event: Event): void => {
    event.preventDefault();
    const headingRow = Number(row);
    void model.answer({ sheet: chosen, ...(headingRow >= 1 ? { headingRow: Math.floor(headingRow) } : {}) });
  };
  return (
    <form onSubmit={read} class="question">
      <p>Or say where the survey is. Its headings may be in any of twelve languages.</p>
      <label class="field">
        Sheet
        <select value={chosen} onChange={(e) => setSheet(e.currentTarget.value)}>
          {sheets.map((name) => (
            <option key={name}>{name}</option>
          ))}
        </select>
      </label>
      <label class="field">
        Row of the headings, if it is not found
        <input type="number" min="1" value={row} onInput={(e) => setRow(e.currentTarget.value)} />
      </label>
      <p class="row">
        <button type="submit" disabled={doing !== undefined}>
          Read this sheet
        </button>
      </p>
    </form>
  );
}
