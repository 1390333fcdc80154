import fc from "fast-check";
import { yearFit } from "../../src/board/yearFit";
import type { Item } from "../../src/enclosure/restingItem";
import { extent, X, Y, Z } from "../../src/enclosure/space";
import { InputError } from "../../src/measure/errors";
import type { Settings, SettledSettings } from "../../src/settings/schema";
import { settingsOf } from "../../src/settings/settingsOf";
import { anyItem, anyShop, assemblyOf, EVERY_STRUCTURE, type Structure } from "../enclosure/everyEnclosure";
import { sized } from "./itemLoads";
import { simulatedBuild, type Luck } from "./simulatedBuild";

const AXES = [
  ["height", Y],
  ["width", X],
  ["depth", Z],
] as const;

/** Simulated builds of the whole file: 10,000, or 100,000 in a soak. */
const BUILDS = process.env["SOAK"] === undefined ? 10_000 : 100_000;

describe("by hand", () => {
  // In still air, with errors of .1 in cutting, .2 in measuring and .01 in caliper: what is not in doubt is exact.
  const ERRORS =
    "expansion along=none; expansion across=none; item expansion=none; measuring error=0.2; cutting error=0.1; caliper tolerance=0.01";
  test.each([
    // Worst case: cut, measure, and as many calipers as stand in the chain, by kind.
    ["tray", "construction=around base", [2, 2, 2], [0, 0, 1]],
    ["tray", "construction=flanged base", [2, 2, 2], [0, 0, 1]],
    ["tray", "construction=on base", [2, 2, 2], [2, 2, 0]],
    ["tray", "wall layers=2", [2, 2, 2], [2, 2, 0]],
    ["tray", "wall layers=2; construction=on base", [2, 2, 2], [4, 4, 0]],
    // A base of 3 under walls of 1.5 is one caliper, and two walls of 3 on a base of 1.5 are two.
    ["tray", "construction=around base; base board=3; wall board=1.5", [2, 2, 2], [0, 0, 1]],
    ["tray", "construction=on base; base board=1.5; wall board=3", [2, 2, 2], [2, 2, 0]],
    ["lidded box", "", [2, 2, 2], [0, 0, 1]],
    ["three-tray box", "construction=on base", [2, 2, 2], [2, 2, 0]],
    ["slipcase", "", [1, 0, 1], [2, 1, 0]],
    ["slipcase", "construction=around base; base board=1; wall board=3", [1, 0, 1], [0, 0, 2]],
    ["clamshell box", "", [2, 2, 2], [0, 0, 1]],
    ["clamshell box", "construction=on base", [2, 2, 2], [2, 1, 0]],
    ["folded tray", "fold=cut", [2, 2, 2], [0, 0, 0]],
    // A crease is half a board off the inside; two tabs lie inside the side walls.
    ["folded tray", "fold=crease", [2, 2, 2], [1, 3, 0.5]],
    ["four-flap wrapper", "", [1, 1, 1], [1, 1, 1]],
  ])("%s %s", (kind, text, plays, calipers) => {
    // 40.25 + .5 covering + 2 is a whole step; so is the rest.
    const { assembly, item, settings } = sized(
      [300, 210, 40],
      kind,
      undefined,
      [ERRORS, text].filter((each) => each !== "").join("; "),
    );
    AXES.forEach(([, axis], at) => {
      const { nominal, least, greatest } = yearFit(assembly, item, axis, settings);
      // The slipcase's width and depths of half a covering are rounded up to the step of .5.
      expect(nominal - plays[at]!).toBeGreaterThanOrEqual(-1e-9);
      expect(nominal - plays[at]!).toBeLessThan(0.5);
      const play = 0.1 + 0.2 + 0.01 * calipers[at]!;
      expect(least).toBeCloseTo(nominal - play, 9);
      expect(greatest).toBeCloseTo(nominal + play, 9);
    });
  });

  test("the base grows by its grain: along .04, across .15 mm in a metre for each %RH", () => {
    const air =
      "measuring error=none; cutting error=none; caliper tolerance=none; item expansion=none; humidity least=50; humidity greatest=60";
    const greatest = (hwd: [number, number, number], kind: string, axis: typeof X | typeof Y) => {
      const { assembly, item, settings } = sized(hwd, kind, undefined, air);
      return yearFit(assembly, item, axis, settings).greatest;
    };
    // 303 x .0004 along and 213 x .0015 across: a portrait tray, and a landscape one turned.
    expect(greatest([300, 210, 40], "tray", Y)).toBeCloseTo(2 + 0.1212, 9);
    expect(greatest([300, 210, 40], "tray", X)).toBeCloseTo(2 + 0.3195, 9);
    expect(greatest([210, 300, 40], "tray", X)).toBeCloseTo(2 + 0.1212, 9);
    // A clamshell's grain stays parallel to the spine.
    expect(greatest([210, 300, 40], "clamshell box", X)).toBeCloseTo(2 + 0.4545, 9);
    // A folded blank has its grain along its longer side.
    expect(greatest([300, 210, 40], "folded tray", Y)).toBeCloseTo(2 + 0.1212, 9);
    expect(greatest([300, 210, 40], "folded tray", X)).toBeCloseTo(2 + 0.3195, 9);
    // Every panel of a wrapper spans across the grain: creases 301.4 apart.
    expect(greatest([300, 210, 40], "four-flap wrapper", Y)).toBeCloseTo(1 + 0.4521, 9);
  });

  test("humidity out of order is refused", () => {
    const { assembly, item } = sized([300, 210, 40], "tray");
    const range = () => yearFit(assembly, item, Y, settingsOf(["humidity least=55"]));
    expect(range).toThrow(InputError);
    expect(range).toThrow(
      "humidity: got 55, 50 and 65 %RH; give humidity least, when made and greatest in rising order",
    );
  });
});

/** An item in some structure and shop; undefined where the settings leave no room for a part. */
function built({ kind, settings }: Structure, item: Item, shop: Partial<SettledSettings>) {
  const all: SettledSettings = { ...settings, ...shop };
  const assembly = assemblyOf(kind, item, all);
  return assembly === undefined ? undefined : { assembly, settings: all };
}

test("nominal is the inside less coverings, cushioning and item, in every kind, construction and option", () => {
  const runs = Math.ceil(4000 / EVERY_STRUCTURE.length);
  for (const structure of EVERY_STRUCTURE)
    fc.assert(
      fc.property(anyItem, anyShop, (item, shop) => {
        const made = built(structure, item, shop);
        if (made === undefined) return;
        const { assembly, settings } = made;
        const { coveredFaces, covering, inside, tabs } = assembly.holder;
        const [h, w, d] = {
          back: ["height", "width", "depth"],
          foot: ["depth", "width", "height"],
          edge: ["height", "depth", "width"],
        }[settings.restsOn] as [keyof Item, keyof Item, keyof Item];
        const cushions = [
          2 * settings.cushionSides,
          2 * settings.cushionSides,
          settings.cushionBase + settings.cushionTop,
        ];
        AXES.forEach(([, axis], at) => {
          const left =
            extent(inside, axis) -
            coveredFaces[axis] * covering -
            cushions[at]! -
            item[[h, w, d][at]!] -
            (axis === X ? tabs : 0);
          expect(Math.abs(yearFit(assembly, item, axis, settings).nominal - left)).toBeLessThan(1e-9);
        });
      }),
      { numRuns: runs },
    );
});

describe("simulated builds", () => {
  const TOLERANCES = { measuringError: 0.5, cuttingError: 0.3, caliperTolerance: 0.08 };
  const perStructure = Math.ceil(BUILDS / EVERY_STRUCTURE.length);
  const buildsAnItem = 20;

  test("none falls outside least and greatest, each part in its own air, whichever part decides", () => {
    const random = generator(7);
    let builds = 0;
    let closest = Infinity;
    const luck = (settings: Settings): Luck => ({
      error: () => between(-1, 1, random),
      air: () =>
        between(
          settings.humidityLeast - settings.humidityMade,
          settings.humidityGreatest - settings.humidityMade,
          random,
        ),
      pick: (from) => from[Math.floor(random() * from.length)]!,
    });
    for (const structure of EVERY_STRUCTURE)
      for (const [item, shop] of fc.sample(fc.tuple(anyItem, anyShop), {
        numRuns: Math.ceil(perStructure / buildsAnItem),
        seed: 3,
      })) {
        const made = built(structure, item, { ...shop, ...TOLERANCES });
        if (made === undefined) continue;
        const ranges = AXES.map(([, axis]) => yearFit(made.assembly, item, axis, made.settings));
        for (let build = 0; build < buildsAnItem; build++, builds++) {
          const play = simulatedBuild(made.assembly, item, made.settings, luck(made.settings));
          AXES.forEach(([way], at) => {
            const { least, greatest } = ranges[at]!;
            if (!(play[way] >= least - 1e-9 && play[way] <= greatest + 1e-9))
              throw new Error(
                `${structure.kind.name} ${structure.text} ${JSON.stringify(item)} ${JSON.stringify(shop)}: ${way} ${play[way]}, not ${least} to ${greatest}`,
              );
            closest = Math.min(
              closest,
              (play[way] - least) / (greatest - least),
              (greatest - play[way]) / (greatest - least),
            );
          });
        }
      }
    expect(builds).toBeGreaterThan(0.9 * BUILDS);
    // No looser than it must be.
    expect(closest).toBeLessThan(0.01);
  });

  test.each([
    ["uniform to the tolerance: 91 % or more", (random: () => number) => 2 * random() - 1, 0.91],
    ["normal, the tolerance two standard deviations: 95 %", (random: () => number) => normal(random) / 2, 0.94],
  ])("stay within likely least and greatest all year, errors %s", (_, error, share) => {
    for (const [kind, text] of KINDS_TRIED) {
      const random = generator(11);
      const { assembly, item, settings } = sized([300, 210, 40], kind, undefined, text);
      const ranges = AXES.map(([, axis]) => yearFit(assembly, item, axis, settings));
      const within = [0, 0, 0];
      const builds = Math.ceil(BUILDS / KINDS_TRIED.length);
      for (let build = 0; build < builds; build++) {
        const errors = Array.from({ length: 24 }, () => error(random));
        // The same build in the driest and in the dampest air; the part that spans the inside decides.
        const plays = [-15, 15].map((air) => {
          let drawn = 0;
          return simulatedBuild(assembly, item, settings, {
            error: () => errors[drawn++]!,
            air: () => air,
            pick: ([first]) => first,
          });
        });
        AXES.forEach(([way], at) => {
          const { likelyLeast, likelyGreatest } = ranges[at]!;
          if (plays.every((play) => play[way] >= likelyLeast && play[way] <= likelyGreatest)) within[at]!++;
        });
      }
      // Two standard errors of the share below what is claimed.
      const chance = 2 * Math.sqrt((share * (1 - share)) / builds);
      AXES.forEach(([way], at) => {
        const got = within[at]! / builds;
        if (got < share - chance) throw new Error(`${kind} ${text}, ${way}: ${got} of ${builds} builds`);
      });
    }
  });
});

const KINDS_TRIED = [
  ["tray", "construction=on base"],
  ["tray", "construction=around base"],
  ["tray", "construction=flanged base"],
  ["tray", "wall layers=2"],
  ["slipcase", "construction=on base"],
  ["slipcase", "construction=around base"],
  ["clamshell box", "construction=around base"],
  ["clamshell box", "construction=on base"],
  ["folded tray", "fold=cut"],
  ["folded tray", "fold=crease"],
  ["four-flap wrapper", ""],
] as const;

/** Half of the draws at an end, where a bound would break first. */
function between(low: number, high: number, random: () => number): number {
  const coin = random();
  if (coin < 0.25) return low;
  if (coin < 0.5) return high;
  return low + (high - low) * random();
}

function normal(random: () => number): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

/** Mulberry32: repeatable draws from 0 to 1. */
function generator(seed: number): () => number {
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}
