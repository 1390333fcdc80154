import type { Mm } from "../measure/units";
import { prepareSheets } from "./job";
import { cutFigures } from "./layOutPlan";
import { offCuts } from "./offCuts";
import { leastLength, planLengths } from "./planLengths";
import { newSheets } from "./sheetLabels";
import { areasOf, quickBounds } from "./planParts";
import { planFromSheets, proofOf, sharperBounds } from "./planSheets";
import type { Steps } from "./steps";
import type { CuttingOptions, OffCutPlace, Piece, Plan, Progress, Sheet, SheetPlan, Stock, Uncuttable } from "./types";
import { stretchOf, type Watch } from "./watch";

/** What earlier batches left, as stock for the next. */
interface KeptOffCut extends OffCutPlace {
  readonly sheet: number;
  readonly length: Mm;
  readonly width: Mm;
  /** The stock that it is of. */
  readonly stock: string;
}

/** The largest off-cuts that a batch is looked through for; the others wait for a later batch. */
const MOST_OFFERED = 40;

/**
 * How to cut a batch of items after another: each is planned by itself, and what it leaves that is worth keeping is stock
 * for those after it. The bounds are of all batches together.
 */
export function* planBatches(
  pieces: readonly Piece[],
  stock: Stock,
  options: CuttingOptions,
  watch: Watch,
): Steps<Plan> {
  const batches = batchesOf(pieces);
  const plans: Plan[] = [];
  let sheets: readonly SheetPlan[] = [];
  let kept: readonly KeptOffCut[] = [];
  let done = 0;
  for (const batch of batches) {
    done += batch.length;
    const before = plans.reduce((sum, { cost }) => sum + cost, 0);
    const onProgress = (own: Progress) =>
      options.onProgress?.({ ...own, sheets: newSheets({ sheets }).length + own.sheets, cost: before + own.cost });
    const turn = { ...options, onProgress };
    const stretch = stretchOf(watch, done / pieces.length);
    const offered = kept.filter((each) => holdsAny(each, batch)).slice(0, MOST_OFFERED);
    const plan =
      stock.kind === "roll"
        ? yield* planLengths(batch, stock.roll, turn, stretch)
        : yield* planFromSheets(batch, [...leftInHand(stock.sheets, plans), ...offered.map(asSheet)], turn, stretch);
    const own = plan.sheets.map((sheet) => placed(sheet, offered, sheets));
    const from = sheets.length;
    sheets = [...sheets, ...own];
    plans.push(plan);
    if (stock.kind === "roll" || options.bench?.keepOffCuts !== true) continue;
    const used = new Set(own.map(({ offCut }) => offCut && keyOf(offCut)));
    const left = own.flatMap((sheet, index) => offCutsOf(sheet, from + index, options));
    kept = [...kept.filter((each) => !used.has(keyOf(each))), ...left].sort(
      (one, other) => other.length * other.width - one.length * one.width,
    );
  }
  return together(pieces, stock, options, plans, sheets, watch);
}

function batchesOf(pieces: readonly Piece[]): readonly (readonly Piece[])[] {
  const batches = new Map<number, Piece[]>();
  for (const piece of pieces) {
    const own = batches.get(piece.batch ?? 0);
    if (own === undefined) batches.set(piece.batch ?? 0, [piece]);
    else own.push(piece);
  }
  return [...batches].sort(([one], [other]) => one - other).map(([, own]) => own);
}

/** The sheets in stock, without those in hand that earlier batches took. */
function leftInHand(sheets: readonly Sheet[], plans: readonly Plan[]): readonly Sheet[] {
  return sheets.map((sheet, index) =>
    sheet.onHand === undefined
      ? sheet
      : { ...sheet, onHand: sheet.onHand - plans.reduce((sum, { counts }) => sum + counts[index]!.sheets, 0) },
  );
}

function keyOf({ sheet, x, y }: OffCutPlace): string {
  return `${sheet} ${x} ${y}`;
}

/** An off-cut is a sheet of which there is one; its edges are clean. */
function asSheet(offCut: KeptOffCut): Sheet {
  const { length, width } = offCut;
  return { name: keyOf(offCut), length, width, price: 0, onHand: 1, edgeTrim: 0 };
}

/** A sheet in its place among all: an off-cut with where it comes from. */
function placed(sheet: SheetPlan, offered: readonly KeptOffCut[], before: readonly SheetPlan[]): SheetPlan {
  const from = offered.find((each) => keyOf(each) === sheet.stock);
  const layouts = before.reduce((most, { layout }) => Math.max(most, layout), 0);
  const layout = layouts + sheet.layout;
  if (from === undefined) return { ...sheet, layout };
  return { ...sheet, layout, stock: from.stock, offCut: { sheet: from.sheet, x: from.x, y: from.y } };
}

function offCutsOf(
  sheet: SheetPlan,
  at: number,
  { edgeTrim = 0, pieceGap = 0 }: CuttingOptions,
): readonly KeptOffCut[] {
  return offCuts(sheet, { edgeTrim: sheet.offCut === undefined ? edgeTrim : 0, pieceGap }).map((offCut) => ({
    ...offCut,
    sheet: at,
    stock: sheet.stock,
  }));
}

function holdsAny({ length, width }: KeptOffCut, pieces: readonly Piece[]): boolean {
  return pieces.some(
    (piece) =>
      (piece.length <= length && piece.width <= width) ||
      (piece.turn && piece.width <= length && piece.length <= width),
  );
}

/** The plans of all batches as one, with bounds of their own. */
function together(
  pieces: readonly Piece[],
  stock: Stock,
  options: CuttingOptions,
  plans: readonly Plan[],
  sheets: readonly SheetPlan[],
  watch: Watch,
): Plan {
  const counts = plans[0]!.counts.map(({ stock: name }, index) => {
    const own = plans.map((plan) => plan.counts[index]!);
    const count = own.reduce((sum, each) => sum + each.sheets, 0);
    const pack = stock.kind === "sheets" ? (stock.sheets[index]!.pack ?? 1) : 1;
    return {
      stock: name,
      sheets: count,
      packs: Math.ceil(count / pack),
      cost: own.reduce((sum, each) => sum + each.cost, 0),
    };
  });
  const bought = stock.kind === "sheets" ? counts.slice(0, stock.sheets.length) : counts;
  const plan = {
    sheets,
    counts: bought,
    cost: plans.reduce((sum, each) => sum + each.cost, 0),
    rollLength: plans.reduce((sum, each) => sum + each.rollLength, 0),
    uncuttable: plans.flatMap((each) => withReasons(each.uncuttable, pieces, stock, options)),
    ...cutFigures(sheets),
    ...areasOf(sheets),
    iterations: watch.steps(),
  };
  return { ...plan, ...proof(plan, pieces, stock, options, watch.mostSteps) };
}

/** What is left out with its reason among all sheets that there were: earlier batches may have taken the last. */
function withReasons(
  leftOut: readonly Uncuttable[],
  pieces: readonly Piece[],
  stock: Stock,
  options: CuttingOptions,
): readonly Uncuttable[] {
  if (leftOut.length === 0 || stock.kind === "roll") return leftOut;
  const { tooLarge } = prepareSheets(pieces, stock.sheets, options);
  const reasons = new Map(tooLarge.map(({ piece, reason }) => [piece, reason]));
  return leftOut.map((own) => ({ ...own, reason: reasons.get(own.piece) ?? "no sheet left" }));
}

/** What is proved of all batches together. */
function proof(
  {
    cost,
    counts,
    uncuttable,
    rollLength,
    sheets,
  }: Pick<Plan, "cost" | "counts" | "uncuttable" | "rollLength" | "sheets">,
  pieces: readonly Piece[],
  stock: Stock,
  options: CuttingOptions,
  steps: number,
): Pick<Plan, "costBound" | "sheetBound" | "provedLeast" | "rollBound"> {
  const empty = sheets.length === 0 && uncuttable.length > 0;
  if (stock.kind === "roll") {
    const rollBound = leastLength(pieces, stock.roll, options, steps);
    return {
      rollBound,
      costBound: (rollBound / MM_PER_M) * stock.roll.pricePerM,
      sheetBound: Math.min(1, sheets.length),
      provedLeast: rollLength <= rollBound && !empty,
    };
  }
  const asked = prepareSheets(pieces, stock.sheets, { ...options, bench: undefined }).job;
  const weight = counts.reduce((sum, count, index) => sum + count.sheets * asked.kinds[index]!.weight, 0);
  const complete = uncuttable.every(({ reason }) => reason !== "no sheet left");
  const bounds = sharperBounds(asked, newSheets({ sheets }).length, quickBounds(asked), steps);
  return { rollBound: 0, ...proofOf(asked, stock.sheets, bounds, { weight, cost, complete, empty }) };
}

const MM_PER_M = 1000;
