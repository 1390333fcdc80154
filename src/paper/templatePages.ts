import { formatLength } from "../measure/formatLength";
import type { Mm, WorkbookUnit } from "../measure/units";
import { bodyHeight, bodyWidth, flow, gap, together, type Block, type Frame } from "./blocks";
import { AROUND_CORNER, type CornerTemplate } from "./cornerTemplates";
import { line, OUTLINE, rectangle, type Page, type Placed } from "./page";
import { runningFoot } from "./runningFoot";
import { lineHeight, paragraph, textLine, TYPE } from "./textBlocks";
import type { Typesetter } from "./typesetter";

/** The side of the square by which a print is checked. */
export const CHECK_SIDE: Mm = 100;
const BAR_HIGH: Mm = 3;
const CHECK_ROOM: Mm = BAR_HIGH + 8;
const SLIT_WEIGHT: Mm = 0.5;
const LABEL_HIGH: Mm = 5;

/** Corners and notches in true size, each page with a bar to check the print by. */
export function templatePages(
  templates: readonly CornerTemplate[],
  unit: WorkbookUnit,
  frame: Frame,
  type: Typesetter,
): readonly Page[] {
  const checked = { ...frame, head: CHECK_ROOM };
  const width = bodyWidth(checked);
  const room = bodyHeight(checked);
  if (templates.length === 0) return [];
  const blocks = templates.flatMap((template, index) => [
    ...templateBlocks(template, index + 1, { width, room, unit }, type),
    gap(SPACE_BETWEEN),
  ]);
  const running = (page: number, of: number) => [
    ...checkBar(checked, type),
    ...runningFoot(TITLE, `page ${page} of ${of}`, checked, type),
  ];
  return flow(blocks, checked, running, TITLE);
}

const TITLE = "True-size templates";
const SPACE_BETWEEN: Mm = 8;

function templateBlocks(
  template: CornerTemplate,
  number: number,
  { width, room, unit }: { readonly width: Mm; readonly room: Mm; readonly unit: WorkbookUnit },
  type: Typesetter,
): readonly Block[] {
  const [along, across] = [shown(template.length, unit), shown(template.width, unit)];
  const turned = fits(template, width, room) ? template : quarterTurned(template);
  const drawn = fits(turned, width, room)
    ? [cornerBlock(turned, unit)]
    : paragraph(
        `Too large for this paper at scale, so not drawn: measure ${along} along the length and ${across} ${unit} along the width from the corner, and cut that away.`,
        width,
        { size: TYPE.heading, bold: true },
        type,
      );
  return [
    ...paragraph(
      `Template ${number}: ${along} × ${across} ${unit}`,
      width,
      { size: TYPE.title, bold: true, withNext: true },
      type,
    ),
    ...paragraph(
      "True size. Lay its corner on the corner of the piece; hatched is cut away; dashed is a fold; a heavy line is a cut.",
      width,
      { size: TYPE.body, withNext: true },
      type,
    ),
    { ...gap(3), withNext: true },
    ...drawn.map((block) => ({ ...block, withNext: true })),
    { ...gap(3), withNext: true },
    ...paragraph("It serves", width, { size: TYPE.heading, bold: true, withNext: true }, type),
    ...template.serves.flatMap((text) => paragraph(text, width, { size: TYPE.body }, type)),
  ];
}

/** A bar of exactly 100 mm at the head of a page, in ten parts. */
export function checkBar({ margin }: Frame, type: Typesetter): readonly Placed[] {
  const [x, y] = [margin, margin];
  const parts = 10;
  const step = CHECK_SIDE / parts;
  const text = "This bar is 100 mm long. If a rule says otherwise, print again at 100 %, not “fit to page”.";
  return [
    ...Array.from({ length: parts / 2 }, (_, index) =>
      rectangle({ x: x + 2 * index * step, y, width: step, height: BAR_HIGH }, { weight: 0, shade: 1 }),
    ),
    rectangle({ x, y, width: CHECK_SIDE, height: BAR_HIGH }),
    textLine(text, { x, y: y + BAR_HIGH + 1, width: type.width(text, TYPE.small) }, { size: TYPE.small }),
  ];
}

function fits({ length, width }: CornerTemplate, across: Mm, down: Mm): boolean {
  return length + AROUND_CORNER <= across && width + AROUND_CORNER <= down - RESERVED;
}

/** For the words around a drawing. */
const RESERVED: Mm = 60;

function quarterTurned({ length, width, lines, serves }: CornerTemplate): CornerTemplate {
  const swap = ([x, y]: readonly [Mm, Mm]): readonly [Mm, Mm] => [y, x];
  return {
    length: width,
    width: length,
    lines: lines.map(({ kind, from, to }) => ({ kind, from: swap(from), to: swap(to) })),
    serves,
  };
}

/** The corner at the upper left, what is cut away hatched, the piece going on to the right and down. */
function cornerBlock({ length, width, lines }: CornerTemplate, unit: WorkbookUnit): Block {
  const [right, bottom] = [length + AROUND_CORNER, width + AROUND_CORNER];
  const size = TYPE.small;
  const figure: Block = {
    height: bottom,
    withNext: false,
    at: (x, y) => [
      {
        kind: "outline",
        points: rectangle({ x, y, width: length, height: width }).points,
        weight: 0,
        shade: 0,
        hatched: true,
      },
      rectangle({ x, y, width: length, height: width }, { weight: OUTLINE }),
      line([x + length, y], [x + right, y], { weight: OUTLINE }),
      line([x, y + width], [x, y + bottom], { weight: OUTLINE }),
      ...lines.map(({ kind, from, to }) =>
        line([x + from[0], y + from[1]], [x + to[0], y + to[1]], {
          dashed: kind === "fold",
          weight: kind === "cut" ? SLIT_WEIGHT : undefined,
        }),
      ),
    ],
  };
  const label: Block = {
    height: LABEL_HIGH,
    withNext: true,
    at: (x, y) => [
      textLine(
        `${shown(length, unit)} across, ${shown(width, unit)} ${unit} down`,
        { x, y: y + LABEL_HIGH - lineHeight(size), width: right + AROUND_CORNER },
        { size },
      ),
    ],
  };
  return together([label, figure]);
}

function shown(size: Mm, unit: WorkbookUnit): string {
  return formatLength(size, unit);
}
