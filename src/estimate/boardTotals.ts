import type { Cell } from "../item/answers";
import { areaIn } from "../measure/units";
import type { Settings } from "../settings/schema";
import type { SizedSurvey } from "../survey/sizeSurvey";
import { areaUnitOf, summaryOf, type BoardArea } from "../survey/summary";
import { demandsOf } from "./demandsOf";
import { planStock, toBuy, type StockPlan } from "./stockPlans";
import { stockJobs } from "./stockJobs";

/** What a survey takes of one board or card, with what to buy of it. */
export interface BoardTotal extends BoardArea {
  /** Sheets, or metres of a roll; undefined where the stock table gives no size. */
  readonly toBuy: number | undefined;
  readonly unit: "sheets" | "m";
  /** Pieces that no sheet holds, which are in no count. */
  readonly uncuttable: number;
  /** No plan was made: the area alone says that fewer are not enough. */
  readonly byArea: boolean;
}

/**
 * Boards and cards of a survey with their totals, by what is bought: a laminated board counts as its plies.
 *
 * @param areas of the summary, where it was made already
 * @param plans of their stocks, several of one stock where a budget has groups; undefined where none was made
 */
export function boardTotals(
  survey: SizedSurvey,
  plans: readonly StockPlan[] | undefined,
  areas: readonly BoardArea[] = summaryOf(survey).boardArea,
): readonly BoardTotal[] {
  const { settings } = survey;
  return areas.map((area) => {
    if (plans === undefined) return { ...area, ...leastByArea(area, settings), uncuttable: 0, byArea: true };
    const own = plans.filter(({ stock, plan }) => stock === area.stock && plan !== undefined);
    const bought = own.length === 0 ? undefined : own.reduce((sum, plan) => sum + toBuy(plan), 0);
    const uncuttable = own.flatMap(({ plan }) => plan!.uncuttable).reduce((sum, { count }) => sum + count, 0);
    return { ...area, toBuy: bought, unit: own[0]?.form === "roll" ? "m" : "sheets", uncuttable, byArea: false };
  });
}

/** What holds the net area at the very least. */
function leastByArea(
  { stock, area }: BoardArea,
  { stock: rows, answerUnit: unit }: Settings,
): Pick<BoardTotal, "toBuy" | "unit"> {
  const sizes = rows.flatMap((row) => (row.stock === stock && row.sheetWidth !== undefined ? [row] : []));
  const isRoll = sizes.some(({ sheetLength }) => sheetLength === undefined);
  const largest = Math.max(0, ...sizes.map((row) => (isRoll ? MM_PER_M : row.sheetLength!) * row.sheetWidth!));
  const each = areaIn(largest / MM2_PER_M2, unit);
  return { toBuy: each === 0 ? undefined : Math.ceil(area / each - NOISE), unit: isRoll ? "m" : "sheets" };
}

const MM_PER_M = 1000;
const MM2_PER_M2 = 1e6;
const NOISE = 1e-9;

/** The totals as a table with its headings; none where there is no board. */
export function boardTotalRows(
  totals: readonly BoardTotal[],
  { answerUnit: unit }: Settings,
): readonly (readonly Cell[])[] {
  if (totals.length === 0) return [];
  const isLaminated = totals.some(({ laminated }) => laminated > 0);
  return [
    [
      "board or card",
      "for items",
      `net area, ${areaUnitOf(unit)}`,
      "sheets",
      ...(isLaminated ? ["laminated for"] : []),
    ],
    ...totals.map((total) => [
      total.stock,
      total.items,
      total.area,
      sheetsCell(total),
      ...(isLaminated ? [total.laminated] : []),
    ]),
  ];
}

function sheetsCell({ toBuy: amount, unit, uncuttable, byArea }: BoardTotal): Cell {
  if (amount === undefined) return "no sheet size";
  if (unit === "sheets" && !byArea && uncuttable === 0) return amount;
  const without = uncuttable === 0 ? "" : ` (${uncuttable} ${uncuttable === 1 ? "piece fits" : "pieces fit"} no sheet)`;
  return `${byArea ? "at least " : ""}${amount}${unit === "m" ? " m" : ""}${without}`;
}

/**
 * A first cutting plan of each board and card, without a search: a count of sheets that surely is enough. Undefined for
 * more pieces than that is quick for.
 */
export function firstBoardPlans(survey: SizedSurvey): readonly StockPlan[] | undefined {
  // An item has one piece at least: a long survey need not be cut up to be counted.
  const items = survey.outcomes.reduce((sum, each) => sum + (each.state === "sized" ? each.quantity : 0), 0);
  if (items > MOST_PIECES) return undefined;
  const demands = demandsOf(survey).map((demand) => ({
    ...demand,
    parts: demand.parts.filter(({ material }) => material === "board" || material === "card"),
  }));
  const pieces = demands.reduce(
    (sum, { parts, quantity }) => sum + parts.reduce((own, { count }) => own + count, 0) * quantity,
    0,
  );
  if (pieces > MOST_PIECES) return undefined;
  return stockJobs(demands, survey.settings).map((job) => planStock(job, { budget: { iterations: 0 } }));
}

/** Pieces that a first plan takes about a second for. */
const MOST_PIECES = 3000;
