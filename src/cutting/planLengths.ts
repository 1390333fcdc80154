import type { CutSheet } from "./construct";
import { draftByItems } from "./draftByItems";
import { fewerSetUps, setUpsOf } from "./fewerSetUps";
import { firstDraft } from "./firstDraft";
import { UNITS_PER_MM, unitsUp } from "./grid";
import { type Job, prepareRoll, prepareSheets } from "./job";
import { layOutPlan } from "./layOutPlan";
import { orderSheets } from "./orderSheets";
import { type Panel, piecesIn } from "./panels";
import { areasOf, leftOver, nothingFits, piecesHeld } from "./planParts";
import { createRandom } from "./random";
import { rollBound } from "./rollBound";
import { endWaste, neededLength, shorten } from "./shorten";
import type { Steps } from "./steps";
import type { Mm } from "../measure/units";
import type { CuttingOptions, Piece, Plan, Roll, Sheet } from "./types";
import { isTooShort, type Watch } from "./watch";

const MM_PER_M = 1000;

/** A piece longer than the bench length makes its own length longer by whole steps of this, mm. */
const LENGTH_STEP = 250;

/** How much of a set-up an item on one more length, and a millimetre of roll, count. */
const PER_ITEM = 4;
const PER_MM = 0.08;

/** Up to so many pieces a draft of all items together may be better. */
const FEW_PIECES = 300;

/**
 * How to cut pieces off a roll in lengths that a bench holds, each for the items of a few boxes: nobody cuts a long roll
 * along its whole length.
 */
export function* planLengths(pieces: readonly Piece[], roll: Roll, options: CuttingOptions, watch: Watch): Steps<Plan> {
  const { edgeTrim = 0, pieceGap = 0, seed = 1 } = options;
  const least = leastLength(pieces, roll, options, watch.mostSteps);
  const { job, tooLarge } = prepareSheets(pieces, lengthsFor(pieces, roll, options), options);
  yield;
  const byItems = yield* draftByItems(job, seed, watch.mostSteps);
  const gap = unitsUp(pieceGap);
  const mm = (units: number) => (units === 0 ? 0 : (units - gap) / UNITS_PER_MM + 2 * edgeTrim);
  const needed = ({ kind, panel }: CutSheet) => neededLength(panel, endWaste(job, kind));
  const lengthOf = (sheets: readonly CutSheet[]) => sheets.reduce((sum, sheet) => sum + mm(needed(sheet)), 0);
  const count = (sheet: CutSheet) => setUpsOf(job, sheet.panel) + PER_ITEM * itemsOn(job, sheet.panel).size;
  const effortOf = (sheets: readonly CutSheet[]) =>
    sheets.reduce((sum, sheet) => sum + count(sheet), PER_MM * lengthOf(sheets));
  const other = byItems !== undefined && job.size > FEW_PIECES ? undefined : firstDraft(job, () => 0);
  const isByItems = byItems !== undefined && (other === undefined || effortOf(byItems) <= effortOf(other.sheets));
  const first = isByItems ? byItems : other!.sheets;
  const taken = lengthOf(first);
  yield;
  options.onProgress?.({
    sheets: first.length,
    cost: taken,
    bound: least,
    gap: least === 0 ? 0 : taken / least - 1,
    iterations: watch.steps(),
    elapsedMs: watch.elapsedMs(),
  });
  const open = { perOpen: 0, perOver: 0, limit: Number.POSITIVE_INFINITY };
  const effort = { perItem: PER_ITEM, perLength: PER_MM / UNITS_PER_MM, open };
  const few = isTooShort(job, watch)
    ? first
    : fewerSetUps(job, first, { most: Number.POSITIVE_INFINITY, spare: 0, effort, seed }, watch);
  yield;
  const cutDown = few.map((sheet) =>
    shorten(sheet.panel, needed(sheet), createRandom(0), [], endWaste(job, sheet.kind)),
  );
  const panels = orderSheets(cutDown, (panel) => itemsOn(job, panel));
  yield;
  const faces = panels.map(({ length }) => ({ name: roll.name, length: mm(length), width: roll.width }));
  const laidOut = layOutPlan(
    job,
    panels.map((panel, kind) => ({ kind, panel })),
    faces,
    options,
  );
  const rollLength = faces.reduce((sum, { length }) => sum + length, 0);
  const cost = (rollLength / MM_PER_M) * roll.pricePerM;
  return {
    ...laidOut,
    counts: [{ stock: roll.name, sheets: panels.length, packs: panels.length, cost }],
    cost,
    costBound: (least / MM_PER_M) * roll.pricePerM,
    sheetBound: Math.min(1, panels.length),
    rollLength,
    rollBound: least,
    provedLeast: rollLength <= least && !nothingFits(job, tooLarge),
    uncuttable: piecesHeld([...tooLarge, ...(isByItems ? [] : leftOver(job, other!.out))]),
    ...areasOf(laidOut.sheets),
    iterations: watch.steps(),
  };
}

function itemsOn(job: Job, panel: Panel): ReadonlySet<number> {
  return new Set(piecesIn(panel).map((piece) => job.item[piece]!));
}

/** No plan cuts the pieces from a shorter length of the roll, mm. */
export function leastLength(pieces: readonly Piece[], roll: Roll, options: CuttingOptions, steps: number): Mm {
  const { edgeTrim = 0 } = options;
  // Between two lengths lies no gap: where their trimmed ends are shorter, gaps are in no bound.
  const pieceGap = options.pieceGap !== undefined && options.pieceGap <= 2 * edgeTrim ? options.pieceGap : 0;
  const whole = prepareRoll(pieces, roll, { ...options, pieceGap, bench: undefined }).job;
  const bound = rollBound(whole, whole.kinds[0]!.width, steps);
  return bound === 0 ? 0 : (bound - unitsUp(pieceGap)) / UNITS_PER_MM + 2 * edgeTrim;
}

/** The bench length, and longer ones for pieces that need them. */
export function lengthsFor(
  pieces: readonly Piece[],
  roll: Roll,
  { bench, edgeTrim = 0 }: CuttingOptions,
): readonly Sheet[] {
  const usual = bench!.benchLength;
  const width = roll.width - 2 * edgeTrim;
  const longer = new Set<number>();
  for (const piece of pieces) {
    const sides = [
      ...(piece.width <= width ? [piece.length] : []),
      ...(piece.turn && piece.length <= width ? [piece.width] : []),
    ];
    const needed = Math.min(...sides) + 2 * edgeTrim;
    if (Number.isFinite(needed) && needed > usual)
      longer.add(usual + Math.ceil((needed - usual) / LENGTH_STEP) * LENGTH_STEP);
  }
  return [usual, ...[...longer].sort((one, other) => one - other)].map((length) => ({
    name: roll.name,
    length,
    width: roll.width,
    price: length / MM_PER_M,
  }));
}
