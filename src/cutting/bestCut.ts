import { CHANCE_PARTS, type Choice, keep } from "./choice";
import { ALONG_LENGTH, ALONG_WIDTH, type Forest, NONE } from "./forest";
import type { Job } from "./job";
import type { Random } from "./random";
import { weighLimited } from "./weighLimited";
import { worthOf } from "./worth";

/** Finds the open leftover and the way of cutting that lose the least worth; `blink` is the chance to overlook a way. */
export function bestCut(forest: Forest, job: Job, piece: number, random: Random, blink: number, choice: Choice): void {
  choice.leftover = NONE;
  choice.loss = Number.POSITIVE_INFINITY;
  const length = job.length[piece]!;
  const width = job.width[piece]!;
  const turn = job.turn[piece] === 1;
  const { open, openLength, openWidth, openCount } = forest;
  for (let slot = 0; slot < openCount; slot++) {
    const fullLength = openLength[slot]!;
    const fullWidth = openWidth[slot]!;
    if (length <= fullLength && width <= fullWidth)
      weighCut(forest, job, piece, open[slot]!, false, random, blink, choice);
    if (turn && width <= fullLength && length <= fullWidth)
      weighCut(forest, job, piece, open[slot]!, true, random, blink, choice);
  }
}

/** Weighs both ways of cutting a piece, lying one way, from a leftover; keeps the better in `choice`. */
export function weighCut(
  forest: Forest,
  job: Job,
  piece: number,
  leftover: number,
  turned: boolean,
  random: Random,
  blink: number,
  choice: Choice,
): void {
  if (forest.limits.bench) return weighLimited(forest, job, piece, leftover, turned, random, blink, choice);
  const length = turned ? job.width[piece]! : job.length[piece]!;
  const width = turned ? job.length[piece]! : job.width[piece]!;
  const fullLength = forest.length[leftover]!;
  const fullWidth = forest.width[leftover]!;
  const overLength = fullLength - length;
  const overWidth = fullWidth - width;
  if (overLength < 0 || overWidth < 0) return;
  const worth = forest.worth[leftover]!;
  if (worth - worthOf(fullLength * fullWidth - length * width) >= choice.loss) return;
  if (!(blink > 0 && random.below(CHANCE_PARTS) < blink)) {
    const loss = worth - worthOf(fullLength * overWidth) - worthOf(overLength * width);
    if (loss < choice.loss) keep(choice, leftover, turned, ALONG_WIDTH, length, width, loss);
  }
  if (overLength === 0 || overWidth === 0) return;
  if (!(blink > 0 && random.below(CHANCE_PARTS) < blink)) {
    const loss = worth - worthOf(overLength * fullWidth) - worthOf(length * overWidth);
    if (loss < choice.loss) keep(choice, leftover, turned, ALONG_LENGTH, length, width, loss);
  }
}

/** Weighs how to cut a piece from a new sheet. Where a sliver cannot be helped, it is allowed: no piece is refused for it. */
export function weighNew(forest: Forest, job: Job, piece: number, sheet: number, random: Random, choice: Choice): void {
  choice.leftover = NONE;
  choice.loss = Number.POSITIVE_INFINITY;
  weighCut(forest, job, piece, sheet, false, random, 0, choice);
  if (job.turn[piece] === 1) weighCut(forest, job, piece, sheet, true, random, 0, choice);
  if (choice.leftover !== NONE || !forest.limits.bench) return;
  weighLimited(forest, job, piece, sheet, false, random, 0, choice, true);
  if (job.turn[piece] === 1) weighLimited(forest, job, piece, sheet, true, random, 0, choice, true);
}
