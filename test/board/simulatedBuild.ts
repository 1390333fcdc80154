import type { Assembly, PlacedPart } from "../../src/enclosure/assembly";
import type { Item } from "../../src/enclosure/restingItem";
import type { Settings } from "../../src/settings/schema";

/** What differs from one build to the next: errors as shares of their tolerance, -1 to 1, and the air, %RH from making. */
export interface Luck {
  readonly error: () => number;
  readonly air: () => number;
  /** Either of two parts that both reach across the inside may be the one that decides. */
  readonly pick: <T>(from: readonly [T, ...T[]]) => T;
}

export interface Play {
  readonly height: number;
  readonly width: number;
  readonly depth: number;
}

/**
 * One build of an enclosure, cut from its cut list a little off, a while later in other air: the play that the item then
 * has. Worked out from the names and sizes of the parts and from how they are put together, part by part; nothing here
 * knows of chains or of `src/board`.
 */
export function simulatedBuild(assembly: Assembly, item: Item, settings: Settings, luck: Luck): Play {
  const c = assembly.covering;
  const { cushionBase, cushionSides, cushionTop } = settings;
  const taken = swollen(turned(item, settings.restsOn), settings, luck);
  const clear = clearInside(assembly, settings, luck);
  const sleeve = assembly.kind === "slipcase";
  const wrapper = assembly.kind === "four-flap wrapper";
  // A slipcase is lined on both sides and on its one wall across the width; a tray on its floor, not on a lid.
  const covered = wrapper ? [0, 0, 0] : sleeve ? [2, 1, 2] : [2, 2, 1];
  return {
    height: clear.height - covered[0]! * c - taken.height - 2 * cushionSides,
    width: clear.width - covered[1]! * c - taken.width - 2 * cushionSides,
    depth: clear.depth - covered[2]! * c - taken.depth - cushionBase - cushionTop,
  };
}

function turned({ height, width, depth }: Item, restsOn: Settings["restsOn"]): Item {
  if (restsOn === "foot") return { height: depth, width, depth: height };
  return restsOn === "edge" ? { height, width: depth, depth: width } : { height, width, depth };
}

/** The item as it truly is, where the measure was a little off, in the air of the day. */
function swollen(item: Item, { measuringError, itemExpansion }: Settings, luck: Luck): Item {
  const grown = (measured: number) =>
    (measured + measuringError * luck.error()) * (1 + (itemExpansion / 1000) * luck.air());
  return { height: grown(item.height), width: grown(item.width), depth: grown(item.depth) };
}

function clearInside(assembly: Assembly, settings: Settings, luck: Luck): Item {
  const tray = assembly.holder.name;
  const own = assembly.parts.filter((part) => part.tray === tray);
  const named = (name: string) => own.find((part) => part.name === name);
  const cut = (size: number, grain: "along" | "across") => {
    const growth = grain === "along" ? settings.expansionAlong : settings.expansionAcross;
    return (size + settings.cuttingError * luck.error()) * (1 + (growth / 1000) * luck.air());
  };
  const thick = ({ board }: PlacedPart) => board.caliper + settings.caliperTolerance * luck.error();

  const blank = named("blank");
  if (blank !== undefined) return insideBlank(blank, cut, thick);
  const [inner, outer] = [named("inner piece"), named("outer piece")];
  if (inner !== undefined && outer !== undefined) {
    // Creases lie in mid-thickness, so half the card on either side is lost. Grain runs along the creases.
    const [, first, second, third] = [0, ...inner.folds.alongLength] as [number, number, number, number];
    const [, near, far] = outer.folds.alongLength as unknown as [number, number, number];
    return {
      height: cut(third - second, "across") - thick(inner),
      width: cut(far - near, "across") - thick(outer),
      depth: cut(second - first, "across") - thick(inner),
    };
  }

  const base = (named("base") ?? named("side"))!;
  const side = (named("inner side wall") ?? named("side wall") ?? named("fore-edge wall") ?? named("back wall"))!;
  const head = (named("inner head wall") ?? named("head wall"))!;
  const outerSide = named("outer side wall");
  const baseHeight = along(base, 1);
  const baseWidth = along(base, 0);
  const t = side.board.caliper;
  // What the base reaches out under walls, in walls.
  const holder = assembly.holder.inside;
  const wallsOnHeight = Math.round((baseHeight.size - (holder.max[1] - holder.min[1])) / t);
  const wallsOnWidth = Math.round((baseWidth.size - (holder.max[0] - holder.min[0])) / t);
  const lessWalls = (from: typeof baseHeight, walls: number) => {
    let clear = cut(from.size, from.grain);
    for (let wall = 0; wall < walls; wall++) clear -= thick(side);
    return clear;
  };
  const heights = [() => lessWalls(baseHeight, wallsOnHeight)] as [() => number, ...(() => number)[]];
  const widths = [() => lessWalls(baseWidth, wallsOnWidth)] as [() => number, ...(() => number)[]];
  // Walls that stand between the others hold them apart too, by their length, cut along the grain.
  const between = settings.through ?? (assembly.kind === "clamshell box" ? "head" : "side");
  if (between === "side") widths.push(() => cut(head.length, "along"));
  else heights.push(() => cut(side.length, "along"));
  // Walls that stand around the base begin at its underside; those of a slipcase reach over both sides.
  const aroundBase =
    outerSide === undefined &&
    settings.construction !== "on base" &&
    !(assembly.kind === "slipcase" && settings.construction === undefined);
  const sides = assembly.kind === "slipcase" ? 2 : 1;
  const depths = [side, head].map((wall) => () => {
    let clear = cut(wall.width, "across");
    if (aroundBase) for (let each = 0; each < sides; each++) clear -= thick(base);
    return clear;
  }) as [() => number, ...(() => number)[]];
  return { height: luck.pick(heights)(), width: luck.pick(widths)(), depth: luck.pick(depths)() };
}

type Cut = (size: number, grain: "along" | "across") => number;

/** A folded tray: cut folds close on the inner face, creases in mid-thickness; tabs lie inside the side walls. */
function insideBlank(blank: PlacedPart, cut: Cut, thick: (part: PlacedPart) => number): Item {
  const creased = blank.corners?.form === "tab";
  const [lengthwise, crosswise] = [blank.folds.alongLength, blank.folds.alongWidth] as [
    readonly [number, number],
    readonly [number, number],
  ];
  const panels = { length: lengthwise[1] - lengthwise[0], width: crosswise[1] - crosswise[0] };
  const { min, max } = blank.panels[0]!;
  const portrait = max[1] - min[1] >= max[0] - min[0];
  const tall = cut(portrait ? panels.length : panels.width, portrait ? "along" : "across");
  const wide = cut(portrait ? panels.width : panels.length, portrait ? "across" : "along");
  const deep = cut(lengthwise[0], "across");
  if (!creased) return { height: tall, width: wide, depth: deep };
  return {
    height: tall - thick(blank),
    width: wide - thick(blank) - thick(blank) - thick(blank),
    depth: deep - thick(blank) / 2,
  };
}

/** A flat part's size along an axis (0 width, 1 height of the item), and how its grain lies to that. */
function along(part: PlacedPart, axis: 0 | 1): { readonly size: number; readonly grain: "along" | "across" } {
  const lengthways = part.lengthAxis === axis;
  const size = lengthways ? part.length : part.width;
  return { size, grain: lengthways === (part.grain === "along length") ? "along" : "across" };
}
