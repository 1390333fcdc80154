import type { Mm } from "../measure/units";
import { beside, together, type Block } from "./blocks";

/** Blocks in columns read one after the other, about equally high: none of the columns that follow is higher than the first. */
export function evenColumns(blocks: readonly Block[], columns: number, step: Mm): Block {
  const heightOf = (some: readonly Block[]) => some.reduce((sum, { height }) => sum + height, 0);
  const ends = blocks.map((_, index) => index + 1);
  const parted: (readonly Block[])[] = [];
  let left = blocks;
  for (let column = columns; column > 0 && left.length > 0; column--) {
    const share = heightOf(left) / column - NOISE_MM;
    const end = ends.find((count) => heightOf(left.slice(0, count)) >= share) ?? left.length;
    parted.push(left.slice(0, end));
    left = left.slice(end);
  }
  return beside(parted.map((own, column) => ({ block: together(own), from: column * step })));
}

const NOISE_MM: Mm = 1e-6;
