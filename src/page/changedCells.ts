import type { ICellData, IWorksheetData, Nullable } from "@univerjs/core";
import { InputError } from "../measure/errors";
import { cellName } from "../workbook/cellRef";
import type { CellEdit, PlainContent } from "../workbook/edits";
import { calendarShift, richTextOf } from "./gridTerms";
import type { OpenedSheet } from "./openedBook";
import type { RichText } from "../workbook/sheetLook";
import { gridCells } from "./gridCells";
import { known } from "./grid/known";
import { formulasOf, sameFormula, type Formulas } from "./sharedFormulas";
import { storedFromTyped } from "./storedFormulas";
import { plainOf } from "./plainOf";
import { type Books, styleChange, styleOf } from "./styleChange";
import { SHOWN_BLANK } from "../workbook/shownBlank";
import { type FilledArea, type Put, clearArea, fillArea } from "./filledArea";

/**
 * Cells of a sheet that are other than in the file, as edits of it, and how many changes no save carries.
 *
 * @returns `fresh`: those of the cells where nothing is new but the result of a formula
 */
export function changedCells(
  { name, locked, arrays }: OpenedSheet,
  old: Partial<IWorksheetData>,
  now: Partial<IWorksheetData>,
  filled: readonly FilledArea[],
  books: Books,
): { cells: CellEdit[]; fresh: ReadonlySet<CellEdit>; looks: number; keptArrays: number; plainer: number } {
  const oldCells = old.cellData ?? {};
  const nowCells = now.cellData ?? {};
  const oldFormulas = known(formulasOfFile, oldCells, () => formulasOf(oldCells));
  const nowFormulas = formulasOf(nowCells);
  const edits: CellEdit[] = [];
  const fresh = new Set<CellEdit>();
  let looks = 0;
  let keptArrays = 0;
  let plainer = 0;
  const put: Put = (row, column, content, more) => {
    if (locked) throw lockedSheet(name, row, column);
    edits.push({ sheet: name, row: row + 1, column: column + 1, content, ...more });
  };
  const isKept = (r: number, c: number): boolean =>
    isSameCell(oldCells[r]?.[c], nowCells[r]?.[c]) && sameFormula(oldFormulas, nowFormulas, r, c);
  for (const r of numbersOf(oldCells, nowCells)) {
    if (isKeptRow(oldCells[r] ?? {}, nowCells[r] ?? {}, (c) => isKept(r, c))) continue;
    for (const c of numbersOf(oldCells[r] ?? {}, nowCells[r] ?? {})) {
      const before = oldCells[r]?.[c];
      const after = nowCells[r]?.[c];
      const same = sameFormula(oldFormulas, nowFormulas, r, c);
      const hadFormula = oldFormulas.from(r, c) !== undefined;
      const style = styleChange(before?.s, after?.s, books);
      if (style === "look") looks++;
      const moved = style === "look" || style === undefined ? {} : style;
      const restyled = Object.keys(moved).length > 0;
      const dated = books.opened.date1904 ? calendarShift(styleOf(after?.s, books.snapshot).n?.pattern ?? "") : 0;
      const array = arrays.find(({ row, column }) => row === r + 1 && column === c + 1);
      const fills = filled.find(({ row, column }) => row === r + 1 && column === c + 1);
      if (same && array !== undefined) {
        if (!sameResult(before, after)) keptArrays++;
        continue;
      }
      if (nowFormulas.from(r, c) === undefined) {
        const content = plainOf(after);
        const rich = richTextOf(after);
        const sameText = samePlain(plainOf(before), content) && rich === richTextOf(before);
        if (!hadFormula && !restyled && sameText) continue;
        if (hadFormula && array) clearArea(array.area, r, c, put);
        put(r, c, inFile(content, dated), { ...moved, ...(typeof rich === "number" ? { sharedText: rich } : {}) });
        if (rich === "own") plainer++;
        continue;
      }
      if (same && !restyled && (locked || sameResult(before, after) || !worked(after))) continue;
      if (array) clearArea(array.area, r, c, put);
      const result = worked(after) || !same ? plainOf(after) : plainOf(before);
      const formula = nowFormulas.at(r, c) ?? "=";
      const stored = { formula: storedFromTyped(formula.slice(1)), result: inFile(result, dated) ?? SHOWN_BLANK };
      const first = edits.length;
      if (fills === undefined) put(r, c, stored, moved);
      else {
        put(r, c, { ...stored, fills: fills.area }, moved);
        fillArea(fills, put);
      }
      if (same && !restyled) for (const edit of edits.slice(first)) fresh.add(edit);
    }
  }
  return { cells: withoutRepeats(edits), fresh, looks, keptArrays, plainer: plainer + typedOver(oldCells, nowCells) };
}

type CellRows = IWorksheetData["cellData"];

/** Formulas and texts with a look in parts of the file that was opened, which does not change. */
const formulasOfFile = new WeakMap<CellRows, Formulas>();
const textsOfFile = new WeakMap<CellRows, ReadonlyMap<RichText, number>>();

/** Most rows are as they were: whether the cells of one are the same, none more and none less. */
function isKeptRow(old: object, now: object, isKept: (column: number) => boolean): boolean {
  let count = 0;
  for (const column in now) {
    if (!isKept(Number(column))) return false;
    count++;
  }
  for (const _ in old) count--;
  return count === 0;
}

/** Whether a cell holds the same content in the same style, apart from its formula. */
function isSameCell(before: Nullable<ICellData>, after: Nullable<ICellData>): boolean {
  if (before?.p || after?.p || richTextOf(before) !== richTextOf(after)) return false;
  return before?.v === after?.v && before?.t === after?.t && before?.s === after?.s;
}

/** How many texts with a look in parts are no more in any cell. */
function typedOver(before: CellRows, after: CellRows): number {
  const had = known(textsOfFile, before, () => richTexts(before));
  if (had.size === 0) return 0;
  const left = richTexts(after);
  return [...had].reduce((lost, [text, times]) => lost + Math.max(0, times - (left.get(text) ?? 0)), 0);
}

function richTexts(cells: CellRows): ReadonlyMap<RichText, number> {
  const found = new Map<RichText, number>();
  for (const [, , cell] of gridCells(cells)) {
    const rich = richTextOf(cell);
    if (rich !== undefined) found.set(rich, (found.get(rich) ?? 0) + 1);
  }
  return found;
}

/** A value as the file counts it. */
function inFile(content: PlainContent, dated: number): PlainContent {
  return typeof content === "number" ? content - dated : content;
}

/** The last word on each cell. */
function withoutRepeats(edits: readonly CellEdit[]): CellEdit[] {
  return [...new Map(edits.map((edit) => [cellName(edit.row, edit.column), edit])).values()];
}

/** Whether the grid could work a formula out: a function that it lacks, or none of its results yet, is no answer. */
function worked(cell: Nullable<ICellData>): boolean {
  return cell?.v !== undefined && cell.v !== null && cell.v !== "#NAME?";
}

function sameResult(before: Nullable<ICellData>, after: Nullable<ICellData>): boolean {
  const [a, b] = [shownBlank(plainOf(before)), shownBlank(plainOf(after))];
  return samePlain(a, b);
}

function shownBlank(content: PlainContent): PlainContent {
  return content === SHOWN_BLANK ? null : content;
}

function samePlain(a: PlainContent, b: PlainContent): boolean {
  if (typeof a === "number" && typeof b === "number")
    return a === b || Math.abs(a - b) <= SAME * Math.max(Math.abs(a), Math.abs(b));
  if (typeof a === "object" && a !== null && typeof b === "object" && b !== null) return a.error === b.error;
  return a === b;
}

/** Two results are the same when they differ in the last digits alone. */
const SAME = 1e-12;

function lockedSheet(name: string, row: number, column: number): InputError {
  return new InputError(
    `cell ${cellName(row + 1, column + 1)}`,
    `a change on the protected sheet "${name}"`,
    "keeps a protected sheet as it is",
    "undo that, or unprotect the sheet in your spreadsheet program",
  );
}

/** Rows, or columns, of either, from the first to the last. */
export function numbersOf(one: object, other: object = one): number[] {
  const [a, b] = [Object.keys(one), Object.keys(other)];
  // Keys that are numbers stand in order by themselves.
  if (a.length === b.length && a.every((key, place) => key === b[place])) return a.map(Number);
  return [...new Set([...a, ...b])].map(Number).sort((x, y) => x - y);
}
