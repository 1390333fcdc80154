import { endOf } from "./endOf";
import { afterSpace } from "./scanLength";
import { scanNumber } from "./scanNumber";
import { KG_PER_LB } from "./units";
import { alternatives, MASS_WORDS } from "./unitWords";

/** A mass found in a text. */
export interface ScannedMass {
  readonly kg: number;
  /** Where the mass ends in the text. */
  readonly end: number;
}

/** Heavier than anything that an enclosure is made for: 10 t. */
export const GREATEST_MASS_KG = 10000;

const UNIT = new RegExp(
  `(?:${(["kg", "g", "lb", "oz"] as const).map((unit) => `(${alternatives(MASS_WORDS[unit])})`).join("|")})` +
    `(?=$|[^\\p{L}\\d])(?:\\.(?!\\d))?`,
  "iuy",
);
const OUNCES_PER_POUND = 16;
const KG_PER_OZ = KG_PER_LB / OUNCES_PER_POUND;
const KG_PER = [1, 0.001, KG_PER_LB, KG_PER_OZ];
const POUND = 2;
const OUNCE = 3;
const BETWEEN_POUNDS_AND_OUNCES = /,? ?/y;

/** Reads the mass, with its unit, that starts at `at` of a plain text: `850 g`, `28,5kg`, `2 lb 3 oz`. */
export function scanMass(text: string, at: number): ScannedMass | undefined {
  const mass = scanOne(text, at);
  if (mass === undefined || mass.unit !== POUND || !Number.isInteger(mass.value)) return mass;
  const ounces = scanOne(text, endOf(BETWEEN_POUNDS_AND_OUNCES, text, mass.end));
  if (ounces === undefined || ounces.unit !== OUNCE || ounces.value >= OUNCES_PER_POUND) return mass;
  return { kg: mass.kg + ounces.kg, end: ounces.end };
}

function scanOne(text: string, at: number) {
  const number = scanNumber(text, at);
  if (number === undefined) return undefined;
  UNIT.lastIndex = afterSpace(text, number.end);
  const groups = UNIT.exec(text)?.slice(1);
  if (groups === undefined) return undefined;
  const unit = groups.findIndex((group) => group !== undefined);
  return { value: number.value, unit, kg: number.value * (KG_PER[unit] ?? 0), end: UNIT.lastIndex };
}
