import type { ICellData, IStyleData, IWorkbookData, IWorksheetData, Nullable } from "@univerjs/core";
import { InputError } from "../measure/errors";
import { areaName, cellName, type Area } from "../workbook/cellRef";
import type { CellContent, CellEdit, NewSheet, PlainContent, TableGrowth, WorkbookEdits } from "../workbook/edits";
import { changedLayout, type ChangedLayout } from "./changedLayout";
import { calendarShift, richTextOf, styleNumber } from "./gridTerms";
import { liveTables } from "./liveTables";
import type { OpenedBook, OpenedSheet } from "./openedBook";
import { STORED_ERRORS } from "../workbook/errorText";
import type { RichText } from "../workbook/sheetLook";
import { isErrorText } from "./functions/cellError";
import { formulasOf, sameFormula } from "./sharedFormulas";
import { storedFromTyped } from "./storedFormulas";

/** Cells that one formula of the grid fills, and what it fills them with; rows and columns count from 1. */
export interface FilledArea {
  readonly row: number;
  readonly column: number;
  readonly area: Area;
  readonly value: (row: number, column: number) => Nullable<ICellData>;
}

/** The workbook as the grid shows it. */
export interface LiveBook {
  readonly snapshot: IWorkbookData;
  readonly filled: (sheetId: string) => readonly FilledArea[];
}

export interface PageChanges {
  readonly edits: WorkbookEdits;
  /** What a save does not carry, in plain words. */
  readonly said: readonly string[];
}

/**
 * What has changed since the workbook was opened, as edits of its file: cells, fresh results of formulas, styles that a
 * sort moved, number formats, widths, heights, hidden rows and columns, frozen parts and new sheets. A formula that the page cannot work out keeps its old result.
 *
 * @throws InputError when a sheet of the file is gone or was renamed, or a heading of a table was changed
 */
export function bookEdits(opened: OpenedBook, live: LiveBook): PageChanges {
  const { snapshot } = live;
  const known = new Map(opened.sheets.map((sheet) => [sheet.name, sheet]));
  const now = snapshot.sheetOrder.map((id) => ({ id, sheet: snapshot.sheets[id]! }));
  const lost = opened.sheets.find(({ name }) => !now.some(({ sheet }) => sheet.name === name));
  if (lost)
    throw new InputError(
      "save",
      `a workbook without the sheet "${lost.name}"`,
      "keeps every sheet of the file under its name",
      "undo that, or change the sheets in your spreadsheet program",
    );
  const cells: CellEdit[] = [];
  const layouts: ChangedLayout[] = [];
  const sheets: NewSheet[] = [];
  let looks = 0;
  let keptArrays = 0;
  let plainer = 0;
  for (const { id, sheet } of now) {
    const before = known.get(sheet.name ?? "");
    if (before === undefined) sheets.push(newSheet(sheet, live.filled(id)));
    else {
      const old = opened.snapshot.sheets[before.id]!;
      const changes = changedCells(before, old, sheet, live.filled(id), { opened, snapshot });
      for (const cell of changes.cells) cells.push(cell);
      looks += changes.looks;
      keptArrays += changes.keptArrays;
      plainer += changes.plainer;
      layouts.push(changedLayout(before.name, old, sheet));
    }
  }
  refuseHeadings(opened, cells);
  const widths = layouts.flatMap((each) => each.widths);
  const rows = layouts.flatMap((each) => each.rows);
  const frozen = layouts.flatMap((each) => each.frozen);
  const tables = opened.tables.flatMap((table): TableGrowth[] => {
    const bottom = liveTables(snapshot).get(table.id);
    if (bottom === undefined || table.totalsRow || bottom <= table.area.bottom) return [];
    return [{ sheet: table.sheet, table: table.name, bottom }];
  });
  return {
    edits: {
      ...(cells.length === 0 ? {} : { cells }),
      ...(sheets.length === 0 ? {} : { sheets }),
      ...(widths.length === 0 ? {} : { widths }),
      ...(rows.length === 0 ? {} : { rows }),
      ...(frozen.length === 0 ? {} : { frozen }),
      ...(tables.length === 0 ? {} : { tables }),
    },
    said: [
      ...(looks === 0 ? [] : [`${looks} cells look different here than in the file: looks are not saved`]),
      ...(plainer === 0
        ? []
        : [`${plainer} cells lose the look of parts of their text, which the file that was opened still has`]),
      ...(keptArrays === 0
        ? []
        : [
            `${keptArrays} formulas of the file that fill several cells keep their stored results until it is calculated`,
          ]),
    ],
  };
}

/** The number or text that a cell shows; null for a blank. */
export function plainOf(cell: Nullable<ICellData>): PlainContent {
  const value = cell?.v ?? textOfDocument(cell);
  const type: Nullable<number> = cell?.t;
  if (value === null || value === undefined || value === "") return null;
  if (type === BOOLEAN || typeof value === "boolean") return Number(value) === 1;
  if (isErrorText(value)) return { error: STORABLE.has(value) ? value : "#VALUE!" };
  if (type === TEXT || type === SURE_TEXT) return String(value);
  return value;
}

const TEXT = 1;
const BOOLEAN = 3;
const SURE_TEXT = 4;

/** What a file can hold of the errors that the page shows. */
const STORABLE: ReadonlySet<string> = new Set(STORED_ERRORS);

/** Two results are the same when they differ in the last digits alone. */
const SAME = 1e-12;

/** A stored blank result, which LibreOffice would take for none. */
const SHOWN_BLANK = "\u00a0";

interface Books {
  readonly opened: OpenedBook;
  readonly snapshot: IWorkbookData;
}

function changedCells(
  { name, locked, arrays }: OpenedSheet,
  old: Partial<IWorksheetData>,
  now: Partial<IWorksheetData>,
  filled: readonly FilledArea[],
  books: Books,
): { cells: CellEdit[]; looks: number; keptArrays: number; plainer: number } {
  const oldCells = old.cellData ?? {};
  const nowCells = now.cellData ?? {};
  const oldFormulas = formulasOf(oldCells);
  const nowFormulas = formulasOf(nowCells);
  const edits: CellEdit[] = [];
  let looks = 0;
  let keptArrays = 0;
  let plainer = 0;
  const put: Put = (row, column, content, more) => {
    if (locked) throw lockedSheet(name, row, column);
    edits.push({ sheet: name, row: row + 1, column: column + 1, content, ...more });
  };
  for (const r of numbersOf(oldCells, nowCells)) {
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
      if (fills === undefined) put(r, c, stored, moved);
      else {
        put(r, c, { ...stored, fills: fills.area }, moved);
        fillArea(fills, put);
      }
    }
  }
  return { cells: withoutRepeats(edits), looks, keptArrays, plainer: plainer + typedOver(oldCells, nowCells) };
}

type CellRows = IWorksheetData["cellData"];

/** How many texts with a look in parts are no more in any cell. */
function typedOver(before: CellRows, after: CellRows): number {
  const had = richTexts(before);
  if (had.size === 0) return 0;
  const left = richTexts(after);
  return [...had].reduce((lost, [text, times]) => lost + Math.max(0, times - (left.get(text) ?? 0)), 0);
}

function richTexts(cells: CellRows): ReadonlyMap<RichText, number> {
  const found = new Map<RichText, number>();
  for (const r of numbersOf(cells)) {
    for (const c of numbersOf(cells[r] ?? {})) {
      const rich = richTextOf(cells[r]?.[c]);
      if (rich !== undefined) found.set(rich, (found.get(rich) ?? 0) + 1);
    }
  }
  return found;
}

type Put = (
  row: number,
  column: number,
  content: CellContent,
  more: StyleChange & { readonly sharedText?: number },
) => void;

/** A value as the file counts it. */
function inFile(content: PlainContent, dated: number): PlainContent {
  return typeof content === "number" ? content - dated : content;
}

/** The cells that an array formula filled, except the first, which is written after. */
function clearArea({ top, left, bottom, right }: Area, row: number, column: number, put: Put): void {
  for (let r = top - 1; r < bottom; r++)
    for (let c = left - 1; c < right; c++) if (r !== row || c !== column) put(r, c, null, {});
}

function fillArea({ row, column, area, value }: FilledArea, put: Put): void {
  for (let r = area.top; r <= area.bottom; r++)
    for (let c = area.left; c <= area.right; c++)
      if (r !== row || c !== column) put(r - 1, c - 1, plainOf(value(r, c)) ?? SHOWN_BLANK, {});
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

type StyleChange = { readonly style?: number; readonly format?: string };

/** A style of the file that the cell now has, a new number format, or a look that no save carries. */
function styleChange(
  before: ICellData["s"],
  after: ICellData["s"],
  { opened, snapshot }: Books,
): StyleChange | "look" | undefined {
  if (before === after || (!before && after === "x0") || (before === "x0" && !after)) return undefined;
  const own = styleNumber(after);
  if (own !== undefined) return { style: own };
  const [old, now] = [styleOf(before, opened.snapshot), styleOf(after, snapshot)];
  if (JSON.stringify(sorted(old)) === JSON.stringify(sorted(now))) return undefined;
  const format = now.n?.pattern ?? "General";
  if ((old.n?.pattern ?? "General") !== format) return { format };
  return "look";
}

function styleOf(style: ICellData["s"], { styles }: IWorkbookData): IStyleData {
  return (typeof style === "string" ? styles[style] : style) ?? {};
}

function sorted(style: IStyleData): object {
  return Object.fromEntries(
    Object.entries(style)
      .filter(([, value]) => value !== null && value !== undefined)
      .sort(),
  );
}

function newSheet(sheet: Partial<IWorksheetData>, filled: readonly FilledArea[]): NewSheet {
  const cells = sheet.cellData ?? {};
  const formulas = formulasOf(cells);
  const rows: CellContent[][] = [];
  const put = (row: number, column: number, content: CellContent): void => {
    while (rows.length <= row) rows.push([]);
    while (rows[row]!.length < column) rows[row]!.push(null);
    rows[row]![column] = content;
  };
  for (const r of numbersOf(cells)) {
    for (const c of numbersOf(cells[r] ?? {})) {
      const cell = cells[r]?.[c];
      const typed = formulas.at(r, c);
      const result = plainOf(cell);
      if (typed === undefined) put(r, c, result);
      else put(r, c, { formula: storedFromTyped(typed.slice(1)), result: result ?? SHOWN_BLANK });
    }
  }
  for (const area of filled) {
    const anchor = rows[area.row - 1]?.[area.column - 1];
    if (typeof anchor !== "object" || anchor === null || !("formula" in anchor)) continue;
    put(area.row - 1, area.column - 1, { ...anchor, fills: area.area });
    fillArea(area, put);
  }
  return { name: sheet.name ?? "", rows, headingRow: 0 };
}

function refuseHeadings({ tables }: OpenedBook, cells: readonly CellEdit[]): void {
  for (const { name, sheet, area, headerRow } of tables.filter((table) => table.headerRow)) {
    const heading = cells.find(
      (cell) =>
        headerRow &&
        cell.sheet === sheet &&
        cell.row === area.top &&
        cell.column >= area.left &&
        cell.column <= area.right,
    );
    if (heading)
      throw new InputError(
        `cell ${cellName(heading.row, heading.column)}`,
        `another heading of the table ${name} (${areaName(area)})`,
        "keeps its headings, by which formulas know its columns",
        "undo that, or rename the column in your spreadsheet program",
      );
  }
}

function lockedSheet(name: string, row: number, column: number): InputError {
  return new InputError(
    `cell ${cellName(row + 1, column + 1)}`,
    `a change on the protected sheet "${name}"`,
    "keeps a protected sheet as it is",
    "undo that, or unprotect the sheet in your spreadsheet program",
  );
}

/** The text of a cell that has several lines or parts with different looks. */
function textOfDocument(cell: Nullable<ICellData>): string | undefined {
  const text = cell?.p?.body?.dataStream;
  return text?.replace(/\r\n$/, "").replaceAll("\r", "\n");
}

/** Rows, or columns, of either, from the first to the last. */
function numbersOf(one: object, other: object = one): number[] {
  const [a, b] = [Object.keys(one), Object.keys(other)];
  // Keys that are numbers stand in order by themselves.
  if (a.length === b.length && a.every((key, place) => key === b[place])) return a.map(Number);
  return [...new Set([...a, ...b])].map(Number).sort((x, y) => x - y);
}
