import { InputError } from "../measure/errors";
import { cellName, parseArea } from "./cellRef";
import { cellXml, sharedTextXml } from "./cellXml";
import { attributeIn, childOf, childrenOf, closesItself, opened, startTag, withAttribute, type Place } from "./scan";
import { type SheetText, rowsOf, columnOf } from "./sheetText";
import type { CellChange, RowChange, SheetChanges } from "./sheetChanges";
import type { Copier } from "./copier";

/**
 * Writes the rows of a sheet with their changed cells; rows that do not change are copied.
 *
 * @throws InputError when a change would break a formula that several cells share
 */
export function writeRows(
  text: SheetText,
  changes: SheetChanges,
  out: Copier,
  onProgress?: (fraction: number) => void,
): void {
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
