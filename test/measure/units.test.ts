import convert from "convert-units";
import fc from "fast-check";
import {
  areaIn,
  fromMm,
  KG_PER_LB,
  M2_PER_FT2,
  massIn,
  MM_PER,
  MM_PER_POINT,
  tidy,
  type LengthUnit,
} from "../../src/measure/units";

const UNITS = Object.keys(MM_PER) as LengthUnit[];

test("an inch is 25.4 mm, a foot 304.8 mm, a pound 0.45359237 kg (16 CFR 500.19, NIST SP 811)", () => {
  expect(MM_PER).toEqual({ mm: 1, cm: 10, m: 1000, in: 25.4, ft: 304.8 });
  expect(KG_PER_LB).toBe(0.45359237);
});

test("a square inch is 6.4516 cm2, so a square foot is 0.09290304 m2 (16 CFR 500.19)", () => {
  expect(M2_PER_FT2).toBeCloseTo((144 * 6.4516) / 10000, 12);
});

test("a point of caliper is a thousandth of an inch (Roberts and Etherington, 1982)", () => {
  expect(MM_PER_POINT * 1000).toBeCloseTo(MM_PER.in, 12);
});

/** The library steps from metric to imperial by 3.28084 ft to the metre, which is 3.2e-8 too many. */
const LIBRARY_ROUNDING = 4e-8;

test.each(UNITS)("lengths in %s agree with a general-purpose units library, there and back", (unit) => {
  fc.assert(
    fc.property(fc.double({ min: 0.001, max: 100000, noNaN: true }), (value) => {
      const mm = convert(value).from(unit).to("mm");
      expect(Math.abs(value * MM_PER[unit] - mm)).toBeLessThanOrEqual(mm * LIBRARY_ROUNDING);
      expect(Math.abs(fromMm(mm, unit) - value)).toBeLessThanOrEqual(value * LIBRARY_ROUNDING);
    }),
  );
});

test("areas and masses answered for a workbook in inches agree with the library", () => {
  expect(areaIn(2.5, "in")).toBeCloseTo(convert(2.5).from("m2").to("ft2"), 4);
  expect(massIn(2.5, "in")).toBeCloseTo(convert(2.5).from("kg").to("lb"), 4);
});

test("areas and masses stay in m2 and kg for a workbook in mm or cm", () => {
  expect([areaIn(2.5, "mm"), areaIn(2.5, "cm"), massIn(2.5, "mm"), massIn(2.5, "cm")]).toEqual([2.5, 2.5, 2.5, 2.5]);
});

test.each([
  [263.52499999999998, 263.525],
  [609.5999999999999, 609.6],
  [0.1 + 0.2, 0.3],
  [-0.0000000001, 0],
  [1e300, 1e300],
])("tidy(%p) is %p", (noisy, clean) => {
  expect(Object.is(tidy(noisy), clean)).toBe(true);
});
