import type { PlanFigures } from "./countPlan";
import type { CuttingOptions, Piece, Placement, Plan, SheetPlan, Stock } from "./types";
import { verifyBatches } from "./verifyBatches";
import { verifyBench } from "./verifyBench";
import { checkCopies, named } from "./verifyCopies";
import { type Box, checkCuts, gridAbove, usableBox } from "./verifyCuts";

/** Lengths that differ by less count as equal, mm: sums of binary fractions. The plan itself lies on the grid. */
const TOLERANCE = 1e-6;

/**
 * What is wrong with a plan; nothing when it can be cut as it says.
 *
 * Checked apart from the search, with no code in common: that every piece is there once or listed as uncuttable, lies on
 * a sheet of the stock within the trim, keeps its grain, overlaps none and keeps the gap, can be freed by cuts from edge
 * to edge, and that the listed cuts, done in turn, free it; that no more sheets are used than there are; and that the
 * totals and bounds agree with the sheets.
 *
 * @param counted the plan's figures by the verifier's own count, where they are known
 */
export function verifyPlan(
  plan: Plan,
  pieces: readonly Piece[],
  stock: Stock,
  options: CuttingOptions = {},
  counted?: PlanFigures,
): readonly string[] {
  return [
    ...checkCopies(plan, pieces),
    ...checkStock(plan, stock),
    ...plan.sheets.flatMap((sheet, index) => checkSheet(sheet, options).map((fault) => `sheet ${index + 1}: ${fault}`)),
    ...checkTotals(plan, stock),
    ...verifyBench(plan, options, counted),
    ...verifyBatches(plan, options),
  ];
}

function checkStock(plan: Plan, stock: Stock): readonly string[] {
  const faults: string[] = [];
  const used = new Map<string, number>();
  for (const sheet of plan.sheets) {
    if (sheet.offCut !== undefined) continue;
    used.set(sheet.stock, (used.get(sheet.stock) ?? 0) + 1);
    const known =
      stock.kind === "roll"
        ? sheet.stock === stock.roll.name && near(sheet.width, stock.roll.width)
        : stock.sheets.some(
            ({ name, length, width }) => name === sheet.stock && near(length, sheet.length) && near(width, sheet.width),
          );
    if (!known) faults.push(`no sheet ${sheet.stock} of ${sheet.length} x ${sheet.width} mm is in stock`);
  }
  if (stock.kind === "sheets")
    for (const name of used.keys()) {
      const same = stock.sheets.filter((sheet) => sheet.name === name);
      const most = same.reduce((sum, { onHand }) => sum + (onHand ?? Number.POSITIVE_INFINITY), 0);
      if (used.get(name)! > most) faults.push(`${used.get(name)} sheets ${name} are used, ${most} are in hand`);
    }
  return faults;
}

function checkSheet(sheet: SheetPlan, options: CuttingOptions): readonly string[] {
  const { placements } = sheet;
  const usable = usableBox(sheet, options.edgeTrim ?? 0);
  const gap = gridAbove(options.pieceGap ?? 0);
  const lost = placements.filter(
    ({ x, y, length, width }) =>
      !(Number.isFinite(x) && Number.isFinite(y) && Number.isFinite(length) && Number.isFinite(width)),
  );
  if (lost.length > 0) return lost.map(({ piece }) => `${named(piece)} has no place`);
  const faults: string[] = [];
  for (const place of placements) checkPlacement(place, usable, faults);
  checkApart(placements, gap, faults);
  const wrongCuts = checkCuts(sheet, usable, gap, options.bench?.leastWaste ?? 0);
  // Cuts that free every piece show that it can be done.
  if (wrongCuts.length > 0 && !separable(placements, gap))
    faults.push("the pieces cannot be freed by cuts from edge to edge");
  faults.push(...wrongCuts);
  return faults;
}

function checkPlacement(place: Placement, usable: Box, faults: string[]): void {
  const { piece, turned } = place;
  if (turned && !piece.turn) faults.push(`${named(piece)} lies across the grain`);
  if (
    !near(place.length, turned ? piece.width : piece.length) ||
    !near(place.width, turned ? piece.length : piece.width)
  )
    faults.push(`${named(piece)} has another size than asked for`);
  const inside =
    place.x >= usable.x - TOLERANCE &&
    place.y >= usable.y - TOLERANCE &&
    place.x + place.length <= usable.x + usable.length + TOLERANCE &&
    place.y + place.width <= usable.y + usable.width + TOLERANCE;
  if (!inside) faults.push(`${named(piece)} does not lie within the sheet and its trim`);
}

/** Pairs that overlap or are nearer than the gap; sweeps along the sheet. */
function checkApart(placements: readonly Placement[], gap: number, faults: string[]): void {
  const beside: Placement[] = [];
  for (const place of [...placements].sort((one, other) => one.x - other.x)) {
    let kept = 0;
    for (const other of beside) {
      if (other.x + other.length + gap <= place.x + TOLERANCE) continue;
      beside[kept++] = other;
      if (other.y + other.width + gap > place.y + TOLERANCE && place.y + place.width + gap > other.y + TOLERANCE)
        faults.push(`${named(place.piece)} and ${named(other.piece)} overlap or are nearer than the gap`);
    }
    beside.length = kept;
    beside.push(place);
  }
}

/** Whether cuts from edge to edge free every box; any cut that passes between boxes is a safe one to make first. */
function separable(boxes: readonly Box[], gap: number): boolean {
  const [one, other] = boxes;
  if (one === undefined || other === undefined) return true;
  if (boxes.length === 2)
    return (
      isBeyond(other.x, one.x + one.length, gap) ||
      isBeyond(one.x, other.x + other.length, gap) ||
      isBeyond(other.y, one.y + one.width, gap) ||
      isBeyond(one.y, other.y + other.width, gap)
    );
  const groups = split(boxes, gap, "x", "length") ?? split(boxes, gap, "y", "width");
  return groups !== undefined && groups.every((group) => separable(group, gap));
}

function isBeyond(begin: number, end: number, gap: number): boolean {
  return begin + TOLERANCE >= end + gap;
}

function split(
  boxes: readonly Box[],
  gap: number,
  from: "x" | "y",
  size: "length" | "width",
): readonly (readonly Box[])[] | undefined {
  const groups: Box[][] = [];
  let group: Box[] = [];
  let end = Number.NEGATIVE_INFINITY;
  for (const box of [...boxes].sort((one, other) => one[from] - other[from])) {
    if (isBeyond(box[from], end, gap)) groups.push((group = [box]));
    else group.push(box);
    end = Math.max(end, box[from] + box[size]);
  }
  return groups.length > 1 ? groups : undefined;
}

function checkTotals(plan: Plan, stock: Stock): readonly string[] {
  const faults: string[] = [];
  const cost =
    stock.kind === "roll"
      ? (plan.rollLength / 1000) * stock.roll.pricePerM
      : plan.counts.reduce((sum, { stock: name, sheets }, index) => {
          const sheet = stock.sheets[index];
          if (sheet?.name !== name) faults.push(`the counts name ${name} where the stock does not`);
          return sum + sheets * (sheet?.price ?? 0);
        }, 0);
  if (!near(plan.cost, cost)) faults.push(`the cost is given as ${plan.cost}, the sheets come to ${cost}`);
  const counted = plan.counts.reduce((sum, { sheets }) => sum + sheets, 0);
  const taken = plan.sheets.filter(({ offCut }) => offCut === undefined);
  if (counted !== taken.length) faults.push(`${counted} sheets are counted, ${taken.length} are drawn`);
  const drawn = plan.sheets.reduce((sum, sheet) => sum + sheet.length, 0);
  if (stock.kind === "roll" && !near(drawn, plan.rollLength)) faults.push("the length of roll is not the one drawn");
  if (plan.costBound > plan.cost + PRICE_TOLERANCE)
    faults.push(`the bound ${plan.costBound} is above the cost ${plan.cost}`);
  if (plan.sheetBound > taken.length) faults.push(`${taken.length} sheets are fewer than the bound ${plan.sheetBound}`);
  if (plan.rollBound > plan.rollLength + TOLERANCE)
    faults.push(`the roll is shorter than its bound ${plan.rollBound} mm`);
  return faults;
}

/** Prices count in thousandths in the search: a bound may be off by half of one for each sheet. */
const PRICE_TOLERANCE = 1e-3;

function near(one: number, other: number): boolean {
  return Math.abs(one - other) <= TOLERANCE;
}
