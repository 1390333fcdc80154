import type { ComponentChildren } from "preact";
import { useMemo } from "preact/hooks";
import { boardTotalRows, boardTotals } from "../estimate/boardTotals";
import type { Estimate } from "../estimate/estimate";
import { costTable, MONEY_HEADINGS, moreTables } from "../estimate/estimateTables";
import { leftOutRows } from "../estimate/leftOutRows";
import { SHEETS_HEADINGS, sheetsRow } from "../estimate/sheetAnswers";
import type { StockPlan } from "../estimate/stockPlans";
import { plainRows, type Cell } from "../item/answers";
import type { SizedSurvey } from "../survey/sizeSurvey";
import { Table } from "./Table";

interface TablesProps {
  readonly survey: SizedSurvey;
  readonly plans: readonly StockPlan[];
  readonly estimate: Estimate;
}

/** What the total is made of: sheets to buy, the lines of the estimate, boards, what is left out. */
export function CostTables({ survey, plans, estimate }: TablesProps) {
  const { settings } = survey;
  const boards = useMemo(() => boardTotalRows(boardTotals(survey, plans), settings), [survey, plans]);
  const more: readonly (readonly [label: string, rows: readonly (readonly Cell[])[]])[] = [
    ...moreTables(estimate, settings),
    ["By board", boards],
    ["Left out", leftOutRows(survey, plans, estimate)],
  ];
  return (
    <>
      <h2>Sheets to buy</h2>
      <Rows label="Sheets to buy" rows={[SHEETS_HEADINGS, ...plans.map((plan) => sheetsRow(plan, settings))]} />
      <p class="quiet">No plan can use less than “least possible”. “Cannot be fewer” is proved.</p>
      <h2>Estimate{settings.currency === "" ? "" : `, ${settings.currency}`}</h2>
      <Rows label="Estimate" rows={costTable(estimate, settings)} />
      {more
        .filter(([, rows]) => rows.length > 1)
        .map(([label, rows]) => (
          <section key={label}>
            <h3>{label}</h3>
            <Rows label={label} rows={rows} />
          </section>
        ))}
    </>
  );
}

/** A table with its headings in the first row, and money with its hundredths, as it is printed. */
function Rows({ label, rows }: { readonly label: string; readonly rows: readonly (readonly Cell[])[] }) {
  const [headings = [], ...lines] = plainRows(rows);
  return (
    <Table
      label={label}
      headings={headings.map(String)}
      rows={lines.map((line) => line.map((_, column) => shownCell(line, column, String(headings[column]))))}
    />
  );
}

function shownCell(line: readonly (string | number)[], column: number, heading: string): ComponentChildren {
  const cell = line[column];
  if (cell === "sheets" && line[column - 1] === 1) return "sheet";
  return typeof cell === "number" && MONEY_HEADINGS.has(heading) ? <span class="money">{cell.toFixed(2)}</span> : cell;
}
