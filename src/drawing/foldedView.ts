import type { Assembly } from "../enclosure/assembly";
import { boardParts } from "../enclosure/part";
import type { WorkbookUnit } from "../measure/units";
import { flatFigure, type Figure } from "./flatFigure";
import { fitted, lettering } from "./lettering";
import { paintOrder } from "./paintOrder";
import { shapesMoved } from "./picture";
import { drawnExtent } from "./projection";
import { pulledApart } from "./pulledApart";
import { solid } from "./solid";
import { templateOfPart } from "./templateOfPart";

const BESIDE_FROM = 520;
const FOLDED_SHARE = 0.4;
const FLAT_HEIGHT_SHARE = 0.62;
const STRIP_HEIGHT = 40;
const GAP = 22;
const CAPTION = 12;
const LINE = 16;

/** What is folded from flat pieces: folded up, and every piece flat with its folds and sizes. */
export function foldedView(
  assembly: Assembly,
  { unit, width, labels }: { readonly unit: WorkbookUnit; readonly width: number; readonly labels: boolean },
): Figure {
  const wide = width >= BESIDE_FROM && labels;
  // One blank of many panels takes the whole width, below.
  const beside = wide && !assembly.parts.some(({ corners }) => corners?.form === "edge cuts");
  const foldedWidth = wide ? width * FOLDED_SHARE - GAP : width;
  const folded = foldedUp(assembly, foldedWidth, labels);
  if (!labels) return folded;
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

function foldedUp(assembly: Assembly, width: number, captioned: boolean): Figure {
  const pieces = pulledApart(assembly.kind.apart(assembly));
  const bodies = pieces.map(({ body }) => body);
  const { left, right, top, bottom } = drawnExtent(bodies);
  const scale = Math.min(width / (right - left), (width * 1.5) / (bottom - top));
  const from = captioned ? LINE + GAP / 2 : 0;
  const frame = { scale, x: (width - (right + left) * scale) / 2, y: from - top * scale };
  const boards = paintOrder(bodies).flatMap((index) => solid(bodies[index]!, frame, {}));
  const caption = lettering(fitted("folded up", width, CAPTION), 0, CAPTION, { size: CAPTION, bold: true });
  return { shapes: [...(captioned ? [caption] : []), ...boards], width, height: (bottom - top) * scale + from };
}
