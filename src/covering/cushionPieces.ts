import type { Assembly } from "../enclosure/assembly";
import { wholeDown, type Part } from "../enclosure/part";
import { extent, X, Y, Z } from "../enclosure/space";
import type { Mm } from "../measure/units";
import type { Settings } from "../settings/schema";
import { blankPart } from "./cutBlanks";

export const CUSHION_PIECES = ["cushion base", "cushion side", "cushion head", "cushion top"] as const;

/** How much smaller a cushion is than the space that it lies in, so that it goes in without a push. */
const CUSHION_LESS_MM: Mm = 1;

/**
 * Cushioning of the tray that holds the item: a base piece under it, four pieces standing on that around it, a top
 * piece over all. Common practice, no source. Thickness stands in the caliper.
 */
export function cushionPieces({ holder, cushion }: Assembly, settings: Settings): readonly Part[] {
  const c = holder.covering;
  const { base, sides, top } = cushion;
  const width = extent(holder.inside, X) - 2 * c - CUSHION_LESS_MM;
  const height = extent(holder.inside, Y) - 2 * c - CUSHION_LESS_MM;
  const standing = extent(holder.inside, Z) - c - base - top;
  const row = settings.stock.find((each) => each.material === "cushion");
  const piece = (name: string, count: number, length: Mm, across: Mm, thickness: Mm): readonly Part[] => {
    const [along, wide] = [wholeDown(length), wholeDown(across)];
    if (thickness === 0 || along <= 0 || wide <= 0) return [];
    const part = blankPart({ name, tray: holder.name, material: "cushion" }, along, wide, count, row, "");
    return [{ ...part, caliper: thickness, grain: "either" }];
  };
  return [
    ...piece("cushion base", 1, height, width, base),
    ...piece("cushion side", 2, height, standing, sides),
    ...piece("cushion head", 2, width - 2 * sides, standing, sides),
    ...piece("cushion top", 1, height, width, top),
  ];
}
