import type { Mm } from "../measure/units";
import { beside, gap, together, type Block } from "./blocks";

const APART: Mm = 6;
/** A narrower column of words, or a higher one, is below the drawing. */
const LEAST_COLUMN: Mm = 50;
const HIGHEST: Mm = 90;

/** A drawing in true size with its words beside it where there is room, else below it. */
export function besideWords(
  drawing: { readonly block: Block; readonly wide: Mm },
  words: (width: Mm) => readonly Block[],
  width: Mm,
): readonly Block[] {
  const room = width - drawing.wide - APART;
  const column = room >= LEAST_COLUMN ? together(words(room)) : undefined;
  if (column !== undefined && column.height <= HIGHEST)
    return [
      beside([
        { block: drawing.block, from: 0 },
        { block: column, from: drawing.wide + APART },
      ]),
    ];
  return [{ ...drawing.block, withNext: true }, { ...gap(1), withNext: true }, ...words(width)];
}
