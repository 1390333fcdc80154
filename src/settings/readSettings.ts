import { $ZodError } from "zod/v4/core";
import { InputError, shown } from "../measure/errors";
import { MM_PER, type Mm } from "../measure/units";
import { SETTING_KEYS, type Given, type GivenValue } from "./given";
import { didYouMean, plainName } from "./names";
import { boardOfCaliper, type ReadingContext } from "./readers";
import { DEFINITIONS, type Definition, type SettingKey, type Settings } from "./schema";
import { STARTER_STOCK } from "./starterStock";
import { readStockTable, type StockRow } from "./stock";

/**
 * The settings in force for a row: defaults, then each argument in turn, later over earlier.
 *
 * @param given what the arguments hold, as `readGiven` tells it
 * @throws InputError naming the setting, what it got, what it accepts and the cure
 */
export function readSettings(given: readonly Given[]): Settings {
  const last = new Map<SettingKey, GivenValue>();
  const ownOfRow = new Set<SettingKey>();
  for (const each of given) {
    if (each.holds !== "values") continue;
    for (const value of each.values) {
      last.set(value.key, value);
      if (each.ownOfRow) ownOfRow.add(value.key);
      else ownOfRow.delete(value.key);
    }
  }
  const start: Omit<ReadingContext, "name"> = { unit: "mm", shopUnit: "mm", stock: STARTER_STOCK };
  const unit = readValue("unit", last, start);
  const shopUnit = readValue("shopUnit", last, start);
  const stock = mergeStock(
    given.flatMap((each) => (each.holds === "stock" ? [readStockTable(each.rows, shopUnit)] : [])),
  );
  const context = { unit, shopUnit, stock };
  const values = Object.fromEntries(SETTING_KEYS.map((key) => [key, readValue(key, last, context)])) as {
    [K in SettingKey]: (typeof DEFINITIONS)[K]["fallback"];
  };
  return {
    ...values,
    wallBoard: values.wallBoard ?? boardOfCaliper(DEFAULT_BOARD_MM, "board", stock),
    flangeCard: values.flangeCard ?? boardOfCaliper(DEFAULT_CARD_MM, "card", stock),
    wrapperCard: values.wrapperCard ?? boardOfCaliper(DEFAULT_CARD_MM, "card", stock),
    roundTo: values.roundTo ?? (unit === "in" ? MM_PER.in / 32 : DEFAULT_ROUNDING_MM),
    stock,
    origins: new Map([...last].map(([key, value]) => [key, value.origin])),
    ownOfRow,
  };
}

/** Default board, card and rounding: shop defaults, to be changed by every workshop. */
const DEFAULT_BOARD_MM: Mm = 2;
const DEFAULT_CARD_MM: Mm = 0.4;
const DEFAULT_ROUNDING_MM: Mm = 0.5;

function readValue<K extends SettingKey>(
  key: K,
  last: ReadonlyMap<SettingKey, GivenValue>,
  context: Omit<ReadingContext, "name">,
): (typeof DEFINITIONS)[K]["fallback"] {
  const definition = DEFINITIONS[key] as Definition<(typeof DEFINITIONS)[K]["fallback"]>;
  const given = last.get(key);
  if (given === undefined) return definition.fallback;
  try {
    return definition.read({ ...context, name: definition.name }).parse(given.value);
  } catch (error) {
    if (!(error instanceof $ZodError) && !(error instanceof InputError)) throw error;
    throw new InputError(
      definition.name,
      shown(given.value),
      `give ${definition.accepts}`,
      (error instanceof InputError && error.cure) || nearMiss(given.value, definition.accepts, context.stock),
    );
  }
}

/** The nearest accepted word or stock name; empty when nothing is near. */
function nearMiss(value: unknown, accepts: string, stock: readonly StockRow[]): string {
  if (typeof value !== "string") return "";
  if (/\d/.test(value) && !accepts.includes("stock table")) return "";
  const words = accepts.split(/, | or /).filter((word) => !word.startsWith("a ") && !/\d/.test(word));
  return didYouMean(value, accepts.includes("stock table") ? stockNames(accepts, stock) : words);
}

/** Names of the stock that a setting can use: a cloth is no near miss for a board. */
function stockNames(accepts: string, stock: readonly StockRow[]): readonly string[] {
  const boardsOnly = accepts.startsWith("a board or card");
  return stock
    .filter((row) => !boardsOnly || row.material === "board" || row.material === "card")
    .map((row) => row.stock);
}

/** Tables given later replace the rows of the stocks that they name and keep the others; none given: the starter. */
function mergeStock(tables: readonly (readonly StockRow[])[]): readonly StockRow[] {
  if (tables.length === 0) return STARTER_STOCK;
  return tables.reduce((earlier, later) => {
    const named = new Set(later.map((row) => plainName(row.stock)));
    return [...earlier.filter((row) => !named.has(plainName(row.stock))), ...later];
  });
}
