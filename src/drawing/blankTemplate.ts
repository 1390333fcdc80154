import type { WorkbookUnit } from "../measure/units";
import { flatFigure } from "./flatFigure";
import { picture, shapesMoved, type Picture } from "./picture";
import type { Template } from "./template";

const MARGIN = 10;
const USUAL_WIDTH = 640;
const HEIGHT_SHARE = 0.75;

/**
 * One flat piece, dimensioned: turn-ins, folds, and what is cut away at the corners.
 *
 * @param template of a covering blank (`templateOfBlank`) or of a folded board or card (`templateOfPart`)
 */
export function blankTemplate(
  template: Template,
  {
    unit,
    width = USUAL_WIDTH,
    height,
  }: {
    readonly unit: WorkbookUnit;
    readonly width?: number;
    /** Of the piece itself at the most, without what is written around it. */
    readonly height?: number;
  },
): Picture {
  const room = width - 2 * MARGIN;
  const figure = flatFigure(template, { unit, width: room, height: height ?? room * HEIGHT_SHARE });
  const shapes = shapesMoved(figure.shapes, MARGIN, MARGIN);
  return picture(`Template of ${template.name}`, width, figure.height + 2 * MARGIN, shapes);
}
