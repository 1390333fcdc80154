import { cellName } from "./cellRef";
import { childrenOf, closesItself, opened, startTag, withAttribute, type Place } from "./scan";

/** Rows and columns that stay in sight, with the first of each that is in sight; all count from 1. */
export interface Frozen {
  readonly rows: number;
  readonly columns: number;
  readonly firstRow: number;
  readonly firstColumn: number;
}

/**
 * The views of a sheet with other frozen parts; the rest of each view, its selected cells too, stays.
 *
 * @param views the list of views, left out where the sheet has none
 */
export function frozenViews(xml: string, views: Place | undefined, prefix: string, frozen: Frozen): string {
  if (views === undefined || closesItself(xml, views))
    return `<${prefix}sheetViews>${viewOf("", `<${prefix}sheetView workbookViewId="0">`, prefix, frozen)}</${prefix}sheetViews>`;
  const pieces = [...childrenOf(xml, views)].map((view) => {
    if (view.name !== "sheetView") return xml.slice(view.start, view.end);
    const children = [...childrenOf(xml, view)];
    const kept = children
      .filter(({ name }) => name !== "pane" && name !== "selection")
      .map(({ start, end }) => xml.slice(start, end));
    // The cell that the keyboard is in is said once for each part of a divided view: the last part has it.
    const selection = children.filter(({ name }) => name === "selection").at(-1);
    const selected = selection === undefined ? "" : xml.slice(selection.start, selection.end);
    return viewOf(selected, opened(startTag(xml, view)), view.prefix, frozen, kept.join(""));
  });
  return `${startTag(xml, views)}${pieces.join("")}</${views.prefix}sheetViews>`;
}

function viewOf(selected: string, tag: string, prefix: string, frozen: Frozen, rest = ""): string {
  const { rows, columns, firstRow, firstColumn } = frozen;
  const isMoved = firstRow > 1 || firstColumn > 1;
  const view = withAttribute(tag, "topLeftCell", isMoved ? cellName(firstRow, firstColumn) : undefined);
  const part = partWithCells(frozen);
  const pane =
    part === undefined
      ? ""
      : `<${prefix}pane${columns > 0 ? ` xSplit="${columns}"` : ""}${rows > 0 ? ` ySplit="${rows}"` : ""}` +
        ` topLeftCell="${cellName(firstRow + rows, firstColumn + columns)}" activePane="${part}" state="frozen"/>`;
  const selection = selected === "" ? "" : withAttribute(selected, "pane", part);
  return `${view}${pane}${selection}${rest}</${prefix}sheetView>`;
}

/** The part of the view that is scrolled; undefined where nothing is frozen. */
function partWithCells({ rows, columns }: Frozen): string | undefined {
  if (rows > 0 && columns > 0) return "bottomRight";
  if (rows > 0) return "bottomLeft";
  return columns > 0 ? "topRight" : undefined;
}
