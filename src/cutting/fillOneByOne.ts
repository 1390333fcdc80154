import type { CutSheet, Draft } from "./construct";
import { ALONG_LENGTH, ALONG_WIDTH, createForest, type Forest, NONE } from "./forest";
import { closeLeftover, smallestOpen } from "./leftovers";
import type { Job } from "./job";
import { kindFor } from "./kindFor";
import { leastSides } from "./leastSides";
import { cutPiece, exportPanel, layOut } from "./panels";
import type { Watch } from "./watch";
import { worthOf } from "./worth";

/** Pieces looked at for one leftover: the largest that are left, and of the rest about as many, spread evenly. */
const LARGEST = 1000;
const SPREAD = 2000;

/** The piece chosen for a leftover: its place among those left, how it lies and is cut, and worth lost per area. */
interface Pick {
  at: number;
  turned: boolean;
  axis: number;
  rate: number;
}

/**
 * A plan made sheet by sheet: begins each with the largest piece left and chooses for every leftover, the smallest
 * first, the piece that loses the least worth for its area. With many pieces to choose from, sheets become nearly full.
 *
 * @param watch each sheet counts as a step
 * @returns nothing when the budget ran out before all pieces were placed
 */
export function fillOneByOne(job: Job, watch: Watch): Draft | undefined {
  const { leastLength, leastWidth } = leastSides(job);
  const forest = createForest(job.size, leastLength, leastWidth, job.limits);
  const used = new Int32Array(job.kinds.length);
  const left = Array.from(job.area.keys()).sort((one, other) => job.area[other]! - job.area[one]!);
  const sheets: CutSheet[] = [];
  const out: number[] = [];
  let weight = 0;
  let toPlace = job.area.reduce((sum, area) => sum + area, 0);
  const pick: Pick = { at: NONE, turned: false, axis: ALONG_LENGTH, rate: Number.POSITIVE_INFINITY };
  while (left.length > 0) {
    if (watch.over()) return undefined;
    const kind = kindFor(job, used, Number.POSITIVE_INFINITY, left[0]!, toPlace, NONE);
    if (kind === NONE) {
      out.push(left.shift()!);
      continue;
    }
    const { length, width, weight: own } = job.kinds[kind]!;
    const sheet = layOut(forest, { length, width });
    let begun = false;
    while (forest.openCount > 0) {
      const leftover = smallestOpen(forest);
      choosePiece(job, forest, leftover, left, begun ? left.length : 1, sheets.length, pick);
      if (pick.at === NONE) {
        closeLeftover(forest, leftover);
        continue;
      }
      const piece = left.splice(pick.at, 1)[0]!;
      const [along, across] = pick.turned
        ? [job.width[piece]!, job.length[piece]!]
        : [job.length[piece]!, job.width[piece]!];
      cutPiece(forest, leftover, piece, along, across, pick.axis);
      toPlace -= job.area[piece]!;
      begun = true;
    }
    used[kind]!++;
    weight += own;
    sheets.push({ kind, panel: exportPanel(forest, sheet) });
  }
  return { sheets, out, weight };
}

/** Chooses among the first `count` of the pieces left. */
function choosePiece(
  job: Job,
  forest: Forest,
  leftover: number,
  left: readonly number[],
  count: number,
  turn: number,
  pick: Pick,
): void {
  pick.at = NONE;
  pick.rate = Number.POSITIVE_INFINITY;
  const stride = Math.max(1, Math.floor((count - LARGEST) / SPREAD));
  for (let at = 0; at < count; at += at < LARGEST ? 1 : stride) {
    // Every sheet sees others of the pieces that are too many to look at.
    const seen = at < LARGEST ? at : Math.min(count - 1, at + (turn % stride));
    const piece = left[seen]!;
    const length = job.length[piece]!;
    const width = job.width[piece]!;
    weigh(forest, leftover, length, width, seen, false, pick);
    if (job.turn[piece] === 1) weigh(forest, leftover, width, length, seen, true, pick);
  }
}

function weigh(
  forest: Forest,
  leftover: number,
  length: number,
  width: number,
  at: number,
  turned: boolean,
  pick: Pick,
): void {
  const fullLength = forest.length[leftover]!;
  const fullWidth = forest.width[leftover]!;
  if (length > fullLength || width > fullWidth) return;
  const area = length * width;
  const spent = forest.worth[leftover]! - worthOf(area);
  const overLength = fullLength - length;
  const overWidth = fullWidth - width;
  const byWidth = (spent - worthOf(fullLength * overWidth) - worthOf(overLength * width)) / area;
  const byLength = (spent - worthOf(overLength * fullWidth) - worthOf(length * overWidth)) / area;
  const rate = Math.min(byWidth, byLength);
  if (rate >= pick.rate) return;
  pick.at = at;
  pick.turned = turned;
  pick.axis = byWidth <= byLength ? ALONG_WIDTH : ALONG_LENGTH;
  pick.rate = rate;
}
