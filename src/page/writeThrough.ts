import type { WrittenEdits } from "../host/port";
import { InputError } from "../measure/errors";
import type { WorkbookEdits } from "../workbook/edits";
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
  let writes = 0;
  const takeBack = async (): Promise<boolean> => {
    if (writes === 0) return false;
    const back = await server.takeBack(open.changes().edits);
    writes--;
    await open.refresh(back);
    changes.reset(true);
    return true;
  };
  return {
    takeBack,
    reset: () => void (writes = 0),
    write: async (edits) => {
      const { opened, columns, notes } = await server.write(open.changes().edits, edits);
      const mine = ++writes;
      await open.refresh(opened);
      changes.reset(true);
      const undo = async (): Promise<void> => {
        if (writes !== mine)
          throw new InputError("undo", "an earlier step", "takes back the last step first", "undo the later one");
        await takeBack();
      };
      return { columns, notes, undo };
    },
  };
}
