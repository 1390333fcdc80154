import { choicesText } from "./choices";
import type { ValueType } from "./valueType";

/**
 * Where a default comes from. `common practice`: a habit of the trade with no source. `shop`: a default of this
 * project that every workshop changes. `from memory`: a number to replace by a measurement of your own.
 */
export type Standing = "common practice" | "shop" | "from memory";

/** One setting: all that reading, help, messages and the settings table need to know of it. */
export interface Definition<T> {
  readonly name: string;
  /** The trade's other words for the same thing. */
  readonly otherNames: readonly string[];
  readonly takes: ValueType<T>;
  /** The value when nothing is given; undefined where the kind of enclosure or another setting decides. */
  readonly fallback: T;
  /** The default in words is a rule, not the value itself. */
  readonly byRule: boolean;
  /** The default in words. */
  readonly defaultText: string;
  /** What it accepts, as it ends the sentence "give ...". */
  readonly accepts: string;
  readonly unit: string;
  readonly meaning: string;
  readonly standing: Standing;
  /** An option of the kinds that name it: refused in a row's own text when the row's kind has no use for it. */
  readonly option: boolean;
  /** A name that older settings sheets hold: read without effect. */
  readonly retired: boolean;
}

/** What is written down of a setting; its other words follow. */
interface SettingRecord<T> {
  readonly name: string;
  readonly otherNames?: readonly string[];
  readonly takes: ValueType<T>;
  /** Where its type of value does not say it. */
  readonly unit?: string;
  readonly meaning: string;
  readonly standing?: Standing;
  readonly option?: boolean;
  readonly retired?: boolean;
}

/** A setting whose default is a value, or (`byDefault`, in words) a rule that starts from one. */
export function setting<T>(
  record: SettingRecord<T> & { readonly fallback: NoInfer<T>; readonly byDefault?: string },
): Definition<T>;
/** A setting whose default is a rule, in words. */
export function setting<T>(record: SettingRecord<T> & { readonly byDefault: string }): Definition<T | undefined>;
export function setting<T>({
  fallback,
  byDefault,
  ...record
}: SettingRecord<T> & { readonly fallback?: T; readonly byDefault?: string }): Definition<T | undefined> {
  const { takes } = record;
  return {
    otherNames: [],
    unit: takes.unit,
    standing: "shop",
    option: false,
    retired: false,
    ...record,
    fallback,
    byRule: byDefault !== undefined,
    defaultText: byDefault ?? String(takes.written(fallback as T, { unit: "mm", shopUnit: "mm" })),
    accepts: choicesText(takes.choices),
  };
}
