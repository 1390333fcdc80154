import fc from "fast-check";
import { benchModulus, type BenchTest } from "../../src/board/benchModulus";
import { plateSag } from "../../src/board/plateSag";
import { InputError } from "../../src/measure/errors";

const TEST: BenchTest = { length: 200, width: 50, caliper: 2, loadKg: 0.1, sag: 2 };

describe("benchModulus", () => {
  it("100 g on 200 mm of a strip 50 x 2 mm that sags 2 mm is 2.452 GPa", () => {
    // I = 50 x 8 / 12 = 33.33 mm4; 0.980665 N x 8e6 mm3 / (48 x 33.33 x 2) = 2451.66 N/mm2
    expect(benchModulus(TEST)).toBeCloseTo(2.45166, 4);
  });

  it("inverts the beam formula", () => {
    const positive = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(
        positive(50, 600),
        positive(10, 80),
        positive(0.3, 10),
        positive(0.01, 5),
        positive(0.2, 8),
        (length, width, caliper, loadKg, modulus) => {
          const sag = (loadKg * 9.80665 * length ** 3) / (48 * modulus * 1000 * ((width * caliper ** 3) / 12));
          const found = benchModulus({ length, width, caliper, loadKg, sag });
          expect(Math.abs(found / modulus - 1)).toBeLessThan(1e-12);
        },
      ),
    );
  });

  it("a strip loaded evenly sags 5/8 of the same weight in the middle: the plate with nu = 0 agrees", () => {
    const modulus = benchModulus(TEST);
    const sag = plateSag({
      spanX: 200,
      spanY: 50 * 1000,
      caliper: 2,
      loadKg: 0.1 * 1000,
      modulusX: modulus,
      modulusY: modulus,
      poisson: 0,
      freeEdge: "none",
    });
    expect(sag).toBeCloseTo((5 / 8) * TEST.sag, 9);
  });

  it.each([
    ["length", { length: 0 }, "length: got 0; give a number above zero"],
    ["width", { width: -1 }, "width: got -1; give a number above zero"],
    ["caliper", { caliper: NaN }, "caliper: got NaN; give a number above zero"],
    ["load", { loadKg: 0 }, "load: got 0; give a number above zero"],
    ["sag", { sag: 0 }, "sag: got 0; give a number above zero"],
  ])("refuses a %s that is not above zero", (_, bad, message) => {
    const modulus = () => benchModulus({ ...TEST, ...bad });
    expect(modulus).toThrow(InputError);
    expect(modulus).toThrow(message);
  });
});
