import type { TicketOptions } from "./benchTicket";
import type { Mm } from "../measure/units";
import { bodyWidth, flow, gap, type Block, type Frame } from "./blocks";
import { shifted, type Page, type Placed } from "./page";
import { runningFoot } from "./runningFoot";
import type { Ticket } from "./ticket";
import { COLUMN_GAP } from "./ticketBoards";
import { constructionOf } from "./ticketFacts";
import { orderBlocks, stepsOf } from "./ticketOrder";
import type { Typesetter } from "./typesetter";

export interface OrderLists {
  /** What a ticket says of its order of assembly. */
  readonly of: (ticket: Ticket) => TicketOptions;
  readonly pages: readonly Page[];
}

/**
 * Orders of assembly that are printed after the tickets, each once under a letter.
 *
 * @param once whether all orders that more than one ticket has are printed there
 * @param listed whether that of a ticket is in any case
 */
export function orderLists(
  tickets: readonly Ticket[],
  { once, listed }: { readonly once: boolean; readonly listed: (ticket: Ticket) => boolean },
  frame: Frame,
  type: Typesetter,
): OrderLists {
  const sharing = new Map<string, Ticket[]>();
  for (const ticket of tickets) sharing.set(keyOf(ticket), [...(sharing.get(keyOf(ticket)) ?? []), ticket]);
  const using = new Map<Ticket, string>();
  const letters = new Map<string, string>();
  for (const [key, own] of sharing) {
    const there = once && own.length > 1 ? own : own.filter(listed);
    if (there.length > 0) letters.set(key, letterOf(letters.size));
    for (const ticket of there) using.set(ticket, letters.get(key)!);
  }
  const column = (bodyWidth(frame) - COLUMN_GAP) / 2;
  const blocks = [...letters].flatMap(([key, letter]) => {
    const first = sharing.get(key)![0]!;
    const made = [first.sized.kind.name, constructionOf(first.sized.assembly)].filter((text) => text !== "").join(", ");
    const served = [...using].filter(([, each]) => each === letter).map(([{ identifier }]) => identifier);
    const title = `List ${letter}: ${made}, for ${served.join(", ")}`;
    return [...orderBlocks(title, stepsOf(first), column, type), gap(LIST_GAP)];
  });
  const foot = (page: number, of: number) => runningFoot(TITLE, `${page} of ${of}`, frame, type);
  return {
    of: (ticket) => {
      const orderList = using.get(ticket);
      return orderList === undefined ? {} : { orderList };
    },
    pages: blocks.length === 0 ? [] : inTwoColumns(blocks, column, frame, foot),
  };
}

/** Lists go on from column to column, so that a short one does not take a page. */
function inTwoColumns(
  blocks: readonly Block[],
  column: Mm,
  frame: Frame,
  foot: (page: number, of: number) => readonly Placed[],
): readonly Page[] {
  const { width, height } = frame;
  const inColumns = (high: Mm) =>
    flow(blocks, { ...frame, width: column + 2 * frame.margin, height: high }, () => [], TITLE);
  const whole = inColumns(height);
  // What one page holds is shared out over both columns.
  const lowest = whole.length > 2 ? height : heightsUpTo(height).find((high) => inColumns(high).length <= 2)!;
  const columns = inColumns(lowest);
  const pages = Math.ceil(columns.length / 2);
  return Array.from({ length: pages }, (_, page) => {
    const [left, right] = [columns[2 * page]!, columns[2 * page + 1]];
    return {
      width,
      height,
      placed: [...foot(page + 1, pages), ...left.placed, ...shifted(right?.placed ?? [], column + COLUMN_GAP, 0)],
      bookmark: left.bookmark,
    };
  });
}

function heightsUpTo(height: Mm): readonly Mm[] {
  const steps = Array.from({ length: HEIGHTS }, (_, index) => (height * (index + 1)) / HEIGHTS);
  return steps.slice(HEIGHTS / 2 - 1);
}

const HEIGHTS = 40;
const TITLE = "Orders of assembly";
const LIST_GAP = 4;
const LETTERS = 26;

function keyOf(ticket: Ticket): string {
  return JSON.stringify(stepsOf(ticket));
}

/** A to Z, then A2, B2, ... */
function letterOf(index: number): string {
  const letter = String.fromCharCode("A".charCodeAt(0) + (index % LETTERS));
  return index < LETTERS ? letter : `${letter}${Math.floor(index / LETTERS) + 1}`;
}
