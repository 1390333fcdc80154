import type { Mm } from "../measure/units";
import type { Cut, Placement, SheetPlan } from "./types";

/** What a cut takes away, and what a piece that is trimmed later may be cut larger by. */
interface Allowed {
  readonly pieceGap: Mm;
  readonly absorbed: Mm;
}

const TOLERANCE = 1e-6;

/**
 * The panels of a sheet as far as it is cut, by number; the pieces in each are those from `begin` up to `end` of `pieces`.
 * Arrays that serve all sheets one after another: an object for each panel would take longer than the count.
 */
export interface Panels {
  count: number;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly length: Float64Array;
  readonly width: Float64Array;
  readonly stage: Int32Array;
  /** The way of the cut that freed the panel; none for the sheet. */
  readonly way: (Cut["way"] | undefined)[];
  readonly begin: Int32Array;
  readonly end: Int32Array;
  /** 1 for waste, or one piece: nothing is left to cut. */
  readonly finished: Uint8Array;
  pieces: Placement[];
}

/** Arrays with room for any of the sheets. */
export function panelsFor(sheets: readonly SheetPlan[]): Panels {
  const room = 1 + sheets.reduce((most, { cuts }) => Math.max(most, cuts.length), 0);
  return {
    count: 0,
    x: new Float64Array(room),
    y: new Float64Array(room),
    length: new Float64Array(room),
    width: new Float64Array(room),
    stage: new Int32Array(room),
    way: [],
    begin: new Int32Array(room),
    end: new Int32Array(room),
    finished: new Uint8Array(room),
    pieces: [],
  };
}

/** A whole sheet within its trim. */
export function beginSheet(panels: Panels, sheet: SheetPlan, edgeTrim: Mm): void {
  panels.count = 1;
  panels.pieces = sheet.placements.slice();
  panels.x[0] = edgeTrim;
  panels.y[0] = edgeTrim;
  panels.length[0] = sheet.length - 2 * edgeTrim;
  panels.width[0] = sheet.width - 2 * edgeTrim;
  panels.stage[0] = 0;
  panels.way[0] = undefined;
  panels.begin[0] = 0;
  panels.end[0] = gatherWithin(panels, 0, 0, panels.pieces.length);
  panels.finished[0] = 0;
}

/** The panel that a cut goes through from edge to edge, or -1. */
export function panelCutBy({ count, x, y, length, width }: Panels, { way, at, from, to }: Cut): number {
  const across = way === "across";
  for (let panel = 0; panel < count; panel++)
    if (
      across
        ? isBetween(at, x[panel]!, length[panel]!) && isWhole(from, to, y[panel]!, width[panel]!)
        : isBetween(at, y[panel]!, width[panel]!) && isWhole(from, to, x[panel]!, length[panel]!)
    )
      return panel;
  return -1;
}

function isBetween(at: Mm, start: Mm, size: Mm): boolean {
  return at > start - TOLERANCE && at < start + size + TOLERANCE;
}

function isWhole(from: Mm, to: Mm, side: Mm, across: Mm): boolean {
  return Math.abs(from - side) < GRID && Math.abs(to - side - across) < GRID;
}

/** The trimmed sheet may be a step of the grid smaller than the figures say. */
const GRID = 1e-3;

/** Cuts a panel: what comes off keeps its number, the rest has the number that is returned. */
export function divide(panels: Panels, off: number, cut: Cut, stage: number, allowed: Allowed): number {
  const { x, y, length, width, begin, end } = panels;
  const rest = panels.count++;
  const behind = cut.at + allowed.pieceGap;
  const across = cut.way === "across";
  x[rest] = across ? behind : x[off]!;
  y[rest] = across ? y[off]! : behind;
  length[rest] = across ? Math.max(0, x[off]! + length[off]! - behind) : length[off]!;
  width[rest] = across ? width[off]! : Math.max(0, y[off]! + width[off]! - behind);
  if (across) length[off] = cut.at - x[off]!;
  else width[off] = cut.at - y[off]!;
  const last = end[off]!;
  end[off] = gatherWithin(panels, off, begin[off]!, last);
  begin[rest] = end[off]!;
  end[rest] = gatherWithin(panels, rest, begin[rest], last);
  for (const panel of [off, rest]) {
    panels.stage[panel] = stage;
    panels.way[panel] = cut.way;
    panels.finished[panel] = isFinished(panels, panel, allowed) ? 1 : 0;
  }
  return rest;
}

/** Moves the pieces that lie in a panel to the front of a stretch of them, and returns where they end. */
function gatherWithin({ pieces, x, y, length, width }: Panels, panel: number, begin: number, end: number): number {
  const left = x[panel]! - GRID;
  const bottom = y[panel]! - GRID;
  const right = x[panel]! + length[panel]! + GRID;
  const top = y[panel]! + width[panel]! + GRID;
  let next = begin;
  for (let at = begin; at < end; at++) {
    const place = pieces[at]!;
    if (!(place.x > left && place.y > bottom && place.x + place.length < right && place.y + place.width < top))
      continue;
    pieces[at] = pieces[next]!;
    pieces[next++] = place;
  }
  return next;
}

/** Waste, or one piece: nothing is left to cut. */
function isFinished({ pieces, begin, end, length, width }: Panels, panel: number, { absorbed }: Allowed): boolean {
  const count = end[panel]! - begin[panel]!;
  if (count === 0) return true;
  if (count > 1) return false;
  const only = pieces[begin[panel]!]!;
  const { later } = only.piece;
  const longer = only.turned ? later?.width : later?.length;
  const wider = only.turned ? later?.length : later?.width;
  return (
    length[panel]! - only.length < GRID + (longer === true ? absorbed : 0) &&
    width[panel]! - only.width < GRID + (wider === true ? absorbed : 0)
  );
}
