import { isSpare } from "./arrange";
import { ALONG_LENGTH, NONE } from "./forest";
import type { Job } from "./job";
import type { Panel } from "./panels";
import type { Random } from "./random";

/** What may not be left at the end of a part: more than the gap, and less than the least waste. */
export interface EndWaste {
  readonly gap: number;
  readonly leastWaste: number;
  /** What is cut away beyond the end of the whole panel. */
  readonly edgeTrim: number;
}

const ANY_WASTE: EndWaste = { gap: 0, leastWaste: 0, edgeTrim: 0 };

/** The end waste that a job allows on sheets of one kind. */
export function endWaste({ limits, kinds }: Job, kind: number): EndWaste {
  const { gap, leastWaste } = limits;
  return limits.bench ? { gap, leastWaste, edgeTrim: kinds[kind]!.edgeTrim } : ANY_WASTE;
}

/** The least length to which a panel can be cut down with all its pieces, and no sliver that was not there. */
export function neededLength(panel: Panel, waste: EndWaste = ANY_WASTE): number {
  if (panel.piece !== NONE) return panel.length;
  if (panel.axis === ALONG_LENGTH) {
    const own = inside(waste);
    let sum = 0;
    for (const part of panel.parts) sum += neededLength(part, own);
    return sum;
  }
  const needs: number[] = [];
  for (const part of panel.parts) if (!isSpare(part)) needs.push(neededLength(part, waste));
  let length = needs.reduce((most, need) => Math.max(most, need), 0);
  const least = waste.leastWaste - waste.edgeTrim;
  for (;;) {
    const tight = needs.find((need) => length - need > waste.gap && length - need < least);
    if (tight === undefined) return Math.min(length, panel.length);
    length = tight + least;
  }
}

/** Beyond a part of a row lies another one, wherever the row is cut first. */
function inside(waste: EndWaste): EndWaste {
  return waste.edgeTrim === 0 ? waste : { ...waste, edgeTrim: 0 };
}

/**
 * The panel cut down to a length, its parts moved together.
 *
 * @param out takes the pieces that have to go
 */
export function shorten(
  panel: Panel,
  length: number,
  random: Random,
  out: number[],
  waste: EndWaste = ANY_WASTE,
): Panel {
  if (isSpare(panel)) return spare(length, panel.width);
  if (panel.piece !== NONE) {
    if (panel.length === length) return panel;
    if (panel.length < length) return row([panel], length, panel.width);
    out.push(panel.piece);
    return spare(length, panel.width);
  }
  if (panel.axis === ALONG_LENGTH)
    return row(shortenRow(panel.parts, length, random, out, inside(waste)), length, panel.width);
  const parts = panel.parts.map((part) => shorten(part, length, random, out, waste));
  const cut = parts.filter((part) => !isSpare(part));
  const left = panel.width - cut.reduce((sum, part) => sum + part.width, 0);
  if (cut.length === 0) return spare(length, panel.width);
  const { width, axis, piece } = panel;
  return { length, width, axis, parts: left > 0 ? [...cut, spare(length, left)] : cut, piece };
}

/** The parts of a row, as short as they go; while they are too long together, one of them gives way. */
function shortenRow(
  parts: readonly Panel[],
  length: number,
  random: Random,
  out: number[],
  waste: EndWaste,
): readonly Panel[] {
  let kept = parts.filter((part) => !isSpare(part));
  const total = () => kept.reduce((sum, part) => sum + neededLength(part, waste), 0);
  while (total() > length) {
    const over = total() - length;
    const at = random.below(kept.length);
    const less = Math.max(0, neededLength(kept[at]!, waste) - over);
    const shorter = shorten(kept[at]!, less, random, out, waste);
    kept = kept.map((part, index) => (index === at ? shorter : part)).filter((part) => !isSpare(part));
  }
  return kept.map((part) => shorten(part, neededLength(part, waste), random, out, waste));
}

function row(parts: readonly Panel[], length: number, width: number): Panel {
  const left = length - parts.reduce((sum, part) => sum + part.length, 0);
  if (parts.length === 0) return spare(length, width);
  return { length, width, axis: ALONG_LENGTH, parts: left > 0 ? [...parts, spare(left, width)] : parts, piece: NONE };
}

function spare(length: number, width: number): Panel {
  return { length, width, axis: ALONG_LENGTH, parts: [], piece: NONE };
}
