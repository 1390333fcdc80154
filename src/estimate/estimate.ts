import { enclosureMassOfAdhesive } from "../board/mass";
import { listed } from "../settings/names";
import type { Settings } from "../settings/schema";
import type { Material } from "../settings/stock";
import { labourHours } from "./labourHours";
import { nothingCut, type Demand, type StockPlan } from "./stockPlans";

/** One line of a materials budget. Money in the currency of the stock table's prices, rounded to its hundredth. */
export interface EstimateLine {
  readonly group: string;
  readonly material: Material | "adhesive" | "labour";
  readonly stock: string;
  readonly netAreaM2: number;
  /** Sheets, metres, kilograms or hours to buy. */
  readonly quantity: number;
  readonly unit: "sheets" | "m" | "m2" | "kg" | "hours";
  /** No plan needs fewer; undefined where nothing is cut. */
  readonly leastPossible: number | undefined;
  readonly provedLeast: boolean;
  /** Share of what is bought that ends in the enclosures; undefined where nothing is cut. */
  readonly yield: number | undefined;
  readonly unitPrice: number | undefined;
  readonly cost: number;
  readonly contingency: number;
  readonly total: number;
  /** Why the line is not, or not wholly, in the cost: nobody has said what it costs. A price of 0 is a price. */
  readonly notInCost: string | undefined;
}

export interface Estimate {
  readonly lines: readonly EstimateLine[];
  readonly cost: number;
  readonly contingency: number;
  readonly total: number;
  readonly plans: readonly { readonly group: string; readonly plans: readonly StockPlan[] }[];
}

/** What a budget is grouped by, with the enclosures of each group; the one group of a budget by material has no name. */
export interface DemandGroup {
  readonly group: string;
  readonly demands: readonly Demand[];
}

/**
 * A materials budget: each group is planned by itself, so that its sheets are its own.
 *
 * Sums are of the printed, rounded lines, so that they add up on paper.
 *
 * @param groups each with the plans of its own stocks
 */
export function estimateOf(
  groups: readonly (DemandGroup & { readonly plans: readonly StockPlan[] })[],
  settings: Settings,
): Estimate {
  const lines = groups.flatMap(({ group, demands, plans }) => [
    ...plans.map((plan) => stockLine(group, plan, settings)),
    ...adhesiveLine(group, demands, settings),
    ...labourLine(group, demands, settings),
  ]);
  const sum = (of: (line: EstimateLine) => number) => hundredth(lines.reduce((total, line) => total + of(line), 0));
  return {
    lines,
    cost: sum((line) => line.cost),
    contingency: sum((line) => line.contingency),
    total: sum((line) => line.total),
    plans: groups.map(({ group, plans }) => ({ group, plans })),
  };
}

const MM_PER_M = 1000;

function stockLine(group: string, stockPlan: StockPlan, settings: Settings): EstimateLine {
  const { stock, material, form, netAreaM2, plan, sources } = stockPlan;
  const row = settings.stock.find((each) => each.stock === stock);
  const about = { group, material, stock, netAreaM2 };
  if (plan === undefined || form === "none")
    return {
      ...about,
      quantity: netAreaM2,
      unit: "m2",
      leastPossible: undefined,
      provedLeast: false,
      yield: undefined,
      ...money(undefined, 0, settings),
      notInCost: "no sheet size: neither sheets nor cost until the stock table has one",
    };
  if (nothingCut(stockPlan))
    return {
      ...about,
      quantity: 0,
      unit: form === "roll" ? "m" : "sheets",
      leastPossible: undefined,
      provedLeast: false,
      yield: undefined,
      ...money(undefined, 0, settings),
      notInCost: "no piece fits the stock: none of its pieces are in the cost",
    };
  if (form === "roll") {
    const step = row?.pack ?? 1;
    const metres = buyingUnits(plan.rollLength / MM_PER_M, step);
    return {
      ...about,
      quantity: metres,
      unit: "m",
      leastPossible: buyingUnits(plan.rollBound / MM_PER_M, step),
      provedLeast: plan.provedLeast,
      yield: plan.rollLength === 0 ? undefined : plan.pieceAreaM2 / plan.sheetAreaM2,
      ...money(row?.price, (row?.price ?? 0) * metres, settings),
      notInCost: row?.price === undefined ? NO_PRICE : undefined,
    };
  }
  const bought = plan.counts.map((count, index) => ({ ...count, ...sources[index]! }));
  const sheets = bought.reduce((sum, each) => sum + (each.inHand ? each.sheets : each.packs * each.row.pack), 0);
  const paid = bought
    .filter(({ inHand }) => !inHand)
    .map((each) => ({ sheets: each.packs * each.row.pack, price: each.row.price }));
  const cost = paid.reduce((sum, each) => sum + each.sheets * (each.price ?? 0), 0);
  const prices = new Set(paid.map(({ price }) => price));
  return {
    ...about,
    quantity: sheets,
    unit: "sheets",
    leastPossible: plan.sheetBound,
    provedLeast: plan.provedLeast,
    yield: plan.sheetAreaM2 === 0 ? undefined : plan.pieceAreaM2 / plan.sheetAreaM2,
    ...money(prices.size === 1 ? [...prices][0] : undefined, cost, settings),
    notInCost: paid.some((each) => each.price === undefined && each.sheets > 0) ? NO_PRICE : undefined,
  };
}

const NO_PRICE = "no price: not in the cost until the stock table has one";

function adhesiveLine(group: string, demands: readonly Demand[], settings: Settings): readonly EstimateLine[] {
  const kg = demands.reduce((sum, { parts, quantity }) => sum + enclosureMassOfAdhesive(parts, settings) * quantity, 0);
  if (kg === 0) return [];
  const price = settings.adhesivePrice;
  return [
    {
      ...bare(group, "adhesive", "adhesive"),
      quantity: hundredth(kg),
      unit: "kg",
      ...money(price === 0 ? undefined : price, price * hundredth(kg), settings),
      notInCost: price === 0 ? "no price: not in the cost until adhesive price is set" : undefined,
    },
  ];
}

/** Hours of each kind, where the settings give them: they take no contingency for spoilt material. */
function labourLine(group: string, demands: readonly Demand[], settings: Settings): readonly EstimateLine[] {
  const each = labourHours(settings);
  if (each.size === 0) return [];
  const hours = demands.reduce((sum, { enclosure, quantity }) => sum + (each.get(enclosure) ?? 0) * quantity, 0);
  const without = [...new Set(demands.map(({ enclosure }) => enclosure).filter((kind) => !each.has(kind)))];
  const cost = hundredth(hours * settings.labourRate);
  const rate = settings.labourRate === 0 ? undefined : settings.labourRate;
  return [
    {
      ...bare(group, "labour", "labour"),
      quantity: hours,
      unit: "hours",
      unitPrice: rate,
      cost,
      contingency: 0,
      total: cost,
      notInCost: whyNotInCost(without, rate),
    },
  ];
}

function whyNotInCost(without: readonly string[], rate: number | undefined): string | undefined {
  const reasons = [
    ...(rate === undefined ? ["no rate: not in the cost until labour rate is set"] : []),
    ...(without.length === 0
      ? []
      : [`no hours for ${listed(without, "and")}: neither hours nor cost until labour hours has them`]),
  ];
  return reasons.length === 0 ? undefined : reasons.join("; ");
}

function bare(group: string, material: "adhesive" | "labour", stock: string) {
  return { group, material, stock, netAreaM2: 0, leastPossible: undefined, provedLeast: false, yield: undefined };
}

function money(unitPrice: number | undefined, cost: number, { contingency }: Settings) {
  const rounded = hundredth(cost);
  const spare = hundredth((rounded * contingency) / 100);
  return { unitPrice, cost: rounded, contingency: spare, total: hundredth(rounded + spare) };
}

/** Whole buying units, ignoring binary noise. */
function buyingUnits(amount: number, step: number): number {
  return Math.ceil(amount / step - 1e-9) * step;
}

/** Money to the hundredth of its unit; amounts are positive, halves go up. */
function hundredth(amount: number): number {
  return Math.round((amount + Number.EPSILON) * 100) / 100;
}
