import { benchTicket } from "./benchTicket";
import type { Frame } from "./blocks";
import { orderLists } from "./orderLists";
import type { Page } from "./page";
import type { Ticket } from "./ticket";
import type { Typesetter } from "./typesetter";

const SIDES_OF_A_LEAF = 2;

/**
 * Pages of each ticket, then orders of assembly that are printed once: all that tickets share, or those of tickets
 * that do not fit on one leaf otherwise.
 */
export function ticketSets(
  tickets: readonly Ticket[],
  once: boolean,
  frame: Frame,
  type: Typesetter,
): readonly (readonly Page[])[] {
  const whole = new Map(tickets.map((ticket) => [ticket, benchTicket(ticket, frame, type)]));
  const lists = orderLists(tickets, (ticket) => once || whole.get(ticket)!.length > SIDES_OF_A_LEAF, frame, type);
  const sets = tickets.map((ticket) => {
    const options = lists.of(ticket);
    const pages = options.orderList === undefined ? whole.get(ticket)! : benchTicket(ticket, frame, type, options);
    return ticket.batch === "" ? pages : pages.map((page) => ({ ...page, section: `Batch ${ticket.batch}` }));
  });
  return lists.pages.length === 0 ? sets : [...sets, lists.pages];
}
