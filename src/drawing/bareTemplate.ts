import { flatPiece } from "./flatPiece";
import { picture, type Picture } from "./picture";
import type { Template } from "./template";

/** Room for half the width of the outline, units. */
const RIM = 1;

/** A flat piece to scale without words: outline, folds, cuts, what is cut away, grain. Its sizes are written beside it. */
export function bareTemplate(template: Template, width: number): Picture {
  const scale = (width - 2 * RIM) / template.length;
  const shapes = flatPiece(template, { x: RIM, y: RIM, scale });
  return picture(`${template.name} with its folds`, width, template.width * scale + 2 * RIM, shapes);
}
