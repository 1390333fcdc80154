import type { Injector } from "@univerjs/core";
import { SheetsFindReplaceController } from "@univerjs/sheets-find-replace";
import { IDialogService } from "@univerjs/ui";

/**
 * Dialogs that are opened in the grid's first seconds are shown. Until what draws dialogs is there, an opened one would be
 * lost; and what finds in sheets is made seconds later than the button that asks for it.
 */
export function keepDialogs(injector: Injector): void {
  injector.get(SheetsFindReplaceController);
  const dialogs = injector.get(IDialogService);
  const opened = new Set<string>();
  const open = dialogs.open.bind(dialogs);
  const told = dialogs.getDialogs$.bind(dialogs);
  Object.assign(dialogs, {
    open: (options) => {
      opened.add(options.id);
      return open(options);
    },
    getDialogs$: () => {
      // Closes none that is open, and tells whoever asked here of all of them.
      queueMicrotask(() => dialogs.closeAll([...opened]));
      return told();
    },
  } satisfies Partial<IDialogService>);
}
