import { arrange } from "./arrange";
import type { CutSheet } from "./construct";
import { cutOrder } from "./cutOrder";
import { fillWithFewSettings } from "./fillWithFewSettings";
import { NONE } from "./forest";
import type { Job } from "./job";
import { createOpenCost, type OpenEffort } from "./openItems";
import { type Panel, piecesIn } from "./panels";
import { endWaste, neededLength } from "./shorten";
import { createRandom, type Random } from "./random";
import type { Watch } from "./watch";

/** A sheet with what it costs the worker. */
interface Worked {
  readonly kind: number;
  readonly panel: Panel;
  readonly pieces: readonly number[];
  readonly items: Int32Array;
  /** Set-ups, and a share of one for each item that the sheet has a piece of; worked out when it is first asked for. */
  readonly effort: () => number;
}

/** What counts in addition to set-ups, in parts of one set-up. */
export interface Effort {
  /** An item on one sheet more. */
  readonly perItem: number;
  /** A unit of length that the panel needs: of a roll the length is bought, of a sheet it is there. */
  readonly perLength: number;
  readonly open: OpenEffort;
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

/** One time in so many a sheet only takes another turn. */
const TURN_IN = 2;

/**
 * The same pieces with fewer set-ups and items on fewer sheets: takes a few sheets and lays their pieces out again, on as
 * many sheets or, as long as spare ones are allowed, one more. The sheets are in the order of cutting, in which few items
 * are to be open: one may take another turn.
 */
export function fewerSetUps(
  job: Job,
  sheets: readonly CutSheet[],
  { most, spare, effort: weights, seed }: FewerOptions,
  watch: Watch,
): readonly CutSheet[] {
  const random = createRandom(seed);
  const openCost = createOpenCost(job.items, weights.open);
  let now: readonly Worked[] = sheets.map(({ kind, panel }) => worked(job, kind, panel, weights));
  let weight = weightOf(job, now);
  // Efforts are compared alone: what all sheets took at first is left out.
  let own = 0;
  let effort = openCost(now);
  let best = now;
  let bestEffort = effort;
  const late = new Float64Array(LATE).fill(effort);
  let step = 0;
  const accept = (sheets: readonly Worked[], ownAfter: number) => {
    const after = ownAfter + openCost(sheets);
    const at = step++ % LATE;
    if (after > effort && after > late[at]!) return false;
    now = sheets;
    own = ownAfter;
    effort = after;
    late[at] = effort;
    if (effort < bestEffort) {
      best = now;
      bestEffort = effort;
    }
    return true;
  };
  while (now.length > 0 && !watch.over(STEP_COST)) {
    if (now.length > 2 && random.below(TURN_IN) === 0) accept(otherTurn(now, random), own);
    const chosen = choose(now, job.items, random);
    const old = chosen.map((place) => now[place]!);
    const pieces = old.flatMap((sheet) => sheet.pieces);
    const extra = spare !== NONE && weight + job.kinds[spare]!.weight <= most ? [spare] : [];
    const { sheets: filled, left } = fillWithFewSettings(
      job,
      [...old.map(({ kind }) => kind), ...extra],
      pieces,
      random,
    );
    if (left.length > 0) continue;
    const change = weightOf(job, filled) - weightOf(job, old);
    if (change > 0 && weight + change > most) continue;
    const laid = filled.map(({ kind, panel }) => worked(job, kind, panel, weights));
    if (accept(replaced(now, chosen, laid), own - total(old) + total(laid))) weight += change;
  }
  return best.map(({ kind, panel }) => ({ kind, panel }));
}

/** The sheets with one of them in another place. */
function otherTurn(sheets: readonly Worked[], random: Random): readonly Worked[] {
  const moved = [...sheets];
  const [sheet] = moved.splice(random.below(moved.length), 1);
  moved.splice(random.below(moved.length + 1), 0, sheet!);
  return moved;
}

/** The new sheets in the places of the old; one more follows the last of them, and places that are left over are closed. */
function replaced(sheets: readonly Worked[], places: readonly number[], laid: readonly Worked[]): readonly Worked[] {
  return sheets.flatMap((sheet, place) => {
    const at = places.indexOf(place);
    if (at < 0) return [sheet];
    return at === places.length - 1 ? laid.slice(at) : laid.slice(at, at + 1);
  });
}

function weightOf({ kinds }: Job, sheets: readonly Pick<CutSheet, "kind">[]): number {
  return sheets.reduce((sum, { kind }) => sum + kinds[kind]!.weight, 0);
}

function total(sheets: readonly Worked[]): number {
  return sheets.reduce((sum, { effort }) => sum + effort(), 0);
}

function worked(job: Job, kind: number, panel: Panel, weights: Effort): Worked {
  const pieces = piecesIn(panel);
  const items = Int32Array.from(new Set(pieces.map((piece) => job.item[piece]!)));
  let known: number | undefined;
  const effort = () => (known ??= effortOf(job, kind, panel, items.length, weights));
  return { kind, panel, pieces, items, effort };
}

function effortOf(job: Job, kind: number, panel: Panel, items: number, { perItem, perLength }: Effort): number {
  const length = perLength === 0 ? 0 : perLength * neededLength(panel, endWaste(job, kind));
  return setUpsOf(job, panel) + perItem * items + length;
}

/** How often the fence is set on one sheet. */
export function setUpsOf({ limits }: Job, panel: Panel): number {
  const settings = cutOrder(arrange(panel), limits.gap, 0).map(({ setting }) => Math.round(setting * 10));
  return settings.filter((setting, at) => setting !== settings[at - 1]).length;
}

function choose(sheets: readonly Worked[], items: number, random: Random): readonly number[] {
  const first = random.below(sheets.length);
  const wanted = Math.min(sheets.length, random.below(THREE_IN) === 0 ? 3 : 2);
  const own = new Uint8Array(items);
  for (const item of sheets[first]!.items) own[item] = 1;
  const chosen = [first];
  while (chosen.length < wanted) {
    const next = random.below(ANY_IN) === 0 ? random.below(sheets.length) : sharing(sheets, chosen, own, random);
    if (!chosen.includes(next)) chosen.push(next);
  }
  return chosen;
}

/** Of some sheets taken by chance the one that shares the most items with the first of those chosen. */
function sharing(sheets: readonly Worked[], chosen: readonly number[], own: Uint8Array, random: Random): number {
  let best = random.below(sheets.length);
  let most = 0;
  for (let look = 0; look < LOOKS; look++) {
    const at = random.below(sheets.length);
    if (chosen.includes(at)) continue;
    let shared = 0;
    for (const item of sheets[at]!.items) shared += own[item]!;
    if (shared <= most) continue;
    most = shared;
    best = at;
  }
  return best;
}

const LOOKS = 12;
