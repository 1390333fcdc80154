import { benchFraction, FINEST_DENOMINATOR } from "../measure/benchFraction";
import { readLength } from "../measure/readLength";
import { fromMm, tidy, type Mm } from "../measure/units";
import { NONE, words } from "./choices";
import { isNone, type ReadingContext, refuse, type ValueType, type WrittenUnits } from "./valueType";
import { wordAmong } from "./wordValues";

const EXAMPLES = ["2", "2 mm", "1/16 in"] as const;

/** A length, zero included. */
export const lengthOrNone: ValueType<Mm> = {
  choices: [{ is: "measure", what: "a length", examples: EXAMPLES }, NONE],
  unit: "length",
  read: zeroOrLength,
  written: lengthText,
};

/** A length above zero: `none` and 0 have no meaning here. */
export function lengthAbove(...examples: readonly string[]): ValueType<Mm> {
  return {
    choices: [
      { is: "measure", what: "a length", aboveZero: true, examples: examples.length === 0 ? EXAMPLES : examples },
    ],
    unit: "length",
    read: (value, { name, shopUnit }) => readLength(value, { argument: name, unit: shopUnit }),
    written: lengthText,
  };
}

/** `auto`, or a length above zero. */
export function autoOrLength(...examples: readonly string[]): ValueType<"auto" | Mm> {
  const above = lengthAbove(...examples);
  return {
    choices: [...words(["auto"]), ...above.choices],
    unit: above.unit,
    read: (value, context) => wordAmong(["auto"], value) ?? above.read(value, context),
    written: (value, units) => (value === "auto" ? value : lengthText(value, units)),
  };
}

/** Lengths above zero in any number, `230 / 330`, or none. */
export const lengthsOrNone: ValueType<readonly Mm[]> = {
  choices: [{ is: "measure", what: "lengths", examples: ["330 mm", "230 mm / 330 mm"] }, NONE],
  unit: "length",
  read: (value, { name, shopUnit }) =>
    isNone(value)
      ? []
      : // A fraction of an inch has no spaces around its stroke.
        String(value)
          .split(/\s\/\s/)
          .map((each) => readLength(each, { argument: name, unit: shopUnit })),
  written: (value, units) => (value.length === 0 ? "none" : value.map((each) => lengthText(each, units)).join(" / ")),
};

/** One of some words, or a length. Zero is read too; `none` is named where it is a usual choice. */
export function choiceOrLength<const T extends string>(
  among: readonly [T, ...T[]],
  { examples, none = false }: { readonly examples: readonly string[]; readonly none?: boolean },
): ValueType<T | Mm> {
  return {
    choices: [...words(among), { is: "measure", what: "a length", examples }, ...(none ? [NONE] : [])],
    unit: "length",
    read: (value, context) => wordAmong(among, value) ?? zeroOrLength(value, context),
    written: (value, units) => (typeof value === "number" ? lengthText(value, units) : value),
  };
}

/** Of a finer step than this, a size would hold more steps than a number can count. */
export const LEAST_STEP_MM: Mm = 0.01;

/** A rounding step, or none. */
export const stepOrNone: ValueType<Mm> = {
  choices: [
    { is: "measure", what: "a step", from: LEAST_STEP_MM, unit: "mm", examples: ["0.5", "0.5 mm", "1/32 in"] },
    NONE,
  ],
  unit: "length",
  read: (value, context) => {
    const step = zeroOrLength(value, context);
    return step === 0 || step >= LEAST_STEP_MM ? step : refuse();
  },
  written: lengthText,
};

/** Exact, so that it reads back as the same length: in inches a fraction of the rule where it is one. */
export function lengthText(mm: Mm, { shopUnit }: WrittenUnits): string {
  if (mm === 0) return "none";
  const inShopUnit = fromMm(mm, shopUnit);
  if (shopUnit !== "in") return `${tidy(inShopUnit)} ${shopUnit}`;
  if (tidy(inShopUnit * FINEST_DENOMINATOR) % 1 === 0) return `${benchFraction(mm, FINEST_DENOMINATOR)} in`;
  const [inches, millimetres] = [`${tidy(inShopUnit)} in`, `${tidy(mm)} mm`];
  return inches.length <= millimetres.length ? inches : millimetres;
}

function zeroOrLength(value: unknown, { name, shopUnit }: ReadingContext): Mm {
  return readLength(value, { argument: name, unit: shopUnit, zero: true });
}
