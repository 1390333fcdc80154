import { sizeItem, type Sized } from "./sizeItem";
import { insideOf, type Inside } from "./standardSize";

/**
 * The clear inside that an item needs of a box that is bought: its own size and its fit, without the covering and the
 * rounding of a box that is made.
 */
export function neededClear({ item, kind, weightKg, requested }: Sized): Inside {
  const settings = { ...requested, size: "", coveringAllowance: 0, leftAuto: new Set<never>(), roundTo: 0 };
  return insideOf(sizeItem(item, kind.name, weightKg, settings).assembly);
}
