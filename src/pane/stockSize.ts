import type { StockRow } from "../settings/stock";

/** The size of a stock as it is sold: `1000 × 700`, or `roll, 1000 wide`, mm; empty where none is known. */
export function stockSize({ sheetLength, sheetWidth }: Pick<StockRow, "sheetLength" | "sheetWidth">): string {
  if (sheetWidth === undefined) return "";
  return sheetLength === undefined
    ? `roll, ${Math.round(sheetWidth)} wide`
    : `${Math.round(sheetLength)} × ${Math.round(sheetWidth)}`;
}
