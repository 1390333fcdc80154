import { InputError, shown } from "../measure/errors";
import { NONE, type Measure } from "./choices";
import { listed } from "./names";
import { plainNumber } from "./plainNumber";
import { GREATEST_MODULUS_GPA, LEAST_MODULUS_GPA } from "./stock";
import { isNone, numberWithin, refuse, type NumberBounds, type ValueType } from "./valueType";

// What divides or multiplies a figure stays far from where figures overflow.
const LEAST_NUMBER = 0.001;
const GREATEST_NUMBER = 1e6;

/** The words of a number: what it is, and examples. */
type Words = Pick<Measure, "what" | "aboveZero" | "examples">;

/** A number of zero or more, zero also written `none`. @param most the greatest, which its words then name */
export function numberOrNone(words: Words, { most, suffix = "" }: { most?: number; suffix?: string } = {}) {
  const bounds = most === undefined ? {} : { from: 0, to: most };
  return numberType([{ is: "measure", ...words, ...bounds }, NONE], {
    least: 0,
    most: most ?? GREATEST_NUMBER,
    suffix,
  });
}

/** A whole number, zero also written `none`. */
export function wholeOrNone(what: string, ...examples: readonly string[]): ValueType<number> {
  return numberType([{ is: "measure", what, examples }, NONE], { least: 0, most: GREATEST_NUMBER, whole: true });
}

/** A percentage from 0 to 100; 0 may be written `none`. */
export const percentage = numberType([{ is: "measure", what: "a percentage", from: 0, to: 100 }], {
  least: 0,
  most: 100,
  suffix: "%",
});

/** A number above zero, or `none`, which is undefined. */
export function positiveOrNone(what: string): ValueType<number | undefined> {
  return {
    choices: [{ is: "measure", what }, NONE],
    unit: "",
    read: (value) =>
      isNone(value) ? undefined : numberWithin(plainNumber(value), { least: LEAST_NUMBER, most: GREATEST_NUMBER }),
    written: (value) => value ?? "none",
  };
}

/** One of a few whole numbers. */
export function wholeNumber(least: number, most: number): ValueType<number> {
  const all = Array.from({ length: most - least + 1 }, (_, index) => String(least + index));
  return numberType([{ is: "measure", what: listed(all, "or") }], { least, most, whole: true });
}

/** A stiffness. */
export const modulus = numberType(
  [{ is: "measure", what: "a number of GPa", from: LEAST_MODULUS_GPA, to: GREATEST_MODULUS_GPA, examples: ["2"] }],
  { least: LEAST_MODULUS_GPA, most: GREATEST_MODULUS_GPA },
);

const LEAST_FLAP = 0.1;

/** Two fractions of a panel, `1 / 0.5`: a flap under a tenth of it would not hold. */
export const twoFractions: ValueType<readonly [number, number]> = {
  choices: [{ is: "measure", what: "two fractions of the panel", from: LEAST_FLAP, to: 1, examples: ["1 / 0.5"] }],
  unit: "",
  read: (value) => {
    const [first, second, ...more] = listItems(value).map((part) => plainNumber(part));
    if (more.length > 0) return refuse();
    const flap = { least: LEAST_FLAP, most: 1 };
    return [numberWithin(first, flap), numberWithin(second, flap)];
  },
  written: (value) => value.join(" / "),
};

/** Hours by the name of a kind, which is looked up where they are used. */
export const hoursByKind: ValueType<readonly (readonly [kind: string, hours: number])[]> = {
  choices: [{ is: "measure", what: "hours by enclosure", examples: ["tray 1.5 / clamshell box 4"], apart: true }, NONE],
  unit: "hours",
  read: (value, { name }) =>
    isNone(value)
      ? []
      : listItems(value)
          .map((item) => nameAndHours(item, name))
          .map(checkedHours),
  written: (value) => (value.length === 0 ? "none" : value.map((each) => each.join(" ")).join(" / ")),
};

/** Lists inside a value use `/`. */
function listItems(value: unknown): readonly string[] {
  return String(value).split("/");
}

function nameAndHours(item: string, setting: string): readonly [string, number] {
  if (/\d[,;\s]+\D/.test(item))
    throw new InputError(setting, shown(item.trim()), "it is the hours of one enclosure", "put / between enclosures");
  const [, name = "", hours = ""] = /^(\D*)\s([\d.,]+)$/.exec(item.trim()) ?? [];
  return [name.trim(), plainNumber(hours)];
}

function checkedHours([kind, hours]: readonly [string, number]): readonly [string, number] {
  return kind === "" ? refuse() : [kind, numberWithin(hours, { least: 0, most: Infinity })];
}

function numberType(
  choices: ValueType<number>["choices"],
  { suffix = "", ...bounds }: NumberBounds & { readonly suffix?: string },
): ValueType<number> {
  return {
    choices,
    unit: "",
    read: (value) => (bounds.least === 0 && isNone(value) ? 0 : numberWithin(plainNumber(value, suffix), bounds)),
    written: (value) => (value === 0 ? "none" : value),
  };
}
