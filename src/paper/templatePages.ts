import { nearestMark } from "../measure/benchLength";
import { MM_PER, type Mm, type WorkbookUnit } from "../measure/units";
import { besideWords } from "./besideWords";
import { beside, bodyHeight, bodyWidth, flow, gap, together, type Block, type Frame } from "./blocks";
import { gaugeBlocks } from "./gaugeBlocks";
import type { Gauge } from "./gauges";
import { AROUND_CORNER, type CornerTemplate } from "./cornerTemplates";
import { line, OUTLINE, rectangle, type Page, type Placed } from "./page";
import { runningFoot } from "./runningFoot";
import { paragraph, textLine, TYPE } from "./textBlocks";
import type { Typesetter } from "./typesetter";

/** Lengths of the bars by which a print is checked. */
export const CHECK_SIDE: Mm = 100;
const INCH_BAR_IN = 4;
const BAR_HIGH: Mm = 3;
const CHECK_ROOM: Mm = 2 * BAR_HIGH + 10;
const SLIT_WEIGHT: Mm = 0.5;

/** Turn-ins, mitred corners, corners and notches in true size, each page with bars to check the print by. */
export function templatePages(
  templates: readonly CornerTemplate[],
  gauges: readonly Gauge[],
  unit: WorkbookUnit,
  frame: Frame,
  type: Typesetter,
): readonly Page[] {
  const checked = { ...frame, head: CHECK_ROOM };
  const width = bodyWidth(checked);
  const room = bodyHeight(checked);
  if (templates.length === 0 && gauges.length === 0) return [];
  const drawn = templates.flatMap((template) => {
    const turned = fits(template, width, room) ? template : quarterTurned(template);
    return fits(turned, width, room) ? [{ template, turned }] : [];
  });
  const tooLarge = templates.filter((template) => !drawn.some((each) => each.template === template));
  const blocks = [
    ...paragraph(
      "True size. Lay the corner of a template on the corner of the piece; hatched is cut away; dashed is a fold or the edge of the board; a heavy line is a cut.",
      width,
      { size: TYPE.body },
      type,
    ),
    gap(3),
    ...inPairs(
      [
        ...gauges.map((gauge) => ({ wide: 0, blocks: (room: Mm) => gaugeBlocks(gauge, unit, room, type) })),
        ...drawn.map(({ template, turned }, index) => ({
          wide: turned.length + AROUND_CORNER,
          blocks: (room: Mm) => templateBlocks(template, turned, index + 1, { width: room, unit }, type),
        })),
      ],
      width,
    ),
    ...tooLargeLines(tooLarge, unit, width, type),
  ];
  const running = (page: number, of: number) => [
    ...checkBars(checked, type),
    ...runningFoot(TITLE, `page ${page} of ${of}`, checked, type),
  ];
  return flow(blocks, checked, running, TITLE);
}

const TITLE = "True-size templates";
const SPACE_BETWEEN: Mm = 3.5;

/** Small drawings with their words two by two, larger ones one below the other. */
function inPairs(
  drawings: readonly { readonly wide: Mm; readonly blocks: (width: Mm) => readonly Block[] }[],
  width: Mm,
): readonly Block[] {
  const half = (width - COLUMN_GAP) / 2;
  const paired: Block[][] = [];
  let open: Block | undefined;
  for (const { wide, blocks } of drawings) {
    const card = together(blocks(half));
    if (wide > half || card.height > HIGHEST_PAIRED) paired.push([...blocks(width), gap(SPACE_BETWEEN)]);
    else if (open === undefined) open = card;
    else {
      paired.push([
        beside([
          { block: open, from: 0 },
          { block: card, from: half + COLUMN_GAP },
        ]),
        gap(SPACE_BETWEEN),
      ]);
      open = undefined;
    }
  }
  return [...paired.flat(), ...(open === undefined ? [] : [open, gap(SPACE_BETWEEN)])];
}

const COLUMN_GAP: Mm = 6;
const HIGHEST_PAIRED: Mm = 85;

/** What has no room on the paper, said once. */
function tooLargeLines(
  templates: readonly CornerTemplate[],
  unit: WorkbookUnit,
  width: Mm,
  type: Typesetter,
): readonly Block[] {
  if (templates.length === 0) return [];
  return [
    ...paragraph(
      "Too large for this paper, so not drawn: measure along the length and along the width from the corner, and cut that away",
      width,
      { size: TYPE.heading, bold: true, withNext: true, role: "H2" },
      type,
    ),
    ...templates.flatMap(({ length, width: across, serves }) =>
      paragraph(
        `${shown(length, unit)} × ${shown(across, unit)} ${unit}: ${serves.join("; ")}`,
        width,
        { size: TYPE.body },
        type,
      ),
    ),
  ];
}

function templateBlocks(
  template: CornerTemplate,
  turned: CornerTemplate,
  number: number,
  { width, unit }: { readonly width: Mm; readonly unit: WorkbookUnit },
  type: Typesetter,
): readonly Block[] {
  const words = (room: Mm) => [
    ...paragraph(
      `Template ${number}: ${shown(turned.length, unit)} across, ${shown(turned.width, unit)} ${unit} down`,
      room,
      { size: TYPE.heading, bold: true, withNext: true, role: "H2" },
      type,
    ),
    ...paragraph(`For ${template.serves.join("; ")}.`, room, { size: TYPE.body }, type),
  ];
  return besideWords({ block: cornerBlock(turned), wide: turned.length + AROUND_CORNER }, words, width);
}

/** Bars of exactly 100 mm in ten parts and 4 in in eight, at the head of a page. */
export function checkBars({ margin }: Frame, type: Typesetter): readonly Placed[] {
  const [x, y] = [margin, margin];
  const text = "100 mm, and 4 in. If a rule says otherwise, print again at 100 %, not “fit to page”.";
  const bar = (top: Mm, long: Mm, parts: number): readonly Placed[] => [
    ...Array.from({ length: parts / 2 }, (_, index) =>
      rectangle(
        { x: x + (2 * index * long) / parts, y: top, width: long / parts, height: BAR_HIGH },
        { weight: 0, shade: 1 },
      ),
    ),
    rectangle({ x, y: top, width: long, height: BAR_HIGH }),
  ];
  const below = y + BAR_HIGH + 1;
  return [
    ...bar(y, CHECK_SIDE, 10),
    ...bar(below, INCH_BAR_IN * MM_PER.in, 2 * INCH_BAR_IN),
    textLine(text, { x, y: below + BAR_HIGH + 1, width: type.width(text, TYPE.small) }, { size: TYPE.small }),
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
function cornerBlock({ length, width, lines }: CornerTemplate): Block {
  const [right, bottom] = [length + AROUND_CORNER, width + AROUND_CORNER];
  return {
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
}

function shown(size: Mm, unit: WorkbookUnit): string {
  return nearestMark(size, unit);
}
