import { NONE, stockNamed, words, type Measure } from "./choices";
import { plainName } from "./names";
import { isNone, refuse, type ValueType } from "./valueType";

/** One of some words. */
export function choice<const T extends string>(...among: readonly [T, ...T[]]): ValueType<T> {
  return {
    choices: words(among),
    unit: "",
    read: (value) => wordAmong(among, value) ?? refuse(),
    written: (value) => value,
  };
}

/** The word that a cell means, whatever its letters' case and spaces; undefined for any other. */
export function wordAmong<const T extends string>(among: readonly T[], value: unknown): T | undefined {
  const word = asWord(value);
  return among.find((each) => each === word);
}

export const yesNo: ValueType<boolean> = {
  choices: words(["yes", "no"]),
  unit: "",
  read: asYesNo,
  written: (value) => (value ? "yes" : "no"),
};

/** Yes, no, or a name of the stock table, which is a yes. */
export const yesNoOrStock: ValueType<boolean | string> = {
  choices: [...words(["yes", "no"]), { is: "stock", materials: undefined }],
  unit: "",
  read: (value, { stock }) => stockNamed(value, stock)?.stock ?? asYesNo(value),
  written: (value) => (typeof value === "string" ? value : value ? "yes" : "no"),
};

/** Any text. @param withMeaning words that have a meaning of their own */
export function text(measure: Omit<Measure, "is">, ...withMeaning: readonly string[]): ValueType<string> {
  return {
    choices: [...words(withMeaning), { is: "measure", ...measure }],
    unit: "",
    read: (value) => (typeof value === "string" ? value.trim() : refuse()),
    written: (value) => value,
  };
}

/** Whatever an older settings sheet holds: it is read without effect. */
export const anything: ValueType<unknown> = {
  choices: [{ is: "measure", what: "anything" }],
  unit: "",
  read: (value) => value,
  written: (value) => (typeof value === "number" ? value : String(value)),
};

/** A name of the stock table, or `none`. */
export const stockName: ValueType<string> = {
  choices: [{ is: "stock", materials: undefined }, NONE],
  unit: "",
  read: (value, { stock }) => (isNone(value) ? "none" : (stockNamed(value, stock)?.stock ?? refuse())),
  written: (value) => value,
};

function asWord(value: unknown): unknown {
  return typeof value === "string" ? plainName(value) : value;
}

function asYesNo(value: unknown): boolean {
  const word = asWord(value);
  if (word === true || word === "yes" || word === "true") return true;
  return word === false || word === "no" || word === "false" ? false : refuse();
}
