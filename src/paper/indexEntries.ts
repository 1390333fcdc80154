import type { SizedSurvey } from "../survey/sizeSurvey";
import type { PlanPage } from "./cuttingPages";
import type { IndexEntry, PageLink } from "./itemIndex";
import type { Page } from "./page";
import { ticketsOf } from "./ticket";
import { ticketName } from "./ticketSets";

/**
 * Where each ticket and plan is found among the pages of a file.
 *
 * @param before how many pages stand before these
 */
export function indexEntries(
  survey: SizedSurvey,
  pages: readonly (Page | PlanPage)[],
  before: number,
): readonly IndexEntry[] {
  const tickets = new Map<string, number>();
  const plans = new Map<string, PageLink[]>();
  pages.forEach((page, index) => {
    const number = before + index + 1;
    for (const name of page.names ?? []) tickets.set(name, number);
    for (const item of "items" in page ? (page.items ?? []) : [])
      plans.set(item, [...(plans.get(item) ?? []), { page: number, to: page.names?.[0] ?? "" }]);
  });
  return ticketsOf(survey).map((ticket) => {
    const name = ticketName(ticket);
    const page = tickets.get(name);
    return {
      identifier: ticket.identifier,
      title: ticket.title,
      batch: ticket.batch,
      ticket: page === undefined ? undefined : { page, to: name },
      plans: plans.get(ticket.identifier) ?? [],
    };
  });
}
