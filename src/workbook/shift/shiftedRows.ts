import { areaName, cellName, columnNumber, parseArea } from "../cellRef";
import { cellXml } from "../cellXml";
import { escapeText, unescapeXml } from "../escape";
import { commonFormula, movedFormula, type PlacedFormula } from "../relativeFormula";
import { attributeIn, childOf, childrenOf, closesItself, openTag, startTag, withAttribute, type Place } from "../scan";
import { rowsOf, type SheetText } from "../sheetText";
import { areaAfter, placeAfter, type Shift } from "./shift";
import { shiftedFormula } from "./shiftedFormula";

/** A cell as it is in the file. */
interface FileCell {
  readonly column: number;
  readonly tag: string;
  readonly place: Place;
  readonly inside: string;
  /** Its own formula, whoever shares it. */
  readonly formula: string | undefined;
}

interface FileRow {
  readonly row: number;
  readonly tag: string;
  readonly cells: readonly FileCell[];
}

/** The text of a new cell that is the heading of a new column of a table. */
export type NewHeadings = (row: number, column: number) => string | undefined;

/** What tables say of the rows and columns that come. */
export interface AroundTables {
  readonly headings: NewHeadings;
  /** Whether this row holds the headings of a table. */
  readonly isHeading: (row: number) => boolean;
}

/**
 * The rows of the sheet whose rows or columns shift. New rows have the look of the row before, and the formula of a column
 * in which the rows around hold the same one; a formula that cells share becomes one formula a cell.
 */
export function shiftedRows(
  text: SheetText,
  shift: Shift,
  { headings, isHeading }: AroundTables,
  push: (xml: string) => void,
): void {
  const { xml, data, sheet } = text;
  const p = data.prefix;
  const cellsIn = rowReader(text);
  const tag = startTag(xml, data);
  push(closesItself(xml, data) ? `${openTag(tag)}>` : tag);
  const write = (row: FileRow): void => {
    const after = shift.axis === "row" ? placeAfter(row.row, shift) : row.row;
    if (after === undefined) return;
    const cells = row.cells.flatMap((cell) => {
      const column = shift.axis === "column" ? placeAfter(cell.column, shift) : cell.column;
      return column === undefined ? [] : [{ column, xml: shiftedCell(cell, cellName(after, column), text, shift) }];
    });
    if (shift.axis === "column" && !shift.goes) cells.push(...newColumnCells(row, shift, headings, p));
    cells.sort((a, b) => a.column - b.column);
    const open = openTag(withAttribute(withAttribute(row.tag, "spans", undefined), "r", String(after)));
    push(cells.length === 0 ? `${open}/>` : `${open}>${cells.map((cell) => cell.xml).join("")}</${p}row>`);
  };
  // New rows look at rows before them and the two behind.
  const around: FileRow[] = [];
  let isDone = shift.axis === "column" || shift.goes;
  const comeNow = (): void => {
    isDone = true;
    for (const row of newRows(around, isHeading(shift.at - 1), shift, sheet, p)) push(row);
    around.filter(({ row }) => row >= shift.at).forEach(write);
  };
  for (const { place, row, tag: rowTag } of rowsOf(text)) {
    const read: FileRow = { row, tag: rowTag, cells: cellsIn(place, row) };
    if (!isDone && row > shift.at + 1) comeNow();
    if (isDone || row < shift.at) write(read);
    if (!isDone && row >= shift.at - LOOKED_AT) around.push(read);
  }
  if (!isDone) comeNow();
  push(`</${p}${data.name}>`);
}

/** So many rows before new ones tell what a column is filled with. */
const LOOKED_AT = 60;

/** Reads the cells of one row after the other; knows the formulas that cells above share. */
export function rowReader({ xml }: SheetText): (place: Place, row: number) => readonly FileCell[] {
  const shared = new Map<string, { readonly formula: string; readonly row: number; readonly column: number }>();
  return (place, row) => {
    const cells: FileCell[] = [];
    let column = 0;
    for (const cell of childrenOf(xml, place)) {
      if (cell.name !== "c") continue;
      const tag = startTag(xml, cell);
      column = columnNumber(/^[a-z]+/i.exec(attributeIn(tag, "r") ?? "")?.[0] ?? "") ?? column + 1;
      const inside = xml.slice(cell.openEnd, cell.closeStart);
      let formula: string | undefined;
      if (inside.includes("f")) {
        const place = childOf(xml, cell, "f");
        formula = place && unescapeXml(xml.slice(place.openEnd, place.closeStart));
        const id = place && attributeIn(startTag(xml, place), "si");
        if (id !== undefined && formula !== undefined && formula !== "") shared.set(id, { formula, row, column });
        const first = id === undefined ? undefined : shared.get(id);
        if (first !== undefined) formula = movedFormula(first.formula, row - first.row, column - first.column);
      }
      cells.push({ column, tag, place: cell, inside, formula });
    }
    return cells;
  };
}

/** The cell under its new name, with its formula moved. */
function shiftedCell(cell: FileCell, name: string, { xml, sheet }: SheetText, shift: Shift): string {
  const tag = withAttribute(cell.tag, "r", name);
  if (cell.formula === undefined) return tag + xml.slice(cell.place.openEnd, cell.place.end);
  return tag + withFormula(cell, xml, shiftedFormula(cell.formula, sheet, shift), shift);
}

/** A cell behind its start tag, with another formula: one that was shared is the cell's own from now on. */
export function withFormula({ place }: FileCell, xml: string, formula: string, shift?: Shift): string {
  const old = childOf(xml, place, "f")!;
  const tag = startTag(xml, old);
  const isShared = attributeIn(tag, "t") === "shared";
  let changed = tag;
  for (const name of isShared ? ["t", "si", "ref"] : []) changed = withAttribute(changed, name, undefined);
  // The cells that an array formula or a table of data fills, and the cells that such a table takes its values from.
  for (const name of isShared || shift === undefined ? [] : ["ref", "r1", "r2"]) {
    const area = parseArea(attributeIn(changed, name) ?? "");
    const after = area && areaAfter(area, shift!);
    if (after !== undefined) changed = withAttribute(changed, name, areaName(after));
  }
  const open = openTag(changed);
  const own = formula === "" ? `${open}/>` : `${open}>${escapeText(formula)}</${old.prefix}f>`;
  return xml.slice(place.openEnd, old.start) + own + xml.slice(old.end, place.end);
}

/** New rows: the look of the row before them, or after a heading of the row below, and the formulas that run through. */
function newRows(around: readonly FileRow[], isHeading: boolean, shift: Shift, sheet: string, p: string): string[] {
  const { at, count } = shift;
  const rowAt = (row: number) => around.find((each) => each.row === row);
  const [before, here, next] = [rowAt(at - 1), rowAt(at), rowAt(at + 1)];
  const like = isHeading ? (here ?? before) : (before ?? here);
  if (like === undefined) return [];
  const cellIn = (row: FileRow | undefined, column: number) => row?.cells.find((cell) => cell.column === column);
  const runsThrough = (column: number): PlacedFormula | undefined => {
    const has = (row: FileRow | undefined): boolean => cellIn(row, column)?.formula !== undefined;
    if (!has(here) || !(has(before) || has(next))) return undefined;
    // Formulas of a survey differ a little from row to row: most rows have the one for a row of the usual kind.
    const found = commonFormula(
      around.flatMap((row) => {
        const formula = cellIn(row, column)?.formula;
        return formula === undefined ? [] : [{ formula, row: row.row }];
      }),
      column,
    );
    if (found === undefined) return undefined;
    const row = found.row < at ? found.row : found.row + count;
    return { formula: shiftedFormula(found.formula, sheet, shift), row };
  };
  const cells = like.cells.flatMap(({ column, tag }) => {
    const [found, style] = [runsThrough(column), attributeIn(tag, "s")];
    return found === undefined && style === undefined ? [] : [{ column, found, style }];
  });
  const tag = ["spans", "hidden"].reduce((t, name) => withAttribute(t, name, undefined), openTag(like.tag));
  return Array.from({ length: count }, (_, i) => {
    const row = at + i;
    const list = cells.map(({ column, found, style }) => {
      const cell = `<${p}c r="${cellName(row, column)}"${style === undefined ? "" : ` s="${style}"`}`;
      if (found === undefined) return `${cell}/>`;
      return `${cell}><${p}f>${escapeText(movedFormula(found.formula, row - found.row, 0))}</${p}f></${p}c>`;
    });
    return `${withAttribute(`${tag}>`, "r", String(row))}${list.join("")}</${p}row>`;
  });
}

/** Cells of new columns in one row: the look of the column before, or after the sheet's edge of the one that moves. */
function newColumnCells(row: FileRow, { at, count }: Shift, headings: NewHeadings, p: string) {
  const like =
    row.cells.find(({ column }) => column === at - 1) ??
    (at === 1 ? row.cells.find(({ column }) => column === 1) : undefined);
  const style = like === undefined ? undefined : attributeIn(like.tag, "s");
  return Array.from({ length: count }, (_, i) => {
    const column = at + i;
    const text = headings(row.row, column);
    if (style === undefined && text === undefined) return [];
    return [
      {
        column,
        xml: cellXml(cellName(row.row, column), style === undefined ? undefined : Number(style), text ?? null, p),
      },
    ];
  }).flat();
}
