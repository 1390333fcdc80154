import { holdsTerm, orderAt, termAt } from "./dimensionTerm";
import type { DimensionTerm } from "./dimensionWords";
import { afterSpace, scanUnit } from "./scanLength";
import type { LengthUnit } from "./units";

/** What stands before a measure: `support (left):`, `H x W x D (cm):`, `overall`. */
export interface Heading {
  /** What was measured; undefined when the text does not say. */
  readonly label: string | undefined;
  readonly order: readonly DimensionTerm[] | undefined;
  /** A unit that stands for every number without one. */
  readonly unit: LengthUnit | undefined;
  readonly end: number;
}

/** Words that may stand beside a measure without a colon. */
const KNOWN_WORD =
  /(?:overall|dimensions|measurements|size|object|support|image|sheet|page|leaf|plate|mount|mounted|unmounted|frame|framed|unframed|sight|closed|displayed|book|volume|box|each)(?!\p{L})[,:]? ?/iuy;
/** Words and signs that make a measure one that nothing can be cut from. */
const DOUBT =
  /(?<!\p{L})(?:ca|circa|approx\w*|about|around|nearly|est|estimated?|roughly|min|minimum|probably|possibly|unknown|open|opened|unfolded|unrolled|extended)(?!\p{L})|[?~≈±<>]/iu;
/** Words up to a colon, the last perhaps a number: `frame:`, `support, each:`, `panel 2:`. */
const LABEL = /(\p{L}[^\d:]{0,200}?(?: ?\d{1,3})?) ?: ?/uy;
const HOLDS_UNIT = /(?<!\p{L})(?:mm|cm|m|inch(?:es)?|ft|feet|foot|millimet\w*|centimet\w*|met(?:re|er)s?)(?!\p{L})/iu;

/** Reads the words before a measure, as far as they are understood: up to `end`. */
export function scanHeading(text: string): Heading {
  let heading: Heading = { label: undefined, order: undefined, unit: undefined, end: 0 };
  for (;;) {
    const next =
      orderPart(text, heading) ?? unitPart(text, heading) ?? labelPart(text, heading) ?? knownWord(text, heading);
    if (next === undefined) return heading;
    heading = next;
  }
}

/** Whether words without a figure may be passed over: they raise no doubt and say nothing about the measures. */
export function isPlainRemark(words: string): boolean {
  return !DOUBT.test(words) && !HOLDS_UNIT.test(words) && !holdsTerm(words);
}

/** A word that may stand before or behind a measure, such as `overall` or `each`: where the text goes on behind it. */
export function afterKnownWord(text: string, at: number): number | undefined {
  KNOWN_WORD.lastIndex = at;
  return KNOWN_WORD.test(text) ? KNOWN_WORD.lastIndex : undefined;
}

/** Reads an order of measures with or without brackets: `(H x W x D)`. */
export function bracketedOrderAt(text: string, at: number): ReturnType<typeof orderAt> {
  if (text[at] !== "(") return orderAt(text, at);
  const order = orderAt(text, at + 1);
  return order !== undefined && text[order.end] === ")" ? { terms: order.terms, end: order.end + 1 } : undefined;
}

function orderPart(text: string, heading: Heading): Heading | undefined {
  const order = heading.order === undefined ? bracketedOrderAt(text, heading.end) : undefined;
  return order && { ...heading, order: order.terms, end: afterColon(text, order.end) };
}

/** `(cm)` or `in cm`, as in a column heading. */
function unitPart(text: string, heading: Heading): Heading | undefined {
  const opens = text[heading.end] === "(";
  const isIn = /^in /i.test(text.slice(heading.end));
  if (heading.unit !== undefined || (!opens && !isIn)) return undefined;
  const unit = scanUnit(text, heading.end + (opens ? 1 : "in ".length));
  if (unit?.unit === undefined || unit.unit === "pt" || (opens && text[unit.end] !== ")")) return undefined;
  return { ...heading, unit: unit.unit, end: afterColon(text, unit.end + (opens ? 1 : 0)) };
}

function knownWord(text: string, heading: Heading): Heading | undefined {
  const end = afterKnownWord(text, heading.end);
  return end === undefined ? undefined : withLabel(heading, text.slice(heading.end, end), end);
}

function labelPart(text: string, heading: Heading): Heading | undefined {
  LABEL.lastIndex = heading.end;
  const words = LABEL.exec(text)?.[1];
  if (words === undefined || termAt(text, heading.end) !== undefined || !isPlainRemark(words)) return undefined;
  return withLabel(heading, words, LABEL.lastIndex);
}

function withLabel(heading: Heading, words: string, end: number): Heading {
  const label = [heading.label, words.replace(/[ ,:]{1,80}$/, "")].filter((part) => part !== undefined).join(" ");
  return { ...heading, label, end };
}

function afterColon(text: string, at: number): number {
  const colon = afterSpace(text, at);
  return afterSpace(text, text[colon] === ":" ? colon + 1 : colon);
}
