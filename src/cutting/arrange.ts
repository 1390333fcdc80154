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
  const size = (part: Panel) => (panel.axis === ALONG_LENGTH ? part.length : part.width);
  const all = panel.parts
    .map(arrange)
    .flatMap((part) => (part.parts.length > 0 && part.axis === panel.axis ? part.parts : [part]));
  const cut = all.filter((part) => !isSpare(part)).sort((one, other) => size(other) - size(one));
  const left = all.filter(isSpare).reduce((sum, part) => sum + size(part), 0);
  const parts = left > 0 ? [...cut, spareOf(panel, left)] : cut;
  const [only] = parts;
  const { length, width, axis, piece } = panel;
  return parts.length === 1 && only !== undefined ? only : { length, width, axis, parts, piece };
}

function spareOf(panel: Panel, size: number): Panel {
  const byLength = panel.axis === ALONG_LENGTH;
  const [length, width] = byLength ? [size, panel.width] : [panel.length, size];
  return { length, width, axis: ALONG_LENGTH, parts: [], piece: NONE };
}
