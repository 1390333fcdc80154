import type { ErrorNotes } from "./adaptFunction";
import type { FormulaCell } from "./registerFunctions";

/** The messages of cells in error. */
export interface CellMessages {
  readonly notesOf: (cell: FormulaCell) => ErrorNotes;
  /** What was said of a cell; undefined when nothing was. */
  readonly at: (cell: FormulaCell) => string | undefined;
}

/** A book of messages, by the cell in error; a formula that is calculated again takes back its earlier ones. */
export function cellMessages(): CellMessages {
  const messages = new Map<string, string>();
  const byFormula = new Map<string, Set<string>>();
  return {
    notesOf: ({ sheet, row, column }) => {
      const formula = keyOf(sheet, row, column);
      return {
        clear: () => {
          for (const key of byFormula.get(formula) ?? []) messages.delete(key);
          byFormula.delete(formula);
        },
        put: (down, across, message) => {
          const key = keyOf(sheet, row + down, column + across);
          messages.set(key, message);
          const own = byFormula.get(formula) ?? new Set();
          byFormula.set(formula, own.add(key));
        },
      };
    },
    at: ({ sheet, row, column }) => messages.get(keyOf(sheet, row, column)),
  };
}

function keyOf(sheet: string, row: number, column: number): string {
  return `${sheet}!${row},${column}`;
}
