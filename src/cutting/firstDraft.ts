import { byWidth, construct, type Draft, type Order, ORDERS } from "./construct";
import { NONE } from "./forest";
import type { Job } from "./job";
import { joinEqualSides } from "./joinEqualSides";
import { type Panel, piecesIn } from "./panels";

/** Up to so many pieces every order is tried for a first plan, up to so many two, beyond one. */
const ALL_ORDERS_UP_TO = 2000;
const TWO_ORDERS_UP_TO = 12_000;

/** Of so many items and pieces two plans take too long for a cell: by width there are mostly fewer sheets than by area. */
const MANY_ITEMS = 1000;
const MANY_PIECES = 4000;

/** Full sheets are looked for when the waste can be no more than this part of the sheets, and pieces no more than this. */
const LITTLE_WASTE = 0.01;
const JOINED_UP_TO = 400;

/**
 * The best of some plans made in one pass: fewest pieces left out, then least weight, then least area of sheets.
 *
 * @param setUpsOf decides between plans that are equal in all that: how often the fence is set
 */
export function firstDraft(job: Job, setUpsOf: (draft: Draft) => number): Draft {
  if (job.size === 0) return { sheets: [], out: [], weight: 0 };
  const favoured = job.kinds.length === 1 ? [NONE] : [NONE, ...weighty(job)];
  const drafts = favoured.flatMap((kind) => ordersFor(job).map((order) => construct(job, order, kind)));
  if (mayLackWaste(job, Math.min(...drafts.map((draft) => draft.sheets.length))))
    drafts.push(draftWithFull(job, joinEqualSides(job)));
  const area = (draft: Draft) =>
    draft.sheets.reduce((sum, { kind }) => sum + job.kinds[kind]!.length * job.kinds[kind]!.width, 0);
  const rank = (draft: Draft) => [draft.out.length, draft.weight, area(draft)];
  const best = drafts.map(rank).reduce((one, other) => (comparison(one, other) <= 0 ? one : other));
  const equal = drafts.filter((draft) => comparison(rank(draft), best) === 0);
  if (equal.length === 1) return equal[0]!;
  return equal
    .map((draft) => ({ draft, setUps: setUpsOf(draft) }))
    .reduce((one, other) => (one.setUps <= other.setUps ? one : other)).draft;
}

/** Kinds of sheet that cost something: what is free is taken first in any case. */
function weighty({ kinds }: Job): readonly number[] {
  return [...kinds.keys()].filter((kind) => kinds[kind]!.weight > 0);
}

function ordersFor(job: Job): readonly Order[] {
  if (job.size <= ALL_ORDERS_UP_TO) return ORDERS;
  if (job.items > MANY_ITEMS && job.size > MANY_PIECES) return [byWidth];
  return ORDERS.slice(0, job.size <= TWO_ORDERS_UP_TO ? 2 : 1);
}

/** Whether the area of the pieces leaves room for fewer sheets than were found, and then fills them almost wholly. */
function mayLackWaste(job: Job, found: number): boolean {
  const [kind] = job.kinds;
  if (job.limits.bench) return false;
  if (kind === undefined || job.kinds.length > 1 || kind.limit < job.size || job.size > JOINED_UP_TO) return false;
  const sheets = job.area.reduce((sum, area) => sum + area, 0) / (kind.length * kind.width);
  return found > Math.ceil(sheets) && Math.ceil(sheets) - sheets <= LITTLE_WASTE * sheets;
}

/** The full sheets, and a plan made in one pass for the pieces on none of them. */
function draftWithFull(job: Job, full: readonly Panel[]): Draft {
  const used = new Set(full.flatMap(piecesIn));
  const left = Array.from(job.area.keys()).filter((piece) => !used.has(piece));
  const plans = ORDERS.map((order) => construct(job, order, NONE, left));
  const rest = plans.reduce((one, other) => (one.weight <= other.weight ? one : other));
  const sheets = [...full.map((panel) => ({ kind: 0, panel })), ...rest.sheets];
  return { sheets, out: rest.out, weight: sheets.length * job.kinds[0]!.weight };
}

function comparison(one: readonly number[], other: readonly number[]): number {
  const at = one.findIndex((value, index) => value !== other[index]);
  return at < 0 ? 0 : one[at]! - other[at]!;
}
