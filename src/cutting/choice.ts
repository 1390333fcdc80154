import { ALONG_LENGTH, NONE } from "./forest";

/** Where and how to cut a piece; written again for every piece, so that the search makes no garbage. */
export interface Choice {
  leftover: number;
  turned: boolean;
  axis: number;
  /** What the piece takes up of the leftover. */
  length: number;
  width: number;
  /** Worth lost by the cut: the least among the ways seen. */
  loss: number;
}

/** Chances are counted in parts of this. */
export const CHANCE_PARTS = 1024;

export function noChoice(): Choice {
  return { leftover: NONE, turned: false, axis: ALONG_LENGTH, length: 0, width: 0, loss: Number.POSITIVE_INFINITY };
}

/** Keeps a way of cutting as the best so far. */
export function keep(
  choice: Choice,
  leftover: number,
  turned: boolean,
  axis: number,
  length: number,
  width: number,
  loss: number,
): void {
  choice.leftover = leftover;
  choice.turned = turned;
  choice.axis = axis;
  choice.length = length;
  choice.width = width;
  choice.loss = loss;
}
