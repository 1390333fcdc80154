import { DEFAULT_FIGURES } from "../item/figureCatalogue";
import { counted } from "./numbers";
import type { PaneModel, PaneState } from "./paneState";
import type { PanePlace } from "./viewProps";
import { writeFigures } from "./writeFigures";

interface StepsProps {
  readonly model: PaneModel;
  readonly state: PaneState;
  readonly place: PanePlace;
  /** Shows what was read; undefined while nothing is. */
  readonly check?: () => void;
}

/** The way to the first columns, in three steps; it is gone when they stand. */
export function FirstSteps({ model, state, place, check }: StepsProps) {
  const { survey, doing } = state;
  if (survey !== undefined && survey.standing.length > 0) return null;
  const busy = doing !== undefined;
  const add = () =>
    model.write("Adding the columns", (now) => ({ ...writeFigures(now, DEFAULT_FIGURES), shows: true }));
  return (
    <section class="steps" aria-label="First steps">
      <h2>Three steps to your first columns</h2>
      <ol>
        <li class={survey === undefined ? "" : "done"}>
          <strong>Choose your survey</strong>
          <p>
            {survey === undefined
              ? "A sheet with a row for each object, and headings for height, width and depth. Open it, or type it into this sheet."
              : `${survey.chosen.said}, ${counted(survey.sized.survey.items.length, "row")}.`}
          </p>
          {place.openFile !== undefined && (
            <p class="row">
              <button type="button" class={survey === undefined ? "main" : ""} disabled={busy} onClick={place.openFile}>
                {survey === undefined ? "Open a survey" : "Open another"}
              </button>
            </p>
          )}
        </li>
        <li>
          <strong>Check what was read</strong>
          <p>
            {survey === undefined ? "Which column is what, and in which unit." : readInShort(survey.sized.outcomes)}
          </p>
          {check !== undefined && (
            <p class="row">
              <button type="button" disabled={busy} onClick={check}>
                Show the columns
              </button>
            </p>
          )}
        </li>
        <li>
          <strong>Add columns</strong>
          <p>Outside sizes, board, caliper and board area for every row. You choose others under Columns.</p>
          {survey !== undefined && (
            <p class="row">
              <button type="button" class="main" disabled={busy} onClick={() => void add()}>
                Add the usual columns
              </button>
            </p>
          )}
        </li>
      </ol>
    </section>
  );
}

function readInShort(outcomes: NonNullable<PaneState["survey"]>["sized"]["outcomes"]): string {
  const count = (state: string) => outcomes.filter((outcome) => outcome.state === state).length;
  const problems = count("problem");
  const rest = problems === 0 ? "" : `; ${counted(problems, "row")} cannot, see Problems`;
  return `${counted(count("sized"), "enclosure")} can be sized${rest}.`;
}
