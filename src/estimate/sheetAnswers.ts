import type { Piece } from "../cutting/types";
import { cutFactsOf } from "./cutFacts";
import { estimateOf, type DemandGroup, type Estimate } from "./estimate";
import { labourHours } from "./labourHours";
import { isBlank } from "../measure/blank";
import { nothingCut, planNamed, stockPlans, toBuy, type Demand, type PlanOptions, type StockPlan } from "./stockPlans";
import { InputError, shown } from "../measure/errors";
import { areaIn, fromMm, tidy } from "../measure/units";
import { didYouMean, listed, plainName } from "../settings/names";
import type { Settings } from "../settings/schema";
import { isAll, type Answer, type Cell } from "../item/answers";
import { sizedRow } from "../item/figure";
import type { SizedSurvey } from "../survey/sizeSurvey";
import { problemText } from "../item/sizeItem";
import { columnNamed } from "../survey/columnNamed";
import type { SurveyCells } from "../survey/surveyAnswers";

/** What a sized survey asks of the stock: one demand for each enclosure that is sized. */
export function demandsOf({ survey, outcomes }: SizedSurvey): readonly Demand[] {
  return survey.items.flatMap((item, index) => {
    const outcome = outcomes[index]!;
    if (outcome.state !== "sized") return [];
    const { sized, quantity } = outcome;
    const parts = sizedRow(sized, quantity).parts();
    const facts = cutFactsOf(sized.assembly);
    return [{ item: item.identifier, row: item.row, enclosure: sized.kind.name, quantity, parts, facts }];
  });
}

/** Stock sheets to buy: of one stock its number (of a roll, its metres), or a table of all with what is proved. */
export function sheetsAnswer(survey: SizedSurvey, board: string, options: PlanOptions = {}): Answer {
  const plans = plansFor(survey, board, options);
  if (!isAll(board)) return amountOf(cuttable(plans[0]!), survey.settings);
  return [SHEETS_HEADINGS, ...plans.map((plan) => sheetsRow(plan, survey.settings)), ...leftOutRows(survey, plans)];
}

/** @throws InputError when no piece of the stock can be cut: 0 sheets would look like an answer */
function cuttable(stockPlan: StockPlan): StockPlan {
  if (!nothingCut(stockPlan)) return stockPlan;
  const { stock, pieces, plan } = stockPlan;
  const reasons = [...new Set(plan!.uncuttable.map(({ reason }) => reason))];
  throw new InputError(
    "board",
    stock,
    `none of its ${pieces} pieces can be cut (${listed(reasons, "or")})`,
    "add a larger sheet size to the stock table, or change the enclosure",
  );
}

export const SHEETS_HEADINGS = [
  "stock",
  "to buy",
  "unit",
  "least possible",
  "proved least",
  "yield",
  "net area",
] as const;

/** Where every piece lies, a row each: lengths along and across the grain of the sheet, from its corner. */
export function layoutAnswer(survey: SizedSurvey, board: string, options: PlanOptions = {}): Answer {
  return layoutTable(plansFor(survey, board, options), survey.settings);
}

/** The same of plans that are worked out already. */
export function layoutTable(plans: readonly StockPlan[], { unit }: Settings): readonly (readonly Cell[])[] {
  const size = (mm: number) => tidy(fromMm(mm, unit));
  const rows = plans.flatMap(({ stock, plan }) =>
    (plan?.sheets ?? []).flatMap((sheet, index) =>
      sheet.placements.map(({ piece, x, y, length, width }) => [
        stock,
        index + 1,
        piece.item,
        partText(piece),
        size(x),
        size(y),
        size(length),
        size(width),
      ]),
    ),
  );
  return [["stock", "sheet", "item", "part", "x", "y", "length", "width"], ...rows];
}

/** A strip is named with the walls that are cut from it: `lid strip: side wall x 2, head wall x 2`. */
export function partText({ part, strip, holds = [] }: Piece): string {
  if (holds.length === 0 || strip === undefined) return part;
  return `${part}: ${holds.map((held) => `${held.piece.part} x ${held.count}`).join(", ")}`;
}

/** The materials budget, then the rows that could not be sized. */
export function estimateAnswer(survey: SizedSurvey, cells: SurveyCells, options: PlanOptions = {}): Answer {
  const estimate = estimateFor(survey, cells, options);
  const plans = estimate.plans.flatMap((group) => group.plans);
  return [...estimateTable(estimate, survey.settings), ...leftOutRows(survey, plans, estimate)];
}

/** The budget grouped as the setting `estimate by` says, its stocks planned one after the other. */
export function estimateFor(survey: SizedSurvey, cells: SurveyCells, options: PlanOptions = {}): Estimate {
  const { settings } = survey;
  const groups = demandGroups(survey, cells, settings.estimateBy);
  return estimateOf(
    groups.map((group) => ({ ...group, plans: stockPlans(group.demands, settings, options) })),
    settings,
  );
}

/**
 * The enclosures of a survey by `material` (all together), `kind`, or a heading.
 *
 * @throws InputError when it is no heading of the survey, or the settings give hours for what is no kind
 */
export function demandGroups(survey: SizedSurvey, cells: SurveyCells, by: string): readonly DemandGroup[] {
  // What a budget could not use is said before a search that may take minutes.
  labourHours(survey.settings);
  const groupOf = grouping(survey, cells, by);
  const groups = new Map<string, Demand[]>();
  for (const demand of demandsOf(survey)) {
    const group = groupOf(demand);
    const members = groups.get(group);
    if (members === undefined) groups.set(group, [demand]);
    else members.push(demand);
  }
  return [...groups].map(([group, demands]) => ({ group, demands }));
}

export const ESTIMATE_HEADINGS = [
  "material",
  "stock",
  "net area",
  "to buy",
  "unit",
  "least possible",
  "yield",
  "unit price",
  "cost",
  "contingency",
  "total",
] as const;

/** Lines and totals as they are printed; totals are sums of the printed lines. */
export function estimateTable(
  { lines, cost, contingency, total }: Estimate,
  settings: Settings,
): readonly (readonly Cell[])[] {
  const grouped = lines.some(({ group }) => group !== "");
  const first = grouped ? [groupHeading(settings)] : [];
  const blanks = Array.from({ length: 7 + first.length }, () => "");
  return [
    [...first, ...ESTIMATE_HEADINGS],
    ...lines.map((line) => [
      ...(grouped ? [line.group] : []),
      line.material,
      line.stock,
      tidy(areaIn(line.netAreaM2, settings.unit)),
      tidy(line.unit === "m2" ? areaIn(line.quantity, settings.unit) : line.quantity),
      line.unit === "m2" && settings.unit === "in" ? "ft2" : line.unit,
      line.leastPossible ?? "",
      line.yield === undefined ? "" : Number(line.yield.toFixed(3)),
      line.unitPrice ?? "",
      ...[line.cost, line.contingency, line.total].map((sum) => (sum === 0 && line.notInCost !== undefined ? "" : sum)),
    ]),
    ["total", ...blanks, cost, contingency, total],
  ];
}

/**
 * What is in no figure of the sheets: rows that cannot be sized, and pieces that no sheet holds, by item and part; of an
 * estimate, what has no price too.
 */
export function leftOutRows(
  { survey, outcomes }: SizedSurvey,
  plans: readonly StockPlan[],
  estimate?: Estimate,
): readonly (readonly Cell[])[] {
  const rows = survey.items.flatMap((item, index): (readonly Cell[])[] => {
    const outcome = outcomes[index]!;
    return outcome.state === "problem" ? [[item.identifier, problemText(outcome.error)]] : [];
  });
  const pieces = plans.flatMap(({ stock, plan }) =>
    (plan?.uncuttable ?? []).map(({ piece, count, reason }): readonly Cell[] => [
      piece.item,
      `${piece.part} (${count}) of ${stock}: ${reason}`,
    ]),
  );
  // Groups of a budget lack the same prices, and that is reported once.
  const unpriced = new Map(
    (estimate?.lines ?? []).flatMap(({ stock, notInCost }) =>
      notInCost === undefined ? [] : [[`${stock}: ${notInCost}`, [stock, notInCost]] as const],
    ),
  );
  const all = [...rows, ...pieces, ...unpriced.values()];
  return all.length === 0 ? [] : [["left out", "reason"], ...all];
}

function groupHeading({ estimateBy }: Settings): string {
  return plainName(estimateBy) === "kind" ? "enclosure" : estimateBy;
}

function grouping({ survey }: SizedSurvey, cells: SurveyCells, estimateBy: string): (demand: Demand) => string {
  const by = plainName(estimateBy);
  if (by === "material") return () => "";
  if (by === "kind" || by === "enclosure") return ({ enclosure }) => enclosure;
  const index = columnNamed(estimateBy, survey, cells);
  if (index === undefined) {
    const headings = cells[survey.recognition.headingRow - 1] ?? [];
    const names = headings.filter((cell): cell is string => typeof cell === "string" && cell.trim() !== "");
    throw new InputError(
      "estimate by",
      shown(estimateBy),
      "give material, kind, or a heading of the survey",
      didYouMean(estimateBy, names),
    );
  }
  return ({ row }) => {
    const cell = cells[row - 1]?.[index];
    return isBlank(cell) ? "not given" : String(cell);
  };
}

function plansFor(survey: SizedSurvey, board: string, options: PlanOptions): readonly StockPlan[] {
  const demands = demandsOf(survey);
  const { settings } = survey;
  if (isAll(board)) return stockPlans(demands, settings, options);
  const wanted = plainName(board);
  const used = [...new Set(demands.flatMap(({ parts }) => parts.map((part) => part.stock)))];
  const stock = used.find((name) => plainName(name) === wanted);
  const listedStock = settings.stock.find((row) => plainName(row.stock) === wanted);
  if (stock === undefined) {
    // Listed, but nothing is cut from it.
    if (listedStock !== undefined)
      return [
        {
          stock: listedStock.stock,
          material: listedStock.material,
          form: "sheets",
          netAreaM2: 0,
          pieces: 0,
          plan: undefined,
          figures: undefined,
          sources: [],
        },
      ];
    throw new InputError("board", shown(board), `give all, ${listed(used, "or")}`, didYouMean(board, used));
  }
  const only = demands.map((demand) => ({ ...demand, parts: demand.parts.filter((part) => part.stock === stock) }));
  return [planNamed(stockPlans(only, settings, options), stock)!];
}

const MM_PER_M = 1000;

function amountOf(stockPlan: StockPlan, { unit }: Settings): Cell {
  return stockPlan.form === "none" ? tidy(areaIn(stockPlan.netAreaM2, unit)) : toBuy(stockPlan);
}

/** A line of the table of sheets. */
export function sheetsRow(stockPlan: StockPlan, settings: Settings): readonly Cell[] {
  const { stock, form, netAreaM2, plan } = stockPlan;
  const area = tidy(areaIn(netAreaM2, settings.unit));
  const areaUnit = settings.unit === "in" ? "ft2" : "m2";
  if (plan === undefined)
    return [stock, amountOf(stockPlan, settings), `${areaUnit} (no sheet size)`, "", "", "", area];
  if (nothingCut(stockPlan))
    return [stock, 0, `${form === "roll" ? "m" : "sheets"} (no piece fits)`, "", "no", "", area];
  const least = form === "roll" ? Math.ceil(plan.rollBound / MM_PER_M - 1e-9) : plan.sheetBound;
  const amount = amountOf(stockPlan, settings);
  return [
    stock,
    amount,
    form === "roll" ? "m" : "sheets",
    least,
    plan.provedLeast || amount === least ? "yes" : "no",
    Number((plan.pieceAreaM2 / plan.sheetAreaM2).toFixed(3)),
    area,
  ];
}
