import { areaName, type Area } from "./cellRef";
import { escapeColumnName, escapeText, escapeXml } from "./escape";
import { attributeIn, childOf, childrenOf, openTag, rootOf, startTag, withAttribute, type Place } from "./scan";
import { insert, remove, spliced, type Splice } from "./splice";

/** How a table changes: columns taken off its right end, then columns added there. */
export interface TableChange {
  readonly area: Area;
  readonly totalsRow: boolean;
  readonly dropped: number;
  readonly added: readonly { readonly name: string; readonly everyRow?: string | undefined }[];
  /** New names of columns that stay, by their position. */
  readonly renamed: ReadonlyMap<number, string>;
  /** The formula for new rows of a column that stays, by its position; undefined takes it away. */
  readonly formulas: ReadonlyMap<number, string | undefined>;
}

/**
 * The part of a table with its new right edge: the reference, the filter inside it, the columns with ids of their own.
 *
 * @param xml the part, well-formed
 * @param change `area` is the new rectangle
 */
export function changedTable(xml: string, change: TableChange): string {
  const root = rootOf(xml);
  const p = root.prefix;
  const splices: Splice[] = [
    { start: root.start, end: root.openEnd, text: withAttribute(startTag(xml, root), "ref", areaName(change.area)) },
  ];
  const filter = childOf(xml, root, "autoFilter");
  if (filter) {
    const filtered = { ...change.area, bottom: change.area.bottom - (change.totalsRow ? 1 : 0) };
    splices.push({
      start: filter.start,
      end: filter.openEnd,
      text: withAttribute(startTag(xml, filter), "ref", areaName(filtered)),
    });
  }
  const list = childOf(xml, root, "tableColumns");
  if (!list) throw new Error("a table without columns");
  const columns = [...childrenOf(xml, list)];
  const gone = columns.slice(columns.length - change.dropped);
  const ids = columns.map((column) => Number(attributeIn(startTag(xml, column), "id")));
  const added = change.added.map(({ name, everyRow }, i) =>
    tableColumn(Math.max(0, ...ids) + 1 + i, name, everyRow, p),
  );
  const count = String(columns.length - change.dropped + added.length);
  splices.push({ start: list.start, end: list.openEnd, text: withAttribute(startTag(xml, list), "count", count) });
  splices.push(...gone.map(remove), insert(list.closeStart, added.join("")));
  for (const [position, formula] of change.formulas)
    splices.push(withFormula(xml, columns[position]!, formula, change.renamed.get(position)));
  return spliced(xml, splices);
}

/** The part of a new table over the rows of a new sheet. */
export function newTable(id: number, name: string, area: Area, columns: readonly string[]): string {
  const list = columns.map((column, i) => tableColumn(i + 1, column, undefined, "")).join("");
  const title = escapeXml(name);
  return (
    `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n` +
    `<table xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" id="${id}" name="${title}" displayName="${title}"` +
    ` ref="${areaName(area)}" totalsRowShown="0"><autoFilter ref="${areaName(area)}"/>` +
    `<tableColumns count="${columns.length}">${list}</tableColumns>` +
    `<tableStyleInfo name="TableStyleLight1" showFirstColumn="0" showLastColumn="0" showRowStripes="1" showColumnStripes="0"/></table>`
  );
}

function withFormula(xml: string, column: Place, everyRow: string | undefined, renamed: string | undefined): Splice {
  const kept = [...childrenOf(xml, column)].filter((child) => child.name !== "calculatedColumnFormula");
  const inside = formulaOf(everyRow, column.prefix) + kept.map((child) => xml.slice(child.start, child.end)).join("");
  const standing = startTag(xml, column);
  const named = renamed === undefined ? standing : withAttribute(standing, "name", escapeColumnName(renamed));
  const tag = openTag(named);
  const text = inside === "" ? `${tag}/>` : `${tag}>${inside}</${column.prefix}tableColumn>`;
  return { start: column.start, end: column.end, text };
}

function formulaOf(everyRow: string | undefined, p: string): string {
  return everyRow === undefined
    ? ""
    : `<${p}calculatedColumnFormula>${escapeText(everyRow)}</${p}calculatedColumnFormula>`;
}

function tableColumn(id: number, name: string, everyRow: string | undefined, p: string): string {
  const head = `<${p}tableColumn id="${id}" name="${escapeColumnName(name)}"`;
  return everyRow === undefined ? `${head}/>` : `${head}>${formulaOf(everyRow, p)}</${p}tableColumn>`;
}
