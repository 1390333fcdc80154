import { UNITS_PER_MM } from "./grid";
import type { Cut, Placement, SheetPlan } from "./types";

/** A part of a sheet, in mm. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly length: number;
  readonly width: number;
}

/** Lengths that differ by less count as equal, mm. */
const TOLERANCE = 1e-6;

/** A panel is cut to the next step of the grid above the piece, mm. */
const STEP = 1 / UNITS_PER_MM;

/** A sheet within its trim; an off-cut has clean edges. */
export function usableBox({ length, width, offCut }: SheetPlan, edgeTrim: number): Box {
  const trim = offCut === undefined ? edgeTrim : 0;
  return { x: trim, y: trim, length: gridBelow(length - 2 * trim), width: gridBelow(width - 2 * trim) };
}

/** The gap that cuts really leave: the least on the grid that is no smaller. */
export function gridAbove(gap: number): number {
  return Math.ceil(gap * UNITS_PER_MM - GRID_NOISE) / UNITS_PER_MM;
}

/** What a trimmed side really gives: the most on the grid that is no larger. */
function gridBelow(side: number): number {
  return Math.floor(side * UNITS_PER_MM + GRID_NOISE) / UNITS_PER_MM;
}

/** Part of a step of the grid that binary fractions may add up to. */
const GRID_NOISE = 1e-6;

/** Makes the listed cuts one after another, and looks whether each piece ends as a panel of its own. */
export function checkCuts(sheet: SheetPlan, usable: Box, gap: number, absorbed: number): readonly string[] {
  const { panels, astray } = afterCuts(sheet, usable, gap);
  const faults = astray.map(({ way, at }) => `the cut ${way} at ${at} mm runs from edge to edge of no panel`);
  for (const place of sheet.placements)
    if (!isFreed(place, panels, absorbed))
      faults.push(`the cuts do not free ${place.piece.part} of ${place.piece.item} (${place.piece.id})`);
  return faults;
}

/** Panels of a sheet, by number: flat arrays, since an object for each would take longer than the check. */
interface Panels {
  count: number;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly length: Float64Array;
  readonly width: Float64Array;
}

/** The panels that a sheet's cuts leave, and the cuts that go through none. */
function afterCuts(
  { cuts }: Pick<SheetPlan, "cuts">,
  usable: Box,
  gap: number,
): { readonly panels: Panels; readonly astray: readonly Cut[] } {
  const room = cuts.length + 1;
  const buffer = new ArrayBuffer(4 * room * Float64Array.BYTES_PER_ELEMENT);
  const numbers = (place: number) => new Float64Array(buffer, place * room * Float64Array.BYTES_PER_ELEMENT, room);
  const panels: Panels = { count: 1, x: numbers(0), y: numbers(1), length: numbers(2), width: numbers(3) };
  panels.x[0] = usable.x;
  panels.y[0] = usable.y;
  panels.length[0] = usable.length;
  panels.width[0] = usable.width;
  const astray: Cut[] = [];
  for (const cut of cuts) {
    let panel = 0;
    while (panel < panels.count && !crosses(cut, panels, panel)) panel++;
    if (panel === panels.count) astray.push(cut);
    else divide(cut, panels, panel, gap);
  }
  return { panels, astray };
}

/** Whether a sheet's cuts leave a panel of that place and size. */
export function isLeftByCuts(sheet: SheetPlan, usable: Box, gap: number, isIt: (panel: Box) => boolean): boolean {
  const { count, x, y, length, width } = afterCuts(sheet, usable, gap).panels;
  for (let panel = 0; panel < count; panel++)
    if (isIt({ x: x[panel]!, y: y[panel]!, length: length[panel]!, width: width[panel]! })) return true;
  return false;
}

function isFreed(place: Placement, panels: Panels, absorbed: number): boolean {
  for (let panel = 0; panel < panels.count; panel++) if (fitsExactly(place, panels, panel, absorbed)) return true;
  return false;
}

function crosses(cut: Cut, { x, y, length, width }: Panels, panel: number): boolean {
  if (cut.setting < TOLERANCE) return false;
  if (cut.way === "across")
    return (
      near(cut.at - x[panel]!, cut.setting) &&
      cut.at <= x[panel]! + length[panel]! + TOLERANCE &&
      near(cut.from, y[panel]!) &&
      near(cut.to, y[panel]! + width[panel]!)
    );
  return (
    near(cut.at - y[panel]!, cut.setting) &&
    cut.at <= y[panel]! + width[panel]! + TOLERANCE &&
    near(cut.from, x[panel]!) &&
    near(cut.to, x[panel]! + length[panel]!)
  );
}

/** What comes off keeps the panel's number; the rest is the last. */
function divide(cut: Cut, panels: Panels, panel: number, gap: number): void {
  const { x, y, length, width } = panels;
  const rest = panels.count++;
  const behind = cut.at + gap;
  const across = cut.way === "across";
  x[rest] = across ? behind : x[panel]!;
  y[rest] = across ? y[panel]! : behind;
  length[rest] = across ? x[panel]! + length[panel]! - cut.at - gap : length[panel]!;
  width[rest] = across ? width[panel]! : y[panel]! + width[panel]! - cut.at - gap;
  if (across) length[panel] = cut.at - x[panel]!;
  else width[panel] = cut.at - y[panel]!;
}

/** A panel is as large as its piece; one that is trimmed later may have taken up the waste beside it. */
function fitsExactly(place: Placement, { x, y, length, width }: Panels, panel: number, absorbed: number): boolean {
  if (!near(place.x, x[panel]!) || !near(place.y, y[panel]!)) return false;
  const { later } = place.piece;
  const longer = place.turned ? later?.width : later?.length;
  const wider = place.turned ? later?.length : later?.width;
  return (
    isLarger(place.length, length[panel]!, longer === true ? absorbed : 0) &&
    isLarger(place.width, width[panel]!, wider === true ? absorbed : 0)
  );
}

/** Whether a side of a panel is larger than the piece's by nothing but a step of the grid and what it may take up. */
function isLarger(own: number, whole: number, absorbed: number): boolean {
  return whole - own > -TOLERANCE && whole - own < STEP + TOLERANCE + absorbed;
}

function near(one: number, other: number): boolean {
  return Math.abs(one - other) <= TOLERANCE;
}
