import { ALONG_LENGTH, ALONG_WIDTH, type Forest, NONE } from "./forest";
import type { Job } from "./job";
import type { Random } from "./random";
import { worthOf } from "./worth";

/** Where and how to cut a piece; written anew for every piece, so that the search makes no garbage. */
export interface Choice {
  leftover: number;
  turned: boolean;
  axis: number;
  /** Worth lost by the cut: the least among the ways seen. */
  loss: number;
}

/** Chances are counted in parts of this. */
export const CHANCE_PARTS = 1024;

export function noChoice(): Choice {
  return { leftover: NONE, turned: false, axis: ALONG_LENGTH, loss: Number.POSITIVE_INFINITY };
}

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
      weighCut(forest, open[slot]!, length, width, false, random, blink, choice);
    if (turn && width <= fullLength && length <= fullWidth)
      weighCut(forest, open[slot]!, width, length, true, random, blink, choice);
  }
}

/** Weighs both ways of cutting a piece, lying one way, from a leftover; keeps the better in `choice`. */
export function weighCut(
  forest: Forest,
  leftover: number,
  length: number,
  width: number,
  turned: boolean,
  random: Random,
  blink: number,
  choice: Choice,
): void {
  const fullLength = forest.length[leftover]!;
  const fullWidth = forest.width[leftover]!;
  const overLength = fullLength - length;
  const overWidth = fullWidth - width;
  if (overLength < 0 || overWidth < 0) return;
  const worth = forest.worth[leftover]!;
  if (worth - worthOf(fullLength * fullWidth - length * width) >= choice.loss) return;
  if (!(blink > 0 && random.below(CHANCE_PARTS) < blink)) {
    const loss = worth - worthOf(fullLength * overWidth) - worthOf(overLength * width);
    if (loss < choice.loss) keep(choice, leftover, turned, ALONG_WIDTH, loss);
  }
  if (overLength === 0 || overWidth === 0) return;
  if (!(blink > 0 && random.below(CHANCE_PARTS) < blink)) {
    const loss = worth - worthOf(overLength * fullWidth) - worthOf(length * overWidth);
    if (loss < choice.loss) keep(choice, leftover, turned, ALONG_LENGTH, loss);
  }
}

function keep(choice: Choice, leftover: number, turned: boolean, axis: number, loss: number): void {
  choice.leftover = leftover;
  choice.turned = turned;
  choice.axis = axis;
  choice.loss = loss;
}
