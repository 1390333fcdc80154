import type { Mm } from "../measure/units";
import type { Settings } from "./schema";
import type { StockRow } from "./stock";

/** The stock row of a covering or lining; undefined where the table has none, `none` where the settings say so. */
export function stockFor(
  material: "covering" | "lining",
  settings: Pick<Settings, "covering" | "lining" | "stock">,
): StockRow | "none" | undefined {
  const chosen = settings[material];
  if (chosen === "none") return "none";
  return settings.stock.find((row) => (chosen === undefined ? row.material === material : row.stock === chosen));
}

/** Adhesive under a covering or lining, mm. From memory. */
const ADHESIVE_MM: Mm = 0.1;

/** What a covering or lining takes on both faces of a direction together. */
export function bothFaces(row: StockRow | "none" | undefined): Mm {
  return row === undefined || row === "none" ? 0 : 2 * (row.caliper + ADHESIVE_MM);
}
