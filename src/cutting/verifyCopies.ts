import type { Piece, Plan } from "./types";

/** For each piece by its number: a hundred thousand objects in place of these would take longer than what is asked of them. */
interface Tallies {
  readonly numbers: Map<Piece, number>;
  readonly asked: number[];
  /** Copies that are placed, come out of a blank, or are listed as uncuttable. */
  readonly there: number[];
  /** The first copy that is placed, 0 where none is; and all where there are several. */
  readonly first: number[];
  readonly copies: Map<number, Set<number>>;
}

/** Whether every piece that was asked for is there as often as asked, and no other. */
export function checkCopies(plan: Plan, pieces: readonly Piece[]): readonly string[] {
  const faults: string[] = [];
  const tallies: Tallies = { numbers: new Map(), asked: [], there: [], first: [], copies: new Map() };
  const { asked, there } = tallies;
  for (const piece of pieces) asked[numberOf(piece, tallies)]! += piece.count ?? 1;
  const known = asked.length;
  for (const { placements } of plan.sheets)
    for (const { piece, copy } of placements) {
      if (!Number.isInteger(copy) || copy < 1 || copy > (piece.count ?? 1))
        faults.push(`${named(piece)}: no copy ${copy} was asked for`);
      if (isPlacedAgain(numberOf(piece, tallies), copy, tallies))
        faults.push(`${named(piece)}: copy ${copy} is there twice`);
      for (const held of piece.holds ?? NOTHING_HELD) there[numberOf(held.piece, tallies)]! += held.count;
    }
  for (const { piece, count } of plan.uncuttable) there[numberOf(piece, tallies)]! += count;
  for (const [piece, number] of tallies.numbers) {
    // What was not asked for comes after what was: of it only blanks may be there, and only placed.
    if (number >= known) {
      if (piece.holds === undefined || there[number]! > placedOf(number, tallies))
        faults.push(`${named(piece)} was not asked for`);
    } else if (there[number] !== asked[number])
      faults.push(`${named(piece)}: ${there[number]} of ${asked[number]} are placed or listed as uncuttable`);
  }
  return faults;
}

const NOTHING_HELD: NonNullable<Piece["holds"]> = [];

function numberOf(piece: Piece, { numbers, asked, there, first }: Tallies): number {
  const known = numbers.get(piece);
  if (known !== undefined) return known;
  const number = asked.length;
  numbers.set(piece, number);
  asked.push(0);
  there.push(0);
  first.push(0);
  return number;
}

function placedOf(number: number, { first, copies }: Tallies): number {
  return copies.get(number)?.size ?? (first[number] === 0 ? 0 : 1);
}

/** Notes a copy; true when it is there already. */
function isPlacedAgain(number: number, copy: number, { there, first, copies }: Tallies): boolean {
  if (first[number] === 0) first[number] = copy;
  else {
    let own = copies.get(number);
    if (own === undefined) copies.set(number, (own = new Set([first[number]!])));
    if (own.has(copy)) return true;
    own.add(copy);
  }
  there[number]!++;
  return false;
}

/** How a piece is called in a fault. */
export function named(piece: Piece): string {
  return `${piece.part} of ${piece.item} (${piece.id})`;
}
