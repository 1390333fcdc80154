import { useMemo } from "preact/hooks";
import { completenessOf, completenessText } from "../estimate/completeness";
import type { Estimate } from "../estimate/estimate";
import { exampleNotice } from "../estimate/examplePrices";
import type { StockPlan } from "../estimate/stockPlans";
import type { PaperSource } from "../paper/paperFile";
import { moneyText } from "./numbers";
import type { Paper } from "./usePaper";

interface TotalProps {
  readonly source: PaperSource;
  readonly plans: readonly StockPlan[];
  readonly estimate: Estimate;
  readonly paper: Paper;
  readonly busy: boolean;
  readonly write: () => void;
}

/** What it costs in all, what that number is worth, and the budget on paper or on a sheet. */
export function CostTotal({ source, plans, estimate, paper, busy, write }: TotalProps) {
  const { survey } = source;
  const { settings } = survey;
  const completeness = useMemo(() => completenessText(completenessOf(survey, plans)), [survey, plans]);
  const notice = exampleNotice(estimate, settings);
  return (
    <section class="total" aria-label="Total">
      <p class="sum">
        {moneyText(estimate.total, settings.currency)}
        {notice !== "" && <span class="example">example prices or hours</span>}
      </p>
      <p>
        {estimate.lines.some(({ material, cost }) => material === "labour" && cost > 0)
          ? "For material and work"
          : "For material; work has no rate yet"}
        {estimate.contingency > 0 ? `, with ${settings.contingency} % for the unexpected` : ""}.
      </p>
      <p>{completeness}</p>
      {settings.currency === "" && <p class="quiet">No currency is named: choose one under Set up.</p>}
      {notice !== "" && (
        <details>
          <summary>What is an example</summary>
          <p>{notice}</p>
        </details>
      )}
      <div class="row">
        {paper.saving !== "never" && (
          <button
            type="button"
            class="main"
            disabled={paper.done !== undefined}
            onClick={() => void paper.make(source, ["estimate"], "budget")}
          >
            Budget as PDF
          </button>
        )}
        <button type="button" disabled={busy} onClick={write}>
          Write the estimate to a sheet
        </button>
      </div>
    </section>
  );
}
