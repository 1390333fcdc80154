import type { Draft } from "./construct";
import type { Job } from "./job";
import { lowerBound } from "./lowerBound";
import type { Piece, Sheet, SheetPlan, StockCount, Uncuttable } from "./types";

const MM2_PER_M2 = 1e6;

/** The pieces asked for among those left out, where blanks without a sheet would have held them: each once with its number. */
export function piecesHeld(leftOut: readonly Uncuttable[]): readonly Uncuttable[] {
  const all = new Map<Piece, Uncuttable>();
  for (const { piece, count, reason } of leftOut)
    for (const held of piece.holds ?? [{ piece, count: 1 }]) {
      const more = (all.get(held.piece)?.count ?? 0) + held.count * count;
      all.set(held.piece, { piece: held.piece, count: more, reason });
    }
  return [...all.values()];
}

/** Whether pieces were asked for and none of them can be cut: an empty plan is then no success. */
export function nothingFits(job: Job, tooLarge: readonly Uncuttable[]): boolean {
  return job.size === 0 && tooLarge.length > 0;
}

/** The weight and the number of sheets that no plan goes below. */
export function quickBounds(job: Job): { bound: number; sheetBound: number } {
  const sheetBound = lowerBound(
    job,
    job.kinds.map(() => 1),
  );
  const weights = job.kinds.map((kind) => kind.weight);
  return { bound: weights.length === 1 ? sheetBound * weights[0]! : lowerBound(job, weights), sheetBound };
}

export function countSheets(sheets: readonly Sheet[], draft: Draft): readonly StockCount[] {
  return sheets.map(({ name, price, pack }, index) => {
    const count = draft.sheets.filter(({ kind }) => kind === index).length;
    return { stock: name, sheets: count, packs: Math.ceil(count / (pack ?? 1)), cost: count * price };
  });
}

export function leftOver(job: Job, out: readonly number[]): readonly Uncuttable[] {
  const counts = new Map<Piece, number>();
  for (const index of out) counts.set(job.source[index]!, (counts.get(job.source[index]!) ?? 0) + 1);
  return [...counts].map(([piece, count]) => ({ piece, count, reason: "no sheet left" }));
}

export function areasOf(sheets: readonly SheetPlan[]): { pieceAreaM2: number; sheetAreaM2: number } {
  const area = (side: { length: number; width: number }) => (side.length * side.width) / MM2_PER_M2;
  return {
    pieceAreaM2: sheets.reduce(
      (sum, { placements }) => sum + placements.reduce((own, place) => own + area(place), 0),
      0,
    ),
    // An off-cut is in the area of the sheet that it comes from.
    sheetAreaM2: sheets.reduce((sum, sheet) => sum + (sheet.offCut === undefined ? area(sheet) : 0), 0),
  };
}
