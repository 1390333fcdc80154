import fc from "fast-check";
import type { Assembly } from "../../src/enclosure/assembly";
import type { SettledSettings } from "../../src/settings/schema";
import { anyItem, anyShop, assemblyOf, EVERY_STRUCTURE, RUNS, soakRuns } from "./everyEnclosure";

/**
 * Checks every structure of a kind around items of many sizes, in shops of many habits.
 *
 * @param does what is checked, as in `opens flat`
 * @param share one run in so many of the usual number, where a check takes many steps; a soak has all of its kind
 * @param check throws where the enclosure does not do it
 */
export function inEveryStructure(kind: string, does: string, share: number, check: (assembly: Assembly) => void): void {
  const structures = EVERY_STRUCTURE.filter((each) => each.kind.name === kind);
  test.each(structures.map((structure) => [structure.text, structure] as const))(
    `any ${kind} ${does}, %s`,
    (_, structure) => {
      const runs = process.env["SOAK"] === undefined ? Math.ceil(RUNS / share) : soakRuns(structure);
      let built = 0;
      fc.assert(
        fc.property(anyItem, anyShop, (item, shop) => {
          const inForce: SettledSettings = { ...structure.settings, ...shop };
          const enclosure = assemblyOf(structure.kind, item, inForce);
          if (enclosure === undefined) return;
          built += 1;
          check(enclosure);
        }),
        { numRuns: runs, seed: 7 },
      );
      expect(built).toBeGreaterThan(runs / 2);
    },
  );
}
