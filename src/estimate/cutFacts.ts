import type { Assembly, Nest } from "../enclosure/assembly";
import { PLY_ALLOWANCE_MM, type Part } from "../enclosure/part";
import type { PlacedPart } from "../enclosure/placedPart";
import type { Piece } from "../cutting/types";

/** What the bench style must know of a part, as it lies on the sheet. */
export type CutFacts = Pick<Piece, "strip" | "later" | "plies" | "pressed">;

/**
 * Walls of one ring are cut from a strip; boards of a tray that goes around another, and of a case, are made to a
 * finished first tray.
 */
export function cutFactsOf(assembly: Assembly): (part: Part) => CutFacts {
  const ringOf = new Map<PlacedPart, string>();
  for (const { name, rings } of assembly.trays)
    rings.forEach((walls, ring) => {
      const layer = rings.length === 1 ? "" : ring === rings.length - 1 ? "outer" : "inner";
      for (const wall of walls) ringOf.set(wall, `${name} ${layer}`.trim());
    });
  const outer = new Map(assembly.nests.map((nest) => [nest.outer.name, nest]));
  return (part) => {
    const { placed, plies, material } = part;
    if (placed === undefined || material !== "board") return {};
    const across = part.grain === "along width";
    const strip = across ? undefined : ringOf.get(placed);
    const later = secondMade(placed, outer.get(part.tray), assembly.cover?.cutFirst !== true);
    return {
      ...(strip === undefined ? {} : { strip }),
      ...(later === undefined ? {} : { later: across ? { length: later.width, width: later.length } : later }),
      ...(plies === 1 ? {} : { plies, pressed: PLY_ALLOWANCE_MM }),
    };
  };
}

/** Directions in which a part is made to a finished tray. */
function secondMade({ role }: PlacedPart, nest: Nest | undefined, toTrays: boolean): Piece["later"] {
  if (role === "case") return toTrays ? { length: true, width: true } : undefined;
  if (nest === undefined) return undefined;
  return { length: true, width: role !== "wall" || nest.made[2] !== undefined };
}
