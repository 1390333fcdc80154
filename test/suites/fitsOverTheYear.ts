import fc from "fast-check";
import { yearFit } from "../../src/board/yearFit";
import type { Item } from "../../src/enclosure/restingItem";
import { extent, X, Y, Z } from "../../src/enclosure/space";
import type { SettledSettings, Settings } from "../../src/settings/schema";
import { simulatedBuild, type Luck } from "../board/simulatedBuild";
import { anyItem, anyShop, assemblyOf, type Structure } from "../enclosure/everyEnclosure";
import { between, generator, normal } from "./draws";

const AXES = [
  ["height", Y],
  ["width", X],
  ["depth", Z],
] as const;

const ORDINARY: Item = { height: 300, width: 210, depth: 40 };

/** Simulated builds of the whole suite: 10,000, or 100,000 in a soak. */
const BUILDS = process.env["SOAK"] === undefined ? 10_000 : 100_000;

/** The fit over the year is what simulated builds have. */
export function fitsOverTheYear(structures: readonly Structure[]): void {
  test("nominal is the inside less coverings, cushioning and item, in every kind, construction and option", () => {
    const runs = Math.ceil(4000 / structures.length);
    for (const structure of structures)
      fc.assert(
        fc.property(anyItem, anyShop, (item, shop) => {
          const made = built(structure, item, shop);
          if (made === undefined) return;
          const { assembly, settings } = made;
          const { coveredFaces, covering, inside, tabs, wrapped = [0, 0, 0] } = assembly.holder;
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
              wrapped[axis] -
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
    const perStructure = Math.ceil(BUILDS / structures.length);
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
      for (const structure of structures)
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
      const tried = differentlyBuilt(structures);
      for (const { kind, text, settings } of tried) {
        const random = generator(11);
        const item = ORDINARY;
        const assembly = assemblyOf(kind, item, settings)!;
        const ranges = AXES.map(([, axis]) => yearFit(assembly, item, axis, settings));
        const within = [0, 0, 0];
        const builds = Math.ceil(BUILDS / tried.length);
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
          if (got < share - chance) throw new Error(`${kind.name} ${text}, ${way}: ${got} of ${builds} builds`);
        });
      }
    });
  });
}

/** An item in some structure and shop; undefined where the settings leave no room for a part. */
function built({ kind, settings }: Structure, item: Item, shop: Partial<SettledSettings>) {
  const all: SettledSettings = { ...settings, ...shop };
  const assembly = assemblyOf(kind, item, all);
  return assembly === undefined ? undefined : { assembly, settings: all };
}

/** One structure of each way in which parts hold the inside open. */
function differentlyBuilt(structures: readonly Structure[]): readonly Structure[] {
  const found = new Map<string, Structure>();
  for (const structure of structures) {
    const { holder } = assemblyOf(structure.kind, ORDINARY, structure.settings)!;
    const way = holder.spans.map(({ part, boards, of }) => [part.role, part.grain, boards, of.role]);
    const key = JSON.stringify([way, holder.tabs, holder.coveredFaces]);
    if (!found.has(key)) found.set(key, structure);
  }
  return [...found.values()];
}
