import { CellValueType, type ICellData, type Injector } from "@univerjs/core";
import { SetRangeValuesMutation, type ISetRangeValuesMutationParams } from "@univerjs/sheets";
import { ISheetClipboardService, PREDEFINED_HOOK_NAME_PASTE } from "@univerjs/sheets-ui";

/**
 * A table that comes from another program or a page of the web is pasted as it reads there: a shelfmark `00017` keeps its
 * zeros, more figures than a number holds stay, and a text with `=` before it becomes no formula.
 */
export function pasteTexts(injector: Injector): void {
  injector.get(ISheetClipboardService).addClipboardHook({
    id: "texts of a table from elsewhere",
    priority: AFTER_ALL,
    onPasteCells: (from, { unitId, subUnitId, range }, data, { pasteType }) => {
      const cellValue: Record<number, Record<number, ICellData>> = {};
      if (from === null && WITH_VALUES.includes(pasteType))
        data.forValue((row, column, cell) => {
          const [at, across] = [range.rows[row], range.cols[column]];
          if (typeof cell.v !== "string" || !STAYS_TEXT.test(cell.v) || at === undefined || across === undefined)
            return;
          (cellValue[at] ??= {})[across] = { v: cell.v, f: null, t: CellValueType.FORCE_STRING };
        });
      const params: ISetRangeValuesMutationParams = { unitId, subUnitId, cellValue };
      const isNone = Object.keys(cellValue).length === 0;
      return { undos: [], redos: isNone ? [] : [{ id: SetRangeValuesMutation.id, params }] };
    },
  });
}

/** Ways to paste that take more than looks. */
const WITH_VALUES: readonly string[] = [
  PREDEFINED_HOOK_NAME_PASTE.DEFAULT_PASTE,
  PREDEFINED_HOOK_NAME_PASTE.SPECIAL_PASTE_VALUE,
];

/** Hooks are called from the lowest number on, and what the last says of a cell holds. */
const AFTER_ALL = 1000;

/** Zeros before a figure, a number of more than the 15 figures that a cell keeps, or the sign of a formula. */
const STAYS_TEXT = /^\s*(?:0\d+\s*$|\d{16,}\s*$|=)/;
