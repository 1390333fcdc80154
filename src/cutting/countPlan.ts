import type { Mm } from "../measure/units";
import type { Cut, Placement, SheetPlan } from "./types";

/** What a plan asks of the person who cuts it, counted by making its cuts one after another. */
export interface PlanFigures {
  readonly cuts: number;
  /** Settings of the fence that differ from the cut before; the first cut of each sheet counts. */
  readonly setUps: number;
  /** Changes of direction on the sheet with the most, the first cut being 1; trims after the last stage apart. */
  readonly stages: number;
  readonly trims: number;
  readonly slivers: number;
  /** Most panels at once, between cuts, that are still to be cut. */
  readonly loosePanels: number;
  /** Most items that have a piece on a sheet cut so far and one still to be cut. */
  readonly openItems: number;
  /** Sheets that an item is on. */
  readonly meanSpread: number;
  readonly mostSpread: number;
}

/** What the figures are counted by; lengths in mm. */
export interface CountOptions {
  readonly edgeTrim: Mm;
  readonly pieceGap: Mm;
  /** Cuts after this stage are trims, where they free one piece from waste alone. */
  readonly stages: number;
  readonly leastWaste: Mm;
  /** What a piece that is trimmed later may be cut larger by. */
  readonly absorbed: Mm;
}

interface CutPanel {
  readonly x: Mm;
  readonly y: Mm;
  readonly length: Mm;
  readonly width: Mm;
  readonly stage: number;
  readonly way: Cut["way"] | undefined;
  /** The pieces that lie in it. */
  readonly pieces: readonly Placement[];
  /** Waste, or one piece: nothing is left to cut. */
  readonly finished: boolean;
}

const TOLERANCE = 1e-6;
const SETTINGS_PER_MM = 10;

/** The figures of all sheets of one stock, in the order in which they are cut. */
export function countPlan(sheets: readonly SheetPlan[], options: CountOptions): PlanFigures {
  const counted = sheets.map((sheet) => countSheet(sheet, options));
  const sum = (of: (own: SheetFigures) => number) => counted.reduce((total, own) => total + of(own), 0);
  const most = (of: (own: SheetFigures) => number) => counted.reduce((greatest, own) => Math.max(greatest, of(own)), 0);
  return {
    cuts: sum((own) => own.cuts),
    setUps: sum((own) => own.setUps),
    stages: most((own) => own.stages),
    trims: sum((own) => own.trims),
    slivers: sum((own) => own.slivers),
    loosePanels: most((own) => own.loosePanels),
    ...countItems(sheets),
  };
}

type SheetFigures = Pick<PlanFigures, "cuts" | "setUps" | "stages" | "trims" | "slivers" | "loosePanels">;

function countSheet(sheet: SheetPlan, options: CountOptions): SheetFigures {
  const { stages } = options;
  // An off-cut has clean edges.
  const edgeTrim = sheet.offCut === undefined ? options.edgeTrim : 0;
  const [length, width] = [sheet.length - 2 * edgeTrim, sheet.width - 2 * edgeTrim];
  const pieces = within(edgeTrim, edgeTrim, length, width, sheet.placements);
  const whole = { x: edgeTrim, y: edgeTrim, length, width };
  const panels: CutPanel[] = [{ ...whole, stage: 0, way: undefined, pieces, finished: false }];
  let [setUps, last, most, trims, loose, loosePanels] = [0, Number.NaN, 0, 0, 1, 0];
  for (const cut of sheet.cuts) {
    const setting = Math.round(cut.setting * SETTINGS_PER_MM);
    if (setting !== last) setUps++;
    last = setting;
    const at = placeCutBy(panels, cut);
    const panel = panels[at];
    if (panel === undefined) continue;
    const stage = panel.way === cut.way ? panel.stage : panel.stage + 1;
    const [off, rest] = partsOf(panel, cut, stage, options);
    if (stage === stages + 1 && isTrim(off, rest)) trims++;
    else most = Math.max(most, stage);
    panels[at] = off;
    panels.splice(at + 1, 0, rest);
    loose += (off.finished ? 0 : 1) + (rest.finished ? 0 : 1) - (panel.finished ? 0 : 1);
    loosePanels = Math.max(loosePanels, loose);
  }
  let slivers = 0;
  for (const panel of panels) if (isSliver(panel, whole, options.leastWaste)) slivers++;
  return { cuts: sheet.cuts.length, setUps, stages: most, trims, slivers, loosePanels };
}

/** Waste narrower than the least; along an edge of the sheet with what is trimmed off there. */
function isSliver({ x, y, length, width, pieces }: CutPanel, whole: Side, leastWaste: Mm): boolean {
  if (pieces.length > 0) return false;
  const trim = whole.x;
  const atEnd = x + length > trim + whole.length - TOLERANCE || x < trim + TOLERANCE;
  const atSide = y + width > trim + whole.width - TOLERANCE || y < trim + TOLERANCE;
  return (
    (length > TOLERANCE && length + (atEnd ? trim : 0) < leastWaste - TOLERANCE) ||
    (width > TOLERANCE && width + (atSide ? trim : 0) < leastWaste - TOLERANCE)
  );
}

/** The place of the first panel that a cut goes through from edge to edge, or -1. */
function placeCutBy(panels: readonly CutPanel[], { way, at, from, to }: Cut): number {
  const across = way === "across";
  for (let place = 0; place < panels.length; place++) {
    const { x, y, length, width } = panels[place]!;
    if (
      across
        ? isBetween(at, x, length) && isWhole(from, to, y, width)
        : isBetween(at, y, width) && isWhole(from, to, x, length)
    )
      return place;
  }
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

type Side = Pick<CutPanel, "x" | "y" | "length" | "width">;

/** What a cut makes of a panel. */
function partsOf(panel: CutPanel, cut: Cut, stage: number, options: CountOptions): readonly [CutPanel, CutPanel] {
  const { x, y, length, width, pieces } = panel;
  const { way, at } = cut;
  const behind = at + options.pieceGap;
  const part = (x: Mm, y: Mm, length: Mm, width: Mm): CutPanel => {
    const own = within(x, y, length, width, pieces);
    return { x, y, length, width, stage, way, pieces: own, finished: isFinished(length, width, own, options) };
  };
  if (way === "across") return [part(x, y, at - x, width), part(behind, y, Math.max(0, x + length - behind), width)];
  return [part(x, y, length, at - y), part(x, behind, length, Math.max(0, y + width - behind))];
}

/** The pieces that lie in a part of the sheet. */
function within(x: Mm, y: Mm, length: Mm, width: Mm, placements: readonly Placement[]): readonly Placement[] {
  let own: Placement[] | undefined;
  for (const place of placements)
    if (
      place.x > x - GRID &&
      place.y > y - GRID &&
      place.x + place.length < x + length + GRID &&
      place.y + place.width < y + width + GRID
    )
      (own ??= []).push(place);
  return own ?? NO_PIECES;
}

const NO_PIECES: readonly Placement[] = [];

/** Waste, or one piece: nothing is left to cut. */
function isFinished(length: Mm, width: Mm, pieces: readonly Placement[], { absorbed }: CountOptions): boolean {
  const [only] = pieces;
  if (only === undefined) return true;
  if (pieces.length > 1) return false;
  const { later } = only.piece;
  const longer = only.turned ? later?.width : later?.length;
  const wider = only.turned ? later?.length : later?.width;
  return (
    length - only.length < GRID + (longer === true ? absorbed : 0) &&
    width - only.width < GRID + (wider === true ? absorbed : 0)
  );
}

/** One part exactly one piece, the other waste alone. */
function isTrim(off: CutPanel, rest: CutPanel): boolean {
  return off.pieces.length + rest.pieces.length === 1 && off.finished && rest.finished;
}

/** The first and last sheet that an item is on, and how many. */
interface Spread {
  readonly first: number;
  last: number;
  sheets: number;
}

function countItems(sheets: readonly SheetPlan[]): Pick<PlanFigures, "openItems" | "meanSpread" | "mostSpread"> {
  const on = new Map<string, Spread>();
  for (let index = 0; index < sheets.length; index++)
    for (const { piece } of sheets[index]!.placements) {
      const own = on.get(piece.item);
      if (own === undefined) on.set(piece.item, { first: index, last: index, sheets: 1 });
      else if (own.last !== index) {
        own.last = index;
        own.sheets++;
      }
    }
  const opened = new Int32Array(sheets.length + 1);
  let spread = 0;
  let mostSpread = 0;
  for (const { first, last, sheets: own } of on.values()) {
    opened[first]!++;
    opened[last + 1]!--;
    spread += own;
    mostSpread = Math.max(mostSpread, own);
  }
  let open = 0;
  let openItems = 0;
  for (const change of opened) openItems = Math.max(openItems, (open += change));
  return { openItems, meanSpread: on.size === 0 ? 0 : spread / on.size, mostSpread };
}
