import { CUSHION_PIECES } from "../../src/covering/cushionPieces";
import { partList } from "../../src/covering/partList";
import { findPart } from "../../src/item/findPart";
import { assemblyOf, type Structure } from "../enclosure/everyEnclosure";

const ITEM = { height: 300, width: 210, depth: 40 };

/** Kinds list the parts that they make, and no others, and each is found by its name. */
export function namesItsParts(structures: readonly Structure[]): void {
  const kinds = [...new Set(structures.map(({ kind }) => kind))];

  test.each(kinds.map((kind) => [kind.name, kind] as const))(
    "%s: its trays, parts and coverings are those that some construction or option of it has",
    (_name, kind) => {
      const [parts, coverings, trays] = [new Set<string>(), new Set<string>(), new Set<string>()];
      for (const structure of structures.filter((each) => each.kind === kind))
        for (const coverStyle of ["strip", "one piece"] as const) {
          const settings = { ...structure.settings, coverStyle, liningOrder: "before" as const };
          const assembly = assemblyOf(kind, ITEM, settings)!;
          expect(assembly.kind).toBe(kind);
          for (const { name } of assembly.parts) parts.add(name);
          for (const { name } of assembly.kind.blanks(assembly, settings)) coverings.add(name);
          for (const { name } of assembly.trays) if (name !== "") trays.add(name);
        }
      expect([...parts].sort()).toEqual([...kind.parts].sort());
      expect([...coverings].sort()).toEqual([...kind.coverings].sort());
      expect([...trays].sort()).toEqual([...kind.trays].sort());
    },
  );

  test("every part is found by its full name, in any writing", () => {
    for (const { kind, settings: structure } of structures)
      for (const coverStyle of ["strip", "one piece"] as const) {
        const settings = { ...structure, coverStyle, cushionBase: 3, cushionSides: 3, cushionTop: 3 };
        const assembly = assemblyOf(kind, ITEM, settings)!;
        const parts = partList(assembly, settings);
        const of = { kind, assembly };
        for (const { fullName } of parts) {
          expect(findPart(parts, fullName, of, "part").fullName).toBe(fullName);
          expect(findPart(parts, ` ${fullName.toUpperCase().replaceAll(" ", "  ")} `, of, "part").fullName).toBe(
            fullName,
          );
        }
        expect(parts.map(({ name }) => name)).toEqual(expect.arrayContaining([...CUSHION_PIECES]));
      }
  });
}
