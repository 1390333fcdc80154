import { scanNumber, type ScannedNumber } from "./scanNumber";
import type { LengthUnit } from "./units";
import { alternatives, LENGTH_WORDS } from "./unitWords";

/** A length found in a text, in the unit it is written in. */
export interface ScannedLength extends ScannedNumber {
  /** `pt` is a point of board caliper; undefined when the text gives no unit. */
  readonly unit: LengthUnit | "pt" | undefined;
}

/** A unit word ends where no letter or figure follows, or at the `x` of `30mmx20mm`; `cm2` is no length. */
const UNIT = new RegExp(
  `(?:${(["mm", "cm", "m", "in", "ft"] as const).map((unit) => `(${alternatives(LENGTH_WORDS[unit])})`).join("|")}|(points?|pts?))` +
    `(?=$|[^\\p{L}\\d]|x)(?:\\.(?!\\d))?|(")|(')`,
  "iuy",
);
const UNIT_OF_GROUP: readonly ScannedLength["unit"][] = ["mm", "cm", "m", "in", "ft", "pt", "in", "ft"];
const INCHES_PER_FOOT = 12;
/** What may stand between feet and inches. */
const BETWEEN_FEET_AND_INCHES = / ?([-,]?) ?/y;

/** Reads the length that starts at `at` of a plain text: `10 3/8 in`, `25,4cm`, `40`, `1' 2 1/2"`. */
export function scanLength(text: string, at: number): ScannedLength | undefined {
  const number = scanNumber(text, at);
  if (number === undefined) return undefined;
  const unit = scanUnit(text, afterSpace(text, number.end));
  const { value, step } = number;
  const length = { value, step, unit: unit?.unit, end: unit?.end ?? number.end };
  return length.unit === "ft" && Number.isInteger(value) ? withInches(text, length) : length;
}

/** Reads the unit that starts at `at` of a plain text. */
export function scanUnit(text: string, at: number): Pick<ScannedLength, "unit" | "end"> | undefined {
  UNIT.lastIndex = at;
  const groups = UNIT.exec(text)?.slice(1);
  if (groups === undefined) return undefined;
  return { unit: UNIT_OF_GROUP[groups.findIndex((group) => group !== undefined)], end: UNIT.lastIndex };
}

/** `at`, or the place after the space there. */
export function afterSpace(text: string, at: number): number {
  return text[at] === " " ? at + 1 : at;
}

/** Adds the inches that follow whole feet; without them, or where they are 12 or more, the feet stand alone. */
function withInches(text: string, feet: ScannedLength): ScannedLength {
  BETWEEN_FEET_AND_INCHES.lastIndex = feet.end;
  const between = BETWEEN_FEET_AND_INCHES.exec(text)?.[1];
  const inches = scanNumber(text, BETWEEN_FEET_AND_INCHES.lastIndex);
  if (inches === undefined || inches.value >= INCHES_PER_FOOT) return feet;
  const mark = scanUnit(text, afterSpace(text, inches.end));
  // 1'-2' is a range and 1'-2 may be one; 1' 2 is what people write for 14 inches.
  const isInches = mark === undefined ? between === "" : mark.unit === "in";
  if (!isInches) return feet;
  const value = feet.value * INCHES_PER_FOOT + inches.value;
  return { value, step: inches.step, unit: "in", end: mark?.end ?? inches.end };
}
