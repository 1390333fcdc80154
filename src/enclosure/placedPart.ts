import type { Mm } from "../measure/units";
import type { Board } from "../settings/boards";
import type { Material } from "../settings/stock";
import { extent, X, Y, type Axis, type Cuboid } from "./space";

/** One part of the cut list with every copy of it in its place. */
export interface PlacedPart {
  /** Without its tray: `side wall`. */
  readonly name: string;
  /** `lid`; empty where the enclosure has one tray. */
  readonly tray: string;
  readonly role: "base" | "wall" | "card" | "case" | "folded" | "strip" | "divider";
  readonly material: Material;
  readonly board: Board;
  readonly count: number;
  /** Each copy in its place, or the panels of the one folded piece; none for a strip pasted over a joint. */
  readonly panels: readonly Cuboid[];
  /** In-plane directions of a flat part; undefined for one that is folded up. */
  readonly lengthAxis: Axis | undefined;
  readonly widthAxis: Axis | undefined;
  readonly grain: "along length" | "along width";
  /** The direction that its grain runs in, in space; undefined where it runs across every panel of a folded piece. */
  readonly grainAxis: Axis | undefined;
  /** Finished size. */
  readonly length: Mm;
  readonly width: Mm;
  /** Cut larger by this on each edge, to be trimmed flush. */
  readonly trim: Mm;
  readonly folds: Folds;
  readonly corners: Corners | undefined;
}

/** What becomes of the four corners of a folded blank. */
export type Corners =
  | { readonly form: "notch"; readonly alongLength: Mm; readonly alongWidth: Mm }
  | { readonly form: "tab"; readonly long: Mm; readonly high: Mm; readonly creasesApart: Mm }
  | EndTabs
  | EdgeCuts;

/** Tabs at one end alone, of a blank that is open at the other. */
export interface EndTabs {
  readonly form: "end tab";
  /** The direction from the open end to the tabs. */
  readonly from: "length" | "width";
  /** Where the tabs are creased, from the open end. */
  readonly crease: Mm;
  readonly long: Mm;
  readonly high: Mm;
  /** Where the wall between the tabs begins, from the edge across. */
  readonly wallFrom: Mm;
}

/**
 * A blank that is cut in along both of its edges, alike, as its panels need it: at each place along it, so much of either
 * edge is cut away.
 */
export interface EdgeCuts {
  readonly form: "edge cuts";
  /** The direction that its edges run in. */
  readonly along: "length" | "width";
  /** From `fromEnd` on. */
  readonly steps: readonly EdgeStep[];
  /** The end that is measured from: `the end of the small tray`. */
  readonly fromEnd: string;
  readonly tabs: readonly EdgeTab[];
}

/** A tab of the head walls at one end, from the same end and from either edge. */
export interface EdgeTab {
  readonly name: string;
  readonly long: Mm;
  readonly high: Mm;
  /** Along: where it is creased, and where it ends. */
  readonly crease: Mm;
  readonly tip: Mm;
  /** In from the edge: where it is cut free of the wall below it. */
  readonly foot: Mm;
  /** The crease of its head wall: how far in from the edge, and from where along to the tab. */
  readonly headCrease: Mm;
  readonly headFrom: Mm;
}

/** From one place along an edge to another, what is cut away of it. */
export interface EdgeStep {
  readonly from: Mm;
  readonly to: Mm;
  readonly deep: Mm;
}

/** Fold positions from one end, along the length and along the width. */
export interface Folds {
  /** `cut`: part-way through from outside, folding on the inner face. `crease`: in mid-thickness. */
  readonly by: "cut" | "crease";
  readonly alongLength: readonly Mm[];
  readonly alongWidth: readonly Mm[];
}

export const NO_FOLDS: Folds = { by: "crease", alongLength: [], alongWidth: [] };

/** What a flat part is made of, before its place gives it a size. */
export type PartSpec = Pick<PlacedPart, "name" | "tray" | "role" | "material" | "board" | "trim">;

/** A flat part: its finished size is read off its first copy. */
export function flatPart(
  { name, tray, role, material, board, trim }: PartSpec,
  lengthAxis: Axis,
  widthAxis: Axis,
  grainAxis: Axis,
  panels: readonly [Cuboid, ...Cuboid[]],
): PlacedPart {
  // Written out, not spread: this runs for every part of every cell.
  return {
    name,
    tray,
    role,
    material,
    board,
    count: panels.length,
    panels,
    lengthAxis,
    widthAxis,
    grain: grainAxis === widthAxis ? "along width" : "along length",
    grainAxis,
    length: extent(panels[0], lengthAxis),
    width: extent(panels[0], widthAxis),
    trim,
    folds: NO_FOLDS,
    corners: undefined,
  };
}

/** The longer of the two plan directions of a flat board lying on z; the height where they are equal. */
export function longAxis(panel: Cuboid): typeof X | typeof Y {
  return extent(panel, X) > extent(panel, Y) ? X : Y;
}

/** A board or card lying on z. `long`: long grain; `spine`: grain parallel to the spine. */
export function lyingPart(part: PartSpec, grain: "long" | "spine", panels: readonly [Cuboid, ...Cuboid[]]): PlacedPart {
  const along = longAxis(panels[0]);
  return flatPart(part, along, along === X ? Y : X, grain === "spine" ? Y : along, panels);
}

/** Every board and card in its place. */
export function panelsOf(parts: readonly PlacedPart[]): readonly Cuboid[] {
  const panels: Cuboid[] = [];
  for (const part of parts) for (const panel of part.panels) panels.push(panel);
  return panels;
}

/** `lid side wall`. */
export function fullName(part: Pick<PlacedPart, "name" | "tray">): string {
  return part.tray === "" ? part.name : `${part.tray} ${part.name}`;
}
