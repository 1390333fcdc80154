import * as z from "zod/mini";
import { NONE, stockNamed, words, type Measure } from "./choices";
import { plainName } from "./names";
import { isNone, readBy, type ValueType } from "./valueType";

/** One of some words. */
export function choice<const T extends string>(...among: readonly [T, ...T[]]): ValueType<T> {
  return { choices: words(among), unit: "", read: () => oneWordOf(among), written: (value) => value };
}

export function oneWordOf<T extends string>(among: readonly [T, ...T[]]): z.ZodMiniType<T> {
  return readBy(asWord, z.enum(among) as z.core.$ZodType<T>);
}

export const yesNo: ValueType<boolean> = {
  choices: words(["yes", "no"]),
  unit: "",
  read: () => readBy(asYesNo, z.boolean()),
  written: (value) => (value ? "yes" : "no"),
};

/** Any text. @param withMeaning words that have a meaning of their own */
export function text(measure: Omit<Measure, "is">, ...withMeaning: readonly string[]): ValueType<string> {
  return {
    choices: [...words(withMeaning), { is: "measure", ...measure }],
    unit: "",
    read: () => z.string().check(z.trim()),
    written: (value) => value,
  };
}

/** Whatever an older settings sheet holds: it is read without effect. */
export const anything: ValueType<unknown> = {
  choices: [{ is: "measure", what: "anything" }],
  unit: "",
  read: () => z.unknown(),
  written: (value) => (typeof value === "number" ? value : String(value)),
};

/** A name of the stock table, or `none`. */
export const stockName: ValueType<string> = {
  choices: [{ is: "stock", materials: undefined }, NONE],
  unit: "",
  read: ({ stock }) => readBy((value) => (isNone(value) ? "none" : stockNamed(value, stock)?.stock), z.string()),
  written: (value) => value,
};

function asWord(value: unknown): unknown {
  return typeof value === "string" ? plainName(value) : value;
}

function asYesNo(value: unknown): unknown {
  const word = asWord(value);
  if (word === "yes" || word === "true") return true;
  return word === "no" || word === "false" ? false : word;
}
