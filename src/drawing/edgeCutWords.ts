import { benchLength } from "../measure/benchLength";
import type { Mm, WorkbookUnit } from "../measure/units";
import type { EdgeCuts } from "../enclosure/placedPart";

/** `cut away along both edges, from the end of the small tray: 0 to 46.5, 50 deep; ...`: every step of an edge. */
export function edgeCutWords({ steps, fromEnd }: Pick<EdgeCuts, "steps" | "fromEnd">, unit: WorkbookUnit): string {
  const shown = (size: Mm) => benchLength(size, unit);
  const each = steps.map(({ from, to, deep }) => `${shown(from)} to ${shown(to)}, ${shown(deep)} deep`);
  return `cut away along both edges, from ${fromEnd}: ${each.join("; ")}`;
}
