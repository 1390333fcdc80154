import fc from "fast-check";
import { InputError } from "../../src/measure/errors";
import { GRAVITY, plateSag, type LoadedPlate } from "../../src/board/plateSag";
import { finiteDifferenceSag } from "./finiteDifferencePlate";

const ISOTROPIC: LoadedPlate = {
  spanX: 200,
  spanY: 200,
  caliper: 2,
  modulusX: 2,
  modulusY: 2,
  loadKg: 4,
  freeEdge: "none",
};
const BOARD: LoadedPlate = { ...ISOTROPIC, spanX: 213, spanY: 303, modulusX: 1, modulusY: 2 };

/** N mm, of the direction with this modulus in GPa. */
function bending(modulus: number, caliper: number, divisor = 1 - 0.3 ** 2): number {
  return (modulus * 1000 * caliper ** 3) / (12 * divisor);
}

/** alpha in w = alpha q a^4 / D, of an isotropic plate with a = 200. */
function alpha(plate: LoadedPlate, a = 200): number {
  const pressure = (plate.loadKg * GRAVITY) / (plate.spanX * plate.spanY);
  return (plateSag(plate) * bending(plate.modulusX, plate.caliper)) / (pressure * a ** 4);
}

function expectWithin(actual: number, expected: number, share: number): void {
  expect(Math.abs(actual / expected - 1)).toBeLessThan(share);
}

describe("published plates, supported on four edges", () => {
  // Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, Table 8; Roark's Formulas for Stress and Strain,
  // Table 11.4 (prints 10.92 alpha). a is the short side, nu = 0.3. Read.
  it.each([
    [1, 0.00406, 0.0444],
    [1.2, 0.00564, 0.0616],
    [1.4, 0.00705, 0.077],
    [1.6, 0.0083, 0.0906],
    [1.8, 0.00931, 0.1017],
    [2, 0.01013, 0.111],
    [3, 0.01223, 0.1335],
    [4, 0.01282, 0.14],
    [5, 0.01297, 0.1417],
    [1e6, 0.01302, 0.1421],
  ])("at b/a = %d the sag is %d q a^4 / D, within 1 %", (ratio, timoshenko, roark) => {
    for (const plate of [
      { ...ISOTROPIC, spanY: 200 * ratio },
      { ...ISOTROPIC, spanX: 200 * ratio },
    ]) {
      expectWithin(alpha(plate), timoshenko, 0.01);
      expectWithin(10.92 * alpha(plate), roark, 0.01);
    }
  });

  it("a very long plate sags as a strip of plate stiffness, 5/384 q a^4 / D", () => {
    expectWithin(alpha({ ...ISOTROPIC, spanX: 2e5 }), 5 / 384, 1e-9);
  });
});

describe("published plates, one edge free", () => {
  // Timoshenko and Woinowsky-Krieger, "three edges simply supported and the fourth edge free", nu = 0.3, a the free
  // edge, b the side across. From memory, and so only a second opinion: the difference plate below is the check.
  it.each([
    [0.5, 0.0071],
    [2 / 3, 0.00968],
    [1, 0.01286],
    [1.5, 0.01462],
    [2, 0.01507],
    [3, 0.0152],
    [1e6, 0.01522],
  ])("at b/a = %d the free edge sags %d q a^4 / D, within 1 %", (ratio, expected) => {
    expectWithin(alpha({ ...ISOTROPIC, spanX: 200 * ratio, freeEdge: "x0" }), expected, 0.01);
  });

  it("far from its opposite edge the free edge sags (3 - nu) / ((1 - nu)(3 + nu)) times a strip", () => {
    expectWithin(alpha({ ...ISOTROPIC, spanX: 2e5, freeEdge: "x0" }), ((5 / 384) * 2.7) / (0.7 * 3.3), 1e-7);
  });

  it("near its opposite edge only twisting resists: q b^2 a^2 / (32 (1 - nu) D)", () => {
    // The strip turns about its long support; its slope along y is carried by torsion alone.
    const narrow = { ...ISOTROPIC, spanX: 0.02, freeEdge: "x0" } as const;
    expectWithin(alpha(narrow), 1e-4 ** 2 / (32 * 0.7), 1e-6);
  });
});

describe("against an orthotropic plate solved in finite differences", () => {
  // The two Poisson's ratios, the shear modulus and the stiffnesses are built as for any orthotropic sheet.
  const cases: [number, number, number][] = [
    [200, 200, 1],
    [200, 200, 2],
    [213, 303, 2],
    [303, 213, 2],
    [213, 303, 4],
    [150, 450, 0.5],
  ];
  describe.each(["none", "x0"] as const)("free edge %s", (freeEdge) => {
    it.each(cases)("%d x %d with E_x / E_y = %d agrees within 0.1 %", (spanX, spanY, ratio) => {
      const [modulusX, modulusY] = [1.4 * Math.sqrt(ratio), 1.4 / Math.sqrt(ratio)];
      const poissonXY = 0.3 * Math.sqrt(ratio);
      const poissonYX = 0.3 / Math.sqrt(ratio);
      const shear = Math.sqrt(modulusX * modulusY) / (2 * (1 + Math.sqrt(poissonXY * poissonYX)));
      const caliper = 2;
      const bendingX = bending(modulusX, caliper, 1 - poissonXY * poissonYX);
      const expected = finiteDifferenceSag({
        spanX,
        spanY,
        bendingX,
        bendingY: bending(modulusY, caliper, 1 - poissonXY * poissonYX),
        coupling: poissonYX * bendingX,
        twisting: bending(shear, caliper, 1),
        pressure: (4 * GRAVITY) / (spanX * spanY),
        freeEdge,
      });
      expectWithin(plateSag({ spanX, spanY, caliper, modulusX, modulusY, loadKg: 4, freeEdge }), expected, 0.001);
    });
  });
});

describe("the series", () => {
  it("agrees with Navier's double series, summed term by term, to 1e-6", () => {
    for (const [spanX, spanY] of [
      [213, 303],
      [303, 213],
      [100, 600],
      [200, 200],
    ] as const) {
      const plate = { ...BOARD, spanX, spanY };
      const [d1, d2] = [bending(plate.modulusX, 2), bending(plate.modulusY, 2)];
      let sum = 0;
      for (let m = 1; m < 1000; m += 2) {
        for (let n = 1; n < 1000; n += 2) {
          const sign = (m + n) % 4 === 2 ? 1 : -1;
          const kx = (m / spanX) ** 2;
          const ky = (n / spanY) ** 2;
          sum += sign / (m * n * (d1 * kx ** 2 + 2 * Math.sqrt(d1 * d2) * kx * ky + d2 * ky ** 2));
        }
      }
      const pressure = (plate.loadKg * GRAVITY) / (spanX * spanY);
      expectWithin(plateSag(plate), (16 * pressure * sum) / Math.PI ** 6, 1e-6);
    }
  });

  it("stays finite at every proportion", () => {
    for (const freeEdge of ["none", "x0"] as const) {
      for (const spanX of [1e-3, 1, 10, 1e3, 1e6, 1e9]) {
        const sag = plateSag({ ...BOARD, spanX, freeEdge });
        expect(sag).toBeGreaterThan(0);
        expect(sag).toBeLessThan(Infinity);
      }
    }
  });
});

describe("grain", () => {
  it("on a square base supported all round, a quarter turn changes nothing", () => {
    const along = plateSag({ ...BOARD, spanX: 250, spanY: 250, modulusX: 2, modulusY: 1 });
    expectWithin(plateSag({ ...BOARD, spanX: 250, spanY: 250, modulusX: 1, modulusY: 2 }), along, 1e-12);
  });

  it("on a long base, the sag is inverse to the modulus across the short span", () => {
    const long = { ...BOARD, spanX: 100, spanY: 5000 };
    expectWithin(
      plateSag({ ...long, modulusX: 1, modulusY: 2 }) / plateSag({ ...long, modulusX: 2, modulusY: 1 }),
      2,
      1e-3,
    );
  });

  it("a quarter turn is a plate of the other proportion: b/a by the fourth root of the moduli, turned over", () => {
    // In stretched coordinates a 200 x 200 E-ratio of 16 is 2:1, and so is a 200 x 400 isotropic plate.
    const stretched = plateSag({ ...ISOTROPIC, modulusX: 2, modulusY: 2 / 16 });
    const isotropic = plateSag({ ...ISOTROPIC, spanY: 400, loadKg: 8 });
    expectWithin(stretched, isotropic, 1e-12);
  });

  it("grain along a free edge sags less than grain towards it", () => {
    const free = { ...BOARD, spanX: 250, spanY: 250, freeEdge: "x0" } as const;
    expect(plateSag({ ...free, modulusX: 1, modulusY: 2 })).toBeLessThan(
      0.8 * plateSag({ ...free, modulusX: 2, modulusY: 1 }),
    );
  });
});

describe("what makes a base sag more", () => {
  const plates = fc.record({
    spanX: fc.double({ min: 20, max: 1500, noNaN: true }),
    spanY: fc.double({ min: 20, max: 1500, noNaN: true }),
    caliper: fc.double({ min: 0.3, max: 10, noNaN: true }),
    modulusX: fc.double({ min: 0.2, max: 8, noNaN: true }),
    modulusY: fc.double({ min: 0.2, max: 8, noNaN: true }),
    loadKg: fc.double({ min: 0.01, max: 60, noNaN: true }),
    freeEdge: fc.constantFrom("none" as const, "x0" as const),
  });
  const more = fc.double({ min: 1.001, max: 5, noNaN: true });
  const pressureOf = (plate: LoadedPlate) => plate.loadKg / (plate.spanX * plate.spanY);

  it("weight: in proportion", () => {
    fc.assert(
      fc.property(plates, more, (plate, times) => {
        expectWithin(plateSag({ ...plate, loadKg: plate.loadKg * times }), times * plateSag(plate), 1e-9);
      }),
    );
  });

  it("caliper: inverse to its cube", () => {
    fc.assert(
      fc.property(plates, more, (plate, times) => {
        expectWithin(plateSag({ ...plate, caliper: plate.caliper * times }), plateSag(plate) / times ** 3, 1e-9);
      }),
    );
  });

  it("either span, under the same pressure; either modulus, the other way", () => {
    const settled = 1 - 1e-6;
    fc.assert(
      fc.property(plates, more, (plate, times) => {
        for (const span of ["spanX", "spanY"] as const) {
          const wider = { ...plate, [span]: plate[span] * times };
          const loadKg = pressureOf(plate) * wider.spanX * wider.spanY;
          expect(plateSag({ ...wider, loadKg })).toBeGreaterThan(plateSag(plate) * settled);
        }
        for (const modulus of ["modulusX", "modulusY"] as const) {
          const stiffer = { ...plate, [modulus]: plate[modulus] * times };
          expect(plateSag(stiffer)).toBeLessThan(plateSag(plate) / settled);
        }
      }),
      { numRuns: 500 },
    );
  });

  it("both spans together, under the same weight: with their square", () => {
    fc.assert(
      fc.property(plates, more, (plate, times) => {
        const larger = { ...plate, spanX: plate.spanX * times, spanY: plate.spanY * times };
        expectWithin(plateSag(larger), plateSag(plate) * times ** 2, 1e-9);
      }),
    );
  });

  it("no wall under one edge", () => {
    fc.assert(
      fc.property(plates, (plate) => {
        expect(plateSag({ ...plate, freeEdge: "x0" })).toBeGreaterThan(plateSag({ ...plate, freeEdge: "none" }));
      }),
    );
  });
});

describe("input", () => {
  it("no weight, no sag", () => {
    expect(plateSag({ ...BOARD, loadKg: 0 })).toBe(0);
  });

  it.each([
    [{ spanX: 0 }, "span: got 0; give a number above zero"],
    [{ spanY: NaN }, "span: got NaN; give a number above zero"],
    [{ caliper: -2 }, "caliper: got -2; give a number above zero"],
    [{ modulusX: 0 }, "modulus: got 0; give a number above zero"],
    [{ modulusY: Infinity }, "modulus: got Infinity; give a number above zero"],
    [{ loadKg: -1 }, "weight: got -1; give a weight in kg"],
    [{ poisson: 0.6 }, "poisson: got 0.6; give a ratio from 0 to 0.5"],
  ])("%j is refused", (bad, message) => {
    const sag = () => plateSag({ ...BOARD, ...bad });
    expect(sag).toThrow(InputError);
    expect(sag).toThrow(message);
  });
});
