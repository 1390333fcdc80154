import type { Piece, Plan } from "./types";

/** What is asked for of a piece, and what is there of it. */
interface Tally {
  asked: number;
  /** Copies that are placed, come out of a blank, or are listed as uncuttable. */
  there: number;
  /** The first copy that is placed, and all where there are several. */
  first: number | undefined;
  copies: Set<number> | undefined;
}

/** Whether every piece that was asked for is there as often as asked, and no other. */
export function checkCopies(plan: Plan, pieces: readonly Piece[]): readonly string[] {
  const faults: string[] = [];
  const tallies = new Map<Piece, Tally>();
  const tallyOf = (piece: Piece): Tally => {
    let tally = tallies.get(piece);
    if (tally === undefined) tallies.set(piece, (tally = { asked: 0, there: 0, first: undefined, copies: undefined }));
    return tally;
  };
  for (const piece of pieces) tallyOf(piece).asked += piece.count ?? 1;
  const asked = tallies.size;
  for (const { placements } of plan.sheets)
    for (const { piece, copy } of placements) {
      if (!Number.isInteger(copy) || copy < 1 || copy > (piece.count ?? 1))
        faults.push(`${named(piece)}: no copy ${copy} was asked for`);
      if (isPlacedAgain(tallyOf(piece), copy)) faults.push(`${named(piece)}: copy ${copy} is there twice`);
      for (const held of piece.holds ?? NOTHING_HELD) tallyOf(held.piece).there += held.count;
    }
  for (const { piece, count } of plan.uncuttable) tallyOf(piece).there += count;
  let index = 0;
  for (const [piece, tally] of tallies) {
    // What was not asked for comes after what was: of it only blanks may be there, and only placed.
    if (index++ >= asked) {
      if (piece.holds === undefined || tally.there > placedOf(tally)) faults.push(`${named(piece)} was not asked for`);
    } else if (tally.there !== tally.asked)
      faults.push(`${named(piece)}: ${tally.there} of ${tally.asked} are placed or listed as uncuttable`);
  }
  return faults;
}

const NOTHING_HELD: NonNullable<Piece["holds"]> = [];

function placedOf({ first, copies }: Tally): number {
  return copies?.size ?? (first === undefined ? 0 : 1);
}

/** Notes a copy; true when it is there already. */
function isPlacedAgain(tally: Tally, copy: number): boolean {
  if (tally.first === undefined) tally.first = copy;
  else {
    tally.copies ??= new Set([tally.first]);
    if (tally.copies.has(copy)) return true;
    tally.copies.add(copy);
  }
  tally.there++;
  return false;
}

/** How a piece is called in a fault. */
export function named(piece: Piece): string {
  return `${piece.part} of ${piece.item} (${piece.id})`;
}
