import { CHANCE_PARTS, type Choice, keep } from "./choice";
import { ALONG_LENGTH, ALONG_WIDTH, type Forest, NONE } from "./forest";
import type { Job } from "./job";
import { STRETCH_LENGTH, STRETCH_WIDTH } from "./limits";
import { stageOf } from "./panels";
import type { Random } from "./random";
import { worthOf } from "./worth";

/**
 * Weighs both ways of cutting a piece, lying one way, from a leftover, among those that keep the job's limits: the
 * stages, a trim after the last, no sliver, no cut too long. A piece that is trimmed later takes up a narrow leftover
 * beside it.
 *
 * @param slivers true where the piece has to be placed all the same: then a sliver is allowed
 */
export function weighLimited(
  forest: Forest,
  job: Job,
  piece: number,
  leftover: number,
  turned: boolean,
  random: Random,
  blink: number,
  choice: Choice,
  slivers = false,
): void {
  const fullLength = forest.length[leftover]!;
  const fullWidth = forest.width[leftover]!;
  const own = turned ? job.width[piece]! : job.length[piece]!;
  const across = turned ? job.length[piece]! : job.width[piece]!;
  if (own > fullLength || across > fullWidth) return;
  const { stages, absorbed, cutLength } = forest.limits;
  const stretch = job.stretch[piece]!;
  const longer = stretch & (turned ? STRETCH_WIDTH : STRETCH_LENGTH);
  const wider = stretch & (turned ? STRETCH_LENGTH : STRETCH_WIDTH);
  const length = longer !== 0 && fullLength - own <= absorbed ? fullLength : own;
  const width = wider !== 0 && fullWidth - across <= absorbed ? fullWidth : across;
  const overLength = fullLength - length;
  const overWidth = fullWidth - width;
  const worth = forest.worth[leftover]!;
  // No way of cutting leaves more than all the rest in one.
  if (worth - worthOf(fullLength * fullWidth - length * width) >= choice.loss) return;
  if (overLength === 0 || overWidth === 0) {
    const axis = overLength === 0 ? ALONG_WIDTH : ALONG_LENGTH;
    const over = overLength === 0 ? overWidth : overLength;
    if (over > 0) {
      if (!slivers && isSliver(forest, leftover, axis, over, true)) return;
      const stage = stageOf(forest, leftover, axis);
      if (stage > stages + 1 || (axis === ALONG_WIDTH ? fullLength : fullWidth) > cutLength) return;
      if (blink > 0 && random.below(CHANCE_PARTS) < blink) return;
      const left = stage > stages ? 0 : worthOf(axis === ALONG_WIDTH ? fullLength * over : over * fullWidth);
      if (worth - left < choice.loss) keep(choice, leftover, turned, ALONG_WIDTH, length, width, worth - left);
    } else if (worth < choice.loss) keep(choice, leftover, turned, ALONG_WIDTH, length, width, worth);
    return;
  }
  for (const axis of AXES) {
    const stage = stageOf(forest, leftover, axis);
    const byLength = axis === ALONG_LENGTH;
    // The first cut goes right across the leftover, the second across the strip that it frees.
    if (stage > stages || (byLength ? fullWidth : fullLength) > cutLength || (byLength ? length : width) > cutLength)
      continue;
    if (
      !slivers &&
      (isSliver(forest, leftover, ALONG_LENGTH, overLength, byLength) ||
        isSliver(forest, leftover, ALONG_WIDTH, overWidth, !byLength))
    )
      continue;
    if (blink > 0 && random.below(CHANCE_PARTS) < blink) continue;
    const remainder = worthOf(byLength ? overLength * fullWidth : fullLength * overWidth);
    const rest = stage === stages ? 0 : worthOf(byLength ? length * overWidth : overLength * width);
    const loss = worth - remainder - rest;
    if (loss < choice.loss) keep(choice, leftover, turned, axis, length, width, loss);
  }
}

const AXES = [ALONG_WIDTH, ALONG_LENGTH] as const;

/**
 * Whether what is left over along an axis of a leftover would be a sliver.
 *
 * @param first whether the first cut parts the leftover along this axis, so that what is left stays beside the parts there are
 */
function isSliver(forest: Forest, leftover: number, axis: number, over: number, first: boolean): boolean {
  const { gap, leastWaste } = forest.limits;
  if (over <= gap || over >= leastWaste) return false;
  return over + trimBeyond(forest, leftover, axis, first) < leastWaste;
}

/** What is cut away beyond a leftover's end along an axis: the edge trim where it lies along the edge, however the parts are ordered. */
function trimBeyond(forest: Forest, leftover: number, axis: number, first: boolean): number {
  for (let at = leftover, last = first; ; last = false) {
    const parent = forest.parent[at]!;
    if (parent === NONE) return forest.edgeTrim[at]!;
    if (forest.axis[parent] === axis && !last) return 0;
    at = parent;
  }
}
