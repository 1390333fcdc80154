import type { Assembly, PlacedPart } from "../enclosure/assembly";
import { boardParts, type Part } from "../enclosure/part";
import { formatLength } from "../measure/formatLength";
import type { WorkbookUnit } from "../measure/units";
import { foldedView } from "./foldedView";
import { grainMarks, type Leader } from "./grainMarks";
import { labelPlaces, leaderEnd, type LabelPlace, type LabelRoom } from "./labelPlaces";
import { fitted, lettering, textWidth } from "./lettering";
import { drawing, IN_PAGE, type DrawingOptions, type Look } from "./look";
import { paintOrder } from "./paintOrder";
import { drawnExtent } from "./projection";
import { pulledApart } from "./pulledApart";
import { sceneOf, type Piece } from "./scene";
import { lineBetween, solid, type Frame } from "./solid";
import { element } from "./svg";
import { anchorsOf } from "./visiblePoints";

export interface ExplodedOptions extends DrawingOptions {
  readonly unit: WorkbookUnit;
  /** Of the drawing; its height follows. */
  readonly width?: number;
  /** Names and sizes of the parts; default true. */
  readonly labels?: boolean;
  /** In a narrow drawing, the names that its numbers stand for below it; default true. */
  readonly list?: boolean;
  /** The boards are drawn no higher than this share of the width; default 1.5. */
  readonly tallest?: number;
}

const USUAL_WIDTH = 720;
/** Narrower than this, names stand in a list below and numbers on the drawing. */
const ROOM_FOR_NAMES = 560;
const TALLEST = 1.5;
const MARGIN = 12;
const NAME_SIZE = 12;
const LINE = 15;
const LABEL_GAP = 7;
const LEADER_GAP = 6;
const DOT = 2.2;
const NUMBER_RADIUS = 9;
const HATCH = 7;

/**
 * The enclosure drawn apart: every board in its direction, with its name, the size that it is cut to and its grain.
 * A folded piece is drawn folded up, and flat beside it. Thin board is drawn thicker than to scale.
 */
export function explodedView(assembly: Assembly, options: ExplodedOptions): string {
  const { unit, width = USUAL_WIDTH, labels = true, tallest = TALLEST, list: listing = true, look = IN_PAGE } = options;
  const title = `Exploded view of a ${assembly.kind}`;
  if (assembly.parts.some(({ role }) => role === "folded")) {
    const figure = foldedView(assembly, { unit, width: width - 2 * MARGIN, labels, look });
    const markup = `<g transform="translate(${MARGIN} ${MARGIN})">${figure.markup}</g>`;
    return drawing(title, width, figure.height + 2 * MARGIN, markup, look);
  }
  const pieces = pulledApart(sceneOf(assembly));
  const named = boardParts(assembly).map((part): Named => ({ part, lines: linesOf(part, unit) }));
  const numbered = width < ROOM_FOR_NAMES;
  const column = !labels ? 0 : numbered ? 2 * NUMBER_RADIUS + LEADER_GAP : columnWidth(named);
  const step = numbered ? 2 * NUMBER_RADIUS + 2 : 2 * LINE + LABEL_GAP;
  const extent = drawnExtent(pieces.map(({ body }) => body));
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
  const order = paintOrder(pieces.map(({ body }) => body));
  const drawn = order.map((index) => pieces[index]!);
  const anchors = anchorsOf(
    named.map(({ part }) => part.placed as PlacedPart),
    drawn,
    frame,
  );
  const boards = drawn.map((piece) => solid(piece.body, frame, hatchOf(piece), look)).join("");
  const foot = MARGIN + tall;
  const room: LabelRoom = {
    left: MARGIN + column,
    right: width - MARGIN - column,
    top: MARGIN,
    bottom: foot,
    step,
  };
  const places = labels ? labelPlaces(anchors, room) : [];
  const leaders = places.map((place, index): Leader => ({ from: anchors[index]!, to: leaderEnd(place, room) }));
  const grain = grainMarks(drawn, frame, leaders);
  const writing = (numbered ? numbers : names)(named, places, leaders, look);
  const list = labels && numbered && listing ? listed(named, foot + LINE, width, look) : "";
  const height = foot + MARGIN + (list === "" ? 0 : LINE * (named.length + 1));
  return drawing(title, width, height, boards + grain + writing + list, look);
}

interface Named {
  readonly part: Part;
  readonly lines: readonly [name: string, size: string];
}

function linesOf(part: Part, unit: WorkbookUnit): readonly [string, string] {
  const name = `${part.fullName}${part.count > 1 ? ` × ${part.count}` : ""}`;
  const size = `${formatLength(part.length, unit)} × ${formatLength(part.width, unit)} ${unit}`;
  return [name, size];
}

function columnWidth(named: readonly Named[]): number {
  return Math.max(...named.flatMap(({ lines }) => lines.map((line) => textWidth(line, NAME_SIZE)))) + LEADER_GAP;
}

function hatchOf({ part }: Piece): { readonly hatch?: number } {
  return part.material === "card" ? { hatch: HATCH } : {};
}

function names(named: readonly Named[], places: readonly LabelPlace[], leaders: readonly Leader[], look: Look): string {
  return places
    .map((place, index) => {
      const { lines } = named[index]!;
      const [x, y] = leaders[index]!.to;
      const anchor = place.side === "left" ? "end" : "start";
      const gap = place.side === "left" ? -LEADER_GAP : LEADER_GAP;
      return (
        leaderLine(leaders[index]!, look) +
        lettering(lines[0], x + gap, y - 3, { size: NAME_SIZE, anchor, bold: true }, look) +
        lettering(lines[1], x + gap, y + LINE - 4, { size: NAME_SIZE, anchor }, look)
      );
    })
    .join("");
}

function numbers(_: readonly Named[], places: readonly LabelPlace[], leaders: readonly Leader[], look: Look): string {
  return places
    .map(({ side }, index) => {
      const [x, y] = leaders[index]!.to;
      const cx = x + (side === "left" ? -NUMBER_RADIUS : NUMBER_RADIUS);
      return (
        leaderLine(leaders[index]!, look) +
        element("circle", { cx, cy: y, r: NUMBER_RADIUS, fill: look.paper }) +
        lettering(String(index + 1), cx, y + NAME_SIZE / 3, { size: NAME_SIZE - 1, anchor: "middle" }, look)
      );
    })
    .join("");
}

function listed(named: readonly Named[], top: number, width: number, look: Look): string {
  return named
    .map(({ lines: [name, size] }, index) => {
      const text = fitted(`${index + 1}: ${name}, ${size}`, width - 2 * MARGIN, NAME_SIZE);
      return lettering(text, MARGIN, top + (index + 1) * LINE, { size: NAME_SIZE }, look);
    })
    .join("");
}

/** A thin line from a dot on the part, with a rim of paper so that it is told from the edges that it passes. */
function leaderLine({ from, to }: Leader, look: Look): string {
  return (
    lineBetween(from, to, { stroke: look.paper, "stroke-width": 3, "stroke-opacity": 0.8 }) +
    lineBetween(from, to, { "stroke-width": 0.8 }) +
    element("circle", { cx: from[0], cy: from[1], r: DOT, fill: look.ink, stroke: look.paper })
  );
}
