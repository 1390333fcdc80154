import type { Part } from "../enclosure/part";
import type { Settings } from "../settings/schema";

const MM_PER_M = 1000;

/**
 * What the material of one enclosure costs by its area, without the waste of the sheets, which is shared by all that is
 * cut from them.
 *
 * @returns undefined where the stock table lacks a price or a sheet size
 */
export function materialCost(parts: readonly Part[], { stock }: Settings): number | undefined {
  let cost = 0;
  for (const { stock: name, length, width, count } of parts) {
    const row = stock.find((each) => each.stock === name);
    if (row?.price === undefined || row.sheetWidth === undefined) return undefined;
    // A roll is sold by the metre.
    const soldM2 = (row.sheetWidth * (row.sheetLength ?? MM_PER_M)) / MM_PER_M ** 2;
    cost += (row.price * ((length * width * count) / MM_PER_M ** 2)) / soldM2;
  }
  return cost;
}
