import type { ComponentChildren } from "preact";
import { useEffect, useMemo, useRef, useState } from "preact/hooks";
import { boardTotalRows, boardTotals } from "../estimate/boardTotals";
import { completenessOf, completenessText } from "../estimate/completeness";
import { estimateOf } from "../estimate/estimate";
import { exampleNotice } from "../estimate/examplePrices";
import { groupedJobs, type PlannedGroup } from "../estimate/groupedJobs";
import { plainRows } from "../item/answers";
import { plainError } from "../measure/fault";
import { belowEstimate, demandGroups } from "../estimate/budget";
import { costTable, estimateTable, MONEY_HEADINGS, moreTables } from "../estimate/estimateTables";
import { leftOutRows } from "../estimate/leftOutRows";
import { layoutTable, SHEETS_HEADINGS, sheetsRow } from "../estimate/sheetAnswers";
import { estimateSheet } from "../filling/estimateSheet";
import type { ViewProps } from "./viewProps";
import { PaperButtons } from "./PaperButtons";
import { searchPlans, type StockProgress } from "./searchPlans";
import { SheetPictures } from "./SheetPictures";
import { Table } from "./Table";

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
  const [found, setFound] = useState<{ readonly of: unknown; readonly groups: readonly PlannedGroup[] }>();
  const asked = useMemo(() => groupedJobs(demandGroups(sized, cells, settings.estimateBy), settings), [sized]);
  const stop = useRef<AbortController>();

  const search = async (time: number): Promise<void> => {
    const aborter = new AbortController();
    stop.current = aborter;
    const show = (stocks: readonly StockProgress[], done: number) => setRunning({ stocks, done, stop: aborter });
    try {
      const plans = await searchPlans(asked.jobs, {
        worker: place.planWorker,
        seconds: time,
        cores: navigator.hardwareConcurrency,
        signal: aborter.signal,
        onProgress: show,
      });
      setFound({ of: sized, groups: asked.planned(plans) });
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

  const plans = found?.groups.flatMap((group) => group.plans) ?? [];
  const stale = found !== undefined && found.of !== sized;
  const estimate = found === undefined ? undefined : estimateOf(found.groups, settings);
  const table = estimate === undefined ? [] : plainRows(costTable(estimate, settings));
  const notice = estimate === undefined ? "" : exampleNotice(estimate, settings);
  const more = estimate === undefined ? [] : moreTables(estimate, settings);
  const leftOut = plainRows(leftOutRows(sized, plans, estimate));
  const boards = useMemo(
    () => (found === undefined ? [] : plainRows(boardTotalRows(boardTotals(sized, plans), settings))),
    [found, sized],
  );
  const writeEstimate = () =>
    model.write("Writing the estimate to a sheet", () => ({
      edits: {
        sheets: [
          estimateSheet(
            plainRows(estimateTable(estimate!, settings)),
            plainRows(belowEstimate(sized, estimate!)),
            notice,
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
      {stale && <p class="wrong">The survey has changed since: plan the sheets again.</p>}
      {found !== undefined && !stale && (
        <>
          {boards.length > 0 && (
            <>
              <h2>By board</h2>
              <Table label="By board" headings={boards[0]!.map(String)} rows={boards.slice(1)} />
            </>
          )}
          <h2>Sheets to buy</h2>
          <Table
            label="Sheets to buy"
            headings={SHEETS_HEADINGS}
            rows={plainRows(plans.map((plan) => sheetsRow(plan, settings)))}
          />
          <p class="quiet">No plan can use less than “least possible”. “Cannot be fewer” is proved.</p>
          <h2>Estimate{settings.currency === "" ? "" : `, ${settings.currency}`}</h2>
          {notice !== "" && <p class="wrong">{notice}</p>}
          <p>{completenessText(completenessOf(sized, plans))}</p>
          <Table
            label="Estimate"
            headings={(table[0] ?? []).map(String)}
            rows={table.slice(1).map((row) => row.map((cell, column) => moneyShown(cell, table[0]![column])))}
          />
          {more.map(([label, rows]) => (
            <>
              <h3>{label}</h3>
              <Table
                label={label}
                headings={rows[0]!.map(String)}
                rows={plainRows(rows.slice(1)).map((row) =>
                  row.map((cell, column) => moneyShown(cell, String(rows[0]![column]))),
                )}
              />
            </>
          ))}
          {leftOut.length > 1 && (
            <>
              <h3>Left out</h3>
              <Table label="Left out" headings={leftOut[0]!.map(String)} rows={leftOut.slice(1)} />
            </>
          )}
          <div class="row">
            <button type="button" disabled={busy} onClick={() => void writeEstimate()}>
              Write the estimate to a sheet
            </button>
            <button type="button" disabled={busy} onClick={() => void writePlan()}>
              Write the cutting plan to a sheet
            </button>
          </div>
          <PaperButtons
            model={model}
            source={{ survey: sized, cells, plans, estimate }}
            sheet={chosen.sheet.name}
            fonts={place.fonts}
            saving={place.saving ?? "download"}
          />
          <SheetPictures plans={plans} unit={settings.unit} />
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

/** Money with its hundredths, as it is printed. */
function moneyShown(cell: string | number, heading: string | number | undefined): ComponentChildren {
  return typeof cell === "number" && MONEY_HEADINGS.has(String(heading)) ? (
    <span class="money">{cell.toFixed(2)}</span>
  ) : (
    cell
  );
}
