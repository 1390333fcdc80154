import { edgeCutWords } from "../drawing/edgeCutWords";
import { nearestMark } from "../measure/benchLength";
import type { Mm, WorkbookUnit } from "../measure/units";
import { besideWords } from "./besideWords";
import { beside, bodyHeight, bodyWidth, flow, gap, together, type Block, type Frame } from "./blocks";
import { gaugeBlocks } from "./gaugeBlocks";
import { gaugesOf, type Gauge } from "./gauges";
import { checkBars, CHECK_ROOM } from "./checkBars";
import { AROUND_CORNER, cornerTemplates, type CornerTemplate } from "./cornerTemplates";
import { edgeBlocks } from "./edgeBlocks";
import { line, OUTLINE, rectangle, type Page } from "./page";
import { runningFoot } from "./runningFoot";
import { steppedEdges, type SteppedEdge } from "./steppedEdges";
import { paragraph, TYPE } from "./textBlocks";
import type { Ticket } from "./ticket";
import type { Typesetter } from "./typesetter";

const SLIT_WEIGHT: Mm = 0.5;

/** What is drawn in true size for the pieces of some tickets. */
export interface TrueSizes {
  readonly corners: readonly CornerTemplate[];
  readonly gauges: readonly Gauge[];
  readonly edges: readonly SteppedEdge[];
}

export function trueSizesOf(tickets: readonly Ticket[]): TrueSizes {
  return { corners: cornerTemplates(tickets), gauges: gaugesOf(tickets), edges: steppedEdges(tickets) };
}

/** Turn-ins, mitred corners, corners, notches and stepped edges in true size, each page with bars to check the print by. */
export function templatePages(
  { corners: templates, gauges, edges }: TrueSizes,
  unit: WorkbookUnit,
  frame: Frame,
  type: Typesetter,
): readonly Page[] {
  const checked = { ...frame, head: CHECK_ROOM };
  const width = bodyWidth(checked);
  const room = bodyHeight(checked);
  if (templates.length + gauges.length + edges.length === 0) return [];
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
    ...edges.flatMap((edge) => (edge.high <= room - RESERVED ? edgeBlocks(edge, unit, width, type) : [])),
    ...tooLargeLines(
      [
        ...tooLarge.map(cornerWords(unit)),
        ...edges
          .filter(({ high }) => high > room - RESERVED)
          .map((edge) => `${edge.serves}: ${edgeCutWords(edge, unit)}`),
      ],
      width,
      type,
    ),
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
function tooLargeLines(lines: readonly string[], width: Mm, type: Typesetter): readonly Block[] {
  if (lines.length === 0) return [];
  return [
    ...paragraph(
      "Too large for this paper, so not drawn: measure along the length and along the width from the corner, and cut that away",
      width,
      { size: TYPE.heading, bold: true, withNext: true, role: "H2" },
      type,
    ),
    ...lines.flatMap((text) => paragraph(text, width, { size: TYPE.body }, type)),
  ];
}

function cornerWords(unit: WorkbookUnit): (corner: CornerTemplate) => string {
  return ({ length, width, serves }) => `${shown(length, unit)} × ${shown(width, unit)} ${unit}: ${serves.join("; ")}`;
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
