import { InputError, shown } from "./errors";
import { formatLengthWithUnit } from "./formatLength";
import { plainText } from "./plainText";
import type { DimensionTerm } from "./dimensionWords";
import { AMBIGUOUS_COMMA, isOddMetricFraction, ODD_FRACTION } from "./scanNumber";
import { wholeLength } from "./wholeLength";
import { MM_PER, MM_PER_POINT, type LengthUnit, type Mm } from "./units";

export interface LengthOptions {
  /** The argument or setting, in the user's words, for messages. */
  readonly argument: string;
  /** What a number without a unit is in. */
  readonly unit: LengthUnit;
  /** Whether `pt` (0.001 in) is read: for calipers only. */
  readonly points?: boolean;
  /** Whether zero, also written `none`, is accepted. */
  readonly zero?: boolean;
  /** The greatest length accepted, 20 m unless said. */
  readonly limitMm?: Mm;
}

/** A number without a unit above this is more likely a wrong unit or a date than a collection item. */
export const PLAIN_LIMIT_MM: Mm = 5000;
/** Letters of a measure, far more than anyone types: a longer text is not a measure, and is not read. */
export const LONGEST_MEASURE = 1_000;
/** Larger than anything that an enclosure is made for. */
const DEFAULT_LIMIT_MM: Mm = 20000;
/**
 * Excel's serials of 1 January 2000, counted from 1904, and 31 December 2099, counted from 1900: what `3/8` becomes in a
 * cell.
 */
export const FIRST_DATE_SERIAL = 35_064;
const LAST_DATE_SERIAL = 73050;

const EXAMPLES: Readonly<Record<LengthUnit, string>> = {
  mm: "40, 40 mm or 1 9/16 in",
  cm: "4, 40 mm or 1 9/16 in",
  m: "0.04, 40 mm or 1 9/16 in",
  in: "10 3/8, 10 3/8 in or 264 mm",
  ft: "1 1/2, 18 in or 457 mm",
};
const CALIPER_EXAMPLES: Readonly<Record<LengthUnit, string>> = {
  mm: "2, 2 mm or 80 pt",
  cm: "0.2, 2 mm or 80 pt",
  m: "0.002, 2 mm or 80 pt",
  in: "0.08, 5/64 in or 80 pt",
  ft: "0.0066, 5/64 in or 80 pt",
};

/**
 * A length written as a number or a text, in mm.
 *
 *     readLength(10.5, { argument: "height", unit: "cm" }) // 105
 *     readLength("10 3/8 in", { argument: "height", unit: "mm" }) // 263.525
 *
 * @param value a number in `unit`, or a text with its own unit or, without one, in `unit`
 * @throws InputError naming the argument, for anything that is not wholly understood, not above zero (unless `zero`),
 * above the limit, or a number without a unit above 5 m
 */
export function readLength(value: unknown, options: LengthOptions): Mm {
  if (typeof value === "number") {
    const mm = value * MM_PER[options.unit];
    // The usual case first: a survey holds thousands of plain numbers.
    if (mm > 0 && mm <= PLAIN_LIMIT_MM && mm <= (options.limitMm ?? DEFAULT_LIMIT_MM)) return mm;
    return checked(mm, value, true, options);
  }
  if (typeof value !== "string") throw notALength(value, options);
  if (value.length > LONGEST_MEASURE) throw notALength(value, options);
  const text = plainText(value);
  if (options.zero === true && text.toLowerCase() === "none") return 0;
  const length = wholeLength(text, directionOf(options.argument));
  if (length === undefined) throw textRefused(value, text, options);
  if (length.unit === "pt") {
    if (options.points === true) return checked(length.value * MM_PER_POINT, value, false, options);
    throw notALength(value, options, "pt is read for calipers only");
  }
  const unit = length.unit ?? options.unit;
  if (isOddMetricFraction(length, unit)) throw notALength(value, options, ODD_FRACTION);
  return checked(length.value * MM_PER[unit], value, length.unit === undefined, options);
}

/** The direction that an argument of this name runs in. */
function directionOf(argument: string): DimensionTerm | "any" | undefined {
  if (argument === "height" || argument === "width" || argument === "depth") return argument;
  return argument === MEASURE ? "any" : undefined;
}

/** The argument of the function that reads any one measure. */
export const MEASURE = "measure";

/** Whether a number is a date that Excel made of a typed fraction. */
export function mayBeADate(value: unknown): boolean {
  const number = Number(value);
  return Number.isInteger(number) && number >= FIRST_DATE_SERIAL && number <= LAST_DATE_SERIAL;
}

function checked(mm: Mm, value: unknown, plain: boolean, options: LengthOptions): Mm {
  const { argument, zero = false, limitMm = DEFAULT_LIMIT_MM } = options;
  if (Number.isNaN(mm)) throw notALength(value, options);
  if (mm < 0 || (mm === 0 && !zero)) throw new InputError(argument, shown(value), expectation(options, !zero));
  if (plain && mm > PLAIN_LIMIT_MM) {
    const cure = mayBeADate(value) ? "may be a date: type '3/8 in" : "write its unit, such as 5.2 m, if it is meant";
    throw new InputError(argument, shown(value), "a plain number above 5 m is refused", cure);
  }
  if (mm > limitMm) {
    const limit = formatLengthWithUnit(limitMm, limitMm >= MM_PER.m ? "m" : "mm");
    throw new InputError(argument, shown(value), `give a length of at most ${limit}`);
  }
  return mm;
}

function textRefused(value: string, text: string, options: LengthOptions): InputError {
  if (!AMBIGUOUS_COMMA.test(text)) return text.startsWith("-") ? negative(value, options) : notALength(value, options);
  const expected = "a comma before three figures may mean thousands or decimals";
  return new InputError(options.argument, shown(value), expected, "write 1234 or 1.234");
}

function negative(value: string, options: LengthOptions): InputError {
  return new InputError(options.argument, shown(value), expectation(options, options.zero !== true));
}

/** `38-40`, `38 to 40 mm`: only a dimension text is read so, where no fraction can be meant. */
const RANGE = /^\d+(?:[.,]\d+)?(?: ?\p{L}{1,2})? ?(?:-|to) ?\d+(?:[.,]\d+)?(?: ?\p{L}{1,3}\.?)?$/u;

/** Letters of a range with its units, at most. */
const LONGEST_RANGE = 40;

function notALength(value: unknown, options: LengthOptions, given = ""): InputError {
  const isRange =
    given === "" && typeof value === "string" && value.length <= LONGEST_RANGE && RANGE.test(plainText(value));
  const cure = isRange ? "of a range give the larger end" : given;
  const got = typeof value === "string" && value.trim() === "" ? "" : value;
  return new InputError(options.argument, shown(got), expectation(options, false), cure);
}

function expectation({ unit, points = false, zero = false }: LengthOptions, aboveZero: boolean): string {
  const examples = (points ? CALIPER_EXAMPLES : EXAMPLES)[unit];
  return `give a length ${aboveZero ? "above zero " : ""}such as ${examples}${zero ? ", or none" : ""}`;
}
