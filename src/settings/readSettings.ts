import { InputError, shown } from "../measure/errors";
import { MM_PER } from "../measure/units";
import { readBoardGuide, type BoardGuide, type GuideContext } from "./boardGuide";
import { boardOfCaliper } from "./boards";
import { SETTING_KEYS, type Given, type GivenValue } from "./given";
import { namesIn, type Choice } from "./choices";
import type { Definition } from "./definition";
import { DEFAULT_STEP_MM, DEFAULT_STEP_PARTS } from "./definitions/boardSettings";
import { DEFAULT_BOARD_MM, DEFAULT_CARD_MM, DEFAULT_TURN_IN_MM } from "./definitions/materialSettings";
import { didYouMean, plainName } from "./names";
import { DEFINITIONS, type SettingKey, type Settings } from "./schema";
import { STARTER_GUIDE } from "./starterGuide";
import { STARTER_STOCK } from "./starterStock";
import { bothFaces, stockFor } from "./coverStock";
import { readSizesList } from "./sizesList";
import type { StockRow } from "./stock";
import { readStockTable } from "./stockTable";
import { NotTaken, type ReadingContext } from "./valueType";

export interface SettingsOptions {
  /** The starter board guide is in force where the arguments hold none. */
  readonly starterGuide?: boolean;
}

/** Settings that rows share, read once. */
export interface SharedSettings {
  /** The settings of a row by its own values, which come last. @throws InputError as `readSettings` */
  readonly withOwn: (own: readonly GivenValue[]) => Settings;
  /** Whether a cell can be the value of a setting. */
  readonly takes: (key: SettingKey, value: unknown) => boolean;
}

/**
 * The settings in force for a row: defaults, then each argument in turn, later over earlier.
 *
 * @param given what the arguments hold, from `readGiven`
 * @throws InputError naming the setting, what it got, what it accepts and the cure
 */
export function readSettings(given: readonly Given[], options: SettingsOptions = {}): Settings {
  return sharedSettings(given, options).withOwn([]);
}

/**
 * The same, for rows with values of their own: of those alone each row is read, unless they change the units in which
 * everything else is read.
 */
export function sharedSettings(given: readonly Given[], options: SettingsOptions = {}): SharedSettings {
  const last = new Map<SettingKey, GivenValue>();
  const ownOfRow = new Set<SettingKey>();
  for (const each of given) {
    if (each.holds !== "values") continue;
    // Later over earlier: a unit by itself is that of the answers too.
    if (each.values.some(({ key }) => key === "surveyUnit")) last.delete("answerUnit");
    for (const value of each.values) {
      last.set(value.key, value);
      if (each.ownOfRow) ownOfRow.add(value.key);
      else ownOfRow.delete(value.key);
    }
  }
  const start: Omit<ReadingContext, "name"> = { unit: "mm", shopUnit: "mm", stock: STARTER_STOCK };
  const unit = readValue("surveyUnit", last, start);
  const shopUnit = readValue("shopUnit", last, start);
  const stock = mergeStock(
    given.flatMap((each) => (each.holds === "stock" ? [readStockTable(each.rows, shopUnit)] : [])),
  );
  const context = { unit, shopUnit, stock };
  const guide = guideOf(given, context) ?? (options.starterGuide === true ? STARTER_GUIDE : undefined);
  const values = Object.fromEntries(SETTING_KEYS.map((key) => [key, readValue(key, last, context)])) as Values;
  const sizes = given.flatMap((each) => (each.holds === "sizes" ? readSizesList(each.rows, unit) : []));
  const withOwn = (own: readonly GivenValue[]): Settings => {
    if (own.some(({ key }) => UNITS.has(key)))
      return readSettings([...given, { holds: "values", values: own, ownOfRow: true }], options);
    const all = own.length === 0 ? last : new Map([...last, ...own.map((each) => [each.key, each] as const)]);
    const keys = new Set(own.map(({ key }) => key));
    const ownValues = SETTING_KEYS.filter((key) => keys.has(key)).map((key) => [key, readValue(key, all, context)]);
    return {
      ...decided({ ...values, ...(Object.fromEntries(ownValues) as Partial<Values>) }, context, guide),
      stock,
      sizes,
      guide,
      origins: new Map([...all].map(([key, value]) => [key, value.origin])),
      ownOfRow: new Set([...ownOfRow, ...keys]),
    };
  };
  const takes = (key: SettingKey, value: unknown): boolean => {
    try {
      if (UNITS.has(key)) withOwn([{ key, value, origin: "" }]);
      else DEFINITIONS[key].takes.read(value, { ...context, name: DEFINITIONS[key].name });
      return true;
    } catch (error) {
      if (error instanceof NotTaken || error instanceof InputError) return false;
      throw error;
    }
  };
  return { withOwn, takes };
}

type Values = { [K in SettingKey]: (typeof DEFINITIONS)[K]["fallback"] };

/** What all else is read in. */
const UNITS: ReadonlySet<SettingKey> = new Set(["surveyUnit", "answerUnit", "shopUnit"]);

/** What is left to a rule, decided. */
function decided(
  values: Values,
  { unit, stock }: Omit<ReadingContext, "name">,
  guide: BoardGuide | undefined,
): Omit<Settings, "stock" | "sizes" | "guide" | "origins" | "ownOfRow"> {
  const answerUnit = values.answerUnit ?? unit;
  return {
    ...values,
    answerUnit,
    wallBoard: values.wallBoard ?? (guide === undefined ? boardOfCaliper(DEFAULT_BOARD_MM, "board", stock) : "auto"),
    flangeCard: values.flangeCard ?? boardOfCaliper(DEFAULT_CARD_MM, "card", stock),
    wrapperCard: values.wrapperCard ?? boardOfCaliper(DEFAULT_CARD_MM, "card", stock),
    coveringAllowance:
      values.coveringAllowance === "auto"
        ? bothFaces(stockFor("covering", { ...values, stock }))
        : values.coveringAllowance,
    turnIn: values.turnIn === "auto" ? DEFAULT_TURN_IN_MM : values.turnIn,
    leftAuto: new Set((["coveringAllowance", "turnIn"] as const).filter((key) => values[key] === "auto")),
    roundTo: values.roundTo ?? (answerUnit === "in" ? MM_PER.in / DEFAULT_STEP_PARTS : DEFAULT_STEP_MM),
  };
}

/** The guide given last, whole: a guide is one table, of which no two halves fit together. */
function guideOf(given: readonly Given[], context: GuideContext): BoardGuide | undefined {
  const last = given.findLast((each) => each.holds === "guide");
  return last === undefined ? undefined : readBoardGuide(last.rows, context);
}

function readValue<K extends SettingKey>(
  key: K,
  last: ReadonlyMap<SettingKey, GivenValue>,
  context: Omit<ReadingContext, "name">,
): (typeof DEFINITIONS)[K]["fallback"] {
  const definition = DEFINITIONS[key] as Definition<(typeof DEFINITIONS)[K]["fallback"]>;
  const given = last.get(key);
  if (given === undefined) return definition.fallback;
  try {
    return definition.takes.read(given.value, { ...context, name: definition.name });
  } catch (error) {
    if (!(error instanceof NotTaken) && !(error instanceof InputError)) throw error;
    throw new InputError(
      definition.name,
      shown(given.value),
      `give ${definition.accepts}`,
      (error instanceof InputError && error.cure) || nearMiss(given.value, definition.takes.choices, context.stock),
    );
  }
}

/** The nearest word or stock name; empty when nothing is near, or when a measure was meant. */
function nearMiss(value: unknown, choices: readonly Choice[], stock: readonly StockRow[]): string {
  // A bare number is a measure, the same in a text as in a cell.
  if (typeof value !== "string" || !/\p{L}/u.test(value)) return "";
  if (/\d/.test(value) && choices.every(({ is }) => is !== "stock")) return "";
  return didYouMean(value, namesIn(choices, stock));
}

/** Tables given later replace the rows of the stocks that they name and keep the others; none given: the starter. */
function mergeStock(tables: readonly (readonly StockRow[])[]): readonly StockRow[] {
  if (tables.length === 0) return STARTER_STOCK;
  return tables.reduce((earlier, later) => {
    const named = new Set(later.map((row) => plainName(row.stock)));
    return [...earlier.filter((row) => !named.has(plainName(row.stock))), ...later];
  });
}
