import { ALONG_LENGTH, NONE } from "./forest";
import type { Panel } from "./panels";

/** Whether a panel of a plan is left over: neither a piece nor cut. */
export function isSpare(panel: Panel): boolean {
  return panel.piece === NONE && panel.parts.length === 0;
}

/**
 * The same plan with the parts of each panel in the order of cutting: widest first, equal ones together, spare last.
 * What is cut the same way twice over becomes one row.
 */
export function arrange(panel: Panel): Panel {
  if (panel.parts.length === 0) return panel;
  const parts: Panel[] = [];
  const left = gatherParts(panel, panel.axis, parts);
  sortBySize(parts, panel.axis);
  if (left > 0) parts.push(spareOf(panel, left));
  const [only] = parts;
  const { length, width, axis, piece } = panel;
  return parts.length === 1 && only !== undefined ? only : { length, width, axis, parts, piece };
}

/** Puts the arranged parts of a panel, and those of its rows the same way, into a list; returns the size of what is spare. */
function gatherParts(panel: Panel, axis: number, into: Panel[]): number {
  let left = 0;
  for (const part of panel.parts) {
    const own = arrange(part);
    if (own.parts.length === 0) {
      if (own.piece === NONE) left += sizeAlong(own, axis);
      else into.push(own);
    } else if (own.axis === axis)
      for (const each of own.parts)
        if (isSpare(each)) left += sizeAlong(each, axis);
        else into.push(each);
    else into.push(own);
  }
  return left;
}

/** Largest first, equal ones in the order they are in: a few, so one after another goes to its place. */
function sortBySize(parts: Panel[], axis: number): void {
  for (let at = 1; at < parts.length; at++) {
    const part = parts[at]!;
    const size = sizeAlong(part, axis);
    let place = at;
    for (; place > 0 && sizeAlong(parts[place - 1]!, axis) < size; place--) parts[place] = parts[place - 1]!;
    parts[place] = part;
  }
}

function sizeAlong(panel: Panel, axis: number): number {
  return axis === ALONG_LENGTH ? panel.length : panel.width;
}

function spareOf(panel: Panel, size: number): Panel {
  const byLength = panel.axis === ALONG_LENGTH;
  const [length, width] = byLength ? [size, panel.width] : [panel.length, size];
  return { length, width, axis: ALONG_LENGTH, parts: [], piece: NONE };
}
