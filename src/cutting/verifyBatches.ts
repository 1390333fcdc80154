import type { CuttingOptions, Plan, SheetPlan } from "./types";
import { type Box, gridAbove, isLeftByCuts, usableBox } from "./verifyCuts";

const TOLERANCE = 1e-6;

/** The sides that an off-cut has at least, mm: less is not kept. */
const SHORT_SIDE = 40;
const LONG_SIDE = 150;

/**
 * What is wrong with the batches of a plan: an item in two batches, a batch of too many items, batches out of turn, and
 * off-cuts that no earlier batch left as they are, or that are used twice.
 */
export function verifyBatches(plan: Plan, options: CuttingOptions): readonly string[] {
  return [...checkItems(plan, options), ...checkTurns(plan), ...checkOffCuts(plan, options)];
}

function batchOf({ placements }: SheetPlan): number {
  return placements[0]?.piece.batch ?? 0;
}

function checkItems({ sheets }: Plan, { bench }: CuttingOptions): readonly string[] {
  const batches = new Map<string, Set<number>>();
  const items = new Map<number, Set<string>>();
  for (const { placements } of sheets)
    for (const { piece } of placements) {
      const { item, batch } = piece;
      if (batch === undefined) continue;
      batches.set(item, (batches.get(item) ?? new Set()).add(batch));
      items.set(batch, (items.get(batch) ?? new Set()).add(item));
    }
  const most = bench?.batchSize ?? Number.POSITIVE_INFINITY;
  return [
    ...[...batches].filter(([, own]) => own.size > 1).map(([item]) => `${item} is in more than one batch`),
    ...[...items]
      .filter(([, own]) => own.size > most)
      .map(([batch, own]) => `batch ${batch} has ${own.size} items where ${most} are allowed`),
  ];
}

function checkTurns({ sheets }: Plan): readonly string[] {
  return sheets.flatMap((sheet, index) => {
    const batch = batchOf(sheet);
    const mixed = sheet.placements.some(({ piece }) => (piece.batch ?? 0) !== batch);
    const late = index > 0 && batch < batchOf(sheets[index - 1]!);
    return [
      ...(mixed ? [`sheet ${index + 1} has pieces of more than one batch`] : []),
      ...(late ? [`sheet ${index + 1} is of an earlier batch than the sheet before it`] : []),
    ];
  });
}

function checkOffCuts({ sheets }: Plan, options: CuttingOptions): readonly string[] {
  const used = new Set<string>();
  return sheets.flatMap((sheet, index) => {
    if (sheet.offCut === undefined) return [];
    const { sheet: source, x, y } = sheet.offCut;
    const from = sheets[source];
    const key = `${source} ${x} ${y}`;
    const again = used.has(key);
    used.add(key);
    const fault = (what: string) => `sheet ${index + 1} is an off-cut ${what}`;
    if (from === undefined || source >= index) return [fault("of no earlier sheet")];
    const box = { x, y, length: sheet.length, width: sheet.width };
    return [
      ...(again ? [fault("that is used twice")] : []),
      ...(from.stock === sheet.stock ? [] : [fault("of another stock")]),
      ...(batchOf(from) < batchOf(sheet) ? [] : [fault("of no earlier batch")]),
      ...(isLeft(box, from, options) ? [] : [fault(`that sheet ${source + 1} does not leave`)]),
      ...(Math.min(box.length, box.width) < SHORT_SIDE - TOLERANCE ||
      Math.max(box.length, box.width) < LONG_SIDE - TOLERANCE
        ? [fault("too small to be kept")]
        : []),
    ];
  });
}

/** Whether a sheet's cuts leave a panel of that place and size with no piece in it. */
function isLeft(box: Box, sheet: SheetPlan, { edgeTrim = 0, pieceGap = 0 }: CuttingOptions): boolean {
  const left = isLeftByCuts(
    sheet,
    usableBox(sheet, edgeTrim),
    gridAbove(pieceGap),
    (panel) =>
      near(panel.x, box.x) && near(panel.y, box.y) && near(panel.length, box.length) && near(panel.width, box.width),
  );
  const taken = sheet.placements.some(
    (place) =>
      place.x < box.x + box.length - TOLERANCE &&
      box.x < place.x + place.length - TOLERANCE &&
      place.y < box.y + box.width - TOLERANCE &&
      box.y < place.y + place.width - TOLERANCE,
  );
  return left && !taken;
}

function near(one: number, other: number): boolean {
  return Math.abs(one - other) <= GRID;
}

/** The usable sheet may be a step of the grid smaller than the figures say. */
const GRID = 1e-3;
