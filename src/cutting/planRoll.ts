import { construct, type Draft, ORDERS } from "./construct";
import { ALONG_LENGTH, ALONG_WIDTH, NONE } from "./forest";
import { UNITS_PER_MM } from "./grid";
import { placeAll } from "./improve";
import type { Job } from "./job";
import type { Panel } from "./panels";
import { createRandom } from "./random";
import { neededLength, shorten } from "./shorten";
import type { Watch } from "./watch";

/** Lengths at which a first plan is tried, as parts over the bound. */
const SLACKS = [0, 0.01, 0.02, 0.035, 0.05, 0.08, 0.12, 0.2, 0.35, 0.6, 1];

/** The first aim: this part of the way from the plan's length to the bound. */
const FIRST_SHARE = 0.25;

/** An aim is at least a tenth of a millimetre nearer. */
const LEAST_AIM = UNITS_PER_MM / 10;

/** Steps given to an aim before a nearer one is tried. */
const PATIENCE = 1500;

/** The first plan for a roll: the shortest length, of some, on which the pieces can be placed in one pass. */
export function constructRoll(job: Job, bound: number): Panel {
  for (const slack of SLACKS) {
    const length = Math.ceil(bound * (1 + slack));
    for (const order of ORDERS) {
      const draft = construct(withLength(job, length), order, NONE);
      const [sheet] = draft.sheets;
      if (draft.out.length === 0 && sheet !== undefined) return cutDown(sheet.panel);
    }
  }
  return oneByOne(job);
}

/**
 * Shortens a plan for a roll: aims at a length, takes out what lies beyond, and looks for room for it.
 *
 * @param found called with each shorter plan
 */
export function improveRoll(
  job: Job,
  start: Panel,
  bound: number,
  seed: number,
  watch: Watch,
  found: (panel: Panel) => void,
): void {
  const random = createRandom(seed);
  let best = start;
  let share = FIRST_SHARE;
  let patience = PATIENCE;
  while (best.length > bound && !watch.over()) {
    const aim = Math.min(best.length - bound, Math.max(LEAST_AIM, Math.floor((best.length - bound) * share)));
    const target = withLength(job, best.length - aim);
    const out: number[] = [];
    const panel = shorten(best, best.length - aim, random, out);
    const draft: Draft = { sheets: [{ kind: 0, panel }], out, weight: 1 };
    const placed = placeAll(target, draft, random.below(SEEDS), watch, patience);
    const [sheet] = placed.sheets;
    if (placed.out.length === 0 && sheet !== undefined) {
      best = cutDown(sheet.panel);
      found(best);
    } else if (aim > LEAST_AIM) share /= 2;
    else patience *= 2;
  }
}

const SEEDS = 2 ** 31;

function withLength(job: Job, length: number): Job {
  return { ...job, kinds: job.kinds.map((kind) => ({ ...kind, length })) };
}

function cutDown(panel: Panel): Panel {
  return shorten(panel, neededLength(panel), createRandom(0), []);
}

/** Every piece across the roll by itself: long, and always possible. */
function oneByOne(job: Job): Panel {
  const width = job.kinds[0]!.width;
  const spare = (length: number, width: number): Panel => ({
    length,
    width,
    axis: ALONG_LENGTH,
    parts: [],
    piece: NONE,
  });
  const parts = Array.from(job.area, (_, piece): Panel => {
    const turned = job.width[piece]! > width;
    const own = {
      length: turned ? job.width[piece]! : job.length[piece]!,
      width: turned ? job.length[piece]! : job.width[piece]!,
    };
    const leaf: Panel = { ...own, axis: ALONG_LENGTH, parts: [], piece };
    if (own.width === width) return leaf;
    return {
      length: own.length,
      width,
      axis: ALONG_WIDTH,
      parts: [leaf, spare(own.length, width - own.width)],
      piece: NONE,
    };
  });
  const length = parts.reduce((sum, part) => sum + part.length, 0);
  return { length, width, axis: ALONG_LENGTH, parts, piece: NONE };
}
