import type { WrittenEdits } from "../host/port";
import { InputError } from "../measure/errors";
import type { WorkbookEdits } from "../workbook/edits";
import { reverseOf, type Shift } from "../workbook/shift/shift";
import type { OpenGrid } from "./openGrid";
import type { PageServer } from "./pageServer";
import type { UnsavedChanges } from "./unsavedChanges";

/** What is written into the working copy of the file, and taken back. */
export interface WriteThrough {
  readonly write: (edits: WorkbookEdits) => Promise<WrittenEdits>;
  /** Takes back the last write. @returns whether there was one */
  readonly takeBack: () => Promise<boolean>;
  /** Another workbook is open: its writes are its own. */
  readonly reset: () => void;
}

/**
 * Writes what the pane wants the way the command line does: the server puts it into its working copy of the file, after
 * whatever was changed in the cells, and the grid shows the outcome. So both give the same formulas, formats and marks.
 */
export function writeThrough(open: OpenGrid, server: PageServer, changes: UnsavedChanges): WriteThrough {
  /** The rows or columns that came or went with each write. */
  const shifts: (Shift | undefined)[] = [];
  const takeBack = async (): Promise<boolean> => {
    if (shifts.length === 0) return false;
    const back = await server.takeBack(open.changes().edits);
    const shift = shifts.pop();
    await open.refresh(back, { shift: shift && reverseOf(shift) });
    changes.reset(true);
    return true;
  };
  return {
    takeBack,
    reset: () => void (shifts.length = 0),
    write: async (edits) => {
      const { opened, columns, notes } = await server.write(open.changes().edits, edits);
      const mine = shifts.push(edits.shift);
      await open.refresh(opened, { shift: edits.shift, hasResults: edits.columns !== undefined });
      changes.reset(true);
      const undo = async (): Promise<void> => {
        if (shifts.length !== mine)
          throw new InputError("undo", "an earlier step", "takes back the last step first", "undo the later one");
        await takeBack();
      };
      return { columns, notes, undo };
    },
  };
}
