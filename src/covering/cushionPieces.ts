import type { Assembly } from "../enclosure/assembly";
import { wholeDown, type Part } from "../enclosure/part";
import { extent, X, Y, Z } from "../enclosure/space";
import { benchLength } from "../measure/benchLength";
import type { Mm } from "../measure/units";
import type { Settings } from "../settings/schema";
import { blankPart } from "./cutBlanks";

export const CUSHION_PIECES = ["cushion base", "cushion side", "cushion head", "cushion top"] as const;
/** Pieces of a well, which take the place of cushions round the item. */
export const WELL_PIECES = ["well layer", "lifting ribbon"] as const;

/** How much smaller a cushion is than the space that it lies in, so that it goes in without a push. */
const CUSHION_LESS_MM: Mm = 1;
/** Thickness of a layer where the stock table has no cushion. From memory. */
const USUAL_LAYER_MM: Mm = 10;
const NOISE_MM: Mm = 1e-6;
/** A ribbon under the item, up both sides, with an end to take hold of. From memory. */
const RIBBON_WIDTH_MM: Mm = 20;
const RIBBON_END_MM: Mm = 30;

/**
 * Cushioning of the tray that holds the item: a base piece under it, four pieces standing on that around it, a top piece
 * over all; or in place of the four a well, layers with a recess of the item's own size. Common practice, no source.
 * The caliper of a piece is its thickness.
 */
export function cushionPieces({ holder, cushion }: Assembly, settings: Settings): readonly Part[] {
  const c = holder.covering;
  const { base, sides, top } = cushion;
  if (base === 0 && sides === 0 && top === 0 && !settings.liftingRibbon) return [];
  const [clearWidth, clearHeight] = [extent(holder.inside, X) - 2 * c, extent(holder.inside, Y) - 2 * c];
  const [width, height] = [clearWidth - CUSHION_LESS_MM, clearHeight - CUSHION_LESS_MM];
  const standing = extent(holder.inside, Z) - c - base - top;
  const row = settings.stock.find((each) => each.material === "cushion");
  const piece = (name: string, count: number, length: Mm, across: Mm, thickness: Mm): readonly Part[] => {
    const [along, wide] = [wholeDown(length), wholeDown(across)];
    if (thickness === 0 || along <= 0 || wide <= 0) return [];
    const part = blankPart({ name, tray: holder.name, material: "cushion" }, along, wide, count, row, "");
    return [{ ...part, caliper: thickness, grain: "either" }];
  };
  const around = (): readonly Part[] => [
    ...piece("cushion side", 2, height, standing, sides),
    ...piece("cushion head", 2, width - 2 * sides, standing, sides),
  ];
  const well = (): readonly Part[] => {
    const layer = row === undefined || row.caliper === 0 ? USUAL_LAYER_MM : row.caliper;
    // The item stands out of the last layer rather than that over the item.
    const layers = Math.max(1, Math.floor((standing + NOISE_MM) / layer));
    const recess = { length: clearHeight - 2 * sides, width: clearWidth - 2 * sides };
    const shown = (size: Mm) => benchLength(size, settings.answerUnit);
    const note = `cut out the recess in the middle, ${shown(recess.length)} x ${shown(recess.width)}`;
    return piece("well layer", layers, height, width, Math.min(layer, standing)).map((part) => ({
      ...part,
      recess,
      note,
    }));
  };
  return [
    ...piece("cushion base", 1, height, width, base),
    ...(settings.well && sides > 0 ? well() : around()),
    ...piece("cushion top", 1, height, width, top),
    ...(settings.liftingRibbon ? [ribbon()] : []),
  ];

  function ribbon(): Part {
    const long = clearWidth - 2 * sides + 2 * (standing + RIBBON_END_MM);
    const cloth = settings.stock.find((each) => each.material === "covering");
    const spec = { name: "lifting ribbon", tray: holder.name, material: "covering" } as const;
    return blankPart(spec, wholeDown(long), RIBBON_WIDTH_MM, 1, cloth, "under the item, its ends up at both sides");
  }
}
