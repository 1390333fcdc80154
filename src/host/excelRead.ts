import type { Book, BookSheet, BookTable } from "../workbook/book";
import { areaName, type Area } from "../workbook/cellRef";
import { errorTexts } from "../workbook/errorText";
import type { DefinedName } from "../workbook/openWorkbook";

/** The workbook without its cells: sheets, tables, names, and which cells are used. */
export interface HostView extends Omit<Book, "grid"> {
  /** By sheet; a sheet without cells that hold something is missing. */
  readonly used: ReadonlyMap<string, Area>;
  readonly locked: ReadonlySet<string>;
  readonly structureLocked: boolean;
  /** Whether Excel calculates only when it is asked to. */
  readonly byHand: boolean;
  /** Of each sheet, what Excel calls it whatever its name. */
  readonly ids: ReadonlyMap<string, string>;
}

/** One property of a rectangle of cells. */
export interface CellRequest {
  readonly sheet: string;
  readonly area: Area;
  readonly what: "values" | "formulas" | "numberFormat" | "text";
}

export type Matrix = readonly (readonly unknown[])[];

/** The workbook without its cells, in two rounds to Excel. Excel does not tell a table that a query fills from any other. */
export async function lookAt(context: Excel.RequestContext): Promise<HostView> {
  const { worksheets, tables, names, protection } = context.workbook;
  const { application } = context;
  application.load("calculationMode");
  const wanted = ["name", "formula", "comment", "visible", "scope"];
  worksheets.load(
    ["id", "name", "visibility", "protection/protected", ...wanted.map((each) => `names/items/${each}`)].map(ofItems),
  );
  tables.load(["name", "showHeaders", "showTotals", "worksheet/name", "columns/items/name"].map(ofItems));
  names.load(wanted.map(ofItems));
  protection.load("protected");
  await context.sync();
  const usedRanges = worksheets.items.map((sheet) => sheet.getUsedRangeOrNullObject(true).load(CORNERS));
  const tableRanges = tables.items.map((table) => table.getRange().load(CORNERS));
  await context.sync();
  const sheets = worksheets.items.map(({ name, visibility }): BookSheet => ({
    name,
    state: STATES[visibility] ?? "visible",
    cells: true,
  }));
  return {
    sheets,
    tables: tables.items.map(({ name, worksheet, showHeaders, showTotals, columns }, place): BookTable => ({
      name,
      sheet: worksheet.name,
      area: areaOf(tableRanges[place]!),
      headerRow: showHeaders,
      totalsRow: showTotals,
      columns: columns.items.map((column) => column.name),
      plain: true,
    })),
    names: [
      ...names.items.filter(({ scope }) => scope === "Workbook").map((item) => definedName(item, undefined)),
      ...worksheets.items.flatMap((sheet) => sheet.names.items.map((item) => definedName(item, sheet.name))),
    ],
    used: new Map(
      usedRanges.flatMap((range, place): [string, Area][] =>
        range.isNullObject ? [] : [[sheets[place]!.name, areaOf(range)]],
      ),
    ),
    locked: new Set(worksheets.items.filter((sheet) => sheet.protection.protected).map(({ name }) => name)),
    structureLocked: protection.protected,
    byHand: application.calculationMode === "Manual",
    ids: new Map(worksheets.items.map(({ name, id }) => [name, id])),
  };
}

/** Reads cells in as few rounds as answers allow, which Excel on the web limits to 5 MB each. */
export async function readCells(
  context: Excel.RequestContext,
  requests: readonly CellRequest[],
): Promise<readonly Matrix[]> {
  const found: Matrix[][] = requests.map(() => []);
  let waiting: Piece[] = [];
  let share = 0;
  const fetch = async (): Promise<void> => {
    const now = waiting;
    waiting = [];
    share = 0;
    for (const { place, cells } of await readPieces(context, now)) found[place]!.push(cells);
  };
  for (const [place, { sheet, area, what }] of requests.entries()) {
    const width = area.right - area.left + 1;
    const most = CELLS_A_ROUND[what];
    const rowsAtOnce = Math.max(1, Math.floor(most / width));
    for (let top = area.top; top <= area.bottom; top += rowsAtOnce) {
      const bottom = Math.min(area.bottom, top + rowsAtOnce - 1);
      const own = ((bottom - top + 1) * width) / most;
      if (share > 0 && share + own > 1) await fetch();
      share += own;
      waiting.push({ place, sheet, what, area: { ...area, top, bottom } });
    }
  }
  if (waiting.length > 0) await fetch();
  return found.map((pieces) => pieces.flat());
}

interface Piece extends CellRequest {
  /** Of the request. */
  readonly place: number;
}

/** One round; where its answer is too large for Excel, its halves. */
async function readPieces(
  context: Excel.RequestContext,
  pieces: readonly Piece[],
): Promise<readonly { readonly place: number; readonly cells: Matrix }[]> {
  const ranges = pieces.map(({ sheet, area, what }) => rangeAt(context, sheet, area).load(what));
  try {
    await context.sync();
  } catch (error) {
    const halves = isTooLarge(error) ? halved(pieces) : undefined;
    if (halves === undefined) throw error;
    const [first, second] = halves;
    return [...(await readPieces(context, first)), ...(await readPieces(context, second))];
  }
  return pieces.map(({ place, what }, index) => ({ place, cells: ranges[index]![what] as Matrix }));
}

/** By pieces, and a single piece by its rows; undefined of one row. */
function halved(pieces: readonly Piece[]): readonly [readonly Piece[], readonly Piece[]] | undefined {
  const middle = Math.ceil(pieces.length / 2);
  if (pieces.length > 1) return [pieces.slice(0, middle), pieces.slice(middle)];
  const [piece] = pieces;
  if (piece === undefined || piece.area.top === piece.area.bottom) return undefined;
  const row = Math.floor((piece.area.top + piece.area.bottom) / 2);
  return [[{ ...piece, area: { ...piece.area, bottom: row } }], [{ ...piece, area: { ...piece.area, top: row + 1 } }]];
}

/** Long notes can make an answer too large, whatever the number of cells. */
export function isTooLarge(error: unknown): boolean {
  const code = error instanceof Error && "code" in error ? String(error.code) : "";
  return ["ResponsePayloadSizeLimitExceeded", "RequestPayloadSizeLimitExceeded"].includes(code);
}

export function rangeAt(context: Excel.RequestContext, sheet: string, area: Area): Excel.Range {
  return context.workbook.worksheets.getItem(sheet).getRange(areaName(area));
}

/** Where a range lies whose corners were loaded. */
export function areaOf({ rowIndex, columnIndex, rowCount, columnCount }: Excel.Range): Area {
  return { top: rowIndex + 1, left: columnIndex + 1, bottom: rowIndex + rowCount, right: columnIndex + columnCount };
}

/** Whether a text is an error that Excel shows; typed, it becomes that error. */
export const isErrorText = errorTexts(
  ...["#SPILL!", "#CALC!", "#FIELD!", "#BUSY!", "#CONNECT!", "#BLOCKED!", "#UNKNOWN!", "#GETTING_DATA"],
);

/** What `areaOf` needs of a range. */
export const CORNERS = ["rowIndex", "columnIndex", "rowCount", "columnCount"];

/** Numbers and short texts take up to 50 bytes a cell, our formulas up to 250. */
const CELLS_A_ROUND = { values: 100_000, formulas: 20_000, numberFormat: 100_000, text: 100_000 } as const;

const STATES: Readonly<Record<string, BookSheet["state"]>> = {
  Visible: "visible",
  Hidden: "hidden",
  VeryHidden: "veryHidden",
};

function ofItems(path: string): string {
  return `items/${path}`;
}

function definedName({ name, formula, comment, visible }: Excel.NamedItem, sheet: string | undefined): DefinedName {
  return { name, refersTo: String(formula).replace(/^=/, ""), sheet, hidden: !visible, comment };
}
