import {
  ICommandService,
  IUniverInstanceService,
  UniverInstanceType,
  type Injector,
  type IRange,
  type Workbook,
} from "@univerjs/core";
import { movedFormula } from "../../workbook/relativeFormula";
import { formulaSharer, formulasOf } from "../sharedFormulas";

/** What the grid runs to move the rows of a sort, and to move them back. */
interface Reorder {
  readonly unitId: string;
  readonly subUnitId: string;
  readonly range: IRange;
  /** The row from which each row is filled. */
  readonly order: Readonly<Record<number, number>>;
}

interface MovingFormula {
  readonly row: number;
  readonly column: number;
  readonly formula: string;
}

const REORDER = "sheet.mutation.reorder-range";
const SET_VALUES = "sheet.mutation.set-range-values";

/**
 * A sort leaves formulas as they read, so a formula that refers to its row would refer to the row it came from. After
 * every sort, and its undoing, the formulas are moved with their cells, as every other spreadsheet does.
 */
export function mendSortedFormulas(injector: Injector): void {
  const commands = injector.get(ICommandService);
  let moving: readonly MovingFormula[] = [];
  let sorts = 0;
  commands.beforeCommandExecuted(({ id, params }) => {
    if (id === REORDER) moving = formulasBefore(injector, params as Reorder);
  });
  commands.onCommandExecuted(({ id, params }) => {
    if (id !== REORDER || moving.length === 0) return;
    const { unitId, subUnitId, range, order } = params as Reorder;
    const movedTo = new Map(Object.entries(order).map(([row, from]) => [from, Number(row)]));
    const share = formulaSharer(`sorted-${++sorts}`);
    const cellValue: Record<number, Record<number, { f: string | null; si: string | null }>> = {};
    const placed = moving.map((cell) => {
      const inside = cell.row >= range.startRow && cell.row <= range.endRow;
      const inColumns = cell.column >= range.startColumn && cell.column <= range.endColumn;
      return { ...cell, now: inside && inColumns ? (movedTo.get(cell.row) ?? cell.row) : cell.row };
    });
    for (const { row, column, formula, now } of placed.sort((a, b) => a.now - b.now)) {
      const { f, si } = share({ f: movedFormula(formula, now - row, 0) }, now + 1, column + 1);
      (cellValue[now] ??= {})[column] = { f: f ?? null, si: si ?? null };
    }
    moving = [];
    commands.syncExecuteCommand(SET_VALUES, { unitId, subUnitId, cellValue });
  });
}

/** Every formula in the columns that are sorted: those outside the rows may share one with those inside. */
function formulasBefore(injector: Injector, { unitId, subUnitId, range }: Reorder): readonly MovingFormula[] {
  const workbook = injector.get(IUniverInstanceService).getUnit<Workbook>(unitId, UniverInstanceType.UNIVER_SHEET);
  const cells = workbook?.getSheetBySheetId(subUnitId)?.getConfig().cellData ?? {};
  const { at: formulaAt } = formulasOf(cells);
  const found: MovingFormula[] = [];
  for (const key of Object.keys(cells)) {
    const row = Number(key);
    for (let column = range.startColumn; column <= range.endColumn; column++) {
      const formula = formulaAt(row, column);
      if (formula !== undefined) found.push({ row, column, formula });
    }
  }
  return found;
}
