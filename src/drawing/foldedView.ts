import type { Assembly } from "../enclosure/assembly";
import { boardParts } from "../enclosure/part";
import type { WorkbookUnit } from "../measure/units";
import { directionKey } from "./directionKey";
import { flatFigure, type Figure } from "./flatFigure";
import { fitted, lettering } from "./lettering";
import { numberAt } from "./partNumber";
import { paintOrder } from "./paintOrder";
import { shapesMoved } from "./picture";
import { drawnExtent, type Point } from "./projection";
import { pulledApart } from "./pulledApart";
import { solid } from "./solid";
import { templateOfPart } from "./templateOfPart";
import { visiblePointsOf } from "./visiblePoints";

const BESIDE_FROM = 520;
const FOLDED_SHARE = 0.4;
const FLAT_HEIGHT_SHARE = 0.62;
const STRIP_HEIGHT = 40;
const GAP = 22;
const CAPTION = 12;
const LINE = 16;
/** So much higher is what stands above a drawing with the plan that names head and spine beside its caption. */
const KEY_ROOM = 18;

interface FoldedOptions {
  readonly unit: WorkbookUnit;
  readonly width: number;
  readonly labels: boolean;
  /** Every piece flat, too. */
  readonly flats: boolean;
  /** What is folded up is drawn no higher than this share of its width. */
  readonly tallest: number;
}

/** What is folded from flat pieces: folded up, and every piece flat with its folds and sizes. */
export function foldedView(
  assembly: Assembly,
  { unit, width, labels, flats: flatToo, tallest }: FoldedOptions,
): Figure {
  const named = labels && flatToo;
  const wide = width >= BESIDE_FROM && named;
  // One blank of many panels takes the whole width, below.
  const beside = wide && !assembly.parts.some(({ corners }) => corners?.form === "edge cuts");
  const foldedWidth = wide ? width * FOLDED_SHARE - GAP : width;
  const folded = foldedUp(assembly, foldedWidth, { captioned: named, numbered: labels && !flatToo, tallest });
  if (!named) return folded;
  const flatWidth = beside ? width - foldedWidth - GAP : width;
  const flats = boardParts(assembly).map((part) => {
    const strip = part.placed?.role === "strip";
    const room = strip ? STRIP_HEIGHT : flatWidth * FLAT_HEIGHT_SHARE;
    return flatFigure(templateOfPart(part), { unit, width: flatWidth, height: room });
  });
  const x = beside ? foldedWidth + GAP : 0;
  let y = beside ? 0 : folded.height + GAP;
  const placed = flats.flatMap((flat) => {
    const shapes = shapesMoved(flat.shapes, x, Math.round(y));
    y += flat.height + GAP / 2;
    return shapes;
  });
  return { shapes: [...folded.shapes, ...placed], width, height: Math.max(folded.height, y) };
}

function foldedUp(
  assembly: Assembly,
  width: number,
  {
    captioned,
    numbered,
    tallest,
  }: { readonly captioned: boolean; readonly numbered: boolean; readonly tallest: number },
): Figure {
  const pieces = pulledApart(assembly.kind.apart(assembly));
  const bodies = pieces.map(({ body }) => body);
  const { left, right, top, bottom } = drawnExtent(bodies);
  const scale = Math.min(width / (right - left), (width * tallest) / (bottom - top));
  const keyed = (captioned || numbered) && assembly.restsOn === "back";
  const from = captioned ? LINE + GAP / 2 + (keyed ? KEY_ROOM : 0) : 0;
  const frame = { scale, x: (width - (right + left) * scale) / 2, y: from - top * scale };
  const drawn = paintOrder(bodies).map((index) => pieces[index]!);
  const boards = drawn.flatMap(({ body }) => solid(body, frame, {}));
  const caption = lettering(fitted("folded up", width, CAPTION), 0, CAPTION, { size: CAPTION, bold: true });
  // Flat beside it the pieces have their names; without those, their numbers are on the drawing.
  const numbers = !numbered
    ? []
    : assembly.parts.flatMap((part, index) => {
        const points = visiblePointsOf(part, drawn, frame);
        return points.length === 0 ? [] : numberAt(middleOf(points), index);
      });
  const said = [...(captioned ? [caption] : []), ...boards, ...numbers];
  const height = (bottom - top) * scale + from;
  const key = keyed ? directionKey(said, { left: 0, right: width, top: 0, bottom: height }) : [];
  return { shapes: [...said, ...key], width, height };
}

/** The point that lies nearest to the middle of all. */
function middleOf(points: readonly Point[]): Point {
  const mean = ([0, 1] as const).map((at) => points.reduce((sum, point) => sum + point[at], 0) / points.length);
  const off = ([x, y]: Point) => Math.hypot(x - mean[0]!, y - mean[1]!);
  return points.reduce((best, point) => (off(point) < off(best) ? point : best));
}
