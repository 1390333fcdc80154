import type { Picture } from "../drawing/picture";
import type { Mm } from "../measure/units";
import type { Block } from "./blocks";

/** A drawing as wide as it is given room for, or as high as it may be. */
export function drawingBlock(picture: Picture, width: Mm, highest: Mm): Block {
  const scale = Math.min(width / picture.width, highest / picture.height);
  const box = { width: picture.width * scale, height: picture.height * scale };
  return {
    height: box.height,
    withNext: false,
    at: (x, y) => [{ kind: "drawing", box: { x: x + (width - box.width) / 2, y, ...box }, picture }],
  };
}
