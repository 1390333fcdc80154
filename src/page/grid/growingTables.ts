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
import { commonFormula, movedFormula } from "../../workbook/relativeFormula";
import { BOOK_ID } from "../gridTerms";
import { formulasOf } from "../sharedFormulas";

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

function isFilled(cell: Nullable<ICellData>): boolean {
  return cell?.p !== undefined && cell.p !== null ? true : cell?.v !== undefined && cell.v !== null && cell.v !== "";
}

function growIn(
  injector: Injector,
  sheet: FWorksheet,
  rows: ReadonlySet<number>,
  canGrow: (table: string) => boolean,
  say: (text: string) => void,
): void {
  const cells = sheet.getSheet().getConfig().cellData as Cells;
  const isNew = (row: number, left: number, right: number): boolean => {
    for (let c = left; c <= right; c++) {
      const cell = cells[row]?.[c];
      if (isFilled(cell) && !cell?.f && !cell?.si) return true;
    }
    return false;
  };
  const tables: readonly Table[] = sheet.getSubTableInfos();
  for (const { id, name, range } of tables) {
    const { endRow, startColumn, endColumn } = range;
    if (!rows.has(endRow + 1) || !canGrow(name) || !isNew(endRow + 1, startColumn, endColumn)) continue;
    let last = endRow + 1;
    while (rows.has(last + 1) && isNew(last + 1, startColumn, endColumn)) last++;
    const meets = tables.some(
      (other) =>
        other.id !== id &&
        other.range.startRow <= last &&
        other.range.endRow > endRow &&
        other.range.startColumn <= endColumn &&
        other.range.endColumn >= startColumn,
    );
    if (meets) continue;
    const newRange: IRange = { startRow: range.startRow, endRow: last, startColumn, endColumn };
    const oldRange: IRange = { startRow: range.startRow, endRow, startColumn, endColumn };
    const table = (to: IRange): IMutationInfo => ({
      id: "sheet.mutation.set-sheet-table",
      params: {
        unitId: BOOK_ID,
        subUnitId: sheet.getSheetId(),
        tableId: id,
        config: { updateRange: { newRange: to } },
      },
    });
    const filled = runningOn(cells, oldRange, last, true);
    const lists = longerLists(injector, sheet.getSheetId(), oldRange, last);
    step(injector, sheet.getSheetId(), filled, [table(newRange), ...lists.redo], [table(oldRange), ...lists.undo]);
    say(
      `${last === endRow + 1 ? `Row ${last + 1} joins` : `Rows ${endRow + 2} to ${last + 1} join`} the table ${name}`,
    );
    return;
  }
  // Without a table, formulas that run through the two rows before go on.
  const first = Math.min(...rows);
  if (tables.some(({ range }) => first >= range.startRow && first <= range.endRow)) return;
  const left = 0;
  const right = Math.max(0, ...[first - 1, first - 2].flatMap((row) => Object.keys(cells[row] ?? {}).map(Number)));
  let last = first;
  while (rows.has(last + 1) && isNew(last + 1, left, right)) last++;
  if (first < 2 || !isNew(first, left, right) || !isNew(first - 1, left, right)) return;
  const filled = runningOn(cells, { startRow: 0, endRow: first - 1, startColumn: left, endColumn: right }, last, false);
  if (filled.size > 0) step(injector, sheet.getSheetId(), filled, [], []);
}

interface NewCell {
  readonly f?: string;
  readonly s?: ICellData["s"];
}

type Cells = Readonly<Record<number, Readonly<Record<number, Nullable<ICellData>>>>>;
type Filled = ReadonlyMap<number, ReadonlyMap<number, NewCell>>;

/** The cells of new rows below an area: formulas of its last rows filled down, and their looks. */
function runningOn(
  cells: Cells,
  { startRow, endRow, startColumn, endColumn }: IRange,
  last: number,
  isTable: boolean,
): Filled {
  const formulaAt = formulasOf(cells);
  const found = new Map<number, Map<number, NewCell>>();
  const first = Math.max(isTable ? startRow + 1 : startRow, endRow - LOOKED_AT);
  const rows = Array.from({ length: Math.max(0, endRow - first + 1) }, (_, i) => first + i);
  const typedIn = (row: number): string => {
    const columns = Array.from({ length: endColumn - startColumn + 1 }, (_, i) => startColumn + i);
    return columns.filter((c) => isFilled(cells[row]?.[c]) && formulaAt(row, c) === undefined).join();
  };
  const patterns = new Map(rows.map((row) => [row, typedIn(row)]));
  for (let r = endRow + 1; r <= last; r++) {
    // Formulas of a survey differ a little by what is filled in a row: those of rows like it, else what most rows have.
    const own = typedIn(r);
    const alike = rows.filter((row) => patterns.get(row) === own);
    const row = new Map<number, NewCell>();
    for (let c = startColumn; c <= endColumn; c++) {
      const cell = cells[r]?.[c];
      const runs = formulaAt(endRow, c) !== undefined && (isTable || formulaAt(endRow - 1, c) !== undefined);
      const takes = runs && !isFilled(cell) && !cell?.f && !cell?.si;
      const placed = (of: readonly number[]) =>
        of.flatMap((at) => {
          const formula = formulaAt(at, c);
          return formula === undefined ? [] : [{ formula, row: at }];
        });
      const formula = takes ? (commonFormula(placed(alike), c) ?? commonFormula(placed(rows), c)) : undefined;
      const style = cells[endRow]?.[c]?.s;
      const looks = style !== undefined && style !== null && !cell?.s && (isTable || formula !== undefined);
      if (formula === undefined && !looks) continue;
      row.set(c, {
        ...(formula === undefined ? {} : { f: movedFormula(formula.formula, r - formula.row, 0) }),
        ...(looks ? { s: style } : {}),
      });
    }
    if (row.size > 0) found.set(r, row);
  }
  return found;
}

/** So many last rows tell what a column is filled with. */
const LOOKED_AT = 60;

/** Does all of it, and makes it one step to undo. */
function step(
  injector: Injector,
  subUnitId: string,
  filled: Filled,
  more: readonly IMutationInfo[],
  moreBack: readonly IMutationInfo[],
): void {
  const commands = injector.get(ICommandService);
  const values = (each: (cell: { readonly f?: string; readonly s?: ICellData["s"] }) => object): IMutationInfo => ({
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
