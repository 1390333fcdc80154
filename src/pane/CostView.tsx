import { useEffect, useMemo, useRef, useState } from "preact/hooks";
import { estimateOf } from "../estimate/estimate";
import { exampleNotice } from "../estimate/examplePrices";
import { groupedJobs } from "../estimate/groupedJobs";
import type { StockPlan } from "../estimate/stockPlans";
import { plainRows } from "../item/answers";
import { plainError } from "../measure/fault";
import { belowEstimate, demandGroups } from "../estimate/budget";
import { estimateTable } from "../estimate/estimateTables";
import { layoutTable } from "../estimate/sheetAnswers";
import { estimateSheet } from "../filling/estimateSheet";
import { CostTables } from "./CostTables";
import { CostTotal } from "./CostTotal";
import type { ViewProps } from "./viewProps";
import { PaperButtons } from "./PaperButtons";
import { searchPlans, type StockProgress } from "./searchPlans";
import { SheetPictures } from "./SheetPictures";
import { usePaper } from "./usePaper";

/** Seconds of the searches on offer; 0 is the short one, whose plan is the same on any machine. */
const SEARCHES = [
  [0, "short"],
  [10, "10 s a stock"],
  [60, "1 min a stock"],
  [600, "10 min a stock"],
] as const;

interface Running {
  readonly stocks: readonly StockProgress[];
  readonly done: number;
  readonly stop: AbortController;
}

/** Sheets, cutting plans and the materials budget, by the grouping that the settings ask for. */
export function CostView({ model, survey, state, place }: ViewProps) {
  const { sized, cells, chosen } = survey;
  const { settings } = sized;
  const [seconds, setSeconds] = useState(0);
  const [running, setRunning] = useState<Running>();
  const asked = useMemo(() => groupedJobs(demandGroups(sized, cells, settings.estimateBy), settings), [sized]);
  // A write that changes nothing to be cut leaves the plans as good as they were.
  const work = useMemo(() => JSON.stringify(asked.jobs), [asked]);
  const [found, setFound] = useState<{ readonly of: string; readonly plans: readonly StockPlan[] }>();
  const stop = useRef<AbortController>();

  const search = async (time: number): Promise<void> => {
    const aborter = new AbortController();
    stop.current = aborter;
    model.say([]);
    const show = (stocks: readonly StockProgress[], done: number) => setRunning({ stocks, done, stop: aborter });
    try {
      const plans = await searchPlans(asked.jobs, {
        worker: place.planWorker,
        seconds: time,
        cores: navigator.hardwareConcurrency,
        signal: aborter.signal,
        onProgress: show,
      });
      setFound({ of: work, plans });
      if (aborter.signal.aborted) model.say(["Stopped: the best plans so far are kept."]);
    } catch (error) {
      model.say([plainError(error).message], true);
    } finally {
      setRunning(undefined);
    }
  };
  useEffect(() => {
    void search(0);
    return () => stop.current?.abort();
  }, []);

  const stale = found !== undefined && found.of !== work;
  // A search reports many times a second: what is found already is not made and drawn again each time.
  const groups = useMemo(
    () => (found === undefined || stale ? undefined : asked.planned(found.plans)),
    [asked, found, stale],
  );
  const plans = useMemo(() => groups?.flatMap((group) => group.plans) ?? [], [groups]);
  const estimate = useMemo(() => (groups === undefined ? undefined : estimateOf(groups, settings)), [groups]);
  const tables = useMemo(
    () => estimate !== undefined && <CostTables survey={sized} plans={plans} estimate={estimate} />,
    [estimate],
  );
  const pictures = useMemo(() => <SheetPictures plans={plans} unit={settings.answerUnit} />, [plans]);
  const paper = usePaper({
    model,
    sheet: chosen.sheet.name,
    fonts: place.fonts,
    saving: place.saving ?? "download",
  });
  const writeEstimate = () =>
    model.write("Writing the estimate to a sheet", () => ({
      edits: {
        sheets: [
          estimateSheet(
            plainRows(estimateTable(estimate!, settings)),
            plainRows(belowEstimate(sized, estimate!)),
            exampleNotice(estimate!, settings),
          ),
        ],
      },
    }));
  const writePlan = () =>
    model.write("Writing the cutting plan to a sheet", () => ({
      edits: { sheets: [{ name: "Cutting plan", rows: plainRows(layoutTable(plans, settings)), replaceable: true }] },
    }));
  const busy = running !== undefined || state.doing !== undefined;
  return (
    <>
      {stale && <p class="wrong">The survey has changed since: plan the sheets again.</p>}
      {estimate !== undefined && (
        <>
          {paper.done !== undefined && <progress value={paper.done} max={1} aria-label="Making the pages" />}
          <CostTotal
            source={{ survey: sized, cells, plans, estimate }}
            plans={plans}
            estimate={estimate}
            paper={paper}
            busy={busy}
            write={() => void writeEstimate()}
          />
        </>
      )}
      <div class="row">
        <label class="field">
          Search
          <select value={seconds} onChange={(event) => setSeconds(Number(event.currentTarget.value))}>
            {SEARCHES.map(([value, words]) => (
              <option key={value} value={value}>
                {words}
              </option>
            ))}
          </select>
        </label>
        <button type="button" disabled={busy} onClick={() => void search(seconds)}>
          Plan the sheets
        </button>
        {running !== undefined && (
          <button type="button" onClick={() => running.stop.abort()}>
            Stop, keep the best
          </button>
        )}
      </div>
      {running !== undefined && <SearchProgress {...running} />}
      {estimate !== undefined && (
        <>
          {tables}
          <div class="row">
            <button type="button" disabled={busy} onClick={() => void writePlan()}>
              Write the cutting plan to a sheet
            </button>
          </div>
          {pictures}
          <PaperButtons paper={paper} source={{ survey: sized, cells, plans, estimate }} estimate={estimate} />
          <p class="quiet">Cut along a heavy steel rule, fingers behind its edge; a board shear's guard stays on.</p>
        </>
      )}
    </>
  );
}

function SearchProgress({ stocks, done }: Running) {
  return (
    <div class="progress">
      <progress value={done} max={1} aria-label="Search" />
      <ul class="lines" aria-live="off">
        {stocks.map(({ stock, sheets, gap }, index) => (
          <li key={index}>
            {stock}:{" "}
            {Number.isNaN(gap)
              ? "waiting"
              : `${sheets}, ${gap === 0 ? "cannot be fewer" : `at most ${(gap * 100).toFixed(1)} % over the least`}`}
          </li>
        ))}
      </ul>
    </div>
  );
}
