import type { Mm } from "../measure/units";
import { bodyHeight, bodyWidth, flow, gap, onPages, type Block, type Frame } from "./blocks";
import type { Page } from "./page";
import { remembered } from "./remembered";
import { runningFoot } from "./runningFoot";
import { heading, paragraph, TYPE } from "./textBlocks";
import type { Ticket } from "./ticket";
import { numberedParts, partTable, WIDE, type NumberedPart } from "./ticketBoards";
import { coveringLines, foldLines, type LinesRoom } from "./ticketCovering";
import { ticketPictures } from "./ticketDrawings";
import { ticketHead } from "./ticketHead";
import { orderBlocks, orderElsewhere, stepsOf } from "./ticketOrder";
import type { Typesetter } from "./typesetter";
import { boardBlocks } from "./boardBlocks";

/** Drawings take what the tables leave, within these. */
const LEAST_PICTURE: Mm = 32;
const SINGLE_PICTURE: Mm = 42;
const MIDDLE_PICTURE: Mm = 50;
const TIGHT_PICTURE: Mm = 25;
const MOST_PICTURE: Mm = 88;
const PICTURE_GAP: Mm = 2;

export interface TicketOptions {
  /** Letter of the list in which the order of assembly is printed once; undefined where it is on the ticket. */
  readonly orderList?: string;
  /** Half a page was asked for and has no room: the ticket says so. */
  readonly tooLarge?: boolean;
}

/** A ticket that is set but not drawn. */
export interface SetTicket {
  /** How many leaves of paper it takes. */
  readonly leaves: number;
  readonly pages: () => readonly Page[];
}

/**
 * Everything that the bench needs to make one enclosure, one leaf: on the front drawings and boards, on the back
 * covering, lining and the order of assembly. What does not fit goes on the next page.
 */
export function benchTicket(ticket: Ticket, frame: Frame, type: Typesetter, options: TicketOptions = {}): SetTicket {
  const { identifier, row, sized } = ticket;
  const foot = (page: number, of: number) =>
    runningFoot(identifier, `row ${row}; sizes in ${sized.settings.answerUnit}; ${page} of ${of}`, frame, type);
  const title = [identifier, ticket.title].filter((text) => text !== "").join(": ");
  const { blocks, pages } = fewestPages(ticket, frame, type, options);
  return { leaves: Math.ceil(pages / SIDES_OF_A_LEAF), pages: () => flow(blocks, frame, foot, title) };
}

interface Counted {
  readonly pages: number;
  readonly blocks: readonly Block[];
}

/** What stands on a ticket, set so that it takes the fewest pages; the first of the ways to set it that is one leaf. */
function fewestPages(ticket: Ticket, frame: Frame, type: Typesetter, options: TicketOptions): Counted {
  const width = bodyWidth(frame);
  const parts = numberedParts(ticket);
  const pictures = remembered((highest: Mm) => ticketPictures(ticket, width, highest));
  const contents = remembered((tight: boolean) => contentsOf(ticket, parts, { width, tight }, type, options));
  let best: Counted | undefined;
  const layouts = width >= WIDE ? LAYOUTS : LAYOUTS.filter(({ single }) => single !== true);
  for (const layout of layouts) {
    const blocks = laidOut(contents(layout.tight), bodyHeight(frame), layout, (left) =>
      pictures(Math.min(left, width * PICTURE_SHARE)),
    );
    const pages = blocks.length === 0 ? Infinity : onPages(blocks, frame).length;
    if (best === undefined || pages < best.pages) best = { pages, blocks };
    if (best.pages <= SIDES_OF_A_LEAF) break;
  }
  return best!;
}

const SIDES_OF_A_LEAF = 2;

type LinesLayout = Omit<LinesRoom, "width">;
const WHOLE: LinesLayout = { parted: false, bare: false };
const PARTED: LinesLayout = { parted: true, bare: false };
const BARE: LinesLayout = { parted: true, bare: true };

/** How a ticket is set; the next is tried where the one before takes more than a leaf. */
interface Layout {
  /** Of the lines of covering and lining. */
  readonly lines: LinesLayout;
  /** Figures are smaller, rows are closer, and what belongs on the back begins on the front. */
  readonly tight: boolean;
  /** Highest drawings. */
  readonly picture: Mm;
  /** All on the front, where it has room for that: the back is left for notes. */
  readonly single?: boolean;
}

const LAYOUTS: readonly Layout[] = [
  { lines: WHOLE, tight: false, picture: MOST_PICTURE, single: true },
  { lines: WHOLE, tight: false, picture: MOST_PICTURE },
  { lines: PARTED, tight: false, picture: MOST_PICTURE },
  ...[MIDDLE_PICTURE, LEAST_PICTURE, TIGHT_PICTURE].flatMap((picture) =>
    [WHOLE, PARTED].map((lines) => ({ lines, tight: true, picture })),
  ),
  { lines: BARE, tight: true, picture: TIGHT_PICTURE },
];

/** The parts of a ticket, in the order in which they are printed. */
interface Contents {
  readonly head: readonly Block[];
  readonly boards: readonly Block[];
  readonly folds: readonly Block[];
  readonly pieces: readonly Block[];
  readonly covering: (lines: LinesLayout) => readonly Block[];
  readonly order: readonly Block[];
}

function laidOut(
  { head, boards, folds, pieces, covering, order }: Contents,
  room: Mm,
  { lines, tight, picture, single = false }: Layout,
  pictureOf: (highest: Mm) => Block,
): readonly Block[] {
  const leftBy = (blocks: readonly Block[]) => room - heightOf(head) - heightOf(blocks) - 2 * PICTURE_GAP;
  if (single) {
    const below = [...boards, ...folds, ...pieces, ...covering(lines), ...order];
    const left = leftBy(below);
    return left < SINGLE_PICTURE ? [] : [...head, gap(PICTURE_GAP), pictureOf(Math.min(picture, left)), ...below];
  }
  // Folds stand on the front where they leave the drawings room, or where the back has none for them.
  const back = [...pieces, ...covering(lines), ...order];
  const beside = leftBy([...boards, ...folds]);
  const backHolds = heightOf([...folds, ...back]) <= room;
  const foldsInFront = beside >= (backHolds ? MIDDLE_PICTURE : LEAST_PICTURE);
  const front = foldsInFront ? [...boards, ...folds] : boards;
  const behind = foldsInFront ? back : [...folds, ...back];
  const left = leftBy(front);
  const drawn = pictureOf(Math.min(picture, tight ? picture : Math.max(LEAST_PICTURE, left)));
  const fits = left >= LEAST_PICTURE;
  return [
    ...head,
    gap(PICTURE_GAP),
    drawn,
    ...front,
    ...(fits && !tight && behind.length > 0 ? [{ ...gap(0), onNewPage: true as const }] : []),
    ...behind,
  ];
}

function heightOf(blocks: readonly Block[]): Mm {
  return blocks.reduce((sum, { height }) => sum + height, 0);
}

const PICTURE_SHARE = 0.5;

function contentsOf(
  ticket: Ticket,
  parts: readonly NumberedPart[],
  { width, tight }: { readonly width: Mm; readonly tight: boolean },
  type: Typesetter,
  { orderList, tooLarge = false }: TicketOptions,
): Contents {
  const pieces = parts.filter(({ part }) => part.placed === undefined);
  const steps = stepsOf(ticket);
  return {
    head: [
      ...ticketHead(ticket, width, type),
      ...(tooLarge ? paragraph(wholePageWords(parts.length, steps.length), width, { size: TYPE.body }, type) : []),
    ],
    boards: boardBlocks(ticket, parts, { width, tight }, type),
    folds: foldLines(ticket, parts, { width, bare: tight }, type),
    pieces:
      pieces.length === 0
        ? []
        : [
            ...heading(`Covering, lining and cushions, ${ticket.sized.settings.answerUnit}`, width, type),
            ...partTable(pieces, ticket, { how: "where it goes", tight }, width, type),
          ],
    covering: remembered((lines: LinesLayout) => coveringLines(ticket, parts, { width, ...lines }, type)),
    order:
      orderList === undefined
        ? orderBlocks("Order of assembly", steps, width, type)
        : orderElsewhere(orderList, steps, width, type),
  };
}

function wholePageWords(parts: number, steps: number): string {
  return `On a whole page: half a page has no room for its ${parts} parts and ${steps} steps.`;
}
