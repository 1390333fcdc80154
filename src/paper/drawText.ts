import { textWidth } from "../drawing/lettering";
import type { TextShape } from "../drawing/picture";
import type { Mm } from "../measure/units";
import type { PlacedText } from "./page";
import { BASELINE_SHARE } from "./textBlocks";
import { FRAME_ROOM, MM_PER_PT, type SetRun, type Typesetter } from "./typesetter";

/** Draws on one PDF document; lengths in its points. */
export type Pen = PDFKit.PDFDocument;

const INK = "#000000";
const FRAME_HEIGHT_EM = 1.1;
const FRAME_DROP_EM = 0.25;
const FRAME_WEIGHT_EM = 0.04;
const WHITE = "#ffffff";

/** Points in a millimetre. */
export const POINTS: Mm = 1 / MM_PER_PT;

/** One line of type in its box. @param link what a link from it belongs to, for a screen reader */
export function drawText(
  pen: Pen,
  { box, text, size, bold, align, fromRight, goTo }: PlacedText,
  type: Typesetter,
  link?: PDFKit.PDFStructureElement,
): void {
  const runs = type.runs(text, bold, fromRight);
  const width = widthOf(runs) * size;
  const free = box.width * POINTS - width;
  const left = box.x * POINTS + (align === "start" ? 0 : align === "middle" ? free / 2 : free);
  drawRuns(pen, runs, left, (box.y + box.height * BASELINE_SHARE) * POINTS, size);
  if (goTo !== undefined) {
    const belongsTo: object = link === undefined ? {} : { structParent: link };
    pen.goTo(left, box.y * POINTS, width, box.height * POINTS, goTo, belongsTo);
  }
}

/**
 * A text of a drawing, with a rim of paper so that lines under it do not disturb. A drawing keeps a certain room for each
 * letter; letters that are wider are set smaller.
 */
export function drawLettering(pen: Pen, shape: TextShape, type: Typesetter): void {
  const runs = type.runs(shape.text, shape.bold);
  const natural = widthOf(runs) * shape.size;
  const room = textWidth(shape.text, shape.size);
  const size = natural > room ? (shape.size * room) / natural : shape.size;
  const width = widthOf(runs) * size;
  const left = shape.anchor === "start" ? 0 : shape.anchor === "middle" ? -width / 2 : -width;
  pen.save();
  pen.translate(...shape.at);
  if (shape.upright) pen.rotate(-90);
  const rim = size * RIM_EM;
  pen.rect(left - rim, -size * RIM_UP_EM, width + 2 * rim, size * RIM_HIGH_EM).fill(WHITE);
  drawRuns(pen, runs, left, 0, size);
  pen.restore();
}

const RIM_EM = 0.08;
const RIM_UP_EM = 0.82;
const RIM_HIGH_EM = 1.04;

function drawRuns(pen: Pen, runs: readonly SetRun[], left: number, baseline: number, size: number): void {
  let x = left;
  pen.fillColor(INK).fontSize(size);
  for (const { font, text, framed, width } of runs) {
    const inset = framed ? FRAME_ROOM * size : 0;
    pen.font(font).text(text, x + inset, baseline, { lineBreak: false, baseline: "alphabetic" });
    if (framed) {
      const [top, height] = [baseline - size * (FRAME_HEIGHT_EM - FRAME_DROP_EM), size * FRAME_HEIGHT_EM];
      pen
        .lineWidth(size * FRAME_WEIGHT_EM)
        .rect(x + inset / 2, top, width * size - inset, height)
        .stroke(INK);
    }
    x += width * size;
  }
}

function widthOf(runs: readonly SetRun[]): number {
  return runs.reduce((sum, { width }) => sum + width, 0);
}
