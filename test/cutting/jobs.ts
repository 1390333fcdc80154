import type { CuttingOptions, Piece, Sheet, Stock } from "../../src/cutting/types";
import { createRandom } from "../../src/cutting/random";

/** A piece with its grain fixed. */
export function piece(length: number, width: number, more: Partial<Piece> = {}): Piece {
  return { id: `${length}x${width}`, item: "item 1", part: "wall", length, width, turn: false, ...more };
}

/** One size of sheet, as many as wanted, 1 each. */
export function board(length: number, width: number, more: Partial<Sheet> = {}): Sheet {
  return { name: "board", length, width, price: 1, ...more };
}

export function sheetStock(...sheets: readonly Sheet[]): Stock {
  return { kind: "sheets", sheets };
}

export interface RandomJob {
  readonly pieces: readonly Piece[];
  readonly stock: Stock;
  readonly options: CuttingOptions;
}

/** A job of any shape from a seed: none to some eighty pieces, grain fixed or free, one to four sizes, or a roll. */
export function randomJob(seed: number): RandomJob {
  const random = createRandom(seed);
  const between = (low: number, high: number) => low + random.below(high - low + 1);
  const oneIn = (parts: number) => random.below(parts) === 0;
  const [length, width] = [between(20, 200), between(20, 200)];
  const side = (longest: number) => {
    const mm = between(1, Math.max(1, Math.floor(longest * (oneIn(10) ? 1.1 : 0.6))));
    return oneIn(4) ? mm - 0.3 : mm;
  };
  const free = random.below(3);
  const count = [0, 1, between(2, 8), between(5, 40)][random.below(4)]!;
  const pieces = Array.from({ length: count }, (_, index) => ({
    id: `piece ${index}`,
    item: `item ${index}`,
    part: "wall",
    length: side(length),
    width: side(width),
    turn: free === 2 || (free === 1 && oneIn(2)),
    ...(oneIn(3) ? { count: between(0, 6) } : {}),
  }));
  const gap = oneIn(3) ? between(0, 30) / 10 : 0;
  const options = {
    edgeTrim: oneIn(3) ? between(0, 30) / 10 : 0,
    pieceGap: gap,
    seed,
    budget: { iterations: between(0, 200) },
  };
  if (oneIn(4))
    return { pieces, stock: { kind: "roll", roll: { name: "cloth", width, pricePerM: between(0, 5) } }, options };
  const kinds = oneIn(3) ? between(2, 4) : 1;
  const sheets = Array.from({ length: kinds }, (_, index) => ({
    name: `size ${index}`,
    length: index === 0 ? length : between(10, length),
    width: index === 0 ? width : between(10, width),
    price: oneIn(4) ? 0 : between(1, 40) / 4,
    ...(oneIn(index === 0 ? 8 : 2) ? { onHand: between(0, 5) } : {}),
  }));
  return { pieces, stock: { kind: "sheets", sheets }, options };
}
