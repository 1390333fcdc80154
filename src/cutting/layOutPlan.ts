import { arrange } from "./arrange";
import type { CutSheet } from "./construct";
import { cutOrder } from "./cutOrder";
import { UNITS_PER_MM, unitsUp } from "./grid";
import type { Job } from "./job";
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
    return { kind, cuts, placements: placementsOf(job, arranged, trim) };
  });
  const cutting = (cuts: readonly Cut[]) => cuts.reduce((sum, cut) => sum + cut.setting, 0);
  if (options.bench === undefined)
    drawn.sort(
      (one, other) =>
        one.kind - other.kind || cutting(other.cuts) - cutting(one.cuts) || compare(keyOf(one.cuts), keyOf(other.cuts)),
    );
  const layouts = numberLayouts(drawn);
  const sheets = drawn.map(({ kind, cuts, placements }, index) => {
    const { name, length, width } = faces[kind]!;
    return { stock: name, length, width, layout: layouts[index]!, placements, cuts };
  });
  return { sheets, ...cutFigures(sheets) };
}

/** A number for each sheet, from 1: those of one kind that are cut alike have the same. */
function numberLayouts(sheets: readonly Pick<CutSheet & SheetPlan, "kind" | "cuts">[]): readonly number[] {
  const known = new Map<number, { readonly kind: number; readonly cuts: readonly Cut[]; readonly number: number }[]>();
  let last = 0;
  return sheets.map(({ kind, cuts }) => {
    // Texts of all cuts would take longer to write than to compare the few sheets that may be alike.
    const sum = cuts.reduce((total, { at, from }) => total + unitsOf(at) * 3 + unitsOf(from), cuts.length);
    let like = known.get(sum);
    if (like === undefined) known.set(sum, (like = []));
    const same = like.find((other) => other.kind === kind && isCutAlike(other.cuts, cuts));
    if (same !== undefined) return same.number;
    like.push({ kind, cuts, number: ++last });
    return last;
  });
}

function isCutAlike(one: readonly Cut[], other: readonly Cut[]): boolean {
  return (
    one.length === other.length &&
    one.every(({ way, at, from }, index) => {
      const second = other[index]!;
      return way === second.way && unitsOf(at) === unitsOf(second.at) && unitsOf(from) === unitsOf(second.from);
    })
  );
}

function unitsOf(mm: Mm): number {
  return Math.round(mm * UNITS_PER_MM);
}

/** The cuts, settings and set-ups of sheets that are cut in turn. */
export function cutFigures(sheets: readonly Pick<SheetPlan, "cuts">[]): CutFigures {
  const settings = new Set<number>();
  let cutCount = 0;
  let setUps = 0;
  for (const { cuts } of sheets) {
    cutCount += cuts.length;
    let last = Number.NaN;
    for (const cut of cuts) {
      const setting = Math.round(cut.setting * SETTINGS_PER_MM);
      if (setting === last) continue;
      setUps++;
      settings.add(setting);
      last = setting;
    }
  }
  return { cutCount, settings: settings.size, setUps };
}

function keyOf(cuts: readonly Cut[]): string {
  let key = "";
  for (const { way, at, from } of cuts) key += `${way} ${unitsOf(at)} ${unitsOf(from)}, `;
  return key;
}

function compare(one: string, other: string): number {
  return one < other ? -1 : one > other ? 1 : 0;
}
