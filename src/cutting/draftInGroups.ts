import { construct, type CutSheet, type Draft, ORDERS } from "./construct";
import { NONE } from "./forest";
import { improve } from "./improve";
import type { Job } from "./job";
import type { Panel } from "./panels";
import { quickBounds } from "./planParts";
import { stretchOf, type Watch } from "./watch";

/** Where the sheets would be too many, so much of the number of groups is tried next. */
const FEWER = 0.8;

/** The part of the budget's stretch for each try. */
const TRY_SHARE = 0.5;

/**
 * A plan in which few items are open at a time: the items are planned in groups, one after another, as small as the
 * weight allows.
 *
 * @param size items in a group at first
 * @param most weight that the sheets may have together
 * @returns undefined where even two groups take more
 */
export function draftInGroups(
  job: Job,
  size: number,
  most: number,
  seed: number,
  watch: Watch,
): readonly CutSheet[] | undefined {
  for (let groups = Math.ceil(job.items / size); groups > 1; groups = Math.floor(groups * FEWER)) {
    const stretch = stretchOf(watch, watch.spent() + (1 - watch.spent()) * TRY_SHARE);
    const size = Math.ceil(job.items / groups);
    const draft = inGroups(job, size, seed, stretch);
    if (draft === undefined) return undefined;
    if (draft.weight <= most) return draft.sheets;
  }
  return undefined;
}

function inGroups(job: Job, size: number, seed: number, watch: Watch): Draft | undefined {
  const groups = Array.from({ length: Math.ceil(job.items / size) }, (): number[] => []);
  job.item.forEach((item, piece) => groups[Math.floor(item / size)]!.push(piece));
  const sheets: CutSheet[] = [];
  let done = 0;
  for (const pieces of groups) {
    done += pieces.length;
    const own = partOf(job, pieces, sheets);
    let best = ORDERS.map((order) => construct(own, order, NONE)).reduce((one, other) =>
      isBetter(other, one) ? other : one,
    );
    if (best.out.length > 0) return undefined;
    improve(own, best, quickBounds(own).bound, seed, stretchOf(watch, done / job.size), (draft) => {
      best = draft;
    });
    sheets.push(...best.sheets.map(({ kind, panel }) => ({ kind, panel: renumbered(panel, pieces) })));
  }
  return { sheets, out: [], weight: sheets.reduce((sum, { kind }) => sum + job.kinds[kind]!.weight, 0) };
}

/** Some pieces of a job as one of their own, with what is left of sheets in hand. */
function partOf(job: Job, pieces: readonly number[], taken: readonly CutSheet[]): Job {
  const { kinds, length, width, turn, area, worth, item, stretch, source, copy } = job;
  return {
    ...job,
    kinds: kinds.map((kind, index) => ({
      ...kind,
      limit: kind.limit - taken.filter((sheet) => sheet.kind === index).length,
    })),
    size: pieces.length,
    length: Int32Array.from(pieces, (piece) => length[piece]!),
    width: Int32Array.from(pieces, (piece) => width[piece]!),
    turn: Uint8Array.from(pieces, (piece) => turn[piece]!),
    area: Float64Array.from(pieces, (piece) => area[piece]!),
    worth: Float64Array.from(pieces, (piece) => worth[piece]!),
    item: Int32Array.from(pieces, (piece) => item[piece]!),
    stretch: Uint8Array.from(pieces, (piece) => stretch[piece]!),
    source: pieces.map((piece) => source[piece]!),
    copy: Int32Array.from(pieces, (piece) => copy[piece]!),
  };
}

/** A panel of a part of a job with the numbers that its pieces have in the whole. */
function renumbered(panel: Panel, pieces: readonly number[]): Panel {
  return {
    ...panel,
    piece: panel.piece === NONE ? NONE : pieces[panel.piece]!,
    parts: panel.parts.map((part) => renumbered(part, pieces)),
  };
}

function isBetter(draft: Draft, than: Draft): boolean {
  return (draft.out.length - than.out.length || draft.weight - than.weight) < 0;
}
