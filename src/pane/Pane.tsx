import type { ComponentChildren, ComponentType } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import { ColumnsView } from "./ColumnsView";
import { CostView } from "./CostView";
import { HelpPanel } from "./HelpPanel";
import { ItemView } from "./ItemView";
import type { PaneModel } from "./paneState";
import { QuestionsView } from "./QuestionsView";
import { ProblemsView } from "./ProblemsView";
import { SetUpView } from "./SetUpView";
import { UnitQuestion } from "./UnitQuestion";
import { StoreView } from "./StoreView";
import type { PanePlace, ViewName, ViewProps } from "./viewProps";

const VIEWS: readonly { readonly name: ViewName; readonly view: ComponentType<ViewProps> }[] = [
  { name: "This item", view: ItemView },
  { name: "Columns", view: ColumnsView },
  { name: "Problems", view: ProblemsView },
  { name: "Board and cost", view: CostView },
  { name: "Store", view: StoreView },
  { name: "Set up", view: SetUpView },
];

/** The whole pane: a row of views, the one that is chosen, and what the last act did. */
export function Pane({ model, place }: { readonly model: PaneModel; readonly place: PanePlace }) {
  const [state, setState] = useState(model.state());
  const [chosen, setChosen] = useState(0);
  const [visited, setVisited] = useState<readonly number[]>([0]);
  const [helps, setHelps] = useState(false);
  useEffect(() => {
    const show = () => setState(model.state());
    // What happened before this pane was listening.
    show();
    return model.watch(show);
  }, [model]);
  const { survey, wrong, doing, said, steps } = state;
  const choose = (index: number): void => {
    // What was said of one view says nothing of another.
    if (index !== chosen && said.lines.length > 0) model.say([]);
    setChosen(index);
    if (!visited.includes(index)) setVisited([...visited, index]);
  };
  const open = (view: ViewName): void => choose(VIEWS.findIndex(({ name }) => name === view));
  const move = (event: KeyboardEvent): void => {
    const step = { ArrowRight: 1, ArrowLeft: -1 }[event.key];
    if (step === undefined) return;
    event.preventDefault();
    const next = (chosen + step + VIEWS.length) % VIEWS.length;
    choose(next);
    document.getElementById(`view-tab-${next}`)?.focus();
  };
  return (
    <>
      <div class="top">
        <div role="tablist" aria-label="Views" class="views" onKeyDown={move}>
          {VIEWS.map(({ name }, index) => (
            <button
              key={name}
              type="button"
              role="tab"
              id={`view-tab-${index}`}
              aria-selected={index === chosen}
              aria-controls={visited.includes(index) ? `view-${index}` : undefined}
              tabIndex={index === chosen ? 0 : -1}
              onClick={() => choose(index)}
            >
              {name}
            </button>
          ))}
        </div>
        <button type="button" class="help" aria-expanded={helps} aria-controls="help" onClick={() => setHelps(!helps)}>
          Help
        </button>
      </div>
      {helps && <HelpPanel view={VIEWS[chosen]!.name} close={() => setHelps(false)} />}
      {survey !== undefined && state.beforeUnit !== undefined && (
        <div class="notice">
          <p>The unit was changed on the settings sheet.</p>
          <UnitQuestion
            model={model}
            before={state.beforeUnit}
            to={survey.sized.settings.surveyUnit}
            busy={doing !== undefined}
            done={model.settleUnit}
          />
        </div>
      )}
      {survey?.book.said?.map((line) => (
        <p key={line} class="notice">
          {line}
        </p>
      ))}
      {visited.map((index) => {
        const { view: View } = VIEWS[index]!;
        return (
          <KeptView key={index} index={index} shown={index === chosen}>
            {survey !== undefined ? (
              <View model={model} survey={survey} state={state} place={place} open={open} />
            ) : wrong !== undefined ? (
              <QuestionsView model={model} state={state} place={place} />
            ) : (
              <p>Reading the workbook…</p>
            )}
          </KeptView>
        );
      })}
      <div class="acts">
        <p role="status" class={said.failed ? "wrong" : ""}>
          {doing === undefined ? said.lines.map((line) => <span key={line}>{line}</span>) : `${doing}…`}
        </p>
        {steps.length > 0 && (
          <button type="button" disabled={doing !== undefined} onClick={() => void model.undo()}>
            Undo: {steps.at(-1)!.what}
          </button>
        )}
      </div>
    </>
  );
}

interface KeptViewProps {
  readonly index: number;
  readonly shown: boolean;
  readonly children: ComponentChildren;
}

/** A view that was visited stays as it was left, plans and ticks included; one that is hidden is not drawn again. */
function KeptView({ index, shown, children }: KeptViewProps) {
  const drawn = useRef(children);
  if (shown) drawn.current = children;
  return (
    <div
      role="tabpanel"
      id={`view-${index}`}
      aria-labelledby={`view-tab-${index}`}
      tabIndex={0}
      class="view"
      hidden={!shown}
    >
      {drawn.current}
    </div>
  );
}
