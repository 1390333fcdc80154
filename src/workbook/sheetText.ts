import { InputError } from "../measure/errors";
import { columnNumber, parseArea, type Area } from "./cellRef";
import { attributeIn, childrenOf, rootOf, startTag, type Place } from "./scan";

/** A sheet's text with the places of its outermost elements. */
export interface SheetText {
  readonly sheet: string;
  readonly xml: string;
  readonly parts: readonly Place[];
  readonly data: Place;
}

/** @param xml the part of a sheet, well-formed */
export function sheetText(sheet: string, xml: string): SheetText {
  const parts = [...childrenOf(xml, rootOf(xml))];
  const data = parts.find((part) => part.name === "sheetData");
  if (!data)
    throw new InputError("sheet", `"${sheet}" without cells`, "needs a sheet with cells", "name another sheet");
  return { sheet, xml, parts, data };
}

/** Each row with its number. */
export function* rowsOf({
  xml,
  data,
}: SheetText): Generator<{ readonly place: Place; readonly row: number; readonly tag: string }> {
  let row = 0;
  for (const place of childrenOf(xml, data)) {
    if (place.name !== "row") continue;
    const tag = startTag(xml, place);
    row = Number(attributeIn(tag, "r") ?? row + 1);
    yield { place, row, tag };
  }
}

/** The column of a cell, counted when it does not say. */
export function columnOf(tag: string, before: number): number {
  return columnNumber(/^[a-z]+/i.exec(attributeIn(tag, "r") ?? "")?.[0] ?? "") ?? before + 1;
}

/** What the sheet says of protection, merged cells and its own filter. */
export function sheetMatters({ xml, parts }: SheetText): {
  locked: boolean;
  merged: readonly Area[];
  filter: Area | undefined;
} {
  const protection = parts.find((part) => part.name === "sheetProtection");
  const merges = parts.find((part) => part.name === "mergeCells");
  const filter = parts.find((part) => part.name === "autoFilter");
  const areaOf = (place: Place) => parseArea(attributeIn(startTag(xml, place), "ref") ?? "");
  const flag = protection && attributeIn(startTag(xml, protection), "sheet");
  return {
    locked: flag === "1" || flag === "true",
    merged: (merges ? [...childrenOf(xml, merges)].map(areaOf) : []).filter((area) => area !== undefined),
    filter: filter && areaOf(filter),
  };
}

/** The last row that the sheet lists; 0 for a sheet without rows. */
export function lastRowOf(text: SheetText): number {
  let last = 0;
  for (const { row } of rowsOf(text)) last = Math.max(last, row);
  return last;
}

/** Columns right of `after` that hold something in these rows, and the last column that holds anything in the sheet. */
export function usedColumns(
  text: SheetText,
  top: number,
  bottom: number,
  after: number,
): { used: ReadonlySet<number>; last: number } {
  const used = new Set<number>();
  let last = 0;
  for (const { place, row } of rowsOf(text)) {
    let column = 0;
    for (const cell of childrenOf(text.xml, place)) {
      column = columnOf(startTag(text.xml, cell), column);
      if (cell.closeStart <= cell.openEnd) continue;
      last = Math.max(last, column);
      if (row >= top && row <= bottom && column > after) used.add(column);
    }
  }
  return { used, last };
}
