import { InputError } from "../measure/errors";
import type { CuttingOptions, Piece, Stock } from "./types";

/** @throws InputError naming what cannot be used: a size that is not above zero, a negative price, count or allowance */
export function checkInput(pieces: readonly Piece[], stock: Stock, options: CuttingOptions): void {
  for (const piece of pieces) {
    const { length, width, count = 1 } = piece;
    // A hundred thousand names that no one reads take longer than the check.
    if (isSize(length) && isSize(width) && isCount(count)) continue;
    const name = `${piece.item} ${piece.part}`.trim() || piece.id;
    requireSize(`length of ${name}`, length);
    requireSize(`width of ${name}`, width);
    requireCount(`count of ${name}`, count);
  }
  if (stock.kind === "roll") {
    requireSize(`width of ${stock.roll.name}`, stock.roll.width);
    requireAmount(`price of ${stock.roll.name}`, stock.roll.pricePerM, "a price of 0 or more");
  } else if (stock.sheets.length === 0)
    throw new InputError("sheets", "none", "at least one size of sheet", "add a sheet size to the stock");
  else
    for (const sheet of stock.sheets) {
      requireSize(`length of ${sheet.name}`, sheet.length);
      requireSize(`width of ${sheet.name}`, sheet.width);
      requireAmount(`price of ${sheet.name}`, sheet.price, "a price of 0 or more");
      requireCount(`sheets in hand of ${sheet.name}`, sheet.onHand ?? 0);
      if (sheet.pack !== undefined && !(Number.isInteger(sheet.pack) && sheet.pack > 0))
        throw new InputError(`pack of ${sheet.name}`, String(sheet.pack), "a whole number above 0");
    }
  requireAmount("edge trim", options.edgeTrim ?? 0, "a length of 0 mm or more");
  requireAmount("piece gap", options.pieceGap ?? 0, "a length of 0 mm or more");
}

/** Longest side that is accepted, mm: one kilometre of roll. */
const LONGEST = 1e6;

function isSize(value: number): boolean {
  return value > 0 && value <= LONGEST;
}

function isCount(value: number): boolean {
  return Number.isInteger(value) && value >= 0;
}

function requireSize(argument: string, value: number): void {
  if (!isSize(value)) throw new InputError(argument, String(value), `a length above 0 mm and up to ${LONGEST} mm`);
}

function requireAmount(argument: string, value: number, expected: string): void {
  if (!(value >= 0 && Number.isFinite(value))) throw new InputError(argument, String(value), expected);
}

function requireCount(argument: string, value: number): void {
  if (!isCount(value)) throw new InputError(argument, String(value), "a whole number of 0 or more");
}
