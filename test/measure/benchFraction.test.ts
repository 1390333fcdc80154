import fc from "fast-check";
import { benchFraction } from "../../src/measure/benchFraction";
import { readLength } from "../../src/measure/readLength";

test.each([
  [263.525, 16, "10 3/8"],
  [263.5, 8, "10 3/8"],
  [9.525, 64, "3/8"],
  [254, 32, "10"],
  [0, 16, "0"],
  [0.3, 16, "0"],
  [25.3, 16, "1"],
  [12.7, 2, "1/2"],
  [25.4 * 2.7, 10, "2 7/10"],
  [25.4 / 3, 3, "1/3"],
  [25.4 / 64, 64, "1/64"],
  [-263.525, 16, "-10 3/8"],
  [-0.1, 16, "0"],
])("%p mm in parts of 1/%p in is %s", (mm, denominator, reading) => {
  expect(benchFraction(mm, denominator)).toBe(reading);
});

test.each([
  [0, "denominator: got 0; give a whole number from 2 to 64"],
  [1, "denominator: got 1; give a whole number from 2 to 64"],
  [65, "denominator: got 65; give a whole number from 2 to 64"],
  [-8, "denominator: got -8; give a whole number from 2 to 64"],
  [2.5, "denominator: got 2.5; give a whole number from 2 to 64"],
  [NaN, "denominator: got NaN; give a whole number from 2 to 64"],
  [Infinity, "denominator: got Infinity; give a whole number from 2 to 64"],
])("a denominator of %p is refused", (denominator, message) => {
  expect(() => benchFraction(100, denominator)).toThrow(new Error(message));
});

test.each([NaN, Infinity, -Infinity])("a length of %p is refused", (mm) => {
  expect(() => benchFraction(mm, 16)).toThrow(`length: got ${mm}; give a length`);
});

test("a reading lies within half a part, is reduced, and reads back as the same mark", () => {
  fc.assert(
    fc.property(fc.double({ min: 1, max: 4000, noNaN: true }), fc.integer({ min: 2, max: 64 }), (mm, denominator) => {
      const reading = benchFraction(mm, denominator);
      const [, over, under] = /(\d+)\/(\d+)$/.exec(reading) ?? [undefined, "1", "1"];
      expect(denominator % Number(under)).toBe(0);
      expect(commonDivisors(Number(over), Number(under))).toEqual([1]);
      if (reading === "0") return expect(mm / 25.4).toBeLessThanOrEqual(0.5 / denominator);
      const back = readLength(reading, { argument: "length", unit: "in" });
      expect(Math.abs(back - mm) / 25.4).toBeLessThanOrEqual(0.5 / denominator + 1e-9);
      expect(benchFraction(back, denominator)).toBe(reading);
    }),
  );
});

function commonDivisors(a: number, b: number): number[] {
  return Array.from({ length: Math.min(a, b) }, (_, index) => index + 1).filter((n) => a % n === 0 && b % n === 0);
}
