import { useMemo } from "preact/hooks";
import { boardTotalRows, boardTotals } from "../estimate/boardTotals";
import type { Estimate } from "../estimate/estimate";
import { costTable, moreTables } from "../estimate/estimateTables";
import { leftOutRows } from "../estimate/leftOutRows";
import { SHEETS_HEADINGS, sheetsRow } from "../estimate/sheetAnswers";
import type { StockPlan } from "../estimate/stockPlans";
import type { Cell } from "../item/answers";
import type { SizedSurvey } from "../survey/sizeSurvey";
import { FigureTable } from "./FigureTable";

interface TablesProps {
  readonly survey: SizedSurvey;
  readonly plans: readonly StockPlan[];
  readonly estimate: Estimate;
}

/** What the total is made of: sheets to buy, the lines of the estimate, boards, what is left out. */
export function CostTables({ survey, plans, estimate }: TablesProps) {
  const { settings } = survey;
  const { answerUnit: unit } = settings;
  const boards = useMemo(() => boardTotalRows(boardTotals(survey, plans), settings), [survey, plans]);
  const more: readonly (readonly [label: string, rows: readonly (readonly Cell[])[]])[] = [
    ...moreTables(estimate, settings),
    ["By board", boards],
    ["Left out", leftOutRows(survey, plans, estimate)],
  ];
  return (
    <>
      <h2>Sheets to buy</h2>
      <FigureTable
        label="Sheets to buy"
        unit={unit}
        rows={[SHEETS_HEADINGS, ...plans.map((plan) => sheetsRow(plan, settings))]}
      />
      <p class="quiet">No plan can use less than “least possible”. “Cannot be fewer” is proved.</p>
      <h2>Estimate{settings.currency === "" ? "" : `, ${settings.currency}`}</h2>
      <FigureTable label="Estimate" unit={unit} rows={costTable(estimate, settings)} />
      {more
        .filter(([, rows]) => rows.length > 1)
        .map(([label, rows]) => (
          <section key={label}>
            <h3>{label}</h3>
            <FigureTable label={label} unit={unit} rows={rows} />
          </section>
        ))}
    </>
  );
}
