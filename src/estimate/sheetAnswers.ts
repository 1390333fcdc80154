import { sheetLabels } from "../cutting/sheetLabels";
import type { Piece } from "../cutting/types";
import { byThePiece, nothingCut, toBuy, type PlanOptions, type StockPlan } from "./stockPlans";
import { surveyPlans } from "./surveyPlans";
import { InputError, shown } from "../measure/errors";
import { areaIn, fromMm, tidy } from "../measure/units";
import { didYouMean, listed, plainName } from "../settings/names";
import type { Settings } from "../settings/schema";
import { isAll, type Answer, type Cell } from "../item/answers";
import type { SizedSurvey } from "../survey/sizeSurvey";

import { leftOutRows } from "./leftOutRows";
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
  "cannot be fewer",
  "yield",
  "net area",
] as const;

/** Where every piece lies, a row each: lengths along and across the grain of the sheet, from its corner. */
export function layoutAnswer(survey: SizedSurvey, board: string, options: PlanOptions = {}): Answer {
  return layoutTable(plansFor(survey, board, options), survey.settings);
}

/** The same of plans that are worked out already. */
export function layoutTable(plans: readonly StockPlan[], { answerUnit: unit }: Settings): readonly (readonly Cell[])[] {
  const size = (mm: number) => tidy(fromMm(mm, unit));
  const rows = plans.flatMap(({ stock, plan = { sheets: [] } }) => {
    const labels = sheetLabels(plan);
    return plan.sheets.flatMap((sheet, index) =>
      sheet.placements.map(({ piece, x, y, length, width }) => [
        stock,
        sheet.offCut === undefined ? Number(labels[index]) : labels[index]!,
        piece.item,
        partText(piece),
        size(x),
        size(y),
        size(length),
        size(width),
      ]),
    );
  });
  return [["stock", "sheet", "item", "part", "x", "y", "length", "width"], ...rows];
}

/** A strip is named with the walls that are cut from it: `lid strip: side wall x 2, head wall x 2`. */
export function partText({ part, strip, holds = [] }: Piece): string {
  if (holds.length === 0 || strip === undefined) return part;
  return `${part}: ${holds.map((held) => `${held.piece.part} x ${held.count}`).join(", ")}`;
}

function plansFor(survey: SizedSurvey, board: string, options: PlanOptions): readonly StockPlan[] {
  const { settings } = survey;
  const plans = surveyPlans(survey, options);
  if (isAll(board)) return plans.all();
  const wanted = plainName(board);
  const stock = plans.stocks.find((name) => plainName(name) === wanted);
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
    throw new InputError(
      "board",
      shown(board),
      `give all, ${listed(plans.stocks, "or")}`,
      didYouMean(board, plans.stocks),
    );
  }
  return [plans.planOf(stock)];
}

const MM_PER_M = 1000;

function amountOf(stockPlan: StockPlan, { answerUnit: unit }: Settings): Cell {
  if (byThePiece(stockPlan)) return stockPlan.pieces;
  return stockPlan.form === "none" ? tidy(areaIn(stockPlan.netAreaM2, unit)) : toBuy(stockPlan);
}

/** A line of the table of sheets. */
export function sheetsRow(stockPlan: StockPlan, settings: Settings): readonly Cell[] {
  const { stock, form, netAreaM2, plan } = stockPlan;
  const area = tidy(areaIn(netAreaM2, settings.answerUnit));
  const areaUnit = settings.answerUnit === "in" ? "ft2" : "m2";
  if (byThePiece(stockPlan)) return [stock, amountOf(stockPlan, settings), "pieces", "", "", "", area];
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
