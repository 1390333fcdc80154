import * as z from "zod/mini";
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
  /** Makes the zod schema of the values; an `InputError` from a measure passes through it. */
  read(context: ReadingContext): z.ZodMiniType<T>;
  written(value: T, units: WrittenUnits): number | string;
}

/** A schema that reads anything by a function, then checks what it read. */
export function readBy<T>(read: (value: unknown) => unknown, check: z.core.$ZodType<T>): z.ZodMiniType<T> {
  return z.pipe(z.transform(read), check);
}

export function isNone(value: unknown): boolean {
  return typeof value === "string" && plainName(value) === "none";
}
