import { z } from "zod";
import { readLength } from "../measure/readLength";
import { readMass } from "../measure/readMass";
import type { LengthUnit, Mm } from "../measure/units";
import { plainName } from "./names";
import { refuseBoardCaliper, type Material, type StockRow } from "./stock";

/** What a setting's value is read with: units are resolved before any length is read, the stock before any board. */
export interface ReadingContext {
  readonly name: string;
  readonly unit: LengthUnit;
  readonly shopUnit: LengthUnit;
  readonly stock: readonly StockRow[];
}

/** A board or card chosen: a row of the stock table, or a bare caliper that the table does not list. */
export interface Board {
  /** Name in the stock table; `2 mm board, not in stock` when only the caliper was given. */
  readonly stock: string;
  readonly caliper: Mm;
  readonly listed: StockRow | undefined;
}

/** Makes the zod schema of one setting's values; an `InputError` from a measure passes through it. */
export type Reader<T> = (context: ReadingContext) => z.ZodType<T>;

const words = z.preprocess((value) => (typeof value === "string" ? plainName(value) : value), z.string());

export const choice =
  <T extends string>(...values: readonly [T, ...T[]]): Reader<T> =>
  () =>
    words.pipe(z.enum(values));

export const yesNo: Reader<boolean> = () =>
  z
    .preprocess((value) => (typeof value === "boolean" ? (value ? "yes" : "no") : value), words)
    .pipe(z.enum(["yes", "no", "true", "false"]))
    .transform((word) => word === "yes" || word === "true");

export const lengthOrNone: Reader<Mm> = ({ name, shopUnit }) =>
  z.unknown().transform((value) => readLength(value, { argument: name, unit: shopUnit, zero: true }));

/** A length above zero: `none` and 0 have no meaning here. */
export const lengthAbove: Reader<Mm> = ({ name, shopUnit }) =>
  z.unknown().transform((value) => readLength(value, { argument: name, unit: shopUnit }));

/** One of some words, or a length, zero included. */
export const choiceOrLength =
  <T extends string>(...values: readonly [T, ...T[]]): Reader<T | Mm> =>
  (context) =>
    z.union([words.pipe(z.enum(values)), lengthOrNone(context)]);

/** A number from a least one; where that is zero, `none` too. */
export const numberFrom =
  (least: number, { most = Number.MAX_VALUE, whole = false, suffix = "" } = {}): Reader<number> =>
  () =>
    z
      .preprocess(
        (value) =>
          typeof value === "string"
            ? least === 0 && plainName(value) === "none"
              ? 0
              : plainNumber(value, suffix)
            : value,
        z.number(),
      )
      .pipe(whole ? z.number().int().min(least).max(most) : z.number().min(least).max(most));

/** A number above zero, or `none`. */
export const positiveOrNone: Reader<number | undefined> = () =>
  z.preprocess(
    (value) => (typeof value === "string" ? (plainName(value) === "none" ? undefined : plainNumber(value)) : value),
    z.number().positive().optional(),
  );

export const positive: Reader<number> = () =>
  z.preprocess((value) => (typeof value === "string" ? plainNumber(value) : value), z.number().positive());

export const mass: Reader<number> = ({ name, unit }) =>
  z.unknown().transform((value) => readMass(value, { argument: name, unit: unit === "in" ? "lb" : "kg" }));

export const text: Reader<string> = () => z.string().transform((value) => value.trim());

/** Two fractions of a panel, `1 / 0.5`: a flap under a tenth of it would not hold. */
export const twoFractions: Reader<readonly [number, number]> = () =>
  z
    .string()
    .transform((value) => value.split("/").map((part) => plainNumber(part)))
    .pipe(z.tuple([flap, flap]));

const LEAST_FLAP = 0.1;
const flap = z.number().min(LEAST_FLAP).max(1);

/** A stock name or a caliper; `auto` where the reader allows it. */
export function board(material: Material, autoToo: true): Reader<Board | "auto">;
export function board(material: Material): Reader<Board>;
export function board(material: Material, autoToo = false): Reader<Board | "auto"> {
  return (context) =>
    z.unknown().transform((value): Board | "auto" => {
      if (typeof value === "string") {
        const wanted = plainName(value);
        if (autoToo && wanted === "auto") return "auto";
        const named = context.stock.find((row) => plainName(row.stock) === wanted);
        if (named !== undefined) return boardOf(named);
      }
      const caliper = readLength(value, { argument: context.name, unit: context.shopUnit, points: true });
      refuseBoardCaliper(caliper, context.name, value);
      return boardOfCaliper(caliper, material, context.stock);
    });
}

/** The first row of the stock table of that caliper and material, else a board that is not in stock. */
export function boardOfCaliper(caliper: Mm, material: Material, stock: readonly StockRow[]): Board {
  const row = stock.find((each) => each.material === material && Math.abs(each.caliper - caliper) < SAME_CALIPER_MM);
  if (row !== undefined) return boardOf(row);
  return { stock: `${Number(caliper.toFixed(2))} mm ${material}, not in stock`, caliper, listed: undefined };
}

/** A name of the stock table, or `none`. */
export const stockName: Reader<string> = ({ stock }) =>
  words.transform((wanted, issues) => {
    if (wanted === "none") return wanted;
    const row = stock.find((each) => plainName(each.stock) === wanted);
    if (row !== undefined) return row.stock;
    issues.addIssue({ code: "custom", message: "not in stock" });
    return z.NEVER;
  });

const SAME_CALIPER_MM = 1e-6;

function boardOf(row: StockRow): Board {
  return { stock: row.stock, caliper: row.caliper, listed: row };
}

/** NaN when the text is no plain number, so that zod refuses it. */
function plainNumber(value: string, suffix = ""): number {
  const trimmed = value.trim();
  const bare = suffix !== "" && trimmed.endsWith(suffix) ? trimmed.slice(0, -suffix.length).trim() : trimmed;
  return bare === "" ? Number.NaN : Number(bare.replace(/^(\d+),(\d{1,2})$/, "$1.$2"));
}
