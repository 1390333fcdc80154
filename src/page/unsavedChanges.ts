import { plainError } from "../measure/fault";
import { Unavailable } from "../measure/errors";
import type { PageChanges } from "./bookEdits";
import type { OpenGrid } from "./openGrid";
import type { PageServer } from "./pageServer";

/** What of the workbook is not saved yet. */
export interface UnsavedChanges {
  readonly isUnsaved: () => boolean;
  /** The workbook was just opened or saved, or the pane wrote into it: then what it has beside the cells is unsaved. */
  readonly reset: (isUnsaved: boolean) => void;
  /** Tells the server at once what is not saved. @returns whether all of it is kept */
  readonly keep: () => Promise<boolean>;
}

export interface UnsavedOptions {
  readonly open: OpenGrid;
  readonly server: PageServer;
  /** Called when there are unsaved changes for the first time, and when there are none any more. */
  readonly onChange: (isUnsaved: boolean) => void;
  /** Called when the server does not answer any more, with what to do when it does again. */
  readonly onAway: () => void;
  readonly say: (text: string) => void;
}

/** What changes the workbook. */
const CHANGING = /^sheet\.mutation\./;

/** From a change to its being kept, ms: a crash takes less than the last two seconds, on a busy machine too. */
const SOON = 500;

/**
 * Watches what is not saved. It is kept beside the file as it comes, so that nothing is lost when the browser, the
 * program or the machine ends.
 */
export function unsavedChanges({ open, server, onChange, onAway, say }: UnsavedOptions): UnsavedChanges {
  /** The changes that are saved. */
  let saved = "";
  let kept = "";
  let isUnsaved = false;
  let isEarlier = false;
  let waiting: ReturnType<typeof setTimeout> | undefined;
  let keeping = Promise.resolve(true);

  const tell = (now: boolean): void => {
    if (now === isUnsaved) return;
    isUnsaved = now;
    onChange(now);
  };
  const changed = (): PageChanges | undefined => {
    try {
      return open.changes();
    } catch (error) {
      // Such as another heading: a save would refuse it too.
      tell(true);
      say(`Not saved, and not kept for a crash: ${plainError(error).message}`);
      return undefined;
    }
  };
  const keepNow = async (): Promise<boolean> => {
    clearTimeout(waiting);
    waiting = undefined;
    const changes = changed();
    if (changes === undefined) return false;
    // A formula that is worked out again is no change that anybody made.
    const text = JSON.stringify(changes.own);
    tell(isEarlier || text !== saved);
    const asked = `${isUnsaved}${text}`;
    if (asked === kept) return true;
    try {
      await server.keep(changes.edits, isUnsaved);
      kept = asked;
      return true;
    } catch (error) {
      if (error instanceof Unavailable) onAway();
      else say(`Changes are not kept for a crash: ${plainError(error).message}`);
      return false;
    }
  };
  const keep = (): Promise<boolean> => (keeping = keeping.then(keepNow, keepNow));
  const look = (): void => {
    waiting ??= setTimeout(() => void keep(), SOON);
  };
  open.grid.api.onCommandExecuted(({ id }) => {
    if (CHANGING.test(id)) look();
  });
  return {
    isUnsaved: () => isUnsaved,
    reset: (earlier) => {
      isEarlier = earlier;
      saved = JSON.stringify(open.changes().own);
      kept = earlier ? "" : `false${saved}`;
      tell(earlier);
      if (earlier) look();
    },
    keep,
  };
}
