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
  const byLength = panel.axis === ALONG_LENGTH;
  const size = (part: Panel) => (byLength ? part.length : part.width);
  const parts: Panel[] = [];
  let left = 0;
  const add = (part: Panel) => {
    if (isSpare(part)) left += size(part);
    else parts.push(part);
  };
  for (const part of panel.parts) {
    const own = arrange(part);
    if (own.parts.length > 0 && own.axis === panel.axis) own.parts.forEach(add);
    else add(own);
  }
  parts.sort((one, other) => size(other) - size(one));
  if (left > 0) parts.push(spareOf(panel, left));
  const [only] = parts;
  const { length, width, axis, piece } = panel;
  return parts.length === 1 && only !== undefined ? only : { length, width, axis, parts, piece };
}

function spareOf(panel: Panel, size: number): Panel {
  const byLength = panel.axis === ALONG_LENGTH;
  const [length, width] = byLength ? [size, panel.width] : [panel.length, size];
  return { length, width, axis: ALONG_LENGTH, parts: [], piece: NONE };
}
