import type { Assembly } from "../enclosure/assembly";
import { boardParts, type Part } from "../enclosure/part";
import type { PlacedPart } from "../enclosure/placedPart";
import type { Piece } from "../enclosure/view";
import { benchLength } from "../measure/benchLength";
import type { WorkbookUnit } from "../measure/units";
import { directionKey } from "./directionKey";
import { foldedView } from "./foldedView";
import { freeLeaders, type FreeLeader } from "./freeLeaders";
import { grainMarks, type Leader } from "./grainMarks";
import { labelPlaces, leaderEnd, type LabelPlace, type LabelRoom } from "./labelPlaces";
import { fitted, lettering, textWidth } from "./lettering";
import { numberAt, NUMBER_RADIUS } from "./partNumber";
import { paintOrder } from "./paintOrder";
import { picture, shapesMoved, straight, type Picture, type Shape, type TextShape } from "./picture";
import { drawnExtent, type Extent, type Point } from "./projection";
import { pulledApart } from "./pulledApart";
import { solid, type Frame, type SolidStyle } from "./solid";
import { anchorsOf, crossedBoards } from "./visiblePoints";

export interface ExplodedOptions {
  readonly unit: WorkbookUnit;
  /** Of the drawing; its height follows. */
  readonly width?: number;
  /** Names and sizes of the parts; default true. */
  readonly labels?: boolean;
  /** Of what is folded, each piece flat beside it or below; without it they have their numbers. Default true. */
  readonly flats?: boolean;
  /** In a narrow drawing, the names that its numbers stand for below it; default true. */
  readonly list?: boolean;
  /** The boards are drawn no higher than this share of the width; default 1.5. */
  readonly tallest?: number;
}

const USUAL_WIDTH = 720;
/** Narrower than this, names are in a list below and numbers on the drawing. */
const ROOM_FOR_NAMES = 560;
const TALLEST = 1.5;
/** White on every side of the drawing. */
export const EXPLODED_MARGIN = 12;
const MARGIN = EXPLODED_MARGIN;
const NAME_SIZE = 12;
const LINE = 15;
const LABEL_GAP = 7;
const LEADER_GAP = 6;
const DOT = 2.2;
const HATCH = 7;
const HOLDER_TINT = 0.12;
const RIM = 3;
const LEADER_STROKE = 0.8;

/**
 * The enclosure drawn apart: every board in its direction, with its name, the size that it is cut to and its grain.
 * A folded piece is drawn folded up, and flat beside it. Thin board is drawn thicker than to scale.
 */
export function explodedView(assembly: Assembly, options: ExplodedOptions): Picture {
  const { unit, width = USUAL_WIDTH, labels = true, tallest = TALLEST, list: listing = true, flats = true } = options;
  const title = `Exploded view of a ${assembly.kind.name}`;
  if (assembly.kind.folded) {
    const figure = foldedView(assembly, { unit, width: width - 2 * MARGIN, labels, flats, tallest });
    return picture(title, width, figure.height + 2 * MARGIN, shapesMoved(figure.shapes, MARGIN, MARGIN));
  }
  const { drawn, extent, parts, anchors: seen } = apartOf(assembly);
  const named = boardParts(assembly).map((part): Named => ({ part, lines: linesOf(part, unit) }));
  const numbered = width < ROOM_FOR_NAMES;
  const column = !labels ? 0 : numbered ? 2 * NUMBER_RADIUS + LEADER_GAP : columnWidth(named);
  const step = numbered ? 2 * NUMBER_RADIUS + 2 : 2 * LINE + LABEL_GAP;
  const inner = width - 2 * (MARGIN + column + (labels ? 3 * LEADER_GAP : 0));
  const across = extent.right - extent.left;
  const down = extent.bottom - extent.top;
  const scale = Math.min(inner / across, (tallest * width) / down);
  const tall = Math.max(down * scale, labels ? Math.ceil(named.length / 2) * step : 0);
  const frame: Frame = {
    scale,
    x: width / 2 - ((extent.left + extent.right) / 2) * scale,
    y: MARGIN + tall / 2 - ((extent.top + extent.bottom) / 2) * scale,
  };
  const anchors = seen.map(([x, y]): Point => [frame.x + x * scale, frame.y + y * scale]);
  const boards = drawn.flatMap((piece) => solid(piece.body, frame, styleOf(piece, assembly)));
  const foot = MARGIN + tall;
  const room: LabelRoom = {
    left: MARGIN + column,
    right: width - MARGIN - column,
    top: MARGIN,
    bottom: foot,
    step,
  };
  const places = labels ? labelPlaces(anchors, room, crossedBoards(parts, drawn, frame)) : [];
  const pointers = places.map((place, index) => ({ from: anchors[index]!, to: leaderEnd(place, room) }));
  const leaders = freeLeaders(pointers, parts, drawn, frame);
  const grain = grainMarks(drawn, frame, leaders);
  const writing = (numbered ? numbers : names)(named, places, leaders);
  const list = labels && numbered && listing ? listed(named, foot + LINE, width) : [];
  const corners = { left: MARGIN, right: width - MARGIN, top: MARGIN, bottom: foot };
  const key = labels && assembly.restsOn === "back" ? directionKey([...boards, ...writing], corners) : [];
  const height = foot + MARGIN + (list.length === 0 ? 0 : LINE * (named.length + 1));
  return picture(title, width, height, [...boards, ...grain, ...writing, ...key, ...list]);
}

/** What a drawing of the boards apart shows, whatever its size. */
interface Apart {
  /** In painting order. */
  readonly drawn: readonly Piece[];
  readonly extent: Extent;
  readonly parts: readonly PlacedPart[];
  /** For each part the point of the model's drawing where its leader begins. */
  readonly anchors: readonly Point[];
}

const known = new WeakMap<Assembly, Apart>();

/** Worked out once: a page tries several sizes of one drawing. */
function apartOf(assembly: Assembly): Apart {
  const before = known.get(assembly);
  if (before !== undefined) return before;
  const pieces = pulledApart(assembly.kind.apart(assembly));
  const drawn = paintOrder(pieces.map(({ body }) => body)).map((index) => pieces[index]!);
  const parts = boardParts(assembly).map((part) => part.placed as PlacedPart);
  const apart = {
    drawn,
    extent: drawnExtent(pieces.map(({ body }) => body)),
    parts,
    anchors: anchorsOf(parts, drawn),
  };
  known.set(assembly, apart);
  return apart;
}

interface Named {
  readonly part: Part;
  readonly lines: readonly [name: string, size: string];
}

function linesOf(part: Part, unit: WorkbookUnit): readonly [string, string] {
  const name = `${part.fullName}${part.count > 1 ? ` × ${part.count}` : ""}`;
  const size = `${benchLength(part.length, unit)} × ${benchLength(part.width, unit)} ${unit}`;
  return [name, size];
}

function columnWidth(named: readonly Named[]): number {
  return Math.max(...named.flatMap(({ lines }) => lines.map((line) => textWidth(line, NAME_SIZE)))) + LEADER_GAP;
}

/** Card is hatched; of several trays the one that holds the object is tinted. */
function styleOf({ part }: Piece, { trays, holder }: Assembly): SolidStyle {
  const inHolder = trays.length > 1 && part.tray === holder.name && part.role !== "case";
  return {
    ...(part.material === "card" ? { hatch: HATCH } : {}),
    ...(inHolder ? { tint: HOLDER_TINT } : {}),
  };
}

function names(
  named: readonly Named[],
  places: readonly LabelPlace[],
  leaders: readonly FreeLeader[],
): readonly Shape[] {
  return places.flatMap((place, index) => {
    const { lines } = named[index]!;
    const leader = leaders[index]!;
    const [x, y] = leader.to;
    const [anchor, out] = place.side === "left" ? (["end", -1] as const) : (["start", 1] as const);
    const pointer = leader.isFree
      ? leaderLine(leader)
      : [...numberAt(leader.from, index), ...numberAt([x - out * NUMBER_RADIUS, y], index)];
    return [
      ...pointer,
      lettering(lines[0], x + out * LEADER_GAP, y - 3, { size: NAME_SIZE, anchor, bold: true }),
      lettering(lines[1], x + out * LEADER_GAP, y + LINE - 4, { size: NAME_SIZE, anchor }),
    ];
  });
}

function numbers(_: readonly Named[], places: readonly LabelPlace[], leaders: readonly FreeLeader[]): readonly Shape[] {
  return places.flatMap(({ side }, index) => {
    const leader = leaders[index]!;
    if (!leader.isFree) return numberAt(leader.from, index);
    const [x, y] = leader.to;
    return [...leaderLine(leader), ...numberAt([x + (side === "left" ? -NUMBER_RADIUS : NUMBER_RADIUS), y], index)];
  });
}

function listed(named: readonly Named[], top: number, width: number): readonly TextShape[] {
  return named.map(({ lines: [name, size] }, index) => {
    const text = fitted(`${index + 1}: ${name}, ${size}`, width - 2 * MARGIN, NAME_SIZE);
    return lettering(text, MARGIN, top + (index + 1) * LINE, { size: NAME_SIZE });
  });
}

/** A thin line from a dot on the part, with a rim of paper so that it differs from the edges that it passes. */
function leaderLine({ from, to }: Leader): readonly Shape[] {
  return [
    straight(from, to, { ink: 0, width: RIM }),
    straight(from, to, { width: LEADER_STROKE }),
    { kind: "circle", middle: from, radius: DOT, fill: 1, stroke: { ink: 0, width: 1 } },
  ];
}
