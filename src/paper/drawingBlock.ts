import type { Mm } from "../measure/units";
import type { Block } from "./blocks";

/** A drawing as wide as it is given room for, or as high as it may be. */
export function drawingBlock(svg: string, width: Mm, highest: Mm): Block {
  const [, across = 1, down = 1] = (/viewBox="0 0 (\d+) (\d+)"/.exec(svg) ?? []).map(Number);
  const scale = Math.min(width / across, highest / down);
  const box = { width: across * scale, height: down * scale };
  return {
    height: box.height,
    withNext: false,
    at: (x, y) => [{ kind: "drawing", box: { x: x + (width - box.width) / 2, y, ...box }, svg }],
  };
}
