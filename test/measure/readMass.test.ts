import convert from "convert-units";
import fc from "fast-check";
import { InputError } from "../../src/measure/errors";
import { readMass, type MassOptions } from "../../src/measure/readMass";

const inKg: MassOptions = { argument: "weight", unit: "kg" };
const inLb: MassOptions = { argument: "weight", unit: "lb" };
const OUNCE_KG = 0.45359237 / 16;

test.each<[unknown, MassOptions, number]>([
  [1.2, inKg, 1.2],
  [2, inLb, 0.90718474],
  ["1.2", inKg, 1.2],
  ["2 1/2", inLb, 1.133980925],
  ["1.2 kg", inLb, 1.2],
  ["28,5kg", inKg, 28.5],
  ["850 g", inKg, 0.85],
  ["850 grams", inKg, 0.85],
  ["1311 Kilograms", inKg, 1311],
  ["3 lb", inKg, 1.36077711],
  ["3 lbs.", inKg, 1.36077711],
  ["5 oz", inKg, 5 * OUNCE_KG],
  ["½ oz", inKg, OUNCE_KG / 2],
  ["2 lb 3 oz", inKg, 35 * OUNCE_KG],
  ["2 lb, 3 1/2 oz", inKg, 35.5 * OUNCE_KG],
  ["2\u00a0pounds\u00a03\u00a0ounces", inKg, 35 * OUNCE_KG],
])("%p with %j is %p kg", (value, options, kg) => {
  expect(readMass(value, options)).toBeCloseTo(kg, 9);
});

const EXPECTED = "give a mass such as 1.2, 850 g or 2 lb 3 oz";
const ABOVE_ZERO = "give a mass above zero such as 1.2, 850 g or 2 lb 3 oz";

test.each<[unknown, string]>([
  [undefined, `weight: got a blank; ${EXPECTED}`],
  [" ", `weight: got a blank; ${EXPECTED}`],
  [true, `weight: got TRUE; ${EXPECTED}`],
  [NaN, `weight: got NaN; ${EXPECTED}`],
  [0, `weight: got 0; ${ABOVE_ZERO}`],
  [-1, `weight: got -1; ${ABOVE_ZERO}`],
  ["-1 kg", `weight: got "-1 kg"; ${ABOVE_ZERO}`],
  ["0 g", `weight: got "0 g"; ${ABOVE_ZERO}`],
  ["1 kg?", `weight: got "1 kg?"; ${EXPECTED}`],
  ["ca. 1 kg", `weight: got "ca. 1 kg"; ${EXPECTED}`],
  ["67kg/225kg", `weight: got "67kg/225kg"; ${EXPECTED}`],
  ["2 lb 17 oz", `weight: got "2 lb 17 oz"; ${EXPECTED}`],
  ["2 lb 3", `weight: got "2 lb 3"; ${EXPECTED}`],
  ["20 cm", `weight: got "20 cm"; ${EXPECTED}`],
  ["#N/A", `weight: got "#N/A"; ${EXPECTED}`],
  [
    "1,234 kg",
    'weight: got "1,234 kg"; a comma before three figures may mean thousands or decimals; write 1234 or 1.234',
  ],
  [Infinity, "weight: got Infinity; give a mass of at most 10000 kg"],
  [1e9, "weight: got 1000000000; give a mass of at most 10000 kg"],
  ["11000 kg", 'weight: got "11000 kg"; give a mass of at most 10000 kg'],
  [45359, "weight: got 45359; give a mass of at most 10000 kg; may be a date: type '3/8 kg"],
])("%p is refused", (value, message) => {
  expect(messageOf(value)).toBe(message);
});

test("masses agree with a general-purpose units library", () => {
  const unit = fc.constantFrom("g", "kg", "lb", "oz");
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 9999 }), unit, (value, written) => {
      const kg = convert(value).from(written).to("kg");
      // The library keeps seven figures for the pound.
      expect(Math.abs(readMass(`${value} ${written}`, inLb) - kg)).toBeLessThanOrEqual(kg * 1e-6);
    }),
  );
});

test("junk gives a finite mass above zero or an InputError, nothing else", () => {
  const alphabet = [..."0123456789 .,/-kglboz½²?", " kg", " lb ", " oz", "1/2"];
  const junk = fc.oneof(fc.anything(), fc.double(), fc.string({ unit: fc.constantFrom(...alphabet), maxLength: 10 }));
  fc.assert(
    fc.property(junk, fc.constantFrom(inKg, inLb), (value, options) => {
      try {
        const kg = readMass(value, options);
        expect(Number.isFinite(kg) && kg > 0 && kg <= 10000).toBe(true);
      } catch (error) {
        expect(error).toBeInstanceOf(InputError);
      }
    }),
    { numRuns: 3000 },
  );
});

function messageOf(value: unknown): string {
  try {
    return `read as ${readMass(value, inKg)}`;
  } catch (error) {
    if (error instanceof InputError) return error.message;
    throw error;
  }
}
