import type { Settings } from "../settings/schema";
import type { StockRow } from "../settings/stock";
import { money, type CostLine } from "./estimateLine";
import { byThePiece, nothingCut, type StockPlan } from "./stockPlans";

const MM_PER_M = 1000;
const NO_PRICE = "no price: not in the cost until the stock table has one";

/** The line of one stock: what its plan takes, with whole sheets or metres for spoilt pieces. */
export function stockLine(group: string, stockPlan: StockPlan, settings: Settings): CostLine {
  const { stock, material, form, netAreaM2, plan } = stockPlan;
  const row = settings.stock.find((each) => each.stock === stock);
  const about = { group, material, stock, netAreaM2, spoilage: 0, ...boughtFrom(row, settings) };
  if (byThePiece(stockPlan)) {
    const spoilage = spoiltOf(stockPlan.pieces, settings);
    const quantity = buyingUnits(stockPlan.pieces + spoilage, row?.pack ?? 1);
    return {
      ...about,
      ...UNPLANNED,
      quantity,
      unit: "pieces",
      spoilage,
      ...money(row?.price, (row?.price ?? 0) * quantity, settings),
      notInCost: row?.price === undefined ? NO_PRICE : undefined,
    };
  }
  if (plan === undefined || form === "none")
    return {
      ...about,
      ...UNPLANNED,
      quantity: netAreaM2,
      unit: "m2",
      ...money(undefined, 0, settings),
      notInCost: "no sheet size: neither sheets nor cost until the stock table has one",
    };
  if (nothingCut(stockPlan))
    return {
      ...about,
      ...UNPLANNED,
      quantity: 0,
      unit: form === "roll" ? "m" : "sheets",
      ...money(undefined, 0, settings),
      notInCost: "no piece fits the stock: none of its pieces are in the cost",
    };
  if (form === "roll") {
    const step = row?.pack ?? 1;
    const spoilage = spoiltOf(plan.rollLength / MM_PER_M, settings);
    const metres = buyingUnits(plan.rollLength / MM_PER_M + spoilage, step);
    return {
      ...about,
      quantity: metres,
      unit: "m",
      spoilage,
      leastPossible: buyingUnits(plan.rollBound / MM_PER_M, step),
      provedLeast: plan.provedLeast,
      yield: plan.rollLength === 0 ? undefined : plan.pieceAreaM2 / plan.sheetAreaM2,
      ...money(row?.price, (row?.price ?? 0) * metres, settings),
      notInCost: row?.price === undefined ? NO_PRICE : undefined,
    };
  }
  const { inHand, bought, spoilage } = sheetsOf(stockPlan, settings);
  const cost = bought.reduce((sum, each) => sum + each.sheets * (each.price ?? 0), 0);
  const prices = new Set(bought.map(({ price }) => price));
  return {
    ...about,
    quantity: bought.reduce((sum, { sheets }) => sum + sheets, inHand),
    unit: "sheets",
    spoilage,
    leastPossible: plan.sheetBound,
    provedLeast: plan.provedLeast,
    yield: plan.sheetAreaM2 === 0 ? undefined : plan.pieceAreaM2 / plan.sheetAreaM2,
    ...money(prices.size === 1 ? [...prices][0] : undefined, cost, settings),
    notInCost: bought.some((each) => each.price === undefined && each.sheets > 0) ? NO_PRICE : undefined,
  };
}

const UNPLANNED = { leastPossible: undefined, provedLeast: false, yield: undefined } as const;

interface Bought {
  readonly sheets: number;
  readonly price: number | undefined;
}

/** Sheets in hand, sheets to buy of each size in whole packs, and how many of these are for spoilt pieces. */
function sheetsOf({ plan, sources }: StockPlan, settings: Settings) {
  const counts = plan!.counts.map((count, index) => ({ ...count, ...sources[index]! }));
  const inHand = counts.reduce((sum, each) => sum + (each.inHand ? each.sheets : 0), 0);
  const sizes = counts.filter((each) => !each.inHand);
  // Spare sheets are of a size that is bought anyway, else of the first that can be bought.
  const spare = sizes.find(({ sheets }) => sheets > 0) ?? sizes[0];
  const used = counts.reduce((sum, { sheets }) => sum + sheets, 0);
  const spoilage = spare === undefined ? 0 : spoiltOf(used, settings);
  const bought = sizes.map((each): Bought => {
    const wanted = each.sheets + (each === spare ? spoilage : 0);
    return { sheets: buyingUnits(wanted, each.row.pack), price: each.row.price };
  });
  return { inHand, bought, spoilage };
}

/** Whole sheets or metres for spoilt pieces. */
function spoiltOf(amount: number, { spoilage }: Settings): number {
  return buyingUnits((amount * spoilage) / 100, 1);
}

function boughtFrom(row: StockRow | undefined, { supplier, quoteDate }: Settings) {
  return {
    supplier: row?.supplier ?? supplier,
    itemNumber: row?.itemNumber ?? "",
    pack: row?.pack,
    quoteDate: row?.quoteDate ?? quoteDate,
  };
}

/** Whole buying units, ignoring binary noise. */
function buyingUnits(amount: number, step: number): number {
  return Math.ceil(amount / step - 1e-9) * step;
}
