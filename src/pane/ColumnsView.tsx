import { useMemo, useState } from "preact/hooks";
import { DEFAULT_FIGURES, figureOf, withProblem } from "../item/figureCatalogue";
import { PART_FIGURES } from "../item/figureOfPart";
import { boardNotes } from "../survey/boardNotes";
import { surveyEdits } from "../filling/surveyEdits";
import { figureChoices } from "./figureChoices";
import { RecognisedColumns } from "./RecognisedColumns";
import type { ViewProps } from "./viewProps";

/** What was recognised, and the figures that are, or will be, beside the survey. */
export function ColumnsView({ model, survey, state }: ViewProps) {
  const { sized, standing } = survey;
  const [ticked, setTicked] = useState<readonly string[]>(standing.length > 0 ? standing : DEFAULT_FIGURES);
  const [cutList, setCutList] = useState(false);
  const [other, setOther] = useState("");
  const groups = useMemo(() => figureChoices(sized), [sized]);
  const offered = new Set(groups.flatMap(({ choices }) => choices.map(({ name }) => name)));
  const others = ticked.filter((name) => !offered.has(name));
  const tick = (name: string) =>
    setTicked(ticked.includes(name) ? ticked.filter((each) => each !== name) : [...ticked, name]);
  const add = (event: Event): void => {
    event.preventDefault();
    const name = other.trim();
    if (figureOf(name) === undefined)
      return model.say([`figure: got "${name}"; give ${PART_FIGURES.said}, such as ${PART_FIGURES.example}`], true);
    setTicked([...new Set([...ticked, name])]);
    setOther("");
  };
  const write = () =>
    model.write(standing.length > 0 ? "Writing the columns again" : "Adding the columns", ({ book, answered }) => {
      const figures = withProblem(ticked);
      const { edits, unanswered } = surveyEdits(book, { ...answered, figures, values: false, cutList });
      return { edits, said: unanswered };
    });
  return (
    <>
      <details open={standing.length === 0}>
        <summary>What was recognised</summary>
        <RecognisedColumns model={model} survey={survey} state={state} />
        <ul class="lines">
          {[survey.chosen.said, ...sized.survey.recognition.said, ...sized.survey.notes, ...boardNotes(sized)].map(
            (line) => (
              <li key={line}>{line}</li>
            ),
          )}
        </ul>
      </details>
      <h2>Figures for every row</h2>
      <p>
        Each becomes a column of formulas beside the survey. They follow when a size, an enclosure or a setting changes.
      </p>
      {groups.map(({ purpose, choices }) => (
        <fieldset key={purpose}>
          <legend>{purpose}</legend>
          {choices.map(({ name, meaning }) => (
            <label key={name}>
              <input type="checkbox" checked={ticked.includes(name)} onChange={() => tick(name)} />
              <span>{meaning}</span>
            </label>
          ))}
        </fieldset>
      ))}
      <fieldset>
        <legend>Any other part</legend>
        {others.map((name) => (
          <label key={name}>
            <input type="checkbox" checked onChange={() => tick(name)} />
            <span>{name}</span>
          </label>
        ))}
        <form onSubmit={add} class="row">
          <label class="field">
            Part and measure
            <input value={other} placeholder="lid side wall length" onInput={(e) => setOther(e.currentTarget.value)} />
          </label>
          <button type="submit" disabled={other.trim() === ""}>
            Add it
          </button>
        </form>
      </fieldset>
      <label>
        <input type="checkbox" checked={cutList} onChange={() => setCutList(!cutList)} />
        <span>every part of every item too, on a sheet “Cut list”</span>
      </label>
      <p class="row last">
        <button
          type="button"
          class="main"
          disabled={state.doing !== undefined || ticked.length === 0}
          onClick={() => void write()}
        >
          {standing.length > 0 ? "Write the columns again" : "Add the columns"}
        </button>
      </p>
    </>
  );
}
