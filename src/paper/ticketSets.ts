import { benchTicket } from "./benchTicket";
import type { Frame } from "./blocks";
import { leavesOf } from "./frames";
import { orderLists } from "./orderLists";
import type { Page } from "./page";
import type { Ticket } from "./ticket";
import type { Typesetter } from "./typesetter";

/**
 * Pages of each ticket, then orders of assembly that are printed once: all that tickets share where `once` asks for it,
 * and those of tickets that take a leaf less without their order.
 */
export function ticketSets(
  tickets: readonly Ticket[],
  once: boolean,
  frame: Frame,
  type: Typesetter,
): readonly (readonly Page[])[] {
  const whole = new Map(tickets.map((ticket) => [ticket, benchTicket(ticket, frame, type)]));
  const tooLong = (ticket: Ticket) =>
    leavesOf(whole.get(ticket)!).length > leavesOf(benchTicket(ticket, frame, type, { orderList: "A" })).length;
  const lists = orderLists(tickets, { once, listed: tooLong }, frame, type);
  const sets = tickets.map((ticket) => {
    const options = lists.of(ticket);
    const pages = options.orderList === undefined ? whole.get(ticket)! : benchTicket(ticket, frame, type, options);
    const section = ticket.batch === "" ? {} : { section: `Batch ${ticket.batch}` };
    return pages.map((page, index) => ({
      ...page,
      ...section,
      ...(index === 0 ? { names: [ticketName(ticket)] } : {}),
    }));
  });
  return lists.pages.length === 0 ? sets : [...sets, lists.pages];
}

/** The name of a ticket's first page, by which the index leads to it. */
export function ticketName({ row }: Pick<Ticket, "row">): string {
  return `ticket row ${row}`;
}
