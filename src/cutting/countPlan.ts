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
  const { pieceGap, stages, leastWaste } = options;
  // An off-cut has clean edges.
  const edgeTrim = sheet.offCut === undefined ? options.edgeTrim : 0;
  const [length, width] = [sheet.length - 2 * edgeTrim, sheet.width - 2 * edgeTrim];
  const whole = { x: edgeTrim, y: edgeTrim, length, width };
  const pieces = within(whole, sheet.placements);
  const panels: CutPanel[] = [{ ...whole, stage: 0, way: undefined, pieces, finished: false }];
  let [setUps, last, most, trims, loose, loosePanels] = [0, Number.NaN, 0, 0, 1, 0];
  for (const cut of sheet.cuts) {
    const setting = Math.round(cut.setting * SETTINGS_PER_MM);
    if (setting !== last) setUps++;
    last = setting;
    const at = panels.findIndex((each) => isCutBy(each, cut));
    const panel = panels[at];
    if (panel === undefined) continue;
    const stage = panel.way === cut.way ? panel.stage : panel.stage + 1;
    const parts = sidesOf(panel, cut, pieceGap).map((side): CutPanel => {
      const own = within(side, panel.pieces);
      const { x, y, length, width } = side;
      return { x, y, length, width, stage, way: cut.way, pieces: own, finished: isFinished(side, own, options) };
    });
    if (stage === stages + 1 && isTrim(parts)) trims++;
    else most = Math.max(most, stage);
    panels.splice(at, 1, ...parts);
    loose += parts.filter(({ finished }) => !finished).length - (panel.finished ? 0 : 1);
    loosePanels = Math.max(loosePanels, loose);
  }
  const slivers = panels.filter((panel) => {
    if (panel.pieces.length > 0) return false;
    const [along, across] = [panel.length, panel.width].map((side) => (side > TOLERANCE ? side : Infinity));
    const atEnd = panel.x + panel.length > edgeTrim + length - TOLERANCE || panel.x < edgeTrim + TOLERANCE;
    const atSide = panel.y + panel.width > edgeTrim + width - TOLERANCE || panel.y < edgeTrim + TOLERANCE;
    return (
      along! + (atEnd ? edgeTrim : 0) < leastWaste - TOLERANCE ||
      across! + (atSide ? edgeTrim : 0) < leastWaste - TOLERANCE
    );
  }).length;
  return { cuts: sheet.cuts.length, setUps, stages: most, trims, slivers, loosePanels };
}

function isCutBy(panel: CutPanel, { way, at, from, to }: Cut): boolean {
  return way === "across"
    ? isBetween(at, panel.x, panel.length) && isWhole(from, to, panel.y, panel.width)
    : isBetween(at, panel.y, panel.width) && isWhole(from, to, panel.x, panel.length);
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

function sidesOf({ x, y, length, width }: CutPanel, { way, at }: Cut, gap: Mm): readonly Side[] {
  const behind = at + gap;
  if (way === "across")
    return [
      { x, y, length: at - x, width },
      { x: behind, y, length: Math.max(0, x + length - behind), width },
    ];
  return [
    { x, y, length, width: at - y },
    { x, y: behind, length, width: Math.max(0, y + width - behind) },
  ];
}

/** The pieces that lie in a part of the sheet. */
function within(side: Side, placements: readonly Placement[]): readonly Placement[] {
  return placements.filter(
    ({ x, y, length, width }) =>
      x > side.x - GRID &&
      y > side.y - GRID &&
      x + length < side.x + side.length + GRID &&
      y + width < side.y + side.width + GRID,
  );
}

/** Waste, or one piece: nothing is left to cut. */
function isFinished(panel: Side, pieces: readonly Placement[], { absorbed }: CountOptions): boolean {
  const [only] = pieces;
  if (only === undefined) return true;
  if (pieces.length > 1) return false;
  const over = (part: boolean | undefined) => GRID + (part === true ? absorbed : 0);
  const { later } = only.piece;
  const [longer, wider] = only.turned ? [later?.width, later?.length] : [later?.length, later?.width];
  return panel.length - only.length < over(longer) && panel.width - only.width < over(wider);
}

/** One part exactly one piece, the other waste alone. */
function isTrim(parts: readonly CutPanel[]): boolean {
  const held = parts.reduce((sum, { pieces }) => sum + pieces.length, 0);
  return held === 1 && parts.every(({ finished }) => finished);
}

function countItems(sheets: readonly SheetPlan[]): Pick<PlanFigures, "openItems" | "meanSpread" | "mostSpread"> {
  const on = new Map<string, Set<number>>();
  sheets.forEach(({ placements }, index) => {
    for (const { piece } of placements) on.set(piece.item, (on.get(piece.item) ?? new Set()).add(index));
  });
  const opened = new Int32Array(sheets.length + 1);
  let spread = 0;
  let mostSpread = 0;
  for (const own of on.values()) {
    const indexes = [...own];
    const first = indexes.reduce((one, other) => Math.min(one, other));
    const last = indexes.reduce((one, other) => Math.max(one, other));
    opened[first]!++;
    opened[last + 1]!--;
    spread += own.size;
    mostSpread = Math.max(mostSpread, own.size);
  }
  let open = 0;
  let openItems = 0;
  for (const change of opened) openItems = Math.max(openItems, (open += change));
  return { openItems, meanSpread: on.size === 0 ? 0 : spread / on.size, mostSpread };
}
