import {
  ICommandService,
  IUndoRedoService,
  type ICellData,
  type IMutationInfo,
  type Injector,
  type IRange,
  type Nullable,
} from "@univerjs/core";
import { SheetDataValidationModel } from "@univerjs/sheets-data-validation";
import type { FWorkbook, FWorksheet } from "@univerjs/sheets/facade";
import { BOOK_ID } from "../gridTerms";
import { filledDown, isFilled, type Cells, type Filled, type NewCell } from "./filledDown";

const SET_VALUES = "sheet.mutation.set-range-values";
const STEPPING = /^univer\.command\.(undo|redo)$/;

/** A rule for the cells of the rows that join, in the words of the grid's mutation. */
const RANGES = 1;

interface Values {
  readonly unitId: string;
  readonly subUnitId: string;
  readonly cellValue?: Readonly<Record<number, Readonly<Record<number, Nullable<ICellData>>>>>;
}

/** The table around or over the first row that was typed, as far as the grid knows it. */
interface Table {
  readonly id: string;
  readonly name: string;
  readonly range: IRange;
}

/**
 * Rows that are typed or pasted right below a survey join it: its table grows over them, and formulas that run through the
 * last two rows go on, with looks and lists of choices. It is a step of its own, which Undo takes back.
 *
 * @param canGrow whether a table takes more rows: one with a row of totals does not
 * @param say tells the user
 */
export function growTables(
  injector: Injector,
  workbook: () => FWorkbook,
  canGrow: (table: string) => boolean,
  say: (text: string) => void,
): void {
  const commands = injector.get(ICommandService);
  let typed = new Map<string, Set<number>>();
  let waiting: ReturnType<typeof setTimeout> | undefined;
  commands.onCommandExecuted(({ id, params }) => {
    if (STEPPING.test(id)) typed = new Map();
    if (id !== SET_VALUES) return;
    const { unitId, subUnitId, cellValue = {} } = params as Values;
    if (unitId !== BOOK_ID) return;
    for (const [row, cells] of Object.entries(cellValue))
      if (Object.values(cells ?? {}).some(isTyped))
        typed.set(subUnitId, (typed.get(subUnitId) ?? new Set()).add(Number(row)));
    if (typed.size > 0) waiting ??= setTimeout(grow, 0);
  });
  const grow = (): void => {
    waiting = undefined;
    const now = typed;
    typed = new Map();
    for (const [id, rows] of now) {
      const sheet = workbook().getSheetBySheetId(id);
      if (sheet) growIn(injector, sheet, rows, canGrow, say);
    }
  };
}

/** A value that someone gave, and no formula or the result of one. */
function isTyped(cell: Nullable<ICellData>): boolean {
  return Boolean(cell && !cell.f && !cell.si && !("f" in cell && cell.v === undefined)) && isFilled(cell);
}

function growIn(
  injector: Injector,
  sheet: FWorksheet,
  rows: ReadonlySet<number>,
  canGrow: (table: string) => boolean,
  say: (text: string) => void,
): void {
  const tables: readonly Table[] = sheet.getSubTableInfos();
  const cells = sheet.getSheet().getConfig().cellData as Cells;
  const sheetId = sheet.getSheetId();
  for (const table of tables) {
    const { name, range } = table;
    const last = lastTyped(cells, rows, range.endRow + 1, range);
    if (last === undefined || !canGrow(name) || tables.some((other) => meets(other, table, last))) continue;
    const tableTo = (endRow: number) => tableOver(sheetId, table.id, { ...range, endRow });
    const lists = longerLists(injector, sheetId, range, last);
    const filled = filledDown(cells, range, last, true);
    step(injector, sheetId, filled, [tableTo(last), ...lists.redo], [tableTo(range.endRow), ...lists.undo]);
    const first = range.endRow + 2;
    say(`${last + 1 === first ? `Row ${first} joins` : `Rows ${first} to ${last + 1} join`} the table ${name}`);
    return;
  }
  const first = Math.min(...rows);
  if (!tables.some(({ range }) => first >= range.startRow && first <= range.endRow))
    runOn(injector, sheetId, cells, rows);
}

/** Without a table, formulas that run through the two rows before go on. */
function runOn(injector: Injector, sheetId: string, cells: Cells, rows: ReadonlySet<number>): void {
  const first = Math.min(...rows);
  const above = [first - 1, first - 2].flatMap((row) => Object.keys(cells[row] ?? {}).map(Number));
  const across = { startColumn: 0, endColumn: Math.max(0, ...above) };
  const last = lastTyped(cells, rows, first, across);
  if (first < 2 || last === undefined || !isNew(cells, first - 1, across)) return;
  const filled = filledDown(cells, { startRow: 0, endRow: first - 1, ...across }, last, false);
  if (filled.size > 0) step(injector, sheetId, filled, [], []);
}

type Across = Pick<IRange, "startColumn" | "endColumn">;

/** The last of the rows that were typed one below the other from `first` on; undefined where that was not typed. */
function lastTyped(cells: Cells, rows: ReadonlySet<number>, first: number, across: Across): number | undefined {
  const isTypedRow = (row: number) => rows.has(row) && isNew(cells, row, across);
  if (!isTypedRow(first)) return undefined;
  let last = first;
  while (isTypedRow(last + 1)) last++;
  return last;
}

/** A row with a value that is no formula's. */
function isNew(cells: Cells, row: number, { startColumn, endColumn }: Across): boolean {
  for (let column = startColumn; column <= endColumn; column++) {
    const cell = cells[row]?.[column];
    if (isFilled(cell) && !cell?.f && !cell?.si) return true;
  }
  return false;
}

/** Whether another table lies where one would grow to. */
function meets(other: Table, { id, range }: Table, last: number): boolean {
  return (
    other.id !== id &&
    other.range.startRow <= last &&
    other.range.endRow > range.endRow &&
    other.range.startColumn <= range.endColumn &&
    other.range.endColumn >= range.startColumn
  );
}

function tableOver(
  subUnitId: string,
  tableId: string,
  { startRow, endRow, startColumn, endColumn }: IRange,
): IMutationInfo {
  return {
    id: "sheet.mutation.set-sheet-table",
    params: {
      unitId: BOOK_ID,
      subUnitId,
      tableId,
      config: { updateRange: { newRange: { startRow, endRow, startColumn, endColumn } } },
    },
  };
}

/** Does all of it, and makes it one step to undo. */
function step(
  injector: Injector,
  subUnitId: string,
  filled: Filled,
  more: readonly IMutationInfo[],
  moreBack: readonly IMutationInfo[],
): void {
  const commands = injector.get(ICommandService);
  const values = (each: (cell: NewCell) => object): IMutationInfo => ({
    id: SET_VALUES,
    params: {
      unitId: BOOK_ID,
      subUnitId,
      cellValue: Object.fromEntries(
        [...filled].map(([r, row]) => [r, Object.fromEntries([...row].map(([c, cell]) => [c, each(cell)]))]),
      ),
    },
  });
  const there = [
    ...more,
    values(({ f, s }) => ({ ...(f === undefined ? {} : { f, v: null }), ...(s === undefined ? {} : { s }) })),
  ];
  const back = [
    values(({ f, s }) => ({
      ...(f === undefined ? {} : { f: null, si: null, v: null }),
      ...(s === undefined ? {} : { s: null }),
    })),
    ...moreBack,
  ];
  for (const { id, params } of there) commands.syncExecuteCommand(id, params);
  injector.get(IUndoRedoService).pushUndoRedo({ unitID: BOOK_ID, undoMutations: back, redoMutations: there });
}

/** Lists of choices that end with the last row of the table go on too. */
function longerLists(injector: Injector, subUnitId: string, { endRow, startColumn, endColumn }: IRange, last: number) {
  const rules = injector.get(SheetDataValidationModel).getRules(BOOK_ID, subUnitId);
  const changing = rules.filter(({ ranges }) =>
    ranges.some((range) => range.endRow === endRow && range.startColumn >= startColumn && range.endColumn <= endColumn),
  );
  const change = (ruleId: string, ranges: readonly IRange[]): IMutationInfo => ({
    id: "data-validation.mutation.updateRule",
    params: { unitId: BOOK_ID, subUnitId, ruleId, payload: { type: RANGES, payload: ranges } },
  });
  return {
    redo: changing.map(({ uid, ranges }) =>
      change(
        uid,
        ranges.map((range) => (range.endRow === endRow ? { ...range, endRow: last } : range)),
      ),
    ),
    undo: changing.map(({ uid, ranges }) => change(uid, ranges)),
  };
}
