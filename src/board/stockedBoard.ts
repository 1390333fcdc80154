import type { Mm } from "../measure/units";
import {
  boardOf,
  GREATEST_PLIES,
  LEAST_PLIES,
  unlistedBoard,
  type AskedBoard,
  type Board,
  type BoardMaterial,
} from "../settings/boards";
import { GREATEST_BOARD_MM, type StockRow } from "../settings/stock";

/** What a board is looked up for. */
export interface StockQuestion {
  readonly stock: readonly StockRow[];
  readonly material: BoardMaterial;
  /** Whether boards may be glued together to reach a caliper. Card, and what is folded from one piece, never is. */
  readonly laminated: boolean;
  /** The item's longest side, for boards with a size limit. */
  readonly longestSide: Mm;
}

/** A board of the stock table for one that was asked for. */
export interface StockedBoard {
  readonly board: Board;
  /** `exact`: the one asked for; else the nearest thicker, or, where nothing reaches, the thickest. */
  readonly how: "exact" | "thicker" | "thickest";
}

/**
 * The board to take where another was asked for: the same one; else the nearest thicker; else the smallest number of
 * equal plies that reaches its caliper; else the thickest that there is. There is always an answer.
 *
 * Boards whose size limit the item exceeds, and boards of permanence `none`, are taken only where nothing else is stocked.
 */
export function stockedBoard(asked: AskedBoard, question: StockQuestion): StockedBoard {
  const { stock, material, laminated } = question;
  // Only a board with a size limit makes the answer another for another item.
  if (hasLimits(stock)) return lookedUp(asked, question);
  let ofAsked = remembered.get(stock);
  if (ofAsked === undefined) remembered.set(stock, (ofAsked = new WeakMap()));
  let answers = ofAsked.get(asked);
  if (answers === undefined) ofAsked.set(asked, (answers = new Map<string, StockedBoard>()));
  const key = `${material}/${laminated}`;
  let answer = answers.get(key);
  if (answer === undefined) answers.set(key, (answer = lookedUp(asked, question)));
  return answer;
}

const remembered = new WeakMap<readonly StockRow[], WeakMap<AskedBoard, Map<string, StockedBoard>>>();
const limited = new WeakMap<readonly StockRow[], boolean>();

function hasLimits(stock: readonly StockRow[]): boolean {
  let known = limited.get(stock);
  if (known === undefined) limited.set(stock, (known = stock.some(({ sizeLimit }) => sizeLimit !== undefined)));
  return known;
}

function lookedUp(asked: AskedBoard, question: StockQuestion): StockedBoard {
  const { laminated, longestSide } = question;
  const named = asked.row;
  if (named !== undefined && (laminated || asked.plies === 1) && withinLimit(named, longestSide))
    return { board: boardOf(named, asked.plies), how: "exact" };
  const ply = named?.caliper ?? asked.caliper!;
  const material = named?.material === "card" ? "card" : question.material;
  const rows = candidates({ ...question, material });
  const mayLaminate = laminated && material === "board";
  if (asked.plies === 1 || mayLaminate) {
    const same = sameCaliper(ply, rows);
    if (same !== undefined) return { board: boardOf(same, asked.plies), how: "exact" };
  }
  const total = asked.plies * ply;
  const reached = nearestThicker(total, rows, mayLaminate ? GREATEST_PLIES : 1);
  if (reached !== undefined) return { board: reached, how: "thicker" };
  const thickest = thickestOf(rows, mayLaminate ? GREATEST_PLIES : 1);
  return { board: thickest ?? unlistedBoard(total, material), how: "thickest" };
}

/** Boards within this share of a caliper are the same board, sold by another unit: 60 pt is 1.6 % over 1.5 mm. */
const SAME_SHARE = 0.03;
const NOISE_MM: Mm = 1e-6;

function withinLimit({ sizeLimit }: StockRow, longestSide: Mm): boolean {
  return sizeLimit === undefined || longestSide <= sizeLimit + NOISE_MM;
}

function candidates({ stock, material, longestSide }: StockQuestion): readonly StockRow[] {
  const rows = stock.filter((row) => row.material === material);
  const made = orAll(rows, (row) => withinLimit(row, longestSide));
  return orAll(made, ({ permanence }) => permanence !== "none");
}

/** The rows that will do, or all where none does. */
function orAll(rows: readonly StockRow[], will: (row: StockRow) => boolean): readonly StockRow[] {
  const some = rows.filter(will);
  return some.length > 0 ? some : rows;
}

function sameCaliper(caliper: Mm, rows: readonly StockRow[]): StockRow | undefined {
  const nearest = thinnest(rows, ({ caliper: own }) => Math.abs(own - caliper));
  if (nearest === undefined) return undefined;
  return Math.abs(nearest.caliper - caliper) <= SAME_SHARE * caliper ? nearest : undefined;
}

function nearestThicker(total: Mm, rows: readonly StockRow[], mostPlies: number): Board | undefined {
  for (const plies of [1, ...pliesTo(mostPlies)]) {
    const reach = rows.filter(
      ({ caliper }) => plies * caliper >= total - NOISE_MM && plies * caliper <= GREATEST_BOARD_MM + NOISE_MM,
    );
    const row = thinnest(reach, ({ caliper }) => caliper);
    if (row !== undefined) return boardOf(row, plies);
  }
  return undefined;
}

function thickestOf(rows: readonly StockRow[], mostPlies: number): Board | undefined {
  let thickest: Board | undefined;
  for (const row of rows)
    for (const plies of [1, ...pliesTo(mostPlies)]) {
      const board = boardOf(row, plies);
      if (board.caliper > GREATEST_BOARD_MM + NOISE_MM) continue;
      if (thickest === undefined || board.caliper > thickest.caliper + NOISE_MM) thickest = board;
    }
  return thickest;
}

function pliesTo(most: number): readonly number[] {
  return Array.from({ length: Math.max(0, most - LEAST_PLIES + 1) }, (_, index) => LEAST_PLIES + index);
}

/** The first row of the least measure. */
function thinnest(rows: readonly StockRow[], measure: (row: StockRow) => number): StockRow | undefined {
  let least: StockRow | undefined;
  for (const row of rows) if (least === undefined || measure(row) < measure(least)) least = row;
  return least;
}
