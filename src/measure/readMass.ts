import { InputError, shown } from "./errors";
import { plainText } from "./plainText";
import { LONGEST_MEASURE, mayBeADate } from "./readLength";
import { GREATEST_MASS_KG, scanMass } from "./scanMass";
import { AMBIGUOUS_COMMA, scanNumber } from "./scanNumber";
import { KG_PER_LB, type MassUnit } from "./units";

export interface MassOptions {
  /** The argument or setting, in the user's words, for messages. */
  readonly argument: string;
  /** What a number without a unit is in. */
  readonly unit: MassUnit;
}

const EXAMPLES = { kg: "1.2, 850 g or 2 lb 3 oz", lb: "2 1/2, 2 lb 3 oz or 850 g" } as const;

/**
 * A mass written as a number or a text, in kg.
 *
 *     readMass("2 lb 3 oz", { argument: "weight", unit: "kg" }) // 0.9922...
 *
 * @param value a number in `unit`, or a text with its own unit (g, kg, lb, oz) or, without one, in `unit`
 * @throws InputError naming the argument, for anything that is not wholly understood, not above zero, or above 10 t
 */
export function readMass(value: unknown, options: MassOptions): number {
  if (typeof value === "number") return checked(value * kgPer(options.unit), value, options);
  if (typeof value !== "string") throw refused(value, options);
  if (value.length > LONGEST_MEASURE) throw refused(value, options);
  const text = plainText(value);
  const mass = scanMass(text, 0);
  if (mass?.end === text.length) return checked(mass.kg, value, options);
  const number = scanNumber(text, 0);
  if (number?.end === text.length) return checked(number.value * kgPer(options.unit), value, options);
  if (AMBIGUOUS_COMMA.test(text)) {
    const expected = "a comma before three figures may mean thousands or decimals";
    throw new InputError(options.argument, shown(value), expected, "write 1234 or 1.234");
  }
  throw refused(text === "" ? "" : value, options, text.startsWith("-"));
}

function checked(kg: number, value: unknown, options: MassOptions): number {
  if (Number.isNaN(kg)) throw refused(value, options);
  if (kg <= 0) throw refused(value, options, true);
  if (kg <= GREATEST_MASS_KG) return kg;
  const cure = mayBeADate(value) ? `may be a date: type '3/8 ${options.unit}` : "";
  throw new InputError(options.argument, shown(value), `give a mass of at most ${GREATEST_MASS_KG} kg`, cure);
}

function refused(value: unknown, { argument, unit }: MassOptions, aboveZero = false): InputError {
  const expected = `give a mass ${aboveZero ? "above zero " : ""}such as ${EXAMPLES[unit]}`;
  return new InputError(argument, shown(value), expected);
}

function kgPer(unit: MassUnit): number {
  return unit === "lb" ? KG_PER_LB : 1;
}
