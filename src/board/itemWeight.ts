import type { Kind } from "../enclosure/kind";
import type { Item } from "../enclosure/restingItem";
import type { Settings } from "../settings/schema";

/** An item to be boxed, with what its base must carry. */
export interface ItemLoad {
  readonly item: Item;
  readonly kind: Kind;
  /** Undefined where it was not given. */
  readonly weightKg: number | undefined;
}

/** A weight, and whether it was computed from a density. */
export interface Weight {
  readonly kg: number;
  readonly estimated: boolean;
}

/** The weight of an item: as given, else by `item density`; undefined where neither is there. */
export function weightOf(
  { item, weightKg }: Pick<ItemLoad, "item" | "weightKg">,
  settings: Settings,
): Weight | undefined {
  if (weightKg !== undefined) return { kg: weightKg, estimated: false };
  if (settings.itemDensity === undefined) return undefined;
  return { kg: (item.height * item.width * item.depth * settings.itemDensity) / MM3_PER_M3, estimated: true };
}

const MM3_PER_M3 = 1e9;
