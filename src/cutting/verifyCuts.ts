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

function isFreed(place: Placement, panels: readonly Box[], absorbed: number): boolean {
  for (const panel of panels) if (fitsExactly(place, panel, absorbed)) return true;
  return false;
}

/** The panels that a sheet's cuts leave, and the cuts that go through none. */
export function afterCuts(
  { cuts }: Pick<SheetPlan, "cuts">,
  usable: Box,
  gap: number,
): { readonly panels: readonly Box[]; readonly astray: readonly Cut[] } {
  const panels: Box[] = [usable];
  const astray: Cut[] = [];
  for (const cut of cuts) {
    let at = 0;
    while (at < panels.length && !crosses(cut, panels[at]!)) at++;
    if (at === panels.length) {
      astray.push(cut);
      continue;
    }
    const [off, rest] = halves(cut, panels[at]!, gap);
    panels[at] = off;
    panels.splice(at + 1, 0, rest);
  }
  return { panels, astray };
}

function crosses(cut: Cut, box: Box): boolean {
  if (cut.setting < TOLERANCE) return false;
  if (cut.way === "across")
    return (
      near(cut.at - box.x, cut.setting) &&
      cut.at <= box.x + box.length + TOLERANCE &&
      near(cut.from, box.y) &&
      near(cut.to, box.y + box.width)
    );
  return (
    near(cut.at - box.y, cut.setting) &&
    cut.at <= box.y + box.width + TOLERANCE &&
    near(cut.from, box.x) &&
    near(cut.to, box.x + box.length)
  );
}

function halves(cut: Cut, box: Box, gap: number): readonly [Box, Box] {
  const { x, y, length, width } = box;
  const behind = cut.at + gap;
  if (cut.way === "across")
    return [
      { x, y, length: cut.at - x, width },
      { x: behind, y, length: x + length - cut.at - gap, width },
    ];
  return [
    { x, y, length, width: cut.at - y },
    { x, y: behind, length, width: y + width - cut.at - gap },
  ];
}

/** A panel is as large as its piece; one that is trimmed later may have taken up the waste beside it. */
function fitsExactly(place: Placement, panel: Box, absorbed: number): boolean {
  if (!near(place.x, panel.x) || !near(place.y, panel.y)) return false;
  const { later } = place.piece;
  const longer = place.turned ? later?.width : later?.length;
  const wider = place.turned ? later?.length : later?.width;
  return (
    isLarger(place.length, panel.length, longer === true ? absorbed : 0) &&
    isLarger(place.width, panel.width, wider === true ? absorbed : 0)
  );
}

/** Whether a side of a panel is larger than the piece's by nothing but a step of the grid and what it may take up. */
function isLarger(own: number, whole: number, absorbed: number): boolean {
  return whole - own > -TOLERANCE && whole - own < STEP + TOLERANCE + absorbed;
}

function near(one: number, other: number): boolean {
  return Math.abs(one - other) <= TOLERANCE;
}
