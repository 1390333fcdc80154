import { arrange } from "./arrange";
import type { CutSheet } from "./construct";
import { cutOrder } from "./cutOrder";
import { UNITS_PER_MM } from "./grid";
import { type Job, unitsUp } from "./job";
import { placementsOf } from "./placementsOf";
import type { Mm } from "../measure/units";
import type { Cut, CuttingOptions, SheetPlan } from "./types";

/** How a kind of sheet is shown in a plan. */
export interface Face {
  readonly name: string;
  readonly length: Mm;
  readonly width: Mm;
  /** Cut away all round; left out, as the options say. */
  readonly edgeTrim?: Mm;
}

export interface LaidOut extends CutFigures {
  readonly sheets: readonly SheetPlan[];
}

/** What is to be cut on some sheets together. */
interface CutFigures {
  readonly cutCount: number;
  readonly settings: number;
  readonly setUps: number;
}

/** Settings of the fence that differ by less than a tenth of a millimetre are one. */
const SETTINGS_PER_MM = 10;

/** Places, cuts and set-ups of a plan's sheets: by stock, and those cut alike together. */
export function layOutPlan(
  job: Job,
  cutSheets: readonly CutSheet[],
  faces: readonly Face[],
  options: CuttingOptions,
): LaidOut {
  const gap = unitsUp(options.pieceGap ?? 0);
  const drawn = cutSheets.map(({ kind, panel }) => {
    const trim = faces[kind]!.edgeTrim ?? options.edgeTrim ?? 0;
    const arranged = arrange(panel);
    const cuts = cutOrder(arranged, gap, trim, options.bench?.loosePanels);
    return { kind, cuts, key: `${kind}: ${keyOf(cuts)}`, placements: placementsOf(job, arranged, trim) };
  });
  const cutting = (cuts: readonly Cut[]) => cuts.reduce((sum, cut) => sum + cut.setting, 0);
  if (options.bench === undefined)
    drawn.sort(
      (one, other) => one.kind - other.kind || cutting(other.cuts) - cutting(one.cuts) || compare(one.key, other.key),
    );
  const layouts = new Map<string, readonly Cut[]>();
  for (const { key, cuts } of drawn) if (!layouts.has(key)) layouts.set(key, cuts);
  const numbers = new Map([...layouts.keys()].map((key, index) => [key, index + 1]));
  const sheets = drawn.map(({ kind, cuts, key, placements }) => {
    const { name, length, width } = faces[kind]!;
    return { stock: name, length, width, layout: numbers.get(key)!, placements, cuts };
  });
  return { sheets, ...cutFigures(sheets) };
}

/** The cuts, settings and set-ups of sheets that are cut in turn. */
export function cutFigures(sheets: readonly SheetPlan[]): CutFigures {
  const settings = sheets.map(({ cuts }) => cuts.map(({ setting }) => Math.round(setting * SETTINGS_PER_MM)));
  return {
    cutCount: sheets.reduce((sum, { cuts }) => sum + cuts.length, 0),
    settings: new Set(settings.flat()).size,
    setUps: settings.reduce((sum, own) => sum + own.filter((setting, at) => setting !== own[at - 1]).length, 0),
  };
}

function keyOf(cuts: readonly Cut[]): string {
  let key = "";
  for (const { way, at, from } of cuts)
    key += `${way} ${Math.round(at * UNITS_PER_MM)} ${Math.round(from * UNITS_PER_MM)}, `;
  return key;
}

function compare(one: string, other: string): number {
  return one < other ? -1 : one > other ? 1 : 0;
}
