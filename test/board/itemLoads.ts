import fc from "fast-check";
import type { ItemLoad } from "../../src/board/neededBoard";
import { kindNamed } from "../../src/enclosure/registry";
import type { Settings } from "../../src/settings/schema";
import { settingsOf } from "../../src/settings/settingsOf";
import { sizeItem, type Sized } from "../../src/item/sizeItem";

/** An item as a row of a survey sizes it. */
export function sized(hwd: readonly [number, number, number], kind: string, weightKg?: number, text = ""): Sized {
  const [height, width, depth] = hwd;
  return sizeItem({ height, width, depth }, kind, weightKg, text === "" ? settingsOf([]) : settingsOf([text]));
}

export function itemLoad(hwd: readonly [number, number, number], kind: string, weightKg?: number): ItemLoad {
  const [height, width, depth] = hwd;
  return { item: { height, width, depth }, kind: kindNamed(kind), weightKg };
}

/** The settings of a shared range, in which options that a kind cannot use are ignored. */
export function shared(...pairs: readonly (readonly [string, string | number])[]): Settings {
  return settingsOf([[["setting", "value"], ...pairs]]);
}

const size = (least: number, most: number) => fc.integer({ min: least, max: most });

/** Items of usual sizes, of the weight of paper, in every kind with a base board. */
export const anyBurden = fc
  .record({
    height: size(60, 420),
    width: size(60, 420),
    depth: size(4, 90),
    kgPerM3: size(20, 900),
    kind: fc.constantFrom("tray", "lidded box", "three-tray box", "slipcase", "clamshell box"),
  })
  .map(({ height, width, depth, kgPerM3, kind }) =>
    itemLoad([height, width, depth], kind, (height * width * depth * kgPerM3) / 1e9),
  );

/** Settings that change what a base must carry, and on what. */
export const anyRule = fc
  .record({
    wallBoard: fc.constantFrom("auto", "1.5 mm", "3 mm"),
    baseBoard: fc.constantFrom("", "auto", "2.5 mm"),
    caseBoard: fc.constantFrom("", "2 mm"),
    construction: fc.constantFrom("around base", "on base", "flanged base"),
    restsOn: fc.constantFrom("back", "foot", "edge"),
    sagRatio: fc.constantFrom(60, 150),
    creep: fc.constantFrom(1, 2),
    modulusAlong: fc.constantFrom(2, 4),
  })
  .map((rule) =>
    shared(
      ["wall board", rule.wallBoard],
      ["base board", rule.baseBoard],
      ["case board", rule.caseBoard],
      ["construction", rule.construction],
      ["rests on", rule.restsOn],
      ["sag ratio", rule.sagRatio],
      ["creep", rule.creep],
      ["modulus along", rule.modulusAlong],
    ),
  );
