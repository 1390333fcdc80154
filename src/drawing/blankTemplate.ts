import type { WorkbookUnit } from "../measure/units";
import { flatFigure } from "./flatFigure";
import { drawing, IN_PAGE, type DrawingOptions } from "./look";
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
    look = IN_PAGE,
  }: DrawingOptions & {
    readonly unit: WorkbookUnit;
    readonly width?: number;
    /** Of the piece itself at the most, without what is written around it. */
    readonly height?: number;
  },
): string {
  const room = width - 2 * MARGIN;
  const figure = flatFigure(template, { unit, width: room, height: height ?? room * HEIGHT_SHARE, look });
  const markup = `<g transform="translate(${MARGIN} ${MARGIN})">${figure.markup}</g>`;
  return drawing(`Template of ${template.name}`, width, figure.height + 2 * MARGIN, markup, look);
}
