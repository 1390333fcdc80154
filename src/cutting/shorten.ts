import { isSpare } from "./arrange";
import { ALONG_LENGTH, NONE } from "./forest";
import type { Panel } from "./panels";
import type { Random } from "./random";

/** The least length to which a panel can be cut down with all its pieces. */
export function neededLength(panel: Panel): number {
  if (panel.piece !== NONE) return panel.length;
  const needs = panel.parts.map(neededLength);
  if (panel.axis === ALONG_LENGTH) return needs.reduce((sum, need) => sum + need, 0);
  return needs.reduce((most, need) => Math.max(most, need), 0);
}

/**
 * The panel cut down to a length, its parts moved together.
 *
 * @param out takes the pieces that have to go
 */
export function shorten(panel: Panel, length: number, random: Random, out: number[]): Panel {
  if (isSpare(panel)) return { ...panel, length };
  if (panel.piece !== NONE) {
    if (panel.length === length) return panel;
    if (panel.length < length) return row([panel], length, panel.width);
    out.push(panel.piece);
    return spare(length, panel.width);
  }
  if (panel.axis === ALONG_LENGTH) return row(shortenRow(panel.parts, length, random, out), length, panel.width);
  const parts = panel.parts.map((part) => shorten(part, length, random, out));
  const cut = parts.filter((part) => !isSpare(part));
  const left = panel.width - cut.reduce((sum, part) => sum + part.width, 0);
  if (cut.length === 0) return spare(length, panel.width);
  return { ...panel, length, parts: left > 0 ? [...cut, spare(length, left)] : cut };
}

/** The parts of a row, as short as they go; while they are too long together, one of them gives way. */
function shortenRow(parts: readonly Panel[], length: number, random: Random, out: number[]): readonly Panel[] {
  let kept = parts.filter((part) => !isSpare(part));
  const total = () => kept.reduce((sum, part) => sum + neededLength(part), 0);
  while (total() > length) {
    const over = total() - length;
    const at = random.below(kept.length);
    const less = Math.max(0, neededLength(kept[at]!) - over);
    const shorter = shorten(kept[at]!, less, random, out);
    kept = kept.map((part, index) => (index === at ? shorter : part)).filter((part) => !isSpare(part));
  }
  return kept.map((part) => shorten(part, neededLength(part), random, out));
}

function row(parts: readonly Panel[], length: number, width: number): Panel {
  const left = length - parts.reduce((sum, part) => sum + part.length, 0);
  if (parts.length === 0) return spare(length, width);
  return { length, width, axis: ALONG_LENGTH, parts: left > 0 ? [...parts, spare(left, width)] : parts, piece: NONE };
}

function spare(length: number, width: number): Panel {
  return { length, width, axis: ALONG_LENGTH, parts: [], piece: NONE };
}
