import { newSheets } from "../cutting/sheetLabels";
import { toBuy, type StockPlan } from "../estimate/stockPlans";
import { areaIn } from "../measure/units";
import type { Settings } from "../settings/schema";
import { areaUnitOf } from "../survey/summary";

export const SHOPPING_HEADINGS = ["stock", "material", "to buy", "packs", "supplier, number"] as const;

/** What the plans take of each stock, sheets in hand apart; several plans of one stock together. */
export function shoppingRows(plans: readonly StockPlan[], settings: Settings): readonly (readonly string[])[] {
  const stocks = [...new Set(plans.map(({ stock }) => stock))];
  return stocks.map((stock) => {
    const own = plans.filter((plan) => plan.stock === stock);
    const row = settings.stock.find((each) => each.stock === stock);
    const bought = own.reduce((sum, plan) => sum + toBuy(plan) - inHand(plan), 0);
    const held = own.reduce((sum, plan) => sum + inHand(plan), 0);
    const [{ form, material }] = own as [StockPlan];
    const area = own.reduce((sum, { netAreaM2 }) => sum + netAreaM2, 0);
    const amount =
      form === "none"
        ? `${Number(areaIn(area, settings.unit).toFixed(2))} ${areaUnitOf(settings.unit)} net`
        : `${bought} ${form === "roll" ? "m" : bought === 1 ? "sheet" : "sheets"}`;
    const pack = row?.pack ?? 1;
    return [
      stock,
      material,
      held === 0 ? amount : `${amount}, ${held} in hand`,
      pack > 1 && form !== "none" ? `${Math.ceil(bought / pack)} of ${pack}` : "",
      [row?.supplier, row?.itemNumber].filter((text) => text !== undefined && text !== "").join(", "),
    ];
  });
}

/** Sheets of a plan that the shop has already. */
function inHand({ plan, sources }: StockPlan): number {
  if (plan === undefined || newSheets(plan).length === 0) return 0;
  return plan.counts.reduce((sum, { sheets }, index) => sum + (sources[index]?.inHand === true ? sheets : 0), 0);
}
