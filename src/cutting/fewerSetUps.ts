import { arrange } from "./arrange";
import type { CutSheet } from "./construct";
import { cutOrder } from "./cutOrder";
import { fillWithFewSettings } from "./fillWithFewSettings";
import { NONE } from "./forest";
import type { Job } from "./job";
import { type Panel, piecesIn } from "./panels";
import { neededLength } from "./shorten";
import { createRandom, type Random } from "./random";
import type { Watch } from "./watch";

/** A sheet with what it costs the worker. */
interface Worked {
  readonly kind: number;
  readonly panel: Panel;
  readonly pieces: readonly number[];
  readonly items: ReadonlySet<string>;
  /** Set-ups, and a share of one for each item that the sheet has a piece of. */
  readonly effort: number;
}

/** What counts in addition to set-ups, in parts of one set-up. */
export interface Effort {
  /** An item on one sheet more. */
  readonly perItem: number;
  /** A unit of length that the panel needs: of a roll the length is bought, of a sheet it is there. */
  readonly perLength: number;
}

export interface FewerOptions {
  /** Weight that all sheets may have together. */
  readonly most: number;
  /** The kind of sheet that may be added, or NONE. */
  readonly spare: number;
  readonly effort: Effort;
  readonly seed: number;
}

/** Changes back with which a change is compared (late acceptance). */
const LATE = 400;

/** Laying sheets out again takes about as long as so many steps of the search for fewest sheets. */
const STEP_COST = 8;

/** Sheets that are laid out again together: two, and one time in so many three. */
const THREE_IN = 5;

/** One time in so many the second sheet is any, else one that shares an item with the first. */
const ANY_IN = 3;

/**
 * The same pieces with fewer set-ups and items on fewer sheets: takes a few sheets and lays their pieces out again, on as
 * many sheets or, as long as spare ones are allowed, one more.
 */
export function fewerSetUps(
  job: Job,
  sheets: readonly CutSheet[],
  { most, spare, effort: weights, seed }: FewerOptions,
  watch: Watch,
): readonly CutSheet[] {
  const random = createRandom(seed);
  const now = sheets.map(({ kind, panel }) => worked(job, kind, panel, weights));
  let effort = total(now);
  let weight = weightOf(job, now);
  let best = [...now];
  let bestEffort = effort;
  const late = new Float64Array(LATE).fill(effort);
  for (let step = 0; now.length > 0 && !watch.over(STEP_COST); step++) {
    const chosen = choose(now, random);
    const pieces = chosen.flatMap((at) => now[at]!.pieces);
    const kinds = chosen.map((at) => now[at]!.kind);
    const extra = spare !== NONE && weight + job.kinds[spare]!.weight <= most ? [spare] : [];
    const filled = fillWithFewSettings(job, [...kinds, ...extra], pieces, random);
    if (filled === undefined) continue;
    const own = chosen.map((place) => now[place]!);
    const change = weightOf(job, filled) - weightOf(job, own);
    if (change > 0 && weight + change > most) continue;
    const laid = filled.map(({ kind, panel }) => worked(job, kind, panel, weights));
    const after = effort - total(own) + total(laid);
    const at = step % LATE;
    if (after > effort && after > late[at]!) continue;
    replace(now, chosen, laid);
    weight += change;
    effort = after;
    late[at] = effort;
    if (effort < bestEffort) {
      best = [...now];
      bestEffort = effort;
    }
  }
  return best.map(({ kind, panel }) => ({ kind, panel }));
}

/** Puts the new sheets in the places of the old; places that are left over are closed. */
function replace(sheets: Worked[], places: readonly number[], laid: readonly Worked[]): void {
  laid.forEach((sheet, index) => (sheets[places[index] ?? sheets.length] = sheet));
  const spare = places.slice(laid.length).sort((one, other) => other - one);
  for (const place of spare) sheets.splice(place, 1);
}

function weightOf({ kinds }: Job, sheets: readonly Pick<CutSheet, "kind">[]): number {
  return sheets.reduce((sum, { kind }) => sum + kinds[kind]!.weight, 0);
}

function total(sheets: readonly Worked[]): number {
  return sheets.reduce((sum, { effort }) => sum + effort, 0);
}

function worked(job: Job, kind: number, panel: Panel, { perItem, perLength }: Effort): Worked {
  const pieces = piecesIn(panel);
  const items = new Set(pieces.map((piece) => job.source[piece]!.item));
  return {
    kind,
    panel,
    pieces,
    items,
    effort: setUpsOf(job, panel) + perItem * items.size + (perLength === 0 ? 0 : perLength * neededLength(panel)),
  };
}

/** How often the fence is set on one sheet. */
export function setUpsOf({ limits }: Job, panel: Panel): number {
  const settings = cutOrder(arrange(panel), limits.gap, 0).map(({ setting }) => Math.round(setting * 10));
  return settings.filter((setting, at) => setting !== settings[at - 1]).length;
}

function choose(sheets: readonly Worked[], random: Random): readonly number[] {
  const first = random.below(sheets.length);
  const wanted = Math.min(sheets.length, random.below(THREE_IN) === 0 ? 3 : 2);
  const chosen = [first];
  while (chosen.length < wanted) {
    const next = random.below(ANY_IN) === 0 ? random.below(sheets.length) : sharing(sheets, chosen, random);
    if (!chosen.includes(next)) chosen.push(next);
  }
  return chosen;
}

/** Of some sheets taken by chance the one that shares the most items with the first of those chosen. */
function sharing(sheets: readonly Worked[], chosen: readonly number[], random: Random): number {
  const own = sheets[chosen[0]!]!.items;
  let best = random.below(sheets.length);
  let most = 0;
  for (let look = 0; look < LOOKS; look++) {
    const at = random.below(sheets.length);
    if (chosen.includes(at)) continue;
    let shared = 0;
    for (const item of sheets[at]!.items) if (own.has(item)) shared++;
    if (shared <= most) continue;
    most = shared;
    best = at;
  }
  return best;
}

const LOOKS = 12;
