import type { Mm } from "../measure/units";
import { beginSheet, divide, panelCutBy, type Panels, panelsFor } from "./cutPanels";
import type { SheetPlan } from "./types";

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

const TOLERANCE = 1e-6;
const SETTINGS_PER_MM = 10;

/** The figures of all sheets of one stock, in the order in which they are cut. */
export function countPlan(sheets: readonly SheetPlan[], options: CountOptions): PlanFigures {
  const panels = panelsFor(sheets);
  const counted = sheets.map((sheet) => countSheet(sheet, options, panels));
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

function countSheet(sheet: SheetPlan, options: CountOptions, panels: Panels): SheetFigures {
  const { stages } = options;
  // An off-cut has clean edges.
  const edgeTrim = sheet.offCut === undefined ? options.edgeTrim : 0;
  const { stage, way, finished } = panels;
  beginSheet(panels, sheet, edgeTrim);
  let setUps = 0;
  let last = Number.NaN;
  let most = 0;
  let trims = 0;
  let loose = 1;
  let loosePanels = 0;
  for (const cut of sheet.cuts) {
    const setting = Math.round(cut.setting * SETTINGS_PER_MM);
    if (setting !== last) setUps++;
    last = setting;
    const off = panelCutBy(panels, cut);
    if (off < 0) continue;
    const own = way[off] === cut.way ? stage[off]! : stage[off]! + 1;
    const wasLoose = 1 - finished[off]!;
    const rest = divide(panels, off, cut, own, options);
    if (own === stages + 1 && isTrim(panels, off, rest)) trims++;
    else most = Math.max(most, own);
    loose += 2 - finished[off]! - finished[rest]! - wasLoose;
    loosePanels = Math.max(loosePanels, loose);
  }
  let slivers = 0;
  for (let panel = 0; panel < panels.count; panel++) if (isSliver(panels, panel, sheet, edgeTrim, options)) slivers++;
  return { cuts: sheet.cuts.length, setUps, stages: most, trims, slivers, loosePanels };
}

/** Waste narrower than the least; along an edge of the sheet with what is trimmed off there. */
function isSliver(panels: Panels, panel: number, sheet: SheetPlan, trim: Mm, { leastWaste }: CountOptions): boolean {
  if (panels.end[panel]! > panels.begin[panel]!) return false;
  const [x, y, length, width] = [panels.x[panel]!, panels.y[panel]!, panels.length[panel]!, panels.width[panel]!];
  const atEnd = x + length > sheet.length - trim - TOLERANCE || x < trim + TOLERANCE;
  const atSide = y + width > sheet.width - trim - TOLERANCE || y < trim + TOLERANCE;
  return (
    (length > TOLERANCE && length + (atEnd ? trim : 0) < leastWaste - TOLERANCE) ||
    (width > TOLERANCE && width + (atSide ? trim : 0) < leastWaste - TOLERANCE)
  );
}

/** One part exactly one piece, the other waste alone. */
function isTrim({ begin, end, finished }: Panels, off: number, rest: number): boolean {
  const pieces = end[off]! - begin[off]! + end[rest]! - begin[rest]!;
  return pieces === 1 && finished[off] === 1 && finished[rest] === 1;
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
