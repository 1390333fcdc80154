import fc from "fast-check";
import { liftMultipliers, type Lift } from "../../src/board/lifting";

const KG_PER_LB = 0.45359237;
/** Load constant of the equation: kg under the best conditions. */
const LOAD_CONSTANT_KG = 23;
const limitOf = (lift: Lift, constant = LOAD_CONSTANT_KG) =>
  Object.values({ ...liftMultipliers(lift) }).reduce((limit, each) => limit * each, constant);
const BEST: Lift = { reach: 250, height: 750, travel: 250 };

describe("the multipliers of NIOSH Pub. 94-110", () => {
  // The equation as in the manual (read); its tables print two decimals, these ends of them are from memory.
  it.each([
    ["reach", { reach: 250 }, "horizontal", 1],
    ["reach", { reach: 500 }, "horizontal", 0.5],
    ["reach", { reach: 630 }, "horizontal", 0.4],
    ["reach", { reach: 640 }, "horizontal", 0],
    ["height", { height: 0 }, "vertical", 0.78],
    ["height", { height: 750 }, "vertical", 1],
    ["height", { height: 1750 }, "vertical", 0.7],
    ["height", { height: 1760 }, "vertical", 0],
    ["travel", { travel: 0 }, "distance", 1],
    ["travel", { travel: 700 }, "distance", 0.88],
    ["travel", { travel: 1750 }, "distance", 0.85],
    ["travel", { travel: 1760 }, "distance", 0],
    ["twist", { twist: 0 }, "asymmetry", 1],
    ["twist", { twist: 90 }, "asymmetry", 0.71],
    ["twist", { twist: 135 }, "asymmetry", 0.57],
    ["twist", { twist: 136 }, "asymmetry", 0],
  ] as const)("%s %j gives %s %d", (_, change, multiplier, expected) => {
    expect(Math.abs(liftMultipliers({ ...BEST, ...change })[multiplier] - expected)).toBeLessThanOrEqual(0.0050001);
  });

  it("Example 4, package inspection: 34.9 lb at the origin", () => {
    // The answer is as published. Its inputs are from memory: hands 10 in out (HM 1, so 25 cm) and 22 in up, to 59 in;
    // the load constant of the inch form is 51 lb; three lifts a minute (FM .88), fair coupling (CM .95).
    const frequency = 0.88;
    const coupling = 0.95;
    const limit = 51 * KG_PER_LB * frequency * coupling;
    const kg = limitOf({ reach: 250, height: 22 * 25.4, travel: (59 - 22) * 25.4 }, limit);
    expect((kg / KG_PER_LB).toFixed(1)).toBe("34.9");
  });
});

describe("the limit of a lift", () => {
  it("is the load constant under the best conditions, 23 kg", () => {
    expect(limitOf(BEST)).toBeCloseTo(23, 12);
  });

  it("is lower above the shoulder: 23 x .805 x .889 at 140 cm, lifted from 75 cm at 25 cm", () => {
    // VM = 1 - .003 x 65 = .805; DM = .82 + 4.5 / 65 = .889
    expect(limitOf({ reach: 250, height: 1400, travel: 650 })).toBeCloseTo(23 * 0.805 * 0.88923, 3);
  });

  it("keeps to the shop's own limit", () => {
    expect(limitOf({ ...BEST, reach: 500 }, 16)).toBeCloseTo(8, 12);
  });

  it("never rises above the limit nor falls below zero", () => {
    const lift = fc.record({
      reach: fc.integer({ min: 1, max: 1000 }),
      height: fc.integer({ min: 0, max: 2500 }),
      travel: fc.integer({ min: 0, max: 2500 }),
      twist: fc.integer({ min: 0, max: 180 }),
    });
    fc.assert(
      fc.property(lift, (each) => {
        expect(limitOf(each)).toBeGreaterThanOrEqual(0);
        expect(limitOf(each)).toBeLessThanOrEqual(23 + 1e-9);
        expect(limitOf({ ...each, reach: each.reach + 50 })).toBeLessThanOrEqual(limitOf(each));
        expect(limitOf({ ...each, twist: each.twist + 10 })).toBeLessThanOrEqual(limitOf(each));
      }),
    );
  });

  it.each([
    [{ reach: 0 }, "reach: got 0; give a number above zero"],
    [{ height: -1 }, "lift height: got -1; give a number, zero or above"],
    [{ travel: NaN }, "lift travel: got NaN; give a number, zero or above"],
    [{ twist: -5 }, "twist: got -5; give a number, zero or above"],
  ])("%j is refused", (bad, message) => {
    expect(() => limitOf({ ...BEST, ...bad })).toThrow(message);
  });
});
