import type { Estimate } from "../estimate/estimate";
import type { EstimateLine } from "../estimate/estimateLine";
import { ROUGH } from "../estimate/printedTable";
import type { StockPlan } from "../estimate/stockPlans";
import { areaIn } from "../measure/units";
import type { Settings } from "../settings/schema";
import { areaUnitOf } from "../survey/summary";

export const SHOPPING_HEADINGS = ["stock", "material", "to buy", "supplier, number"] as const;

const NOT_BOUGHT: readonly EstimateLine["material"][] = ["labour", "shipping", "tax", "indirect"];

/** What the budget buys, groups together and sheets in hand apart: the quantities are those of its lines. */
export function shoppingRows(
  estimate: Estimate | undefined,
  { answerUnit: unit }: Settings,
): readonly (readonly string[])[] {
  const lines = (estimate?.lines ?? []).filter(({ material }) => !NOT_BOUGHT.includes(material));
  const plans = (estimate?.plans ?? []).flatMap((group) => group.plans);
  const materials = new Set(lines.map(({ material }) => material));
  const sorted = [...materials].flatMap((material) => lines.filter((line) => line.material === material));
  return [...new Set(sorted.map(({ stock }) => stock))].map((stock) => {
    const own = lines.filter((line) => line.stock === stock);
    const [line] = own as [EstimateLine];
    const held = plans.filter((plan) => plan.stock === stock).reduce((sum, plan) => sum + inHand(plan), 0);
    const quantity = own.reduce((sum, each) => sum + each.quantity, -held);
    const spare = own.reduce((sum, each) => sum + each.spoilage, 0);
    const amount =
      line.unit === "m2"
        ? `${Number(areaIn(quantity, unit).toFixed(2))} ${areaUnitOf(unit)} net`
        : `${Number(quantity.toFixed(ROUGH.has(line.unit) ? 1 : 2))} ${quantity === 1 ? line.unit.replace(/s$/, "") : line.unit}`;
    const notes = [
      ...(spare > 0 ? [`of them ${Number(spare.toFixed(2))} for spoilt pieces`] : []),
      ...(held > 0 ? [`${held} more in hand`] : []),
    ];
    return [
      stock,
      line.material,
      [amount, ...notes].join(", "),
      [line.supplier, line.itemNumber].filter((text) => text !== "").join(", "),
    ];
  });
}

/** Sheets of a plan that the shop has already. */
function inHand({ plan, sources }: StockPlan): number {
  return (plan?.counts ?? []).reduce(
    (sum, { sheets }, index) => sum + (sources[index]?.inHand === true ? sheets : 0),
    0,
  );
}
