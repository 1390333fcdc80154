import type { Mm } from "../measure/units";
import type { Board } from "../settings/readers";
import { boundingBox, extent, X, Y, Z, type Axis, type Cuboid, type Vec } from "./space";

/** An enclosure put together in space: the one source of cut list, outside size, mass, drawings and tests. */
export interface Assembly {
  readonly kind: string;
  /** In the order in which they are cut. */
  readonly parts: readonly PlacedPart[];
  readonly trays: readonly Tray[];
  /** The tray that holds the item. */
  readonly holder: Tray;
  readonly cover: Case | undefined;
  /** Covering on one face, all layers; 0 where the kind is not covered. */
  readonly covering: Mm;
  /** Closed and covered: x, y, z. */
  readonly outside: Vec;
  /** Cushioning under, on each side of and over the item. */
  readonly cushion: Cushion;
}

export interface Cushion {
  readonly base: Mm;
  readonly sides: Mm;
  readonly top: Mm;
}

/** One part of the cut list with every copy of it in its place. */
export interface PlacedPart {
  /** Without its tray: `side wall`. */
  readonly name: string;
  /** `lid`; empty where the enclosure has one tray. */
  readonly tray: string;
  readonly role: "base" | "wall" | "card" | "case" | "folded" | "strip";
  readonly material: "board" | "card";
  readonly board: Board;
  readonly count: number;
  /** Each copy in its place, or the panels of the one folded piece; none for a strip pasted over a joint. */
  readonly panels: readonly Cuboid[];
  /** In-plane directions of a flat part; undefined for one that is folded up. */
  readonly lengthAxis: Axis | undefined;
  readonly widthAxis: Axis | undefined;
  readonly grain: "along length" | "along width";
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
  | { readonly form: "tab"; readonly long: Mm; readonly high: Mm; readonly creasesApart: Mm };

/** Fold positions from one end, along the length and along the width. */
export interface Folds {
  readonly alongLength: readonly Mm[];
  readonly alongWidth: readonly Mm[];
}

export const NO_FOLDS: Folds = { alongLength: [], alongWidth: [] };

/** An open container of the enclosure; its covering is worked out from this alone. */
export interface Tray {
  readonly name: string;
  /** `sleeve`: a slipcase, open at the spine, with two sides and no rim. `wrapper`: bare card. */
  readonly shape: "tray" | "sleeve" | "wrapper";
  /** Open at the spine (x least): three walls. */
  readonly openSpine: boolean;
  /** Clear space between boards. */
  readonly inside: Cuboid;
  /** Bare outside, cards included. */
  readonly outside: Cuboid;
  readonly rim: Mm;
  /** Base board, and card where the base is flanged. */
  readonly floor: Mm;
  /** Glued to a case board: no panel is pasted beneath. */
  readonly onCase: boolean;
}

/** The case of a clamshell box, opened flat. */
export interface Case {
  readonly boardWidth: Mm;
  readonly boardHeight: Mm;
  readonly boardCaliper: Mm;
  readonly spineWidth: Mm;
  readonly joint: Mm;
  readonly hingeLap: Mm;
  /** Height of the large tray, to which the spine lining is cut. */
  readonly liningHeight: Mm;
}

/** A flat part: its finished size is read off its first copy. */
export function flatPart(
  part: Pick<PlacedPart, "name" | "tray" | "role" | "material" | "board"> & { readonly trim?: Mm },
  lengthAxis: Axis,
  widthAxis: Axis,
  grainAxis: Axis,
  panels: readonly [Cuboid, ...Cuboid[]],
): PlacedPart {
  return {
    ...part,
    trim: part.trim ?? 0,
    count: panels.length,
    panels,
    lengthAxis,
    widthAxis,
    grain: grainAxis === widthAxis ? "along width" : "along length",
    length: extent(panels[0], lengthAxis),
    width: extent(panels[0], widthAxis),
    folds: NO_FOLDS,
    corners: undefined,
  };
}

/** The longer of the two plan directions of a flat board lying on z; the height where they are equal. */
export function longAxis(panel: Cuboid): typeof X | typeof Y {
  return extent(panel, X) > extent(panel, Y) ? X : Y;
}

/** A board or card lying on z. `long`: long grain; `spine`: grain parallel to the spine. */
export function lyingPart(
  part: Parameters<typeof flatPart>[0],
  grain: "long" | "spine",
  panels: readonly [Cuboid, ...Cuboid[]],
): PlacedPart {
  const along = longAxis(panels[0]);
  return flatPart(part, along, along === X ? Y : X, grain === "spine" ? Y : along, panels);
}

/** Completes an assembly: the outside is the bounding box of everything placed, covered on each side. */
export function assembled(assembly: Omit<Assembly, "outside">): Assembly {
  const box = boundingBox(panelsOf(assembly.parts));
  const both = 2 * assembly.covering;
  return { ...assembly, outside: [extent(box, X) + both, extent(box, Y) + both, extent(box, Z) + both] };
}

export function* panelsOf(parts: readonly PlacedPart[]): Iterable<Cuboid> {
  for (const part of parts) yield* part.panels;
}

/** `lid side wall`. */
export function fullName(part: Pick<PlacedPart, "name" | "tray">): string {
  return part.tray === "" ? part.name : `${part.tray} ${part.name}`;
}
