import type { Item } from "../enclosure/restingItem";
import { X, Y, Z, type Vec } from "../enclosure/space";
import type { Mm } from "../measure/units";
import type { Settings } from "../settings/schema";
import type { Sized } from "./sizeItem";

/** The room of a closed enclosure, or of an item, in the store. */
export interface ShelfRoom {
  readonly upright: boolean;
  /** Along the shelf: the thickness of what stands; of what lies, from head to tail. */
  readonly along: Mm;
  /** What the shelf must be high for: it stands on its tail, or lies on its back. */
  readonly high: Mm;
  /** From the front of the shelf to its back. */
  readonly deep: Mm;
}

/** A closed enclosure in the store. */
export function onShelf({ assembly, kind, settings }: Sized): ShelfRoom {
  return roomOf(turnedBack(assembly.outside, settings.restsOn), isUpright(kind, settings));
}

/** The item of an enclosure, kept the same way without it. */
export function itemOnShelf({ item, kind, settings }: Sized): ShelfRoom {
  return roomOf(item, isUpright(kind, settings));
}

function isUpright({ keptFlat }: Sized["kind"], { orientation }: Settings): boolean {
  return orientation === undefined ? keptFlat !== true : orientation === "upright";
}

function roomOf({ height, width, depth }: Item, upright: boolean): ShelfRoom {
  return upright
    ? { upright, along: depth, high: height, deep: width }
    : { upright, along: height, high: depth, deep: width };
}

/** The outside in the directions of the object, which may lie on its foot or its edge in the enclosure. */
function turnedBack(outside: Vec, restsOn: Settings["restsOn"]): Item {
  const [x, y, z] = [outside[X], outside[Y], outside[Z]];
  if (restsOn === "foot") return { height: z, width: x, depth: y };
  return restsOn === "edge" ? { height: y, width: z, depth: x } : { height: y, width: x, depth: z };
}
