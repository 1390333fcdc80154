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
  /** Open at the spine (x least), three walls; such a tray is glued to a case. */
  readonly openSpine: boolean;
  /** Clear space between boards. */
  readonly inside: Cuboid;
  /** Bare outside, cards included. */
  readonly outside: Cuboid;
  readonly rim: Mm;
  /** Board that lies inside the side walls, both together: the tabs of a creased tray. */
  readonly tabs: Mm;
  /** Base board, and card where the base is flanged. */
  readonly floor: Mm;
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

/** Completes an assembly: the outside is the bounding box of everything placed, covered on each side. */
export function assembled(assembly: Omit<Assembly, "outside">): Assembly {
  const { kind, parts, trays, holder, cover, covering, cushion } = assembly;
  const box = boundingBox(panelsOf(parts));
  const both = 2 * covering;
  const outside: Vec = [extent(box, X) + both, extent(box, Y) + both, extent(box, Z) + both];
  return { kind, parts, trays, holder, cover, covering, cushion, outside };
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
