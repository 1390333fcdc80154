import type { Mm } from "../measure/units";
import type { Block } from "./blocks";
import { fitColumns, table, type DrawnCell } from "./table";
import { heading, lineHeight, textLine, TYPE } from "./textBlocks";
import type { Typesetter } from "./typesetter";

/** A page that the index names, with the place in the file that it leads to. */
export interface PageLink {
  readonly page: number;
  readonly to: string;
}

/** An item with the page of its ticket and those of the plans that it is cut from. */
export interface IndexEntry {
  readonly identifier: string;
  readonly title: string;
  readonly batch: string;
  readonly ticket: PageLink | undefined;
  readonly plans: readonly PageLink[];
}

const GAP: Mm = 1.5;

/** Each item with its pages; a column that no item has is left out. */
export function itemIndex(entries: readonly IndexEntry[], width: Mm, type: Typesetter): readonly Block[] {
  if (entries.length === 0) return [];
  const size = TYPE.body;
  const [batched, printed, planned] = [
    entries.some(({ batch }) => batch !== ""),
    entries.some(({ ticket }) => ticket !== undefined),
    entries.some(({ plans }) => plans.length > 0),
  ];
  const columns = [
    { heading: "item", bold: true, share: 1 },
    { heading: "title", share: 2 },
    ...(batched ? [{ heading: "batch", least: BATCH_COLUMN, wraps: true }] : []),
    ...(printed ? [{ heading: "ticket, page", least: 0 }] : []),
    ...(planned ? [{ heading: "cut from the plans on pages", share: 2 }] : []),
  ];
  const empty = entries.map(() => columns.map(() => ""));
  const fitted = fitColumns(columns, empty, width, size, type);
  const rows = entries.map(({ identifier, title, batch, ticket, plans }) => [
    identifier,
    title,
    ...(batched ? [batch] : []),
    ...(printed ? [pageLinks(ticket === undefined ? [] : [ticket], width, type)] : []),
    ...(planned ? [pageLinks(plans, fitted.at(-1)!.width, type)] : []),
  ]);
  return [...heading("Index", width, type), ...table(fitted, rows, { size }, type)];
}

const BATCH_COLUMN: Mm = 20;
const CELL_RIM: Mm = 1.8;

/** Page numbers one after the other, each a link. */
function pageLinks(links: readonly PageLink[], column: Mm, type: Typesetter): DrawnCell {
  const size = TYPE.body;
  const room = column - CELL_RIM;
  let [left, row] = [0, 0];
  const places = links.map(({ page, to }, index) => {
    const text = `${page}${index < links.length - 1 ? "," : ""}`;
    const wide = type.width(text, size);
    if (left > 0 && left + wide > room) [left, row] = [0, row + 1];
    const place = { text, to, left, row, wide };
    left += wide + GAP;
    return place;
  });
  return {
    height: (row + 1) * lineHeight(size),
    draw: (x, y) =>
      places.map(({ text, to, left: from, row: at, wide }) => ({
        ...textLine(text, { x: x + from, y: y + at * lineHeight(size), width: wide + GAP }, { size }),
        goTo: to,
      })),
  };
}
