import { InputError, shown } from "../measure/errors";
import { readLength } from "../measure/readLength";
import type { LengthUnit, Mm } from "../measure/units";
import { didYouMean, plainName } from "./names";
import { GREATEST_BOARD_MM, refuseBoardCaliper, type Material, type StockRow } from "./stock";

/** A board or card chosen: a row of the stock table, or a bare caliper that the table does not list. */
export interface Board {
  /** Name in the stock table of what is cut; `2 mm board, not in stock` when only the caliper was given. */
  readonly stock: string;
  /** Of all plies together. */
  readonly caliper: Mm;
  /** How many equal boards are laminated into one; 1 for a board as it is bought. */
  readonly plies: number;
  /** The row of the stock table that one ply is cut from. */
  readonly listed: StockRow | undefined;
}

/** What a caliper is looked up among. */
export type BoardMaterial = "board" | "card";

/** What a board is read with. */
export interface BoardContext {
  /** The setting or heading, in the user's words, for messages. */
  readonly name: string;
  readonly shopUnit: LengthUnit;
  readonly stock: readonly StockRow[];
}

/** A board as a text names it: a row of the stock table, or a caliper to look up; and how many plies of it. */
export type AskedBoard = { readonly plies: number } & (AskedRow | AskedCaliper);

interface AskedRow {
  readonly row: StockRow;
  readonly caliper?: undefined;
}

interface AskedCaliper {
  readonly row?: undefined;
  readonly caliper: Mm;
}

export const LEAST_PLIES = 2;
export const GREATEST_PLIES = 4;

/** A row of the stock table as a board. */
export function boardOf(row: StockRow, plies = 1): Board {
  return { stock: row.stock, caliper: plies * row.caliper, plies, listed: row };
}

/** `conservation board 2`, `2 x conservation board 2`: what a cell holds, and what reads back as the same board. */
export function boardName({ stock, plies }: Pick<Board, "stock" | "plies">): string {
  return plies === 1 ? stock : `${plies} x ${stock}`;
}

/** What a part of a board is, whatever such a part usually is made of: a row of the stock table says it. */
export function materialOf({ listed }: Board, usual: Material): Material {
  return listed?.material === "board" || listed?.material === "card" ? listed.material : usual;
}

/** Caliper of one ply. */
export function plyCaliper({ caliper, plies }: Pick<Board, "caliper" | "plies">): Mm {
  return caliper / plies;
}

/** One ply of a board: the rings of a double wall, and what is folded from one piece, are never laminated. */
export function onePly(board: Board): Board {
  return board.plies === 1 ? board : { ...board, caliper: plyCaliper(board), plies: 1 };
}

/**
 * Reads a stock name, a caliper, or `N x` either of them.
 *
 * @throws InputError naming the setting, what it got, what it accepts and the cure
 */
export function askedBoard(value: unknown, context: BoardContext): AskedBoard {
  const one = askedPly(value, context);
  if (one !== undefined) return { ...one, plies: 1 };
  const [, number, ply] = LAMINATED.exec(String(value).trim())!;
  const plies = Number(number);
  if (!(plies >= LEAST_PLIES && plies <= GREATEST_PLIES))
    throw new InputError(
      context.name,
      shown(value),
      `give ${LEAST_PLIES} to ${GREATEST_PLIES} plies`,
      `such as 2 x ${ply}`,
    );
  const asked = askedPly(ply, context);
  if (asked === undefined)
    throw new InputError(context.name, shown(value), "give one number of plies", `such as 2 x 2 mm`);
  if (asked.row?.material === "card")
    throw new InputError(context.name, shown(value), "card is not laminated", "name a thicker card, or a board");
  const caliper = plies * (asked.row?.caliper ?? asked.caliper!);
  if (caliper > GREATEST_BOARD_MM + NOISE_MM)
    throw new InputError(
      context.name,
      shown(value),
      `give plies of at most ${GREATEST_BOARD_MM} mm together`,
      "consider double walls or a support of another kind",
    );
  return { ...asked, plies };
}

/** The board that was asked for: the row named, or of that caliper, else one that is not in stock. */
export function boardAsked(asked: AskedBoard, material: BoardMaterial, stock: readonly StockRow[]): Board {
  if (asked.row !== undefined) return boardOf(asked.row, asked.plies);
  const ply = boardOfCaliper(asked.caliper, material, stock);
  return asked.plies === 1 ? ply : { ...ply, caliper: asked.plies * ply.caliper, plies: asked.plies };
}

/**
 * The first row of the stock table of that caliper and material, else a board that is not in stock. A board of permanence
 * `none` is taken only where no other has that caliper.
 */
export function boardOfCaliper(caliper: Mm, material: BoardMaterial, stock: readonly StockRow[]): Board {
  let none: StockRow | undefined;
  for (const row of stock) {
    if (row.material !== material || Math.abs(row.caliper - caliper) >= NOISE_MM) continue;
    if (row.permanence !== "none") return boardOf(row);
    none ??= row;
  }
  if (none !== undefined) return boardOf(none);
  return unlistedBoard(caliper, material);
}

/** A board that the stock table does not list. */
export function unlistedBoard(caliper: Mm, material: BoardMaterial): Board {
  const shownMm = Number(caliper.toFixed(SHOWN_DECIMALS));
  return { stock: `${shownMm} mm ${material}${NOT_IN_STOCK}`, caliper, plies: 1, listed: undefined };
}

const NOISE_MM: Mm = 1e-6;
const SHOWN_DECIMALS = 4;
const NOT_IN_STOCK = ", not in stock";
const LAMINATED = /^(\d+)\s*[x×]\s*(\S.*)$/i;
/** What `boardOfCaliper` calls a board that is not in stock, so that a cell with that name reads back. */
const UNLISTED = /^(.+?) (?:board|card), not in stock$/i;

/** One ply; undefined where the text names several and is no name of the stock table. */
function askedPly(value: unknown, { name, shopUnit, stock }: BoardContext) {
  if (typeof value === "string") {
    const wanted = plainName(value);
    const row = stock.find((each) => plainName(each.stock) === wanted);
    if (row !== undefined) {
      const isBoard = row.material === "board" || row.material === "card";
      refuseBoardCaliper(isBoard ? row.caliper : 0, name, value, "card");
      return { row };
    }
    if (LAMINATED.test(value.trim())) return undefined;
  }
  const caliper = readCaliper(value, { name, shopUnit, stock });
  refuseBoardCaliper(caliper, name, typeof value === "number" ? `${value} ${shopUnit}` : value, "card");
  return { caliper };
}

function readCaliper(value: unknown, { name, shopUnit, stock }: BoardContext): Mm {
  const bare = typeof value === "string" ? (UNLISTED.exec(value.trim())?.[1] ?? value) : value;
  try {
    return readLength(bare, { argument: name, unit: shopUnit, points: true });
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    const boards = stock.filter(({ material }) => material === "board" || material === "card");
    const near =
      typeof value === "string"
        ? didYouMean(
            value,
            boards.map((row) => row.stock),
          )
        : "";
    throw new InputError(name, shown(value), ACCEPTED, near || error.cure);
  }
}

const ACCEPTED = "give a stock name, a caliper such as 2 mm or 80 pt, or 2 x either of them";
