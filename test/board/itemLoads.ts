import fc from "fast-check";
import type { ItemLoad } from "../../src/board/itemWeight";
import { kindNamed } from "../../src/enclosure/kindNamed";
import { KINDS } from "../../src/enclosure/registry";
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

/**
 * Items of usual sizes and of the weight of paper, leather and wood; in card what is thin enough for card, and in a folded
 * tray what is light enough for one board.
 */
export const ordinaryItem = fc
  .record({
    height: size(60, 480),
    width: size(50, 380),
    depth: size(3, 110),
    kgPerM3: size(100, 800),
    kind: fc.constantFrom(...KINDS),
  })
  .map(({ height, width, depth, kgPerM3, kind }) => {
    const thin = kind.constructions.length === 0 ? Math.min(depth, 5 + depth / 3) : depth;
    return itemLoad([height, width, thin], kind.name, (height * width * thin * kgPerM3) / 1e9);
  });
