import { plainError } from "../measure/fault";
import { askName } from "./askName";
import { dragPane } from "./dragPane";
import { keyboardRing } from "./keyboardRing";
import { notice } from "./notice";
import type { OpenGrid } from "./openGrid";
import type { StartedBook } from "./openedBook";
import type { PageServer } from "./pageServer";
import { elementById, type StatusLine } from "./statusLine";
import { takeDroppedFiles } from "./takeDroppedFiles";
import type { TabDocument } from "./tabDocument";
import type { UnsavedChanges } from "./unsavedChanges";

/** The page and what it works with. */
export interface Page {
  readonly open: OpenGrid;
  readonly server: PageServer;
  readonly status: StatusLine;
  readonly tab: TabDocument;
  readonly changes: UnsavedChanges;
  /** Shows a workbook that was just opened, and a pane of its own. */
  readonly show: (book: StartedBook) => Promise<void>;
}

/** What the buttons over the workbook and the keys of the page do. */
export function wireButtons({ open, server, status, changes, show }: Page): void {
  const { api } = open.grid;
  const run = (work: () => Promise<unknown>) => (): void => {
    work().catch((error: unknown) => status.say(plainError(error).message, true));
  };
  const command = (id: string) => run(() => Promise.resolve(api.executeCommand(id)));
  const save = async (name?: string): Promise<void> => {
    status.say("Saving");
    const { edits, said } = open.changes();
    const { path, notes } = await server.save(edits, name);
    changes.reset(false);
    status.saySaved([`Saved as ${path}`, ...notes, ...said].join(". "));
  };
  const openNow = async (file: File): Promise<void> => {
    status.say(`Opening ${file.name}`);
    const book = await server.open(file);
    status.say("");
    await show(book);
  };
  const openFile = async (file: File): Promise<void> => {
    await changes.keep();
    if (!changes.isUnsaved()) return openNow(file);
    const name = elementById(document, "file").textContent;
    notice(document, `${name} has changes that are not saved.`, [
      { label: `Save, then open ${file.name}`, act: run(() => save().then(() => openNow(file))) },
      { label: `Open ${file.name}, and keep the changes for later`, act: run(() => openNow(file)) },
      { label: `Stay with ${name}`, act: () => undefined },
    ]);
  };
  const chooser = elementById<HTMLInputElement>(document, "chooser");
  chooser.addEventListener("change", () => {
    const file = chooser.files?.[0];
    chooser.value = "";
    if (file) run(() => openFile(file))();
  });
  onClick("undo", command("univer.command.undo"));
  onClick("redo", command("univer.command.redo"));
  onClick("filter", command("sheet.command.smart-toggle-filter"));
  onClick("sort", command("sheet.command.sort-range-custom"));
  onClick("find", command("ui.operation.open-replace-dialog"));
  onClick("calculate", run(open.calculate));
  onClick("open", () => chooser.click());
  onClick(
    "save",
    run(() => save()),
  );
  const naming = askName(document);
  onClick(
    "save-as",
    run(async () =>
      naming.ask(
        await server.newName(),
        run(() => save(naming.name())),
      ),
    ),
  );
  addEventListener("keydown", (event) => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey || event.key.toLowerCase() !== "s") return;
    event.preventDefault();
    run(() => save())();
  });
  addEventListener("beforeunload", (event) => {
    if (changes.isUnsaved()) event.preventDefault();
  });
  addEventListener("visibilitychange", () => {
    if (document.visibilityState === "hidden") void changes.keep();
  });
  // Pressed with the mouse, a button leaves the keyboard in the grid: what is typed next goes into the cell.
  elementById(document, "bar").addEventListener("mousedown", (event) => event.preventDefault());
  keyboardRing(document, open.grid.focus);
  takeDroppedFiles((file) => run(() => openFile(file))());
  foldPane();
  dragPane(elementById(document, "edge"), elementById(document, "pane"));
}

/** The pane can be put away, for a narrow window. */
function foldPane(): void {
  const pane = elementById(document, "pane");
  const button = elementById(document, "side");
  onClick("side", () => {
    pane.hidden = !pane.hidden;
    button.setAttribute("aria-expanded", String(!pane.hidden));
    button.textContent = pane.hidden ? "Show pane" : "Hide pane";
  });
}

function onClick(id: string, act: () => void): void {
  elementById(document, id).addEventListener("click", act);
}
