import { InputError, shown } from "../measure/errors";
import { readLength } from "../measure/readLength";
import type { LengthUnit, Mm } from "../measure/units";
import { listed, plainName } from "./names";
import { dayText } from "./dayValue";
import { plainNumber } from "./plainNumber";
import { GREATEST_MODULUS_GPA, LEAST_MODULUS_GPA, MATERIALS, PERMANENCES } from "./stock";
import { numberWithin, refuse } from "./valueType";
import { wordAmong } from "./wordValues";

/** A heading of a stock table, as it is read. */
export interface StockColumn {
  readonly key: StockField;
  readonly heading: string;
  readonly unit: LengthUnit | "pt";
}

/** What a column of the stock table holds. */
interface Field<T> {
  /** Reads a cell that is not blank. @throws InputError for what cannot be one of its kind at all */
  readonly read: (cell: unknown, column: StockColumn, at: string) => unknown;
  /** Checks what was read; undefined where the cell is blank. @throws NotTaken */
  readonly check: (value: unknown) => T;
  /** What it takes, as it ends the sentence "give ...". */
  readonly accepts: string;
}

/** A price or mass above this is a slip. */
const GREATEST_NUMBER = 1e9;
const ANY_NUMBER = "a number, zero or more";
const UNKNOWN = "or leave it blank where it is not known";

/** In the order in which a row is checked. */
export const STOCK_FIELDS = {
  stock: { read: word, check: stockName, accepts: "each stock a name without ; and =" },
  material: { read: word, check: oneOf(MATERIALS), accepts: listed(MATERIALS, "or") },
  caliper: { read: length, check: byDefault(0, anyNumber), accepts: ANY_NUMBER },
  "sheet length": { read: length, check: maybe(anyNumber), accepts: ANY_NUMBER },
  "sheet width": { read: length, check: maybe(anyNumber), accepts: ANY_NUMBER },
  grain: { read: word, check: byDefault("fixed", oneOf(["fixed", "free"])), accepts: "fixed or free" },
  price: { read: number, check: maybe(anyNumber), accepts: ANY_NUMBER },
  pack: { read: number, check: byDefault(1, wholeFrom(1)), accepts: "a whole number of sheets, 1 or more" },
  mass: { read: number, check: maybe(anyNumber), accepts: ANY_NUMBER },
  "modulus along": modulus(),
  "modulus across": modulus(),
  "size limit": { read: length, check: maybe(anyNumber), accepts: ANY_NUMBER },
  "on hand": { read: number, check: maybe(wholeFrom(0)), accepts: "a whole number of sheets" },
  pat: { read: yesNo, check: maybe(isYes), accepts: `yes or no, ${UNKNOWN}` },
  buffered: { read: yesNo, check: maybe(isYes), accepts: `yes or no, ${UNKNOWN}` },
  permanence: { read: word, check: maybe(oneOf(PERMANENCES)), accepts: `A, B or none, ${UNKNOWN}` },
  supplier: { read: word, check: maybe(anyText), accepts: "a name" },
  "item number": { read: word, check: maybe(anyText), accepts: "a number or text" },
  "quote date": { read: dayText, check: maybe(anyText), accepts: "a day such as 2026-05-31" },
  "example price": { read: yesNo, check: byDefault(false, isYes), accepts: "yes, or leave it blank" },
} as const satisfies Record<string, Field<unknown>>;

export type StockField = keyof typeof STOCK_FIELDS;

/** Whether a unit in a heading is one of its lengths. */
export function isLengthField(key: StockField): boolean {
  return STOCK_FIELDS[key].read === length;
}

function modulus(): Field<number | undefined> {
  const bounds = { least: LEAST_MODULUS_GPA, most: GREATEST_MODULUS_GPA };
  return {
    read: number,
    check: maybe((value) => numberWithin(value, bounds)),
    accepts: `a number of GPa from ${bounds.least} to ${bounds.most}`,
  };
}

function length(cell: unknown, column: StockColumn, at: string): Mm {
  const argument = `${at}, ${column.heading}`;
  const points = column.key === "caliper";
  if (column.unit !== "pt") return readLength(cell, { argument, unit: column.unit, points });
  const text = typeof cell === "number" || /^[\d.,\s]+$/.test(String(cell)) ? `${String(cell)} pt` : cell;
  return readLength(text, { argument, unit: "mm", points });
}

function number(cell: unknown, column: StockColumn, at: string): number {
  const value = plainNumber(cell);
  const argument = `${at}, ${column.heading}`;
  if (!Number.isFinite(value) || value < 0) throw new InputError(argument, shown(cell), "give a number, zero or more");
  if (value > GREATEST_NUMBER)
    throw new InputError(argument, shown(cell), `give a number of at most ${GREATEST_NUMBER}`);
  return value;
}

/** TRUE and FALSE of a spreadsheet read as yes and no. */
function yesNo(cell: unknown): string {
  const said = plainName(String(cell));
  return said === "true" ? "yes" : said === "false" ? "no" : said;
}

function word(cell: unknown): string {
  return typeof cell === "string" ? cell.trim() : String(cell);
}

/** A settings text joins names with ; and =. */
function stockName(value: unknown): string {
  return typeof value === "string" && !/[;=]/.test(value) ? value : refuse();
}

function anyText(value: unknown): string {
  return String(value);
}

function anyNumber(value: unknown): number {
  return numberWithin(value, { least: 0, most: Infinity });
}

function wholeFrom(least: number) {
  return (value: unknown): number => numberWithin(value, { least, most: GREATEST_NUMBER, whole: true });
}

function isYes(value: unknown): boolean {
  return value === "yes" ? true : value === "no" ? false : refuse();
}

function oneOf<const T extends string>(among: readonly T[]) {
  return (value: unknown): T => wordAmong(among, value) ?? refuse();
}

function maybe<T>(check: (value: unknown) => T) {
  return (value: unknown): T | undefined => (value === undefined ? undefined : check(value));
}

function byDefault<T>(fallback: T, check: (value: unknown) => T) {
  return (value: unknown): T => (value === undefined ? fallback : check(value));
}
