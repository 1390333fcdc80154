import type { Item } from "../enclosure/restingItem";
import { boardsOf, netAreaM2 } from "../item/answers";
import { sizeItem, type Sized } from "../item/sizeItem";
import { InputError, NoAnswer } from "../measure/errors";
import type { Settings } from "../settings/schema";

/** The object that labour hours are given for. */
const USUAL_ITEM: Item = { height: 300, width: 210, depth: 40 };
const USUAL_WEIGHT_KG = 1;

const usualAreas = new WeakMap<Settings, Map<string, number>>();

/**
 * Board of an enclosure beside that of the same kind for an object of 300 x 210 x 40 mm: what its hours are multiplied by.
 *
 * @param shared the settings of the whole survey; 1 where they give that object no enclosure of the kind
 */
export function relativeSize({ kind, assembly }: Sized, shared: Settings): number {
  let areas = usualAreas.get(shared);
  if (areas === undefined) usualAreas.set(shared, (areas = new Map<string, number>()));
  let usual = areas.get(kind.name);
  if (usual === undefined) areas.set(kind.name, (usual = usualArea(kind.name, shared)));
  return usual === 0 ? 1 : netAreaM2(boardsOf(assembly)) / usual;
}

function usualArea(kind: string, shared: Settings): number {
  try {
    return netAreaM2(
      boardsOf(sizeItem(USUAL_ITEM, kind, USUAL_WEIGHT_KG, { ...shared, ownOfRow: new Set<never>() }).assembly),
    );
  } catch (error) {
    if (error instanceof InputError || error instanceof NoAnswer) return 0;
    throw error;
  }
}
