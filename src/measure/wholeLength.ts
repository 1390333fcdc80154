import { termAt, trailingTermAt } from "./dimensionTerm";
import type { DimensionTerm } from "./dimensionWords";
import { endOf } from "./endOf";
import { afterSpace, scanLength, type ScannedLength } from "./scanLength";

const BEHIND_TERM = / ?[:=]? ?/y;

/**
 * The length that a plain text is, with or without the word for its own direction: `30 cm`, `Höhe 30 cm`, `30 cm high`.
 *
 * @param direction which way the length runs; `any` where that does not matter, undefined where no word is read
 * @returns undefined where the text says anything else
 */
export function wholeLength(text: string, direction: DimensionTerm | "any" | undefined): ScannedLength | undefined {
  const isOwn = (term: DimensionTerm | undefined) =>
    term !== undefined && direction !== undefined && (direction === "any" || term === direction);
  const bare = scanLength(text, 0);
  if (bare !== undefined) {
    if (bare.end === text.length) return bare;
    const trailing = trailingTermAt(text, afterSpace(text, bare.end));
    return isOwn(trailing?.term) && trailing?.end === text.length ? { ...bare, end: text.length } : undefined;
  }
  const leading = termAt(text, 0);
  if (leading === undefined || !isOwn(leading.term)) return undefined;
  const length = scanLength(text, endOf(BEHIND_TERM, text, leading.end));
  return length?.end === text.length ? length : undefined;
}
