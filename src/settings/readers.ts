import type { Mm } from "../measure/units";
import type { Material, StockRow } from "./stock";

/** A board or card chosen: a row of the stock table, or a bare caliper that the table does not list. */
export interface Board {
  /** Name in the stock table; `2 mm board, not in stock` when only the caliper was given. */
  readonly stock: string;
  readonly caliper: Mm;
  readonly listed: StockRow | undefined;
}

export function boardOf(row: StockRow): Board {
  return { stock: row.stock, caliper: row.caliper, listed: row };
}

/** The first row of the stock table of that caliper and material, else a board that is not in stock. */
export function boardOfCaliper(caliper: Mm, material: Material, stock: readonly StockRow[]): Board {
  const row = stock.find((each) => each.material === material && Math.abs(each.caliper - caliper) < SAME_CALIPER_MM);
  if (row !== undefined) return boardOf(row);
  return { stock: `${Number(caliper.toFixed(2))} mm ${material}, not in stock`, caliper, listed: undefined };
}

const SAME_CALIPER_MM = 1e-6;
