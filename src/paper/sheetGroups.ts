import { offCuts, type OffCut } from "../cutting/offCuts";
import { sheetLabels } from "../cutting/sheetLabels";
import type { SheetPlan } from "../cutting/types";
import type { StockPlan } from "../estimate/stockPlans";
import type { Mm } from "../measure/units";

/** Sheets that are cut alike and hold the same pieces, drawn once. */
export interface SheetGroup {
  /** What each is called within the stock: `3`, or `3a` for an off-cut of it. */
  readonly numbers: readonly string[];
  readonly sheets: readonly [SheetPlan, ...SheetPlan[]];
  /** Off-cuts of these sheets that later batches are cut from. */
  readonly cutLater: readonly CutLater[];
  /** Of a roll, where this length of it begins; undefined for a sheet. */
  readonly from: number | undefined;
  /** How much of the roll lies before `whole`, where it is cut into lengths first. */
  readonly before: number;
  /** The sheet, or the roll that this is a stretch of. */
  readonly whole: SheetPlan;
}

/** An off-cut that a later batch is cut from. */
export interface CutLater {
  readonly label: string;
  readonly length: Mm;
  readonly width: Mm;
}

/** A length of roll is drawn in stretches about as long as the roll is wide. */
const LONGEST_STRETCH = 1.4;
/** A roll of no more widths than this is one drawing. */
const LONGEST_WHOLE = 2;
const NOISE_MM = 1e-6;

/** The drawings that a stock's plan needs: one for sheets alike in cuts and pieces; of a roll one for each stretch. */
export function sheetGroups({ form, plan }: StockPlan): readonly SheetGroup[] {
  if (plan === undefined) return [];
  if (form === "roll") {
    const before = plan.sheets.map((_, at) => plan.sheets.slice(0, at).reduce((sum, { length }) => sum + length, 0));
    const whole = (roll: SheetPlan) => [{ from: 0, sheets: [roll] as const, whole: roll }];
    const [only] = plan.sheets;
    const isLong = plan.sheets.length === 1 && only!.length > only!.width * LONGEST_WHOLE;
    return plan.sheets
      .flatMap((roll, at) => (isLong ? stretches(roll) : whole(roll)).map((each) => ({ ...each, before: before[at]! })))
      .map((each, index) => ({ ...each, numbers: [String(index + 1)], cutLater: [] }));
  }
  const labels = sheetLabels(plan);
  const groups = new Map<string, { numbers: string[]; cutLater: CutLater[]; sheets: [SheetPlan, ...SheetPlan[]] }>();
  plan.sheets.forEach((sheet, index) => {
    const key = JSON.stringify([sheet.layout, ...sheet.placements.map(({ piece: { item, part } }) => [item, part])]);
    const group = groups.get(key);
    const label = labels[index]!;
    const cutLater = plan.sheets.flatMap(({ offCut, length, width }, at) =>
      offCut?.sheet === index ? [{ label: labels[at]!, length, width }] : [],
    );
    if (group === undefined) groups.set(key, { numbers: [label], cutLater, sheets: [sheet] });
    else {
      group.numbers.push(label);
      group.cutLater.push(...cutLater);
      group.sheets.push(sheet);
    }
  });
  return [...groups.values()].map((group) => ({ ...group, from: undefined, before: 0, whole: group.sheets[0] }));
}

/** What each of a group's sheets, or its stretch of the roll, leaves that is worth keeping. */
export function groupOffCuts(
  { whole, from = 0, sheets: [{ length }] }: SheetGroup,
  { edgeTrim, pieceGap }: Parameters<typeof offCuts>[1],
): readonly OffCut[] {
  return offCuts(whole, { edgeTrim: whole.offCut === undefined ? edgeTrim : 0, pieceGap })
    .filter(({ x }) => x > from - NOISE_MM && x < from + length - NOISE_MM)
    .map((offCut) => ({ ...offCut, x: offCut.x - from }));
}

/** A roll parted where a cut goes right across it. */
function stretches(roll: SheetPlan): readonly Omit<SheetGroup, "numbers" | "before" | "cutLater">[] {
  const right = roll.cuts.filter(
    ({ way, from, to }) => way === "across" && from < NOISE_MM + leastY(roll) && to > mostY(roll) - NOISE_MM,
  );
  const ends = [...new Set([...right.map(({ at }) => at), roll.length])].sort((a, b) => a - b);
  const parted: number[] = [0];
  ends.forEach((end, index) => {
    const next = ends[index + 1];
    if (next === undefined || next - parted.at(-1)! > roll.width * LONGEST_STRETCH) parted.push(end);
  });
  return parted.slice(1).map((end, index) => {
    const start = parted[index]!;
    const within = (from: number, to: number) => from > start - NOISE_MM && to < end + NOISE_MM;
    const placements = roll.placements
      .filter(({ x, length }) => within(x, x + length))
      .map((placement) => ({ ...placement, x: placement.x - start }));
    const cuts = roll.cuts
      .filter(({ way, at, from, to }) =>
        way === "across" ? within(at, at) && at > start + NOISE_MM : within(from, to),
      )
      .map((cut) =>
        cut.way === "across" ? { ...cut, at: cut.at - start } : { ...cut, from: cut.from - start, to: cut.to - start },
      );
    return { from: start, sheets: [{ ...roll, length: end - start, placements, cuts }] as const, whole: roll };
  });
}

function leastY({ cuts }: SheetPlan): number {
  return cuts.reduce((least, { way, from }) => (way === "across" ? Math.min(least, from) : least), Infinity);
}

function mostY({ cuts }: SheetPlan): number {
  return cuts.reduce((most, { way, to }) => (way === "across" ? Math.max(most, to) : most), -Infinity);
}
