import type { Field } from "../headings/vocabulary/vocabulary";

type Cells = Readonly<Partial<Record<Field, unknown>>>;

/** Measures written as `1.250` or `1.250,5`. */
export function pointedFields(values: Cells): readonly Field[] {
  return MEASURES.filter((field) => typeof values[field] === "string" && values[field].search(WITH_THOUSANDS) >= 0);
}

/** Those measures without the points before thousands. */
export function withoutPoints(values: Cells, fields: readonly Field[]): Cells {
  return Object.fromEntries(fields.map((field) => [field, String(values[field]).replace(WITH_THOUSANDS, "$1")]));
}

const WITH_THOUSANDS = /(\d)\.(?=\d{3}(?!\d))/g;

const MEASURES: readonly Field[] = ["height", "width", "depth", "weight", "dimensions"];
