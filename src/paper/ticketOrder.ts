import { stepsOf as orderOfWork } from "../covering/stepsOf";
import { CARE, type Step } from "../enclosure/step";
import type { Mm } from "../measure/units";
import type { Block } from "./blocks";
import { tickBox, heading, marked, textLine, TYPE, lineHeight } from "./textBlocks";
import type { Ticket } from "./ticket";
import type { Typesetter } from "./typesetter";

const STEP_INDENT: Mm = 10.5;
const NUMBER_FROM: Mm = 4.8;

export function stepsOf({ sized }: Ticket): readonly Step[] {
  return orderOfWork(sized.assembly, sized.settings);
}

/** A step with the word for its danger, which the first page of the job explains. */
function stepText({ text, caution }: Step): string {
  return caution === undefined ? text : `${text} ${CARE[caution]}`.trimEnd();
}

/** The order of assembly, a box to tick at each step. */
export function orderBlocks(title: string, steps: readonly Step[], width: Mm, type: Typesetter): readonly Block[] {
  const size = TYPE.body;
  return [
    ...heading(title, width, type),
    ...steps.flatMap((step, index) =>
      marked(
        (x, y) => [
          tickBox(x, y, size),
          textLine(`${index + 1}.`, { x: x + NUMBER_FROM, y, width: STEP_INDENT - NUMBER_FROM }, { size, bold: true }),
        ],
        STEP_INDENT,
        stepText(step),
        width,
        { size },
        type,
      ),
    ),
  ];
}

/** Boxes to tick for steps that are printed once for all tickets alike. */
export function orderElsewhere(letter: string, steps: readonly Step[], width: Mm, type: Typesetter): readonly Block[] {
  const size = TYPE.heading;
  const across = Math.floor(width / STEP_BOX);
  const rows = Math.ceil(steps.length / across);
  return [
    ...heading(`Order of assembly: list ${letter}, printed once after the tickets`, width, type),
    {
      height: rows * lineHeight(size),
      withNext: false,
      at: (x, y) =>
        steps.flatMap((_, index) => {
          const [left, top] = [x + (index % across) * STEP_BOX, y + Math.floor(index / across) * lineHeight(size)];
          return [
            tickBox(left, top, size),
            textLine(`${index + 1}`, { x: left + NUMBER_FROM, y: top, width: STEP_BOX - NUMBER_FROM }, { size }),
          ];
        }),
    },
  ];
}

const STEP_BOX: Mm = 12;
