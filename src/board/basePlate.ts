import { longAxis, type Assembly, type PlacedPart, type Tray } from "../enclosure/assembly";
import { extent, X, Y, type Axis } from "../enclosure/space";
import type { Mm } from "../measure/units";
import type { BaseUnderLoad } from "./boardSag";

/** A base as a plate: its clear span, where it is free, how its grain lies, what it is glued to. */
export interface BasePlate extends Pick<BaseUnderLoad, "spanX" | "spanY" | "freeEdge" | "grain"> {
  /** Case board under a clamshell's tray; 0 elsewhere. */
  readonly gluedTo: Mm;
}

/**
 * The base of the tray that holds the item, held up on every edge that has a wall; undefined for an enclosure without
 * such a board (a wrapper, a folded tray).
 */
export function basePlate(assembly: Assembly): BasePlate | undefined {
  return plateOf(assembly, assembly.holder);
}

/** The board on top, which carries a stack: of the lid, the large tray, or the upper side of a slipcase. */
export function topPlate(assembly: Assembly): BasePlate | undefined {
  const { trays, holder } = assembly;
  const top = trays.length > 1 ? trays[trays.length - 1]! : holder.shape === "sleeve" ? holder : undefined;
  return top === undefined ? undefined : plateOf(assembly, top);
}

function plateOf({ parts, cover }: Assembly, tray: Tray): BasePlate | undefined {
  const base = parts.find((part) => part.role === "base" && part.tray === tray.name);
  if (base === undefined) return undefined;
  return {
    spanX: extent(tray.inside, X),
    spanY: extent(tray.inside, Y),
    freeEdge: tray.openSpine ? "x0" : "none",
    grain: grainAxis(base) === X ? "x" : "y",
    gluedTo: cover === undefined ? 0 : cover.boardCaliper,
  };
}

/**
 * The axis that a part's grain runs along. A blank folded up all round lies as its base does, long grain; a wrapper's
 * piece has its grain along the creases, across every panel: undefined.
 */
export function grainAxis(part: PlacedPart): Axis | undefined {
  if (part.role === "folded" && part.grain === "along length") return longAxis(part.panels[0]!);
  return part.grain === "along length" ? part.lengthAxis : part.widthAxis;
}
