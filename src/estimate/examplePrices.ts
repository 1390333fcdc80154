import { plainName } from "../settings/names";
import type { Settings } from "../settings/schema";
import { STARTER_STOCK } from "../settings/starterStock";
import type { StockRow } from "../settings/stock";
import type { Estimate } from "./estimate";

/** What a budget says at its top where it holds prices or hours that are examples; empty where it holds none. */
export function exampleNotice(estimate: Pick<Estimate, "lines" | "hours">, settings: Settings): string {
  const { lines, hours } = estimate;
  const labour = lines.some(({ material, cost }) => material === "labour" && cost > 0);
  const examples = labour && hours.some(({ standing }) => standing === "example");
  const notice = examples ? "Example hours, from memory: put your own into labour hours and set-up hours." : "";
  return [examplePriceNotice(lines, settings), notice].filter((each) => each !== "").join(" ");
}

/** The stocks among some whose price is an example, each once. */
export function examplesAmong(names: readonly string[], { stock }: Settings): readonly string[] {
  const examples = stock.filter(isExample).map((row) => row.stock);
  return [...new Set(names)].filter((name) => examples.includes(name));
}

function examplePriceNotice(lines: Estimate["lines"], settings: Settings): string {
  const used = examplesAmong(
    lines.map((line) => line.stock),
    settings,
  );
  if (used.length === 0) return "";
  return `Example prices, not quotes: ${used.join(", ")}. Put your own into the stock table and clear its column example price.`;
}

/** Marked as an example, and not changed since: a price of the user's own is a price, whatever the mark says. */
function isExample({ stock, price, examplePrice }: StockRow): boolean {
  if (!examplePrice || price === undefined) return false;
  const starter = STARTER_STOCK.find((row) => plainName(row.stock) === plainName(stock));
  return starter === undefined || starter.price === price;
}
