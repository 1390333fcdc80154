import { useMemo, useState } from "preact/hooks";
import { DEFAULT_FIGURES, figureOf, withProblem } from "../item/figureCatalogue";
import { PART_FIGURES } from "../item/figureOfPart";
import { withBoards } from "../filling/boardColumns";
import { boardNotes } from "../survey/boardNotes";
import { CaliperFilter } from "./CaliperFilter";
import { FigureGroups } from "./FigureGroups";
import { figureChoices, figuresToCut } from "./figureChoices";
import { counted } from "./numbers";
import { RecognisedColumns } from "./RecognisedColumns";
import { HoldChoice } from "./HoldChoice";
import type { ViewProps } from "./viewProps";
import { usualHold, writeFigures } from "./writeFigures";

/** A column further right would leave no room for the others. */
const FURTHEST_KEPT = 3;

/** What was recognised, and the figures that are, or will be, beside the survey. */
export function ColumnsView({ model, survey, state }: ViewProps) {
  const { sized, standing } = survey;
  const [ticked, setTicked] = useState<readonly string[]>(standing.length > 0 ? standing : DEFAULT_FIGURES);
  const [cutList, setCutList] = useState(false);
  const [wanted, setWanted] = useState("");
  const { identifier } = sized.survey.recognition.columns;
  const [keeps, setKeeps] = useState(true);
  const canKeep = identifier !== undefined && identifier.column <= FURTHEST_KEPT;
  const groups = useMemo(() => figureChoices(sized), [sized]);
  const offered = new Set(groups.flatMap(({ choices }) => choices.map(({ name }) => name)));
  const others = ticked.filter((name) => !offered.has(name));
  const toCut = figuresToCut(groups);
  const cutsAll = toCut.length > 0 && toCut.every((name) => ticked.includes(name));
  const tick = (name: string) =>
    setTicked(ticked.includes(name) ? ticked.filter((each) => each !== name) : [...ticked, name]);
  const tickToCut = () =>
    setTicked(cutsAll ? ticked.filter((name) => !toCut.includes(name)) : [...new Set([...ticked, ...toCut])]);
  const again = standing.length > 0;
  const [holds, setHolds] = useState(usualHold(survey));
  const write = () =>
    model.write(again ? "Writing the columns again" : "Adding the columns", (now) => ({
      ...writeFigures(now, ticked, { cutList, holds, keeps: canKeep && keeps }),
      shows: true,
    }));
  return (
    <>
      <CaliperFilter model={model} survey={survey} busy={state.doing !== undefined} />
      <details open={!again}>
        <summary>What was recognised</summary>
        <RecognisedColumns model={model} survey={survey} state={state} />
        <details>
          <summary>The same in words</summary>
          <ul class="lines">
            {[survey.chosen.said, ...sized.survey.recognition.said, ...sized.survey.notes, ...boardNotes(sized)].map(
              (line) => (
                <li key={line}>{line}</li>
              ),
            )}
          </ul>
        </details>
      </details>
      <h2>Figures for every row</h2>
      <p>Each becomes a column beside the survey.</p>
      <label class="field">
        Find a figure
        <input
          type="search"
          value={wanted}
          placeholder="such as side wall"
          onInput={(event) => setWanted(event.currentTarget.value)}
        />
      </label>
      <label>
        <input type="checkbox" checked={cutsAll} disabled={toCut.length === 0} onChange={tickToCut} />
        <span>
          Everything to cut for my kinds <span class="quiet">{counted(toCut.length, "column")}</span>
        </span>
      </label>
      <FigureGroups groups={groups} ticked={ticked} wanted={wanted} unit={sized.settings.answerUnit} tick={tick} />
      <OtherFigures
        others={others}
        tick={tick}
        add={(name) => setTicked([...new Set([...ticked, name])])}
        refuse={(name) =>
          model.say([`figure: got "${name}"; give ${PART_FIGURES.said}, such as ${PART_FIGURES.example}`], true)
        }
      />
      <HoldChoice
        holds={holds}
        rows={sized.survey.items.length}
        columns={withBoards(withProblem(ticked)).length}
        choose={setHolds}
      />
      <label>
        <input type="checkbox" checked={cutList} onChange={() => setCutList(!cutList)} />
        <span>Every part of every item too, on a sheet “Cut list”</span>
      </label>
      {canKeep && (
        <label>
          <input type="checkbox" checked={keeps} onChange={() => setKeeps(!keeps)} />
          <span>
            “{identifier.heading}” stays in sight <span class="quiet">unless columns are frozen already</span>
          </span>
        </label>
      )}
      <p class="row last">
        <button
          type="button"
          class="main"
          disabled={state.doing !== undefined || ticked.length === 0}
          onClick={() => void write()}
        >
          {again ? "Write the columns again" : "Add the columns"}
        </button>
        <span class="quiet">{counted(ticked.length, "figure")} chosen</span>
      </p>
    </>
  );
}

interface OthersProps {
  readonly others: readonly string[];
  readonly tick: (name: string) => void;
  readonly add: (name: string) => void;
  readonly refuse: (name: string) => void;
}

/** Figures of parts that no row has yet, by their names. */
function OtherFigures({ others, tick, add, refuse }: OthersProps) {
  const [other, setOther] = useState("");
  const addIt = (event: Event): void => {
    event.preventDefault();
    const name = other.trim();
    if (figureOf(name) === undefined) return refuse(name);
    add(name);
    setOther("");
  };
  return (
    <details class="group" open={others.length > 0}>
      <summary>Any other part {others.length > 0 && <span class="quiet">{others.length}</span>}</summary>
      {others.map((name) => (
        <label key={name}>
          <input type="checkbox" checked onChange={() => tick(name)} />
          <span>{name}</span>
        </label>
      ))}
      <form onSubmit={addIt} class="row">
        <label class="field">
          Part and measure
          <input value={other} placeholder="lid side wall length" onInput={(e) => setOther(e.currentTarget.value)} />
        </label>
        <button type="submit" disabled={other.trim() === ""}>
          Add it
        </button>
      </form>
    </details>
  );
}
