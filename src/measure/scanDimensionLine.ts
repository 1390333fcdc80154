import type { DimensionTerm } from "./dimensionWords";
import { endOf } from "./endOf";
import { afterKnownWord, bracketedOrderAt, isPlainRemark, scanHeading } from "./scanHeading";
import { afterSpace } from "./scanLength";
import { GREATEST_MASS_KG, scanMass, type ScannedMass } from "./scanMass";
import { scanMeasure, type Figure } from "./scanMeasure";
import type { LengthUnit } from "./units";

/** What one line of a dimension text says. */
export interface DimensionLine {
  readonly label: string | undefined;
  readonly order: readonly DimensionTerm[] | undefined;
  /** A unit that the heading gives for every number without one. */
  readonly unit: LengthUnit | undefined;
  readonly figures: readonly Figure[];
  /** The same measure a second time, in another unit. */
  readonly second: readonly Figure[] | undefined;
  readonly weightKg: number | undefined;
  /** What was not understood, from its first word on; empty when all was. */
  readonly rest: string;
}

/** What may follow a measure, and what it says. */
interface Trailer {
  readonly says: Partial<Pick<DimensionLine, "order" | "second" | "weightKg">>;
  readonly end: number;
}

const WEIGHT_WORD =
  /(?:weight|weighs|mass|wt|poids|gewicht|peso|vikt|waga|вес|масса|الوزن|وزن|重量|重)(?!\p{L})\.? ?:? ?/iuy;
const BEFORE_WEIGHT = / ?[,;]? ?/y;
const BRACKETED = / ?(?:\(([^()]*)\)|\[([^[\]]*)\])/y;
const BEFORE_SECOND = / ?[;/=|] ?/y;
const FULL_STOP = / ?\.?$/y;

/** Reads a line of plain text: heading, measure, and what may follow a measure. */
export function scanDimensionLine(text: string): DimensionLine {
  const heading = scanHeading(text);
  const measure = scanMeasure(text, heading.end);
  const { label, order, unit } = heading;
  let line: DimensionLine = {
    label,
    order,
    unit,
    figures: measure?.figures ?? [],
    second: undefined,
    weightKg: undefined,
    rest: "",
  };
  let at = measure?.end ?? heading.end;
  for (let next: Trailer | undefined; measure !== undefined; at = next.end) {
    next = scanTrailer(text, at, line);
    if (next === undefined) break;
    line = { ...line, ...next.says };
  }
  return { ...line, rest: text.slice(endOf(FULL_STOP, text, at)).replace(/^[ ,;]+/, "") };
}

/** The mass of a line that gives nothing else: `weight: 20kg`. */
export function weightOfLine(text: string): number | undefined {
  const start = endOf(WEIGHT_WORD, text, 0);
  const mass = start === 0 ? undefined : scanWeight(text, start);
  return mass !== undefined && endOf(FULL_STOP, text, mass.end) === text.length ? mass.kg : undefined;
}

function scanTrailer(text: string, at: number, line: DimensionLine): Trailer | undefined {
  return weight(text, at, line) ?? bracketed(text, at, line) ?? secondMeasure(text, at, line) ?? knownWord(text, at);
}

function weight(text: string, at: number, line: DimensionLine): Trailer | undefined {
  const start = endOf(BEFORE_WEIGHT, text, at);
  const mass =
    start === at || line.weightKg !== undefined ? undefined : scanWeight(text, endOf(WEIGHT_WORD, text, start));
  return mass && { says: { weightKg: mass.kg }, end: mass.end };
}

function bracketed(text: string, at: number, line: DimensionLine): Trailer | undefined {
  BRACKETED.lastIndex = at;
  const found = BRACKETED.exec(text);
  const inside = (found?.[1] ?? found?.[2])?.trim();
  if (found === null || inside === undefined) return undefined;
  const end = at + found[0].length;
  const order = line.order === undefined ? bracketedOrderAt(inside, 0) : undefined;
  if (order?.end === inside.length) return { says: { order: order.terms }, end };
  const second = line.second === undefined ? scanMeasure(inside, 0) : undefined;
  if (second !== undefined && endOf(FULL_STOP, inside, second.end) === inside.length) {
    return { says: { second: second.figures }, end };
  }
  return isRemark(inside, line.weightKg !== undefined) ? { says: {}, end } : undefined;
}

function secondMeasure(text: string, at: number, line: DimensionLine): Trailer | undefined {
  const start = endOf(BEFORE_SECOND, text, at);
  const second = start === at || line.second !== undefined ? undefined : scanMeasure(text, start);
  return second && { says: { second: second.figures }, end: second.end };
}

function knownWord(text: string, at: number): Trailer | undefined {
  const end = afterKnownWord(text, afterSpace(text, at));
  return end === undefined ? undefined : { says: {}, end };
}

function scanWeight(text: string, at: number): ScannedMass | undefined {
  const mass = scanMass(text, at);
  return mass !== undefined && mass.kg > 0 && mass.kg <= GREATEST_MASS_KG ? mass : undefined;
}

/** Whether brackets hold words only, or behind a weight other masses too: `(Gross 209kg)`. */
function isRemark(inside: string, behindWeight: boolean): boolean {
  const words = behindWeight
    ? inside.replace(/\d+(?:[.,]\d+)?/g, (number, at: number) => (scanMass(inside, at) ? "" : number))
    : inside;
  return !/\d/.test(words) && isPlainRemark(words);
}
