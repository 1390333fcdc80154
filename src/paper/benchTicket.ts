import { CARE } from "../enclosure/step";
import { plyWords } from "../enclosure/benchInstruction";
import { roundsOf, type Round } from "../enclosure/rounds";
import type { Mm } from "../measure/units";
import { bodyHeight, bodyWidth, flow, gap, type Block, type Frame } from "./blocks";
import type { Page } from "./page";
import { measureBoxes } from "./measureBoxes";
import { runningFoot } from "./runningFoot";
import { heading, paragraph, TYPE } from "./textBlocks";
import type { Ticket } from "./ticket";
import { caliperLines, numberedParts, mostlyOf, partTable, signed, type NumberedPart } from "./ticketBoards";
import { coveringLines, foldLines } from "./ticketCovering";
import { ticketPictures } from "./ticketDrawings";
import { ticketHead } from "./ticketHead";
import { orderBlocks, orderElsewhere, stepsOf } from "./ticketOrder";
import type { Typesetter } from "./typesetter";

/** Drawings take what the tables leave, within these. */
const LEAST_PICTURE: Mm = 32;
const TIGHT_PICTURE: Mm = 25;
const MOST_PICTURE: Mm = 88;
const PICTURE_GAP: Mm = 2;

export interface TicketOptions {
  /** Letter of the list in which the order of assembly is printed once; undefined where it is on the ticket. */
  readonly orderList?: string;
}

/**
 * Everything that the bench needs to make one enclosure, one leaf: on the front drawings and boards, on the back
 * covering, lining and the order of assembly. What does not fit goes on the next page.
 */
export function benchTicket(
  ticket: Ticket,
  frame: Frame,
  type: Typesetter,
  options: TicketOptions = {},
): readonly Page[] {
  let best: readonly Page[] | undefined;
  for (const layout of LAYOUTS) {
    const pages = ticketPages(ticket, frame, type, options, layout);
    if (best === undefined || pages.length < best.length) best = pages;
    if (best.length <= SIDES_OF_A_LEAF) break;
  }
  return best!;
}

const SIDES_OF_A_LEAF = 2;

/** How tightly a ticket is set; the next is tried where the one before takes more than a leaf. */
const LAYOUTS = [
  { parted: false, tight: false },
  { parted: true, tight: false },
  { parted: false, tight: true },
  { parted: true, tight: true },
] as const;

interface Layout {
  /** Lines of covering and lining may go on on the next page. */
  readonly parted: boolean;
  /** Drawings and figures are smaller, and what belongs on the back begins on the front. */
  readonly tight: boolean;
}

function ticketPages(
  ticket: Ticket,
  frame: Frame,
  type: Typesetter,
  { orderList }: TicketOptions,
  { parted, tight }: Layout,
): readonly Page[] {
  const width = bodyWidth(frame);
  const parts = numberedParts(ticket);
  const { head, boards, folds } = frontBlocks(ticket, parts, { width, tight }, type);
  const back = backBlocks(ticket, parts, { width, parted, tight }, type, orderList);
  const leftBy = (blocks: readonly Block[]) => bodyHeight(frame) - heightOf(head) - heightOf(blocks) - 2 * PICTURE_GAP;
  // Folds stand on the front where they leave room for the drawings.
  const foldsInFront = leftBy([...boards, ...folds]) >= LEAST_PICTURE;
  const front = foldsInFront ? [...boards, ...folds] : boards;
  const behind = foldsInFront ? back : [...folds, ...back];
  const left = leftBy(front);
  const highest = Math.min(tight ? TIGHT_PICTURE : MOST_PICTURE, Math.max(LEAST_PICTURE, left), width * PICTURE_SHARE);
  const drawn = ticketPictures(ticket, width, highest);
  const fits = left >= LEAST_PICTURE;
  const blocks = [
    ...head,
    gap(PICTURE_GAP),
    drawn,
    ...front,
    ...(fits && !tight && behind.length > 0 ? [{ ...gap(0), onNewPage: true as const }] : []),
    ...behind,
  ];
  const { identifier, row, sized } = ticket;
  const foot = (page: number, of: number) =>
    runningFoot(identifier, `row ${row}; sizes in ${sized.settings.unit}; ${page} of ${of}`, frame, type);
  return flow(blocks, frame, foot, [identifier, ticket.title].filter((text) => text !== "").join(": "));
}

function heightOf(blocks: readonly Block[]): Mm {
  return blocks.reduce((sum, { height }) => sum + height, 0);
}

const PICTURE_SHARE = 0.5;

function frontBlocks(
  ticket: Ticket,
  parts: readonly NumberedPart[],
  { width, tight }: { readonly width: Mm; readonly tight: boolean },
  type: Typesetter,
): { readonly head: readonly Block[]; readonly boards: readonly Block[]; readonly folds: readonly Block[] } {
  const { assembly } = ticket.sized;
  const rounds = roundsOf(assembly);
  const boards = rounds.flatMap((round, index) => {
    const own = partsOf(round, parts);
    const stock = mostlyOf(own);
    const name = `${ORDINALS[index] ?? "Next"} round, ${stock}`;
    return [
      ...(index === 0
        ? heading(`${name}: cut these, ${ticket.sized.settings.unit}. Care: ${CARE.blade}.`, width, type)
        : measureBoxes(round, name, ticket, width, type)),
      ...partTable(own, ticket, { how: index === 0 ? MATCH : undefined, stock, tight }, width, type),
    ];
  });
  return {
    head: ticketHead(ticket, width, type),
    boards: [
      signed(width, type),
      ...caliperLines(ticket, width, type),
      ...[...new Set(parts.flatMap(({ part }) => plyWords(part)))].flatMap((words) =>
        paragraph(`Laminated boards: ${words}.`, width, { size: TYPE.body }, type),
      ),
      ...boards,
    ],
    folds: foldLines(ticket, parts, width, type),
  };
}

const ORDINALS = ["First", "Second", "Third"];
const MATCH = "match; write down sums";

function partsOf({ parts: own }: Round, parts: readonly NumberedPart[]): readonly NumberedPart[] {
  return parts.filter(({ part: { placed } }) => placed !== undefined && own.includes(placed));
}

function backBlocks(
  ticket: Ticket,
  parts: readonly NumberedPart[],
  { width, parted, tight }: { readonly width: Mm; readonly parted: boolean; readonly tight: boolean },
  type: Typesetter,
  orderList: string | undefined,
): readonly Block[] {
  const pieces = parts.filter(({ part }) => part.placed === undefined);
  const steps = stepsOf(ticket);
  return [
    ...(pieces.length === 0
      ? []
      : [
          ...heading(`Covering, lining and cushions, ${ticket.sized.settings.unit}`, width, type),
          ...partTable(pieces, ticket, { how: "where it goes", tight }, width, type),
        ]),
    ...coveringLines(ticket, parts, { width, parted }, type),
    ...(orderList === undefined
      ? orderBlocks("Order of assembly", steps, width, type)
      : orderElsewhere(orderList, steps, width, type)),
  ];
}
