import * as z from "zod/mini";
import { readMass } from "../measure/readMass";
import { massIn, massUnitOf, tidy } from "../measure/units";
import { NONE } from "./choices";
import { isNone, readBy, type ReadingContext, type ValueType, type WrittenUnits } from "./valueType";

/** A mass above zero, kg. */
export function mass(...examples: readonly string[]): ValueType<number> {
  return { choices: [{ is: "measure", what: "a weight", examples }], unit: "mass", read: aboveZero, written };
}

/** A mass, or that it is not known. */
export function massOrUnknown(...examples: readonly string[]): ValueType<number | "none"> {
  return {
    choices: [{ is: "measure", what: "a weight", examples }, NONE],
    unit: "mass",
    read: (context) =>
      readBy((value) => (isNone(value) ? "none" : aboveZero(context).parse(value)), z.custom<number | "none">()),
    written: (value, units) => (value === "none" ? value : written(value, units)),
  };
}

/** A mass, zero included. */
export function massOrNone(...examples: readonly string[]): ValueType<number> {
  return {
    ...mass(...examples),
    choices: [{ is: "measure", what: "a weight", examples }, NONE],
    read: (context) => readBy((value) => (isNone(value) ? 0 : aboveZero(context).parse(value)), z.number()),
  };
}

function aboveZero({ name, unit }: ReadingContext): z.ZodMiniType<number> {
  return readBy((value) => readMass(value, { argument: name, unit: massUnitOf(unit) }), z.number());
}

function written(kg: number, { unit }: WrittenUnits): string {
  return kg === 0 ? "none" : `${tidy(massIn(kg, unit))} ${massUnitOf(unit)}`;
}
