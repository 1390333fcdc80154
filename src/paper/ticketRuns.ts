import type { Mm } from "../measure/units";
import type { Block } from "./blocks";
import { rectangle, type Placed } from "./page";
import { lineHeight, textLine, TYPE } from "./textBlocks";
import type { Typesetter } from "./typesetter";
import { shortened } from "./wrapText";

/** A stretch of a blank: what it lies on, and its length. */
export interface RunCell {
  readonly name: string;
  readonly size: string;
}

const [NAME_SIZE, FIGURE_SIZE] = [TYPE.body, TYPE.heading];
const PAD: Mm = 0.9;
const ROW_GAP: Mm = 0.8;

/** Stretches one after the other as boxes, each with its name over its length; as many rows as the width needs. */
export function runRow(cells: readonly RunCell[], width: Mm, type: Typesetter): Block {
  const needOf = ({ name, size }: RunCell) =>
    Math.min(width, Math.max(type.width(name, NAME_SIZE), type.width(size, FIGURE_SIZE, true)) + 2 * PAD + ROUNDING);
  const rows: { readonly cell: RunCell; readonly left: Mm; readonly wide: Mm }[][] = [[]];
  let left = 0;
  for (const cell of cells) {
    const wide = needOf(cell);
    if (left > 0 && left + wide > width) {
      rows.push([]);
      left = 0;
    }
    rows.at(-1)!.push({ cell, left, wide });
    left += wide;
  }
  const [name, figure] = [lineHeight(NAME_SIZE), lineHeight(FIGURE_SIZE)];
  const high = name + figure;
  return {
    height: rows.length * (high + ROW_GAP),
    withNext: false,
    at: (x, y) =>
      rows.flatMap((row, index) =>
        row.flatMap(({ cell, left: from, wide }): readonly Placed[] => {
          const [cellX, top] = [x + from, y + index * (high + ROW_GAP)];
          const box = { x: cellX + PAD, width: wide - 2 * PAD };
          const text = shortened(cell.name, box.width, { size: NAME_SIZE }, type);
          return [
            rectangle({ x: cellX, y: top, width: wide, height: high }),
            textLine(text, { ...box, y: top }, { size: NAME_SIZE, align: "middle" }),
            textLine(cell.size, { ...box, y: top + name }, { size: FIGURE_SIZE, bold: true, align: "middle" }),
          ];
        }),
      ),
  };
}

const ROUNDING: Mm = 0.1;
