import fc from "fast-check";
import { formatLength, formatLengthWithUnit } from "../../src/measure/formatLength";
import { readLength } from "../../src/measure/readLength";
import type { LengthUnit } from "../../src/measure/units";

test.each<[number, LengthUnit, string]>([
  [44.5, "mm", "44.5"],
  [44, "mm", "44"],
  [44.456, "mm", "44.46"],
  [314.325, "mm", "314.33"],
  [0, "mm", "0"],
  [-0.001, "mm", "0"],
  [-44.5, "mm", "-44.5"],
  [445, "cm", "44.5"],
  [20000, "m", "20"],
  [1234.5, "m", "1.2345"],
  [609.6, "ft", "2"],
  [263.525, "in", "10 3/8"],
  [263.6, "in", "10 3/8"],
  [9.525, "in", "3/8"],
  [254, "in", "10"],
  [0, "in", "0"],
  [25.4 / 64, "in", "1/64"],
])("%p mm in %s is %s", (mm, unit, text) => {
  expect(formatLength(mm, unit)).toBe(text);
});

test.each([
  [25.4 * 0.0074, "0.007"],
  [25.4 * 0.004, "0.004"],
  [25.4 * 10.383, "10.383"],
])("%p mm lies between the marks of a rule, so inches are decimals: %s", (mm, text) => {
  expect(formatLength(mm, "in")).toBe(text);
});

test("the unit stands behind the length", () => {
  expect(formatLengthWithUnit(44.5, "mm")).toBe("44.5 mm");
  expect(formatLengthWithUnit(263.525, "in")).toBe("10 3/8 in");
});

test.each<[LengthUnit, number]>([
  ["mm", 0.005],
  ["cm", 0.05],
  ["m", 0.05],
  ["in", 0.005 * 25.4],
  ["ft", 0.00005 * 304.8],
])("a length written in %s reads back within %p mm", (unit, tolerance) => {
  fc.assert(
    fc.property(fc.double({ min: 0.1, max: 5000, noNaN: true }), (mm) => {
      const back = readLength(formatLengthWithUnit(mm, unit), { argument: "length", unit: "mm" });
      expect(Math.abs(back - mm)).toBeLessThanOrEqual(tolerance + 1e-9);
      const bare = readLength(formatLength(Math.min(mm, 4990), unit), { argument: "length", unit });
      expect(Math.abs(bare - Math.min(mm, 4990))).toBeLessThanOrEqual(tolerance + 1e-9);
    }),
  );
});
