import { readMass } from "../measure/readMass";
import { severalMeasures } from "../measure/severalMeasures";
import { massIn, massUnitOf, tidy } from "../measure/units";
import { NONE } from "./choices";
import { isNone, type ReadingContext, type ValueType, type WrittenUnits } from "./valueType";

/** A mass above zero, kg. */
export function mass(...examples: readonly string[]): ValueType<number> {
  return { choices: [{ is: "measure", what: "a weight", examples }], unit: "mass", read: aboveZero, written };
}

/** A mass, or that it is not known. Of several items, `900 g * 2 | 1.2`, their sum, not known where one is not. */
export function massOrUnknown(...examples: readonly string[]): ValueType<number | "none"> {
  return {
    choices: [{ is: "measure", what: "a weight", examples }, NONE],
    unit: "mass",
    read: (value, context) => {
      const several = severalMeasures(value);
      if (several === undefined) return isNone(value) ? "none" : aboveZero(value, context);
      if (several.some(({ text }) => text === "" || text === "0" || isNone(text))) return "none";
      return several.reduce((sum, { text, copies }) => sum + copies * aboveZero(text, context), 0);
    },
    written: (value, units) => (value === "none" ? value : written(value, units)),
  };
}

/** A mass, zero included. */
export function massOrNone(...examples: readonly string[]): ValueType<number> {
  return {
    ...mass(...examples),
    choices: [{ is: "measure", what: "a weight", examples }, NONE],
    read: (value, context) => (isNone(value) ? 0 : aboveZero(value, context)),
  };
}

function aboveZero(value: unknown, { name, unit }: ReadingContext): number {
  return readMass(value, { argument: name, unit: massUnitOf(unit) });
}

function written(kg: number, { unit }: WrittenUnits): string {
  return kg === 0 ? "none" : `${tidy(massIn(kg, unit))} ${massUnitOf(unit)}`;
}
