import { planInSteps } from "../cutting/planCutting";
import { countPlan, type PlanFigures } from "../cutting/countPlan";
import { newSheets } from "../cutting/sheetLabels";
import { finish, type Steps } from "../cutting/steps";
import type { Budget, Plan, Progress } from "../cutting/types";
import { verifyPlan } from "../cutting/verify";
import type { Settings } from "../settings/schema";
import type { Material } from "../settings/stock";
import { type Demand, type SheetSource, type StockJob, stockJobs } from "./stockJobs";

/** How one stock is cut for all demands together. */
export interface StockPlan {
  readonly stock: string;
  readonly material: Material;
  /** `sheets` bought by number, `roll` by length; `none` where the stock table gives no size, so that only the area is known. */
  readonly form: "sheets" | "roll" | "none";
  readonly netAreaM2: number;
  readonly pieces: number;
  readonly plan: Plan | undefined;
  /** What the plan asks of the person who cuts it, counted apart from the search. */
  readonly figures: PlanFigures | undefined;
  /** What each of the plan's counts is taken from, in the same order; empty for a roll. */
  readonly sources: readonly SheetSource[];
}

export interface PlanOptions {
  readonly budget?: Budget;
  readonly seed?: number;
  readonly onProgress?: (stock: string, progress: Progress) => void;
  readonly shouldStop?: () => boolean;
}

/**
 * Plans one stock. The plan is checked by a verifier of its own before anyone sees it.
 *
 * @throws InputError when a sheet or allowance cannot be used
 * @throws Error when the plan fails its check, which is a bug
 */
export function planStock(job: StockJob, options: PlanOptions = {}): StockPlan {
  return finish(planStockInSteps(job, options));
}

/** The same in steps that each take a part of the time. @throws as `planStock` */
export function* planStockInSteps(
  { stock, material, pieces, source, sources, edgeTrim, pieceGap, bench, leastWaste, stages }: StockJob,
  { budget, seed, onProgress, shouldStop }: PlanOptions,
): Steps<StockPlan> {
  const count = pieces.reduce((sum, piece) => sum + (piece.count ?? 1), 0);
  const area = pieces.reduce((sum, { length, width, count = 1 }) => sum + length * width * count, 0) / MM2_PER_M2;
  const about = { stock, material, netAreaM2: area, pieces: count, sources };
  if (source === undefined) return { ...about, form: "none", plan: undefined, figures: undefined };
  const options = { edgeTrim, pieceGap, bench };
  const plan = yield* planInSteps(pieces, source, {
    ...options,
    ...(budget === undefined ? {} : { budget }),
    ...(seed === undefined ? {} : { seed }),
    ...(onProgress === undefined ? {} : { onProgress: (progress) => onProgress(stock, progress) }),
    ...(shouldStop === undefined ? {} : { shouldStop }),
  });
  yield;
  const figures = countPlan(plan.sheets, { edgeTrim, pieceGap, stages, leastWaste, absorbed: leastWaste });
  yield;
  const faults = verifyPlan(plan, pieces, source, options, figures);
  if (faults.length > 0) throw new Error(`the plan for ${stock} fails its check: ${faults[0]}`);
  return { ...about, form: source.kind, plan, figures };
}

/** Plans every stock that the demands use, one after the other. @throws as `planStock` */
export function stockPlans(
  demands: readonly Demand[],
  settings: Settings,
  options: PlanOptions = {},
): readonly StockPlan[] {
  return stockJobs(demands, settings).map((job) => planStock(job, options));
}

/** Sheets to buy, or whole metres of a roll; 0 where nothing is planned. */
export function toBuy({ form, plan }: Pick<StockPlan, "form" | "plan">): number {
  if (plan === undefined) return 0;
  return form === "roll" ? Math.ceil(plan.rollLength / MM_PER_M - BINARY_NOISE) : newSheets(plan).length;
}

/** Of two plans of one stock the one that costs less, then takes less, then needs fewer set-ups. */
export function betterPlan(plan: StockPlan, than: StockPlan | undefined): StockPlan {
  if (than?.plan === undefined || plan.plan === undefined) return plan;
  const order = plan.plan.cost - than.plan.cost || toBuy(plan) - toBuy(than) || plan.plan.setUps - than.plan.setUps;
  return order < 0 ? plan : than;
}

const MM_PER_M = 1000;
const BINARY_NOISE = 1e-9;

const MM2_PER_M2 = 1e6;

/** Bought by number: what holds an enclosure shut and has no size in the stock table. */
export function byThePiece({ material, form }: Pick<StockPlan, "material" | "form">): boolean {
  return material === "closure" && form === "none";
}

/** Whether pieces were asked of the stock and none of them can be cut from it. */
export function nothingCut({ pieces, plan }: Pick<StockPlan, "pieces" | "plan">): boolean {
  return plan !== undefined && pieces > 0 && plan.sheets.length === 0;
}
