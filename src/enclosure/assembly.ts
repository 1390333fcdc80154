import type { Mm } from "../measure/units";
import type { Construction, Settings } from "../settings/schema";
import type { Board } from "../settings/boards";
import type { Closure } from "../settings/stock";
import type { Blank } from "./blank";
import type { Step } from "./step";
import { panelsOf, type PlacedPart } from "./placedPart";
import { boundingBox, extent, X, Y, Z, type Axis, type Cuboid, type Vec } from "./space";
import type { Apart, OpenBody } from "./view";

/** An enclosure put together in space: the one source of cut list, outside size, mass, drawings and tests. */
export interface Assembly {
  readonly kind: AssembledKind;
  /** In the order in which they are cut. */
  readonly parts: readonly PlacedPart[];
  readonly trays: readonly Tray[];
  /** The tray that holds the item. */
  readonly holder: Tray;
  /** Trays that go into one another. */
  readonly nests: readonly Nest[];
  readonly cover: Case | undefined;
  /** The board under the item; undefined where nothing flat carries it. */
  readonly base: Plate | undefined;
  /** The board that lies on top when the enclosure is closed, and carries a stack. */
  readonly top: Plate | undefined;
  /** Closed and covered: x, y, z. */
  readonly outside: Vec;
  /** Cushioning under, on each side of and over the item. */
  readonly cushion: Cushion;
  /** Which way the object lies in it: on its back its head is at the least y, its spine at the least x. */
  readonly restsOn: Settings["restsOn"];
  /** What holds it shut. */
  readonly closure: Closure | "none";
}

/** What a kind of enclosure knows of its own assemblies. */
export interface AssembledKind extends ShownKind {
  readonly name: string;
  /** Folded up from flat pieces, which a drawing shows flat beside it; no walls stand on a base. */
  readonly folded: boolean;
  /** How it opens, and what holds it shut unless it is said; undefined where nothing can. */
  readonly closes?: Closing;
  /** Covering and lining before they are rounded and, where a sheet is too short, split. */
  readonly blanks: (assembly: Assembly, settings: Settings) => readonly Blank[];
  /** Cautions of this kind alone, beside those of every enclosure. */
  readonly cautions: (assembly: Assembly, settings: Settings) => readonly string[];
}

/** What drawings and bench pages ask of a kind, and no cell: the build leaves it out of functions.js. */
interface ShownKind {
  /** How its boards are put together, covered and lined, naming each part that it puts in its place. */
  readonly order: (assembly: Assembly, settings: Settings) => readonly Step[];
  /** The enclosure open as far as shows what it is. */
  readonly opened: (assembly: Assembly) => readonly OpenBody[];
  /** How its parts are drawn apart. */
  readonly apart: (assembly: Assembly) => Apart;
}

export interface Closing {
  /** Edges that open and are held: the fore-edge, with head and tail; 0 where a lid or flap is held from round the whole. */
  readonly edges: 0 | 1 | 3;
  readonly byDefault: Closure | "none";
}

export interface Cushion {
  readonly base: Mm;
  readonly sides: Mm;
  readonly top: Mm;
}

/** An open container of the enclosure. */
export interface Tray {
  readonly name: string;
  /** Open at the spine (x least), three walls. */
  readonly openSpine: boolean;
  /** The direction in which nothing closes on the item: a slipcase's width, since the spine is at its mouth. */
  readonly mouth: Axis | undefined;
  /** How its walls stand; undefined where it has no base that they stand on or around. */
  readonly construction: Construction | undefined;
  /** Its walls, ring by ring, the inner first; none where it is folded up. */
  readonly rings: readonly (readonly PlacedPart[])[];
  /** Seen from above no corner is open. */
  readonly closedCorners: boolean;
  /** Clear space between boards. */
  readonly inside: Cuboid;
  /** Bare outside, cards included. */
  readonly outside: Cuboid;
  /** What holds the inside open in width, height and depth. */
  readonly spans: readonly [Span, Span, Span];
  /** Covering on one face, all layers; 0 where it is bare. */
  readonly covering: Mm;
  /** Covered faces that the item lies between in width, height and depth. */
  readonly coveredFaces: readonly [number, number, number];
  readonly rim: Mm;
  /** Board that lies inside the side walls, both together: the tabs of a creased tray. */
  readonly tabs: Mm;
  /** What else lies round the item in width, height and depth: a chemise. */
  readonly wrapped?: Vec;
  /** Base board, and card where the base is flanged. */
  readonly floor: Mm;
  /** What shows of its outside, from the rim down, where it is fixed in another tray; the rest stays bare. */
  readonly outsideShown?: Mm | undefined;
  /** Another tray is fixed in it: its floor, and its walls below a turn-in, stay bare. */
  readonly filled?: boolean;
}

/** A panel that holds an inside open in one direction, less the thicknesses of board that are within its length. */
export interface Span {
  readonly part: PlacedPart;
  readonly boards: number;
  /** What those thicknesses are of. */
  readonly of: PlacedPart;
}

/** A tray that goes into another. */
export interface Nest {
  readonly inner: Tray;
  readonly outer: Tray;
  /** The least total play in width, height and depth; undefined in a direction where one rests on the other. */
  readonly play: readonly [Mm, Mm, Mm | undefined];
  /**
   * What is added to the inner tray as finished, covered, for the inside of the outer one, in width, height and depth;
   * undefined where that size is a choice and not measured.
   */
  readonly made: readonly [Mm | undefined, Mm | undefined, Mm | undefined];
}

/** A board as a plate that carries a load. */
export interface Plate {
  readonly part: PlacedPart;
  /** The space that it spans in width and height. */
  readonly over: Cuboid;
  /** The edge at the spine is free, without a wall. */
  readonly freeSpine: boolean;
  /** The board that it is glued to. */
  readonly gluedTo: Board | undefined;
}

/**
 * What turns on cloth hinges: the case of a clamshell box, opened flat; the spine piece of a folded one; a portfolio; the
 * front wall of a drop-front box.
 */
export interface Case {
  readonly boards: PlacedPart | undefined;
  readonly spine: PlacedPart | undefined;
  /** Cut from its sizes; else it is cut to the finished trays. */
  readonly cutFirst?: boolean;
  readonly boardWidth: Mm;
  readonly boardHeight: Mm;
  readonly boardCaliper: Mm;
  readonly spineWidth: Mm;
  readonly joint: Mm;
  readonly hingeLap: Mm;
  /** A shorter turn-in leaves board bare beside the trays. */
  readonly leastTurnIn?: Mm;
  /** Height of the large tray, to which the spine lining is cut. */
  readonly liningHeight: Mm;
  /** Covering on one face, all layers. */
  readonly covering: Mm;
}

/** What a kind says of an assembly; what it leaves out, it does not have. */
type Built = Pick<Assembly, "kind" | "parts" | "trays" | "holder" | "cushion"> &
  Partial<Pick<Assembly, "nests" | "cover" | "base" | "top">>;

/** Completes an assembly: the outside is the bounding box of everything placed, covered on each side. */
export function assembled(built: Built, settings: Settings): Assembly {
  const { kind, parts, trays, holder, nests = [], cover, base, top, cushion } = built;
  const box = boundingBox(panelsOf(parts));
  const both = 2 * holder.covering;
  const outside: Vec = [extent(box, X) + both, extent(box, Y) + both, extent(box, Z) + both];
  const closure = kind.closes === undefined ? "none" : (settings.closure ?? kind.closes.byDefault);
  return { kind, parts, trays, holder, nests, cover, base, top, cushion, outside, closure, restsOn: settings.restsOn };
}

/** The base of a tray as a plate over its inside. */
export function plateOf({ inside, openSpine }: Tray, part: PlacedPart, gluedTo?: Board): Plate {
  return { part, over: inside, freeSpine: openSpine, gluedTo };
}
