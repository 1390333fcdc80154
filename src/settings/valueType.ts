import { WithoutStack } from "../measure/errors";
import type { LengthUnit, WorkbookUnit } from "../measure/units";
import type { Choice } from "./choices";
import { plainName } from "./names";
import type { StockRow } from "./stock";

/** What a setting's value is read with: units are resolved before any length is read, the stock before any board. */
export interface ReadingContext {
  readonly name: string;
  readonly unit: WorkbookUnit;
  readonly shopUnit: LengthUnit;
  readonly stock: readonly StockRow[];
}

/** The units that a value is written in. */
export type WrittenUnits = Pick<ReadingContext, "unit" | "shopUnit">;

/** One type of value: what it takes, as data; how it is read; and how it is written, so that it reads back the same. */
export interface ValueType<T> {
  readonly choices: readonly Choice[];
  /** What the column `unit` of the settings table says. */
  readonly unit: string;
  /** @throws NotTaken, or the `InputError` of a measure */
  read(value: unknown, context: ReadingContext): T;
  written(value: T, units: WrittenUnits): number | string;
}

/** A value that its setting or heading does not take. Whoever knows the name says in words what it takes. */
export class NotTaken extends WithoutStack {}

export function refuse(): never {
  throw new NotTaken("not taken");
}

export interface NumberBounds {
  readonly least: number;
  readonly most: number;
  readonly whole?: boolean;
}

/** @throws NotTaken for what is no number, not a finite one, or outside the bounds */
export function numberWithin(value: unknown, { least, most, whole = false }: NumberBounds): number {
  if (typeof value !== "number" || !Number.isFinite(value)) return refuse();
  return value < least || value > most || (whole && !Number.isInteger(value)) ? refuse() : value;
}

export function isNone(value: unknown): boolean {
  return typeof value === "string" && plainName(value) === "none";
}
