import type { FUniver } from "@univerjs/core/facade";
import type { FWorkbook } from "@univerjs/sheets/facade";
import type { Book } from "../workbook/book";
import type { WorkbookEdits } from "../workbook/edits";
import { sheetNamed } from "../workbook/sheetNamed";
import { showOnly } from "./showOnly";
import type { BookPort, SheetCell, WrittenEdits } from "../host/port";

/** What the local page lends the port: its grid, and what only it knows of the file behind. */
export interface PageServices {
  readonly api: FUniver;
  readonly workbook: () => FWorkbook;
  /** The workbook as the grid shows it. */
  readonly book: () => Book;
  readonly write: (edits: WorkbookEdits) => Promise<WrittenEdits>;
  /** Listens to the workbook being shown in a newer state, after something was written or taken back. */
  readonly onRefresh: (listener: () => void) => () => void;
  /** Waits until what follows from cells that changed is worked out. */
  readonly settled: () => Promise<void>;
}

/** The port of a workbook that is open in the local page. */
export function pagePort({ api, workbook, book, write, onRefresh, settled }: PageServices): BookPort {
  const selected = (): SheetCell | undefined => {
    const sheet = workbook().getActiveSheet();
    const range = sheet.getSelection()?.getActiveRange();
    return range ? { sheet: sheet.getSheetName(), row: range.getRow() + 1, column: range.getColumn() + 1 } : undefined;
  };
  return {
    read: () => Promise.resolve(book()),
    write,
    selected: () => Promise.resolve(selected()),
    goTo: ({ sheet: name, row, column }) => {
      const { name: known } = sheetNamed(book(), name);
      const sheet = workbook().getSheetByName(known);
      if (sheet) {
        workbook().setActiveSheet(sheet);
        sheet.getRange(row - 1, column - 1).activate();
        sheet.scrollToCell(Math.max(0, row - 1 - ROWS_ABOVE), Math.max(0, column - 1 - COLUMNS_BEFORE));
      }
      return Promise.resolve();
    },
    showOnly: async (rows, value) => {
      const sheet = workbook().getSheetByName(sheetNamed(book(), rows.sheet).name);
      if (sheet) await showOnly(sheet, rows, value);
    },
    onSelect: (listener) => {
      let last = "";
      return listening(api, SELECTING, () => {
        const cell = selected();
        const key = JSON.stringify(cell);
        if (cell === undefined || key === last) return;
        last = key;
        listener(cell);
      });
    },
    onChange: async (listener) => {
      let isPending = false;
      const changed = (): void => {
        // Many cells change in one step, and answers follow: reported once, when that is done.
        if (isPending) return;
        isPending = true;
        setTimeout(() => {
          const long = new Promise((resolve) => setTimeout(resolve, LONG));
          void Promise.race([settled(), long]).then(() => {
            isPending = false;
            listener();
          });
        }, 0);
      };
      const [leave, leaveRefresh] = [await listening(api, CHANGING, changed), onRefresh(changed)];
      return () => {
        leave();
        leaveRefresh();
      };
    },
  };
}

/** What stays in sight around the cell that is gone to. */
const ROWS_ABOVE = 3;
const COLUMNS_BEFORE = 2;

/** Answers that take longer are not waited for, ms. */
const LONG = 3000;

const SELECTING = /^sheet\.operation\.set-(selections|worksheet-active)$/;
const CHANGING = /^sheet\.mutation\.(set-range-values|reorder-range|move-range|insert-sheet|remove-sheet)$/;

function listening(api: FUniver, commands: RegExp, listener: () => void): Promise<() => void> {
  const { dispose } = api.onCommandExecuted(({ id }) => {
    if (commands.test(id)) listener();
  });
  return Promise.resolve(() => dispose());
}
