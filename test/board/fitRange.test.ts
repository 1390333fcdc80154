import fc from "fast-check";
import { fitRange, type FitTerm, type HumidityRange } from "../../src/board/fitRange";
import { InputError } from "../../src/measure/errors";
import { between, generator, normal } from "../suites/draws";

/** Random builds a test draws: 10,000, or 100,000 in a soak. */
const BUILDS = process.env.SOAK === undefined ? 10_000 : 100_000;

/** A base of 213 for an item of 210, covering 0.5 on either wall. */
const CHAIN: readonly FitTerm[] = [
  { label: "base", nominal: 213, sign: 1, hygroexpansion: 0.0001, tolerance: 0.3 },
  { label: "item", nominal: 210, sign: -1, hygroexpansion: 0.0002, tolerance: 0.4 },
  { label: "covering", nominal: 1, sign: -1, hygroexpansion: 0, tolerance: 0.1 },
];
const STILL: HumidityRange = { drier: 0, damper: 0 };
const SEASONS: HumidityRange = { drier: -15, damper: 10 };

describe("fitRange, by hand", () => {
  it("without change of humidity: worst case adds the tolerances, likely their squares", () => {
    const range = fitRange(CHAIN, STILL);
    expect(range.nominal).toBeCloseTo(2, 9);
    expect(range.least).toBeCloseTo(2 - 0.8, 9);
    expect(range.greatest).toBeCloseTo(2 + 0.8, 9);
    expect(range.likelyLeast).toBeCloseTo(2 - Math.sqrt(0.26), 9);
    expect(range.likelyGreatest).toBeCloseTo(2 + Math.sqrt(0.26), 9);
  });

  it("likely: all parts follow the air, and the item outgrows its base in the damp", () => {
    const exact = CHAIN.map((term) => ({ ...term, tolerance: 0 }));
    const range = fitRange(exact, SEASONS);
    // dampest: base + 0.213, item + 0.42; driest: base - 0.3195, item - 0.63
    expect(range.likelyLeast).toBeCloseTo(2 + 0.213 - 0.42, 9);
    expect(range.likelyGreatest).toBeCloseTo(2 - 0.3195 + 0.63, 9);
  });

  it("worst case: the base driest while the item is dampest, and the other way", () => {
    const exact = CHAIN.map((term) => ({ ...term, tolerance: 0 }));
    const range = fitRange(exact, SEASONS);
    expect(range.least).toBeCloseTo(2 - 0.3195 - 0.42, 9);
    expect(range.greatest).toBeCloseTo(2 + 0.213 + 0.63, 9);
  });

  it("an error in a length swells and shrinks with the length", () => {
    const part: FitTerm = { label: "part", nominal: 100, sign: 1, hygroexpansion: 0.005, tolerance: 1 };
    const air: HumidityRange = { drier: -20, damper: 20 };
    const longer = fitRange([part], air);
    expect([longer.least, longer.likelyLeast]).toEqual([expect.closeTo(89.1, 9), expect.closeTo(89.1, 9)]);
    expect([longer.greatest, longer.likelyGreatest]).toEqual([expect.closeTo(111.1, 9), expect.closeTo(111.1, 9)]);
    const tighter = fitRange([{ ...part, sign: -1 }], air);
    expect([tighter.least, tighter.likelyLeast]).toEqual([expect.closeTo(-111.1, 9), expect.closeTo(-111.1, 9)]);
  });

  it("an empty chain leaves no play", () => {
    const nothing = { nominal: 0, least: 0, greatest: 0, likelyLeast: 0, likelyGreatest: 0 };
    expect(fitRange([], SEASONS)).toEqual(nothing);
  });
});

const upTo = (most: number, step: number) => fc.integer({ min: 0, max: Math.round(most / step) }).map((n) => n * step);
const chains = fc.array(
  fc.record({
    label: fc.constant("part"),
    nominal: upTo(900, 0.1),
    sign: fc.constantFrom(1 as const, -1 as const),
    hygroexpansion: upTo(0.0005, 1e-5),
    tolerance: upTo(1.5, 0.01),
  }),
  { minLength: 1, maxLength: 8 },
);
const ranges = fc.record({ drier: upTo(50, 0.5).map((change) => -change), damper: upTo(50, 0.5) });

describe("fitRange over simulated builds", () => {
  it("no build within tolerance, each part at its own humidity in the range, falls outside the worst case", () => {
    const chainsTried = 100;
    let closest = Infinity;
    fc.assert(
      fc.property(chains, ranges, fc.integer(), (chain, air, seed) => {
        const random = generator(seed);
        const { least, greatest } = fitRange(chain, air);
        const plays = Array.from({ length: BUILDS / chainsTried }, () =>
          total(chain, (term) => {
            const error = term.tolerance * between(-1, 1, random);
            const change = between(air.drier, air.damper, random);
            return (term.nominal + error) * (1 + term.hygroexpansion * change);
          }),
        );
        expect(Math.min(...plays)).toBeGreaterThanOrEqual(least - 1e-9);
        expect(Math.max(...plays)).toBeLessThanOrEqual(greatest + 1e-9);
        const spread = greatest - least || 1;
        closest = Math.min(closest, (Math.min(...plays) - least) / spread, (greatest - Math.max(...plays)) / spread);
      }),
      { numRuns: chainsTried },
    );
    expect(closest).toBeLessThan(0.01); // the bound is no looser than it must be
  });

  it("normal errors, tolerance two standard deviations: 95 % of builds stay likely all year", () => {
    expect(shareWithinLikely((random) => normal(random) / 2)).toBeCloseTo(0.9545, 2);
  });

  it("uniform errors to the tolerance: at least 91 % stay likely all year", () => {
    expect(shareWithinLikely((random) => 2 * random() - 1)).toBeGreaterThan(0.91);
  });

  it("two equal uniform errors are the least covered, 91.4 %", () => {
    const two = [0, 1].map((): FitTerm => ({ label: "cut", nominal: 100, sign: 1, hygroexpansion: 0, tolerance: 0.5 }));
    // the sum of two is triangular: 1 - (2 - root 2)^2 / 4
    const exact = 1 - (2 - Math.SQRT2) ** 2 / 4;
    expect(Math.abs(shareWithinLikely((random) => 2 * random() - 1, two, STILL) - exact)).toBeLessThan(0.01);
  });

  it("likely lies within worst case, and nominal within likely", () => {
    fc.assert(
      fc.property(chains, ranges, (chain, air) => {
        const { nominal, least, greatest, likelyLeast, likelyGreatest } = fitRange(chain, air);
        const ascending = [least, likelyLeast, nominal, likelyGreatest, greatest];
        ascending.slice(1).forEach((play, at) => expect(play).toBeGreaterThanOrEqual(ascending[at]! - 1e-9));
      }),
    );
  });
});

describe("input", () => {
  const [base] = CHAIN as [FitTerm];
  it.each([
    [{ nominal: -1 }, "base: got -1; give a length in mm"],
    [{ tolerance: NaN }, "base tolerance: got NaN; give a length in mm, zero or above"],
    [{ hygroexpansion: 0.02 }, "base hygroexpansion: got 0.02; give the growth per %RH, such as 0.0001"],
  ])("%j is refused", (bad, message) => {
    const range = () => fitRange([{ ...base, ...bad }], STILL);
    expect(range).toThrow(InputError);
    expect(range).toThrow(message);
  });

  it("a humidity range that leaves out the humidity of making is refused", () => {
    expect(() => fitRange(CHAIN, { drier: 5, damper: 10 })).toThrow("driest: got 5; give %RH below, 0 to -100");
    expect(() => fitRange(CHAIN, { drier: -5, damper: -1 })).toThrow("dampest: got -1; give %RH above, 0 to 100");
  });
});

/** The share of builds whose play stays between likely least and greatest at both ends of the year. */
function shareWithinLikely(
  error: (random: () => number) => number,
  chain: readonly FitTerm[] = CHAIN,
  air: HumidityRange = SEASONS,
): number {
  const random = generator(2024);
  const { likelyLeast, likelyGreatest } = fitRange(chain, air);
  let within = 0;
  for (let build = 0; build < BUILDS; build++) {
    const errors = new Map(chain.map((term) => [term, term.tolerance * error(random)]));
    const stays = [air.drier, air.damper].every((change) => {
      const grown = (term: FitTerm) => (term.nominal + errors.get(term)!) * (1 + term.hygroexpansion * change);
      const play = total(chain, grown);
      return play >= likelyLeast && play <= likelyGreatest;
    });
    if (stays) within++;
  }
  return within / BUILDS;
}

function total(chain: readonly FitTerm[], length: (term: FitTerm) => number): number {
  return chain.reduce((play, term) => play + term.sign * length(term), 0);
}
