import { benchTicket, type SetTicket } from "./benchTicket";
import type { Frame } from "./blocks";
import { orderLists } from "./orderLists";
import type { Page } from "./page";
import type { Ticket } from "./ticket";
import type { Typesetter } from "./typesetter";

export interface TicketFrames {
  readonly whole: Frame;
  /** For tickets that have room on one leaf of half pages; undefined where all are on whole pages. */
  readonly half?: Frame;
}

/** Pages of tickets, a set for each, that begin on the front of a leaf. */
export interface TicketSets {
  readonly halves: readonly (readonly Page[])[];
  /** Of whole pages; the last set is the orders of assembly that are printed once, where there are any. */
  readonly wholes: readonly (readonly Page[])[];
  /** Of the tickets that have no room on a leaf of half pages, where those were asked for. */
  readonly tooLarge: readonly string[];
}

/**
 * Pages of each ticket, then orders of assembly that are printed once: all that tickets share where `once` asks for it,
 * and those of tickets that take a leaf less without their order.
 */
export function ticketSets(
  tickets: readonly Ticket[],
  once: boolean,
  { whole, half }: TicketFrames,
  type: Typesetter,
): TicketSets {
  const chosen = new Map(tickets.map((ticket) => [ticket, chosenFor(ticket, whole, half, type)]));
  const lists = orderLists(tickets, { once, listed: (ticket) => chosen.get(ticket)!.listed }, whole, type);
  const setOf = (ticket: Ticket): readonly Page[] => {
    const { frame, set } = chosen.get(ticket)!;
    const options = lists.of(ticket);
    const { pages } =
      options.orderList === undefined
        ? set
        : benchTicket(ticket, frame, type, { ...options, tooLarge: half !== undefined && frame !== half });
    const section = ticket.batch === "" ? {} : { section: `Batch ${ticket.batch}` };
    return pages().map((page, index) => ({
      ...page,
      ...section,
      ...(index === 0 ? { names: [ticketName(ticket)] } : {}),
    }));
  };
  const onHalves = tickets.filter((ticket) => chosen.get(ticket)!.frame === half);
  const others = tickets.filter((ticket) => !onHalves.includes(ticket));
  return {
    halves: onHalves.map(setOf),
    wholes: [...others.map(setOf), ...(lists.pages.length === 0 ? [] : [lists.pages])],
    tooLarge: half === undefined ? [] : others.map(({ identifier }) => identifier),
  };
}

interface Chosen {
  readonly frame: Frame;
  /** With its own order of assembly. */
  readonly set: SetTicket;
  /** Whether it takes a leaf less without its own order of assembly. */
  readonly listed: boolean;
}

/** A ticket on half pages where one leaf of them holds it, else on whole pages. */
function chosenFor(ticket: Ticket, whole: Frame, half: Frame | undefined, type: Typesetter): Chosen {
  const on = (frame: Frame): Chosen & { readonly leaves: number } => {
    const tooLarge = half !== undefined && frame !== half;
    const set = benchTicket(ticket, frame, type, { tooLarge });
    const own = set.leaves;
    const without = own === 1 ? own : benchTicket(ticket, frame, type, { orderList: "A", tooLarge }).leaves;
    return { frame, set, listed: without < own, leaves: Math.min(own, without) };
  };
  const small = half === undefined ? undefined : on(half);
  return small?.leaves === 1 ? small : on(whole);
}

/** The name of a ticket's first page, by which the index leads to it. */
export function ticketName({ row }: Pick<Ticket, "row">): string {
  return `ticket row ${row}`;
}
