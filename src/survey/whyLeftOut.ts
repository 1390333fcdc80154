import { isTotalsWord, wordsOf } from "../headings/lexicon";
import type { Recognition } from "../headings/recognition";
import type { Field } from "../headings/vocabulary/vocabulary";
import { isNoEnclosure } from "../item/sizeItem";
import { isBlank } from "../measure/blank";

export const TOTALS = "row of totals: left out";
export const HEADINGS = "headings again: left out";
/** Cells that repeat their headings before a row is taken for the headings again. */
const REPEATED = 2;

/** A row of sums, or the headings again: no item. */
export function whyLeftOut(
  values: Readonly<Partial<Record<Field, unknown>>>,
  isLast: boolean,
  { columns }: Recognition,
): string {
  let filled = 0;
  let again = 0;
  for (const field in values) {
    const cell = values[field as Field];
    if (isBlank(cell)) continue;
    filled++;
    const heading = columns[field as Field]?.heading;
    // A cell that is no heading says that the row is none.
    if (again === filled - 1 && typeof cell === "string" && heading !== undefined && isSameHeading(cell, heading))
      again++;
  }
  if (again >= REPEATED && again === filled) return HEADINGS;
  if (!isBlank(values.enclosure) && !isNoEnclosure(values.enclosure)) return "";
  if (isTotalsWord(values.identifier) || (isBlank(values.identifier) && isTotalsWord(values.title))) return TOTALS;
  const isUnnamed = columns.identifier !== undefined && isBlank(values.identifier) && isBlank(values.enclosure);
  return isLast && isUnnamed && filled > 0 ? TOTALS : "";
}

/** A figure, or the first letter alone, shows of most cells that they are no heading. */
function isSameHeading(cell: string, heading: string): boolean {
  if (cell === heading) return true;
  const [one, other] = [cell.charCodeAt(0) | LOWER, heading.charCodeAt(0) | LOWER];
  if (isPlainLetter(one) && isPlainLetter(other) && one !== other) return false;
  if (/\d/.test(cell) && !/\d/.test(heading)) return false;
  return wordsOf(cell) === wordsOf(heading);
}

/** Makes a capital letter of ASCII a small one. */
const LOWER = 32;

function isPlainLetter(code: number): boolean {
  return code >= "a".charCodeAt(0) && code <= "z".charCodeAt(0);
}
