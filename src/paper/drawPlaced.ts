import type { Picture, Shape, TextShape } from "../drawing/picture";
import type { Point } from "../drawing/projection";
import { codeModules, QUIET_SQUARES } from "./codeModules";
import { drawLettering, drawText, POINTS, type Pen } from "./drawText";
import type { Box, Placed, PlacedLine, PlacedOutline } from "./page";
import type { Typesetter } from "./typesetter";

const INK = "#000000";
const DASH = [1.2, 0.9] as const;
const HATCH_EVERY = 2;
const HATCH_WEIGHT = 0.15;
/** Full ink of a drawing is black on paper; a tone is never so light that a printer drops it. */
const FULL = 255;

/** Draws one thing of a page. @param link what a link from it belongs to, for a screen reader */
export function drawPlaced(pen: Pen, placed: Placed, type: Typesetter, link?: PDFKit.PDFStructureElement): void {
  if (placed.kind === "text") drawText(pen, placed, type, link);
  else if (placed.kind === "line") drawLine(pen, placed);
  else if (placed.kind === "outline") drawOutline(pen, placed);
  else if (placed.kind === "code") drawCode(pen, placed.box, placed.text);
  else drawPicture(pen, placed.box, placed.picture, type);
}

function drawLine(pen: Pen, { from, to, weight, dashed }: PlacedLine): void {
  if (dashed) pen.dash(DASH[0] * POINTS, { space: DASH[1] * POINTS });
  pen
    .lineWidth(weight * POINTS)
    .moveTo(from[0] * POINTS, from[1] * POINTS)
    .lineTo(to[0] * POINTS, to[1] * POINTS)
    .stroke(INK);
  if (dashed) pen.undash();
}

function drawOutline(pen: Pen, { points, weight, shade, hatched }: PlacedOutline): void {
  const path = () =>
    trace(
      pen,
      points.map(([x, y]) => [x * POINTS, y * POINTS] as const),
      true,
    );
  if (shade > 0) path().fill(tone(shade));
  if (hatched) {
    pen.save();
    path().clip();
    const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
    const [left, top, right, bottom] = [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
    pen.lineWidth(HATCH_WEIGHT * POINTS);
    for (let at = left - (bottom - top); at < right; at += HATCH_EVERY)
      pen.moveTo(at * POINTS, bottom * POINTS).lineTo((at + bottom - top) * POINTS, top * POINTS);
    pen.stroke(INK);
    pen.restore();
  }
  if (weight > 0)
    path()
      .lineWidth(weight * POINTS)
      .stroke(INK);
}

/** A QR code as large as its box, its quiet margin within. */
function drawCode(pen: Pen, { x, y, width }: Box, text: string): void {
  const code = codeModules(text);
  const square = (width * POINTS) / (code.side + 2 * QUIET_SQUARES);
  const start = QUIET_SQUARES * square;
  for (const run of code.runs)
    pen.rect(x * POINTS + start + run.x * square, y * POINTS + start + run.y * square, run.length * square, square);
  pen.fill(INK);
}

function drawPicture(pen: Pen, box: Box, { width, shapes }: Picture, type: Typesetter): void {
  pen.save();
  pen.translate(box.x * POINTS, box.y * POINTS);
  pen.scale((box.width * POINTS) / width);
  pen.lineJoin("round").lineCap("round");
  for (const shape of shapes) drawShape(pen, shape, type);
  pen.restore();
}

function drawShape(pen: Pen, shape: Shape, type: Typesetter): void {
  if (shape.kind === "text") return drawLettering(pen, shape, type);
  const { stroke } = shape;
  const fill = "fill" in shape ? shape.fill : undefined;
  if (fill === undefined && stroke === undefined) return;
  traceShape(pen, shape);
  if (stroke !== undefined) pen.lineWidth(stroke.width);
  const [drawn, space = drawn] = stroke?.dash ?? [];
  if (drawn !== undefined) pen.dash(drawn, { space: space! });
  if (fill !== undefined && stroke !== undefined) pen.fillAndStroke(tone(fill), tone(stroke.ink));
  else if (fill !== undefined) pen.fill(tone(fill));
  else pen.stroke(tone(stroke!.ink));
  if (drawn !== undefined) pen.undash();
}

function traceShape(pen: Pen, shape: Exclude<Shape, TextShape>): void {
  if (shape.kind === "circle") pen.circle(...shape.middle, shape.radius);
  else if (shape.kind === "hatch") for (const line of shape.lines) trace(pen, line, false);
  else if (shape.kind === "rectangle") trace(pen, cornersOf(shape), true);
  else trace(pen, shape.points, shape.kind === "polygon");
}

function cornersOf({ corner: [x, y], width, height }: Shape & { readonly kind: "rectangle" }): readonly Point[] {
  return [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ];
}

function trace(pen: Pen, points: readonly (readonly [number, number])[], closed: boolean): Pen {
  points.forEach(([x, y], index) => (index === 0 ? pen.moveTo(x, y) : pen.lineTo(x, y)));
  return closed ? pen.closePath() : pen;
}

/** Ink from none (0) to full (1) as a grey. */
function tone(ink: number): string {
  const level = Math.round(FULL * (1 - ink))
    .toString(16)
    .padStart(2, "0");
  return `#${level}${level}${level}`;
}
