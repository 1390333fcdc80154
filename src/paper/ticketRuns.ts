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

const NAME_SIZE = TYPE.body;
/** Smaller figures are taken where they spare a row. */
const FIGURE_SIZES = [TYPE.heading, TYPE.body] as const;
const PAD: Mm = 0.6;
const ROW_GAP: Mm = 0.8;

interface CellPlace {
  readonly cell: RunCell;
  readonly left: Mm;
  readonly wide: Mm;
}

/** Stretches one after the other as boxes, each with its name over its length; as many rows as the width needs. */
export function runRow(cells: readonly RunCell[], width: Mm, type: Typesetter): Block {
  const [large, small] = FIGURE_SIZES.map((size) => ({ size, rows: inRows(cells, width, size, type) }));
  const { size: figureSize, rows } = small!.rows.length < large!.rows.length ? small! : large!;
  const [name, figure] = [lineHeight(NAME_SIZE), lineHeight(figureSize)];
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
            textLine(cell.size, { ...box, y: top + name }, { size: figureSize, bold: true, align: "middle" }),
          ];
        }),
      ),
  };
}

function inRows(
  cells: readonly RunCell[],
  width: Mm,
  figureSize: number,
  type: Typesetter,
): readonly (readonly CellPlace[])[] {
  const rows: CellPlace[][] = [[]];
  let left = 0;
  for (const cell of cells) {
    const letters = Math.max(type.width(cell.name, NAME_SIZE), type.width(cell.size, figureSize, true));
    const wide = Math.min(width, letters + 2 * PAD + ROUNDING);
    if (left > 0 && left + wide > width) {
      rows.push([]);
      left = 0;
    }
    rows.at(-1)!.push({ cell, left, wide });
    left += wide;
  }
  return rows;
}

const ROUNDING: Mm = 0.1;
