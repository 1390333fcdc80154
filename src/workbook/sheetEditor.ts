import { InputError } from "../measure/errors";
import { areaName, cellName, columnNumber, parseArea, type Area } from "./cellRef";
import { cellXml, sharedTextXml } from "./cellXml";
import type { CellContent, RowEdit } from "./edits";
import { frozenViews, type Frozen } from "./frozenViews";
import { choicesChange, type ListChoices } from "./listChoices";
import {
  attributeIn,
  childOf,
  childrenOf,
  closesItself,
  opened,
  openTag,
  rootOf,
  startTag,
  withAttribute,
  type Place,
} from "./scan";

/** One cell to write. */
export interface CellChange {
  readonly column: number;
  readonly content: CellContent;
  /** The number of the shared text to point to, in place of writing the letters of `content`. */
  readonly sharedText?: number;
  /** Copy the style of this column in the same row, instead of keeping the cell's own. */
  readonly like?: number | undefined;
  /** The style to use, given the copied or kept one. */
  readonly styled: (style: number | undefined) => number | undefined;
}

/** How a row stands there; what is left out stays. */
type RowChange = Pick<RowEdit, "height" | "hidden">;

/** All that changes in one sheet. */
export interface SheetChanges {
  readonly cells: ReadonlyMap<number, readonly CellChange[]>;
  readonly widths: ReadonlyMap<number, number>;
  /** Columns of `widths` that are hidden. */
  readonly hidden?: ReadonlySet<number>;
  readonly rows?: ReadonlyMap<number, RowChange>;
  readonly frozen?: Frozen;
  /** The new rectangle of the sheet's own filter, if it grows. */
  readonly filter?: Area;
  /** Tables that take more rows, down to `bottom`: rules for the cells of their last row go on. */
  readonly grown?: readonly { readonly area: Area; readonly bottom: number }[];
  /** Cells that offer a list. */
  readonly choices?: readonly ListChoices[];
}

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

/**
 * Writes the sheet with its changes, piece by piece. What does not change is copied letter for letter.
 *
 * @param push receives the text
 * @throws InputError when a change would break a formula that several cells share
 */
export function writeSheet(
  text: SheetText,
  changes: SheetChanges,
  push: (text: string) => void,
  onProgress?: (fraction: number) => void,
): void {
  const { xml, parts, data } = text;
  const out = copier(xml, push);
  const cols = parts.find((part) => part.name === "cols");
  const views = parts.find((part) => part.name === "sheetViews");
  const viewed = changes.frozen && frozenViews(xml, views, data.prefix, changes.frozen);
  // The views come before what follows the sheet's own properties and size.
  const afterViews = parts.find(({ name }) => name !== "sheetPr" && name !== "dimension");
  const lists = choicesChange(xml, parts, data.prefix, changes.choices ?? []);
  for (const part of parts) {
    if (viewed !== undefined && views === undefined && part === afterViews) out.insert(part.start, viewed);
    if (viewed !== undefined && part === views) out.replace(part.start, part.end, viewed);
    else if (part.name === "dimension")
      out.replace(part.start, part.openEnd, grownDimension(startTag(xml, part), changes));
    else if (part === cols && changes.widths.size > 0)
      out.replace(part.start, part.end, columnWidths(text, part, changes));
    else if (part === data) {
      if (!cols && changes.widths.size > 0) out.insert(data.start, columnWidths(text, undefined, changes));
      writeRows(text, changes, out, onProgress);
    } else if (lists !== undefined && part.start === lists.from) {
      out.replace(lists.from, lists.to, lists.text);
    } else if (GROWING.has(part.name) && (changes.grown ?? []).length > 0) {
      out.replace(part.start, part.end, grownRules(xml.slice(part.start, part.end), changes.grown!));
    } else if (part.name === "autoFilter" && changes.filter) {
      out.replace(part.start, part.openEnd, withAttribute(startTag(xml, part), "ref", areaName(changes.filter)));
    }
    if (lists !== undefined && lists.from === lists.to && part.end === lists.from) out.insert(lists.from, lists.text);
  }
  out.copy(xml.length);
}

/** Parts of a sheet that hold rules for cells. */
const GROWING: ReadonlySet<string> = new Set(["conditionalFormatting", "dataValidations"]);

/** Rules whose cells end with the last row of a table that takes more. */
function grownRules(xml: string, grown: NonNullable<SheetChanges["grown"]>): string {
  return xml.replace(/(\ssqref\s*=\s*)("[^"]*"|'[^']*')/g, (_, start: string, quoted: string) => {
    const areas = quoted.slice(1, -1).trim().split(/\s+/);
    const longer = areas.map((each) => {
      const own = parseArea(each);
      const table =
        own && grown.find(({ area }) => area.bottom === own.bottom && own.left >= area.left && own.right <= area.right);
      return own && table ? areaName({ ...own, bottom: table.bottom }) : each;
    });
    return `${start}"${longer.join(" ")}"`;
  });
}

/** The column of a cell, counted when it does not say. */
export function columnOf(tag: string, before: number): number {
  return columnNumber(/^[a-z]+/i.exec(attributeIn(tag, "r") ?? "")?.[0] ?? "") ?? before + 1;
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

const COPY_STEP = 1_000_000;

interface Copier {
  readonly copy: (to: number) => void;
  readonly insert: (at: number, text: string) => void;
  readonly replace: (from: number, to: number, text: string) => void;
}

function copier(xml: string, push: (text: string) => void): Copier {
  let at = 0;
  const copy = (to: number): void => {
    while (at < to) {
      let end = Math.min(at + COPY_STEP, to);
      // Both halves of a letter beyond 16 bits must go out together.
      if (end < to && (xml.charCodeAt(end - 1) & 0xfc00) === 0xd800) end++;
      push(xml.slice(at, end));
      at = end;
    }
  };
  return {
    copy,
    insert: (place, text) => {
      copy(place);
      push(text);
    },
    replace: (from, to, text) => {
      copy(from);
      push(text);
      at = to;
    },
  };
}

function writeRows(text: SheetText, changes: SheetChanges, out: Copier, onProgress?: (fraction: number) => void): void {
  const { xml, data } = text;
  const p = data.prefix;
  const rows = changes.rows ?? new Map<number, RowChange>();
  const wanted = [...new Set([...changes.cells.keys(), ...rows.keys()])].sort((a, b) => a - b);
  let next = 0;
  let inserted = false;
  const self = closesItself(xml, data);
  if (self) out.replace(data.start, data.end, opened(startTag(xml, data)));
  const newRowsBefore = (row: number, at: number): void => {
    while (next < wanted.length && wanted[next]! < row) {
      const number = wanted[next++]!;
      const cells = newCells(number, changes.cells.get(number) ?? [], p);
      const bare = `<${p}row r="${number}">`;
      const tag = rowTag(bare, rows.get(number));
      if (cells === "" && tag === bare) continue;
      out.insert(at, `${tag}${cells}</${p}row>`);
      inserted = true;
    }
  };
  let seen = 0;
  for (const { place, row, tag } of rowsOf(text)) {
    newRowsBefore(row, place.start);
    const numbered = inserted ? withAttribute(tag, "r", String(row)) : tag;
    if (wanted[next] === row) {
      next++;
      const looks = withAttribute(rowTag(tag, rows.get(row)), "r", String(row));
      if (changes.cells.has(row))
        out.replace(
          place.start,
          place.end,
          `${opened(withAttribute(looks, "spans", undefined))}${changedCells(text, place, row, changes)}</${p}row>`,
        );
      else out.replace(place.start, place.openEnd, looks);
    } else if (numbered !== tag) out.replace(place.start, place.openEnd, numbered);
    if (onProgress && ++seen % PROGRESS_ROWS === 0) onProgress(place.end / xml.length);
  }
  newRowsBefore(Infinity, self ? data.end : data.closeStart);
  if (self) out.insert(data.end, `</${p}${data.name}>`);
}

const PROGRESS_ROWS = 500;

/** The start tag of a row with its height and whether it is hidden. */
function rowTag(tag: string, change: RowChange = {}): string {
  const { height, hidden } = change;
  const own = typeof height === "number";
  const high =
    height === undefined
      ? tag
      : withAttribute(
          withAttribute(tag, "ht", own ? String(height) : undefined),
          "customHeight",
          own ? "1" : undefined,
        );
  return hidden === undefined ? high : withAttribute(high, "hidden", hidden ? "1" : undefined);
}

function newCells(row: number, changes: readonly CellChange[], prefix: string): string {
  return changes
    .map((change) => changeXml(cellName(row, change.column), change, change.styled(undefined), prefix))
    .join("");
}

function changeXml(
  name: string,
  { content, sharedText }: CellChange,
  style: number | undefined,
  prefix: string,
): string {
  return sharedText === undefined
    ? cellXml(name, style, content, prefix)
    : sharedTextXml(name, style, sharedText, prefix);
}

function changedCells({ xml, sheet, data }: SheetText, place: Place, row: number, { cells }: SheetChanges): string {
  const changes = cells.get(row)!;
  const existing: { column: number; place: Place; tag: string }[] = [];
  let before = 0;
  for (const cell of childrenOf(xml, place)) {
    if (cell.name !== "c") continue;
    const tag = startTag(xml, cell);
    before = columnOf(tag, before);
    existing.push({ column: before, place: cell, tag });
  }
  const styleIn = (column: number): number | undefined => {
    const s = attributeIn(existing.find((cell) => cell.column === column)?.tag ?? "", "s");
    return s === undefined ? undefined : Number(s);
  };
  const pieces: string[] = [];
  const write = (change: CellChange): void => {
    const { column, like, styled } = change;
    pieces.push(changeXml(cellName(row, column), change, styled(styleIn(like ?? column)), data.prefix));
  };
  let next = 0;
  for (const cell of existing) {
    while (next < changes.length && changes[next]!.column < cell.column) write(changes[next++]!);
    if (changes[next]?.column === cell.column) {
      refuseSharedFormula(sheet, xml, cell.place, cellName(row, cell.column), cells);
      write(changes[next++]!);
    } else {
      // A cell without its own address counts from the one before, which may be new.
      const tag =
        attributeIn(cell.tag, "r") === undefined ? withAttribute(cell.tag, "r", cellName(row, cell.column)) : cell.tag;
      pieces.push(tag, xml.slice(cell.place.openEnd, cell.place.end));
    }
  }
  while (next < changes.length) write(changes[next++]!);
  return pieces.join("");
}

/** The first cell of a shared or array formula holds it for the others, and may only go together with them. */
function refuseSharedFormula(
  sheet: string,
  xml: string,
  cell: Place,
  name: string,
  cells: SheetChanges["cells"],
): void {
  const formula = childOf(xml, cell, "f");
  const area = formula && parseArea(attributeIn(startTag(xml, formula), "ref") ?? "");
  if (!area) return;
  for (let row = area.top; row <= area.bottom; row++) {
    const changed = cells.get(row)?.map((change) => change.column) ?? [];
    for (let column = area.left; column <= area.right; column++) {
      if (changed.includes(column)) continue;
      throw new InputError(
        `cell ${name} of "${sheet}"`,
        `a formula that ${cellName(row, column)} shares`,
        "cannot be written over without that cell",
        "copy the cells of that formula and paste them as values, or delete them",
      );
    }
  }
}

function grownDimension(tag: string, { cells }: SheetChanges): string {
  const area = parseArea(attributeIn(tag, "ref") ?? "");
  if (!area) return tag;
  let { top, left, bottom, right } = area;
  for (const [row, changes] of cells) {
    top = Math.min(top, row);
    bottom = Math.max(bottom, row);
    for (const { column } of changes) {
      left = Math.min(left, column);
      right = Math.max(right, column);
    }
  }
  return withAttribute(tag, "ref", areaName({ top, left, bottom, right }));
}

/** The list of column widths with the new ones; a stretch of columns that covers a new one is cut around it. */
function columnWidths(
  { xml, data }: SheetText,
  cols: Place | undefined,
  { widths, hidden }: Pick<SheetChanges, "widths" | "hidden">,
): string {
  const p = data.prefix;
  const stretches: { first: number; last: number; tag: string }[] = [];
  for (const place of cols ? childrenOf(xml, cols) : []) {
    const tag = `${openTag(startTag(xml, place))}/>`;
    stretches.push({ first: Number(attributeIn(tag, "min")), last: Number(attributeIn(tag, "max")), tag });
  }
  for (const [column, width] of widths) {
    const at = stretches.findIndex(({ first, last }) => first <= column && column <= last);
    const old = stretches[at];
    const base = old ? withAttribute(old.tag, "bestFit", undefined) : `<${p}col min="1" max="1"/>`;
    const wide = withAttribute(
      withAttribute(withAttribute(base, "hidden", hidden?.has(column) ? "1" : undefined), "width", String(width)),
      "customWidth",
      "1",
    );
    const pieces = [{ first: column, last: column, tag: wide }];
    if (old && old.first < column) pieces.unshift({ ...old, last: column - 1 });
    if (old && old.last > column) pieces.push({ ...old, first: column + 1 });
    stretches.splice(old ? at : stretches.length, old ? 1 : 0, ...pieces);
  }
  stretches.sort((a, b) => a.first - b.first);
  const list = stretches.map(({ first, last, tag }) =>
    withAttribute(withAttribute(tag, "min", String(first)), "max", String(last)),
  );
  return `<${p}cols>${list.join("")}</${p}cols>`;
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
