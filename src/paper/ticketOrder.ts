import { stepsOf as orderOfWork } from "../covering/stepsOf";
import { CARE, type Step } from "../enclosure/step";
import type { Mm } from "../measure/units";
import { together, type Block } from "./blocks";
import { evenColumns } from "./evenColumns";
import { tickBox, heading, marked, textLine, TYPE, lineHeight } from "./textBlocks";
import type { Ticket } from "./ticket";
import { COLUMN_GAP, titled, WIDE } from "./ticketBoards";
import type { Typesetter } from "./typesetter";

const STEP_INDENT: Mm = 10.5;
const NUMBER_FROM: Mm = 4.8;

export function stepsOf({ sized }: Ticket): readonly Step[] {
  return orderOfWork(sized.assembly, sized.settings);
}

/** `Care: blade in step 1; adhesive in steps 2, 3 and 5.` The first page of the job explains both. */
function careText(steps: readonly Step[]): string {
  const dangers = (Object.keys(CARE) as readonly (keyof typeof CARE)[]).flatMap((danger) => {
    const at = steps.flatMap(({ caution }, index) => (caution === danger ? [String(index + 1)] : []));
    if (at.length === 0) return [];
    const named = at.length === 1 ? at[0]! : `${at.slice(0, -1).join(", ")} and ${at.at(-1)!}`;
    return [`${CARE[danger]} in step${at.length === 1 ? "" : "s"} ${named}`];
  });
  return dangers.length === 0 ? "" : `Care: ${dangers.join("; ")}.`;
}

/** The order of assembly, a box to tick at each step; in two columns on a whole page. */
export function orderBlocks(title: string, steps: readonly Step[], width: Mm, type: Typesetter): readonly Block[] {
  const size = TYPE.body;
  const columns = width >= WIDE ? 2 : 1;
  const room = (width - (columns - 1) * COLUMN_GAP) / columns;
  const blocks = steps.map(({ text }, index) =>
    together(
      marked(
        (x, y) => [
          tickBox(x, y, size),
          textLine(`${index + 1}.`, { x: x + NUMBER_FROM, y, width: STEP_INDENT - NUMBER_FROM }, { size, bold: true }),
        ],
        STEP_INDENT,
        text,
        room,
        { size },
        type,
      ),
    ),
  );
  return [
    ...titled(title, careText(steps), width, type),
    ...(columns === 1 ? blocks : [evenColumns(blocks, columns, room + COLUMN_GAP)]),
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
