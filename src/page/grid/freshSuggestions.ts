import { ICommandService, type Injector } from "@univerjs/core";
import { DeviceInputEventType } from "@univerjs/engine-render";
import { SetCellEditVisibleOperation } from "@univerjs/sheets-ui";
import { BOOK_ID } from "../gridTerms";
import { nameAtEnd } from "../argumentAt";
import { IEditorService } from "./screenPlugins";

/**
 * Enter and Tab take a function from the list of suggestions only while the list is for the name that stands before
 * the cursor. The grid renews its list a third of a second after the last key, so without this a quick Enter puts
 * the first suggestion of `=E` into the finished formula. To be called before the grid's plugins listen to keys.
 */
export function takeFreshSuggestionsOnly(injector: Injector): void {
  window.addEventListener(
    "keydown",
    (event) => {
      if ((event.key !== "Enter" && event.key !== "Tab") || event.ctrlKey || event.altKey || event.metaKey) return;
      const offered = document.querySelector(SUGGESTED)?.textContent;
      if (offered === undefined || isFor(offered, nameBeforeCursor(injector))) return;
      event.preventDefault();
      event.stopImmediatePropagation();
      injector.get(ICommandService).syncExecuteCommand(SetCellEditVisibleOperation.id, {
        visible: false,
        eventType: DeviceInputEventType.Keyboard,
        keycode: event.keyCode,
        unitId: BOOK_ID,
      });
    },
    { capture: true },
  );
}

/** The name of the first suggestion. */
const SUGGESTED = 'ul[data-u-comp="sheets-formula-editor"] li span';

function isFor(offered: string, typed: string): boolean {
  return typed !== "" && offered.toUpperCase().startsWith(typed.toUpperCase());
}

function nameBeforeCursor(injector: Injector): string {
  const editor = injector.get(IEditorService).getFocusEditor();
  const [cursor] = editor?.getSelectionRanges() ?? [];
  const text = editor?.getDocumentData().body?.dataStream ?? "";
  return cursor?.collapsed ? nameAtEnd(text.slice(0, cursor.startOffset)) : "";
}
