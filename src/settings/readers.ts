import * as z from "zod/mini";
import { readLength } from "../measure/readLength";
import { readMass } from "../measure/readMass";
import type { LengthUnit, Mm } from "../measure/units";
import { plainName } from "./names";
import { plainNumber } from "./plainNumber";
import { GREATEST_MODULUS_GPA, LEAST_MODULUS_GPA, refuseBoardCaliper, type Material, type StockRow } from "./stock";

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
export type Reader<T> = (context: ReadingContext) => z.ZodMiniType<T>;

/** A schema that reads anything by a function, then checks what it read. */
const readBy = <Checked>(read: (value: unknown) => unknown, check: z.core.$ZodType<Checked>): z.ZodMiniType<Checked> =>
  z.pipe(z.transform(read), check);

const asWord = (value: unknown): unknown => (typeof value === "string" ? plainName(value) : value);

export const choice =
  <T extends string>(...values: readonly [T, ...T[]]): Reader<T> =>
  () =>
    readBy(asWord, z.enum(values) as z.core.$ZodType<T>);

export const yesNo: Reader<boolean> = () => readBy(asYesNo, z.boolean());

export const lengthOrNone: Reader<Mm> = ({ name, shopUnit }) =>
  readBy((value) => readLength(value, { argument: name, unit: shopUnit, zero: true }), z.number());

/** A rounding step, or none. Of a finer step than this, a size would hold more steps than a number can count. */
export const stepOrNone: Reader<Mm> = (context) =>
  z.pipe(lengthOrNone(context), z.number().check(z.refine((step) => step === 0 || step >= LEAST_STEP_MM)));

export const LEAST_STEP_MM: Mm = 0.01;

/** A length above zero: `none` and 0 have no meaning here. */
export const lengthAbove: Reader<Mm> = ({ name, shopUnit }) =>
  readBy((value) => readLength(value, { argument: name, unit: shopUnit }), z.number());

/** One of some words, or a length, zero included. */
export const choiceOrLength =
  <T extends string>(...values: readonly [T, ...T[]]): Reader<T | Mm> =>
  (context) =>
    z.union([choice(...values)(context), lengthOrNone(context)]);

// What divides or multiplies a figure stays far from where figures overflow.
const LEAST_NUMBER = 0.001;
const GREATEST_NUMBER = 1e6;

/** A number from a least one; where that is zero, `none` too. */
export const numberFrom =
  (least: number, { most = GREATEST_NUMBER, whole = false, suffix = "" } = {}): Reader<number> =>
  () =>
    readBy(
      (value) => (least === 0 && isNone(value) ? 0 : plainNumber(value, suffix)),
      z.number().check(z.minimum(least), z.maximum(most), ...(whole ? [z.multipleOf(1)] : [])),
    );

/** A number above zero, or `none`. */
export const positiveOrNone: Reader<number | undefined> = () =>
  readBy(
    (value) => (isNone(value) ? undefined : plainNumber(value)),
    z.optional(z.number().check(z.minimum(LEAST_NUMBER), z.maximum(GREATEST_NUMBER))),
  );

export const positive: Reader<number> = numberFrom(LEAST_NUMBER);

/** A stiffness, GPa. */
export const modulus: Reader<number> = numberFrom(LEAST_MODULUS_GPA, { most: GREATEST_MODULUS_GPA });

export const mass: Reader<number> = ({ name, unit }) =>
  readBy((value) => readMass(value, { argument: name, unit: unit === "in" ? "lb" : "kg" }), z.number());

/** A mass, zero included. */
export const massOrNone: Reader<number> = (context) =>
  readBy((value) => (isNone(value) ? 0 : mass(context).parse(value)), z.number());

export const text: Reader<string> = () => z.string().check(z.trim());

/** Two fractions of a panel, `1 / 0.5`: a flap under a tenth of it would not hold. */
export const twoFractions: Reader<readonly [number, number]> = () =>
  readBy(
    (value) =>
      String(value)
        .split("/")
        .map((part) => plainNumber(part)),
    z.tuple([flap, flap]),
  );

/** `tray 1.5 / clamshell box 4`: hours by the plain name of a kind, which is looked up where they are used. */
export const hoursByKind: Reader<readonly (readonly [string, number])[]> = () =>
  readBy(
    (value) => {
      if (isNone(value)) return [];
      return String(value)
        .split("/")
        .map((part) => {
          const [, name = "", hours = ""] = /^(.*?)\s+([\d.,]+)$/.exec(part.trim()) ?? [];
          return [plainName(name), plainNumber(hours)];
        });
    },
    z.array(z.tuple([z.string().check(z.minLength(1)), z.number().check(z.minimum(0))])),
  );

const LEAST_FLAP = 0.1;
const flap = z.number().check(z.minimum(LEAST_FLAP), z.maximum(1));

/** A stock name or a caliper; `auto` where the reader allows it. */
export function board(material: Material, autoToo: true): Reader<Board | "auto">;
export function board(material: Material): Reader<Board>;
export function board(material: Material, autoToo = false): Reader<Board | "auto"> {
  return (context) =>
    readBy((value) => {
      if (typeof value === "string") {
        const wanted = plainName(value);
        if (autoToo && wanted === "auto") return "auto";
        const named = context.stock.find((row) => plainName(row.stock) === wanted);
        if (named !== undefined) {
          refuseBoardCaliper(isBoardOrCard(named) ? named.caliper : 0, context.name, value);
          return boardOf(named);
        }
      }
      const caliper = readLength(value, { argument: context.name, unit: context.shopUnit, points: true });
      refuseBoardCaliper(caliper, context.name, value);
      return boardOfCaliper(caliper, material, context.stock);
    }, z.custom<Board | "auto">());
}

/** The first row of the stock table of that caliper and material, else a board that is not in stock. */
export function boardOfCaliper(caliper: Mm, material: Material, stock: readonly StockRow[]): Board {
  const row = stock.find((each) => each.material === material && Math.abs(each.caliper - caliper) < SAME_CALIPER_MM);
  if (row !== undefined) return boardOf(row);
  return { stock: `${Number(caliper.toFixed(2))} mm ${material}, not in stock`, caliper, listed: undefined };
}

/** A name of the stock table, or `none`. */
export const stockName: Reader<string> = ({ stock }) =>
  readBy((value) => {
    if (isNone(value)) return "none";
    const wanted = typeof value === "string" ? plainName(value) : "";
    return stock.find((each) => plainName(each.stock) === wanted)?.stock;
  }, z.string());

const SAME_CALIPER_MM = 1e-6;

function boardOf(row: StockRow): Board {
  return { stock: row.stock, caliper: row.caliper, listed: row };
}

function isBoardOrCard({ material }: StockRow): boolean {
  return material === "board" || material === "card";
}

function isNone(value: unknown): boolean {
  return typeof value === "string" && plainName(value) === "none";
}

function asYesNo(value: unknown): unknown {
  const word = typeof value === "string" ? plainName(value) : value;
  if (word === "yes" || word === "true") return true;
  return word === "no" || word === "false" ? false : word;
}
