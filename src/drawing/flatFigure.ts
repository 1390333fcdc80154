import { edgeCutWords } from "./edgeCutWords";
import { benchLength } from "../measure/benchLength";
import type { Mm, WorkbookUnit } from "../measure/units";
import { flatPiece } from "./flatPiece";
import { fitted, lettering, textWidth, wrapped } from "./lettering";
import { measuringLine } from "./marks";
import type { Shape } from "./picture";
import { FLAT_GAP, FLAT_LINE, FLAT_TEXT, runBelow, runBeside, STAND_OFF } from "./runs";
import type { Stretch, Template } from "./template";

/** A drawing to be placed in another, its origin at its upper left. */
export interface Figure {
  readonly shapes: readonly Shape[];
  readonly width: number;
  readonly height: number;
}

export interface FigureRoom {
  readonly unit: WorkbookUnit;
  readonly width: number;
  /** For the piece itself, without what is written around it. */
  readonly height: number;
}

const LEAST_SIDE = 12;
const TEXT_DROP = 0.35;
/** The scale follows from what is written at the right, and that from the scale. */
const PASSES = 3;

/**
 * A flat piece to scale: outline, folds in dash and dot, what is cut away hatched, the run of stretches along two
 * edges and the whole size along the other two, grain in the middle.
 */
export function flatFigure(template: Template, { unit, width, height }: FigureRoom): Figure {
  const shown = (size: Mm) => benchLength(size, unit);
  const named = (stretches: readonly Stretch[]) =>
    stretches.map(({ name, length }) => ({ text: `${name} ${shown(length)}`, length }));
  const [beside, below] = [named(template.alongWidth), named(template.alongLength)];
  const [across, along] = [shown(template.width), shown(template.length)];
  const widest = Math.max(0, ...beside.map(({ text }) => textWidth(text, FLAT_TEXT)));
  const x = beside.length === 0 ? FLAT_GAP : widest + STAND_OFF + 2 * FLAT_GAP;
  const rightOf = STAND_OFF + 2 * FLAT_GAP + textWidth(across, FLAT_TEXT);
  let [right, scale, run] = [rightOf, 0, runBelow([], [0, 0], 1)];
  for (let pass = 0; pass < PASSES; pass++) {
    const room = Math.max(LEAST_SIDE, width - x - right);
    scale = Math.min(room / template.length, height / template.width);
    run = runBelow(below, [x, 0], scale);
    right = Math.max(rightOf, right + run.reach - width);
  }
  const [w, h] = [template.length * scale, template.width * scale];
  const need = beside.length * FLAT_LINE;
  const top = 2 * FLAT_LINE + FLAT_GAP + STAND_OFF;
  const y = top + Math.max(0, (need - h) / 2);
  const bottom = y + h;
  const besideBottom = y + h / 2 + need / 2;
  const write = (text: string, tx: number, ty: number, anchor: "start" | "middle", bold = false) =>
    lettering(text, tx, ty + FLAT_TEXT * TEXT_DROP, { size: FLAT_TEXT, anchor, bold });
  const title = `${template.name}${template.count > 1 ? ` × ${template.count}` : ""}, ${along} × ${across} ${unit}`;
  const half = textWidth(along, FLAT_TEXT) / 2;
  const shapes: Shape[] = [
    write(fitted(title, width, FLAT_TEXT), 0, FLAT_LINE / 2, "start", true),
    ...flatPiece(template, { x, y, scale }),
    ...measuringLine([x, y - STAND_OFF], [x + w, y - STAND_OFF]),
    write(along, Math.max(x + w / 2, half), y - STAND_OFF - FLAT_LINE / 2, "middle"),
    ...measuringLine([x + w + STAND_OFF, y], [x + w + STAND_OFF, bottom]),
    write(across, x + w + STAND_OFF + FLAT_GAP, y + h / 2, "start"),
    ...runBeside(beside, [x - STAND_OFF, y], scale, {
      top: Math.min(y, besideBottom - need),
      bottom: Math.max(bottom, besideBottom),
    }),
  ];
  let foot = Math.max(bottom, besideBottom) + FLAT_GAP;
  if (below.length > 0) {
    shapes.push(...run.draw(bottom + STAND_OFF, Math.max(bottom + STAND_OFF, besideBottom)));
    foot = Math.max(bottom + STAND_OFF, besideBottom) + run.height;
  }
  const notes = notesOf(template, unit).flatMap((note) => wrapped(note, width, FLAT_TEXT));
  notes.forEach((note, index) => shapes.push(write(note, 0, foot + FLAT_LINE * (index + 0.5), "start")));
  return { shapes, width, height: foot + FLAT_LINE * notes.length + FLAT_GAP };
}

function notesOf({ corners, edges, note }: Template, unit: WorkbookUnit): readonly string[] {
  const shown = (size: Mm) => benchLength(size, unit);
  const corner = corners[0];
  if (edges !== undefined) return [`hatched: ${edgeCutWords(edges, unit)}`];
  // The covering's own note on corners says the same.
  if (corner !== undefined)
    return [`hatched: ${corners.length} corners cut away, ${shown(corner.length)} × ${shown(corner.width)} each`];
  return note === "" ? [] : [note];
}
