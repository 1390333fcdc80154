import { afterTimes, termAt, trailingTermAt } from "./dimensionTerm";
import type { DimensionTerm } from "./dimensionWords";
import { endOf } from "./endOf";
import { afterSpace, scanLength, scanUnit, type ScannedLength } from "./scanLength";
import type { LengthUnit } from "./units";

/** One number of a measure, as written. */
export interface Figure {
  readonly value: number;
  /** What its last digit counts, in the same unit. */
  readonly step: number;
  readonly unit: LengthUnit | undefined;
  readonly term: DimensionTerm | undefined;
  /** The same length a second time, in brackets behind it. */
  readonly again: Figure | undefined;
}

/** A run of figures that belong together: `31.5 x 24 x 4.2 cm`, `H 31.5 cm, W 24 cm`. */
export interface Measure {
  readonly figures: readonly Figure[];
  readonly end: number;
}

type Found = { readonly figure: Figure; readonly end: number };

const BETWEEN_TERM_AND_FIGURE = / ?[:=]? ?/y;
const RANGE = / ?(?:-|to(?!\p{L})) ?/iuy;
/** What may stand between figures that each carry their term. */
const BETWEEN_LABELLED = / ?(?:[,;&،؛、]|and(?!\p{L}))? ?(?:and(?!\p{L}) ?)?/iuy;
const BRACKETED_TERM_END = /\) ?/y;

/** Reads the measure that starts at `at` of a plain text, as far as it is understood; undefined when nothing is. */
export function scanMeasure(text: string, at: number): Measure | undefined {
  const first = scanFigure(text, at);
  if (first === undefined) return undefined;
  const termsLead = termAt(text, at) !== undefined;
  const figures = [first.figure];
  let end = first.end;
  for (;;) {
    const next = nextFigure(text, end, first.figure.term !== undefined, termsLead);
    if (next === undefined) return { figures, end };
    figures.push(next.figure);
    end = next.end;
  }
}

function nextFigure(text: string, at: number, labelled: boolean, termsLead: boolean): Found | undefined {
  const times = afterTimes(text, at);
  if (times !== undefined) return scanFigure(text, times);
  if (!labelled) return undefined;
  const start = endOf(BETWEEN_LABELLED, text, at);
  const isLabelledAlike = (termAt(text, start) !== undefined) === termsLead;
  const found = isLabelledAlike ? scanFigure(text, start) : undefined;
  return found?.figure.term === undefined ? undefined : found;
}

function scanFigure(text: string, at: number): Found | undefined {
  const leading = termAt(text, at);
  const start = leading === undefined ? at : endOf(BETWEEN_TERM_AND_FIGURE, text, leading.end);
  const length = scanRange(text, start);
  if (length === undefined) return undefined;
  const trailing = leading === undefined ? trailingTerm(text, length.end) : undefined;
  const termEnd = trailing?.end ?? length.end;
  const unitAfterTerm =
    trailing !== undefined && length.unit === undefined ? scanUnit(text, afterSpace(text, termEnd)) : undefined;
  const unit = length.unit ?? unitAfterTerm?.unit;
  const end = unitAfterTerm?.end ?? termEnd;
  if (unit === "pt" || isWithinWord(text, end)) return undefined;
  const again = bracketedFigure(text, end);
  const term = leading?.term ?? trailing?.term;
  const figure = { value: length.value, step: length.step, unit, term, again: again?.figure };
  return { figure, end: again?.end ?? end };
}

/** A length, or the larger end of a range of two: an enclosure must hold the item at its thickest. */
function scanRange(text: string, at: number): ScannedLength | undefined {
  const low = scanLength(text, at);
  const start = low === undefined ? -1 : endOf(RANGE, text, low.end);
  if (low === undefined || start === low.end) return low;
  const high = scanLength(text, start);
  if (high === undefined) return low;
  const isRange = (low.unit === undefined || low.unit === high.unit) && low.value < high.value;
  return isRange ? high : low;
}

/** `H` of `30H`, `(h)` of `30 (h) cm`, `high` of `30 cm high`. */
function trailingTerm(text: string, at: number) {
  const start = afterSpace(text, at);
  if (text[start] !== "(") return trailingTermAt(text, start);
  const inside = trailingTermAt(text, start + 1);
  if (inside === undefined || text[inside.end] !== ")") return undefined;
  return { term: inside.term, end: endOf(BRACKETED_TERM_END, text, inside.end) };
}

function bracketedFigure(text: string, at: number): Found | undefined {
  const open = afterSpace(text, at);
  if (text[open] !== "(" && text[open] !== "[") return undefined;
  const length = scanLength(text, open + 1);
  if (length?.unit === undefined || length.unit === "pt" || !/[)\]]/.test(text[length.end] ?? "")) return undefined;
  const { value, step, unit } = length;
  return { figure: { value, step, unit, term: undefined, again: undefined }, end: length.end + 1 };
}

/** Whether a figure breaks off inside a word, as 4 does in `4O mm`; the `x` of `30x20` is no such word. */
function isWithinWord(text: string, at: number): boolean {
  return /[\p{L}\d]/u.test(text[at - 1] ?? "") && /\p{L}/u.test(text[at] ?? "") && afterTimes(text, at) === undefined;
}
