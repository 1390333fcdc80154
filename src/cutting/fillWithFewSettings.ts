import { type Choice, keep, noChoice } from "./choice";
import type { CutSheet } from "./construct";
import { weighNew } from "./bestCut";
import { emptyForest, type Forest, NONE } from "./forest";
import { closeLeftover, smallestOpen } from "./leftovers";
import { UNITS_PER_MM } from "./grid";
import { isTakenFor, type Job } from "./job";
import { leastSides } from "./leastSides";
import { cutPiece, exportPanel, layOut } from "./panels";
import type { Random } from "./random";
import { weighLimited } from "./weighLimited";

/** How much a new setting of the fence counts beside the worth that is lost, at most. */
const MOST_PER_SETTING = 0.25;

/** How much an item that the sheet has no piece of yet counts, at most. */
const MOST_PER_ITEM = 0.25;

/** Scores are blurred by up to this, so that each try differs. */
const BLUR = 0.15;

const SETTING_UNITS = UNITS_PER_MM / 10;
const CHANCES = 4096;

/** What a sheet has already: settings of the fence, and pieces of items. */
interface Begun {
  readonly settings: Set<number>;
  readonly items: Set<number>;
}

/** The forest of the call before: a search makes thousands of calls. */
let used: Forest | undefined;

/**
 * Lays pieces out on sheets, one sheet after the other: for each leftover the piece that wastes little and needs no new
 * setting of the fence, with some chance in it.
 *
 * @param kinds the sheets that may be used, in order
 * @returns the sheets, and the pieces that are on none
 */
export function fillWithFewSettings(
  job: Job,
  kinds: readonly number[],
  pieces: readonly number[],
  random: Random,
): { readonly sheets: readonly CutSheet[]; readonly left: readonly number[] } {
  const { leastLength, leastWidth } = leastSides(job, pieces);
  const forest = emptyForest(used, pieces.length, leastLength, leastWidth, job.limits);
  used = forest;
  const choice = noChoice();
  const perSetting = (random.below(CHANCES) / CHANCES) * MOST_PER_SETTING;
  const perItem = (random.below(CHANCES) / CHANCES) * MOST_PER_ITEM;
  const left = sortedByChance(job, pieces, random);
  const sheets: CutSheet[] = [];
  for (const kind of kinds) {
    if (left.length === 0) break;
    const sheet = layOut(forest, job.kinds[kind]!);
    const begun: Begun = { settings: new Set(), items: new Set() };
    const first = left.findIndex((piece) => {
      if (!isTakenFor(job, piece, job.kinds[kind]!)) return false;
      weighNew(forest, job, piece, sheet, random, choice);
      return choice.leftover !== NONE;
    });
    if (first < 0) continue;
    take(forest, job, choice, left, first, begun);
    while (forest.openCount > 0 && left.length > 0) {
      const leftover = smallestOpen(forest);
      const at = choosePiece(forest, job, leftover, left, begun, { perSetting, perItem }, random, choice);
      if (at < 0) closeLeftover(forest, leftover);
      else take(forest, job, choice, left, at, begun);
    }
    while (forest.openCount > 0) closeLeftover(forest, forest.open[0]!);
    sheets.push({ kind, panel: exportPanel(forest, sheet) });
  }
  return { sheets, left };
}

/** Large pieces first, by one measure or another, blurred. */
function sortedByChance(job: Job, pieces: readonly number[], random: Random): number[] {
  const measure = MEASURES[random.below(MEASURES.length)]!;
  const blur = (random.below(CHANCES) / CHANCES) * 0.5;
  const keys = new Float64Array(pieces.length);
  for (let at = 0; at < keys.length; at++)
    keys[at] = measure(job, pieces[at]!) * (1 + blur * (random.below(CHANCES) / CHANCES));
  return Array.from(keys.keys())
    .sort((one, other) => keys[other]! - keys[one]!)
    .map((at) => pieces[at]!);
}

const MEASURES: readonly ((job: Job, piece: number) => number)[] = [
  (job, piece) => job.area[piece]!,
  (job, piece) => job.length[piece]!,
  (job, piece) => job.width[piece]!,
  (job, piece) => Math.max(job.length[piece]!, job.width[piece]!),
];

/** The piece for a leftover: `choice` says how it is cut. */
function choosePiece(
  forest: Forest,
  job: Job,
  leftover: number,
  left: readonly number[],
  begun: Begun,
  { perSetting, perItem }: { readonly perSetting: number; readonly perItem: number },
  random: Random,
  choice: Choice,
): number {
  let best = -1;
  let least = Number.POSITIVE_INFINITY;
  const own = noChoice();
  const fullLength = forest.length[leftover]!;
  const fullWidth = forest.width[leftover]!;
  for (let at = 0; at < left.length; at++) {
    const piece = left[at]!;
    for (let turned = 0; turned <= job.turn[piece]!; turned++) {
      const along = turned === 1 ? job.width : job.length;
      const across = turned === 1 ? job.length : job.width;
      if (along[piece]! > fullLength || across[piece]! > fullWidth) continue;
      own.leftover = NONE;
      own.loss = Number.POSITIVE_INFINITY;
      weighLimited(forest, job, piece, leftover, turned === 1, random, 0, own);
      if (own.leftover === NONE) continue;
      const worth = job.worth[piece]!;
      const wasted = (own.loss - worth) / worth;
      const blur = (random.below(CHANCES) / CHANCES) * BLUR;
      // Settings and items only add to it.
      if (wasted + blur >= least) continue;
      const score =
        wasted +
        perSetting * newSettings(forest, own, begun.settings) +
        (begun.items.has(job.item[piece]!) ? 0 : perItem) +
        blur;
      if (score >= least) continue;
      least = score;
      best = at;
      keep(choice, own.leftover, own.turned, own.axis, own.length, own.width, own.loss);
    }
  }
  return best;
}

/** Settings of the fence that a cut needs and the sheet has none of yet. */
function newSettings(forest: Forest, { leftover, length, width }: Choice, settings: ReadonlySet<number>): number {
  const overLength = forest.length[leftover]! - length;
  const overWidth = forest.width[leftover]! - width;
  const byLength = overLength > 0 && !settings.has(settingOf(length)) ? 1 : 0;
  const byWidth = overWidth > 0 && !settings.has(settingOf(width)) ? 1 : 0;
  return byLength + byWidth;
}

function settingOf(units: number): number {
  return Math.round(units / SETTING_UNITS);
}

function take(
  forest: Forest,
  job: Job,
  { leftover, axis, length, width }: Choice,
  left: number[],
  at: number,
  { settings, items }: Begun,
): void {
  if (forest.length[leftover]! > length) settings.add(settingOf(length));
  if (forest.width[leftover]! > width) settings.add(settingOf(width));
  const [piece] = left.splice(at, 1);
  items.add(job.item[piece!]!);
  cutPiece(forest, leftover, piece!, length, width, axis);
}
