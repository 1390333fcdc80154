import { plainError } from "../measure/fault";
import { Unavailable } from "../measure/errors";
import { mountPane } from "../pane/mountPane";
import { askName } from "./askName";
import { dragPane } from "./dragPane";
import { shiftByCommand, told } from "./grid/shiftByCommand";
import { undoWrites } from "./grid/undoWrites";
import { keyboardRing } from "./keyboardRing";
import { notice } from "./notice";
import { openGrid, type OpenGrid } from "./openGrid";
import type { StartedBook } from "./openedBook";
import { pagePort } from "./pagePort";
import { pageServer, type PageServer } from "./pageServer";
import { elementById, statusLine, type StatusLine } from "./statusLine";
import { takeDroppedFiles } from "./takeDroppedFiles";
import { tabDocument, type TabDocument } from "./tabDocument";
import { unsavedChanges, type UnsavedChanges } from "./unsavedChanges";
import { waitForProgram } from "./waitForProgram";
import { writeThrough } from "./writeThrough";

/** The page and what it works with. */
interface Page {
  readonly open: OpenGrid;
  readonly server: PageServer;
  readonly status: StatusLine;
  readonly tab: TabDocument;
  readonly changes: UnsavedChanges;
  /** Shows a workbook that was just opened, and a pane of its own. */
  readonly show: (book: StartedBook) => Promise<void>;
}

/** Opens the page: the workbook in the grid, the buttons over it, the pane at its side. */
export async function startPage(): Promise<void> {
  const server = pageServer();
  const status = statusLine(document);
  const tab = tabDocument();
  try {
    const [begun, functions] = await Promise.all([server.book(), server.functions()]);
    const former = await tab.former();
    // After a reload the workbook is as it was, with what was not saved.
    const book = former === undefined ? begun : await server.resume(former).catch(() => server.book());
    const dark = matchMedia("(prefers-color-scheme: dark)");
    const open = await openGrid({
      container: elementById(document, "grid"),
      values: elementById(document, "values"),
      dark: dark.matches,
      functions,
      status,
      loadScript,
    });
    // The rest of the page follows by its style sheet.
    dark.addEventListener("change", ({ matches }) => open.grid.api.toggleDarkMode(matches));
    const page = pageOf(open, server, status, tab);
    await page.show(book);
    wireButtons(page);
    await offerUnsaved(page, book);
    performance.mark("ready");
    document.body.dataset["ready"] = "yes";
  } catch (error) {
    status.say(plainError(error).message, true);
    throw error;
  }
}

function pageOf(open: OpenGrid, server: PageServer, status: StatusLine, tab: TabDocument): Page {
  const { workbook, book: live } = open;
  let leavePane: () => void = () => undefined;
  let name = "";
  const changes = unsavedChanges({
    open,
    server,
    say: (text) => status.say(text, true),
    onChange: (isUnsaved) => {
      elementById(document, "unsaved").hidden = !isUnsaved;
      document.title = `${isUnsaved ? "Not saved: " : ""}${name} - Enclosure Columns`;
    },
    onAway: waitForProgram(server, status, () => changes.keep()),
  });
  const through = writeThrough(open, server, changes);
  const port = pagePort({ api: open.grid.api, workbook, book: live, write: through.write, onRefresh: open.onRefresh });
  const failed = (error: unknown): void => status.say(plainError(error).message, true);
  shiftByCommand(open.grid, workbook, (shift) => {
    through.write({ shift }).then(() => status.say(`${told(shift)}. Undo takes it back.`), failed);
  });
  undoWrites(open.grid.injector, () => {
    through.takeBack().then((done) => status.say(done ? "Taken back" : "There is nothing to undo"), failed);
  });
  const show = async ({ document: id, opened, isUnsaved, others }: StartedBook): Promise<void> => {
    leavePane();
    await tab.take(id);
    through.reset();
    name = opened.name;
    elementById(document, "file").textContent = name;
    document.title = `${name} - Enclosure Columns`;
    await open.show(opened);
    changes.reset(isUnsaved);
    if (opened.said.length > 0) status.say(`${opened.said.join(". ")}.`);
    leavePane = mountPane(elementById(document, "pane"), port, {
      planWorker: "planWorker.js",
      fonts: "fonts/",
      openFile: () => elementById(document, "chooser").click(),
    });
    if ((await tab.open(others)).length > 0)
      notice(
        document,
        `${name} is open in another tab too. Each tab keeps its own changes, and saves a file of its own.`,
        [{ label: "Close", act: () => undefined }],
      );
  };
  // For tests, which drive the grid and the port as the page does.
  Object.assign(globalThis, { openGrid: open, bookPort: port });
  return { open, server, status, tab, changes, show };
}

/** Offers the changes that an earlier page did not save, one file after the other. */
async function offerUnsaved({ server, status, tab, changes, show }: Page, book: StartedBook): Promise<void> {
  const open = new Set(await tab.open(book.unsaved.map(({ document: id }) => id)));
  const left = book.unsaved.filter(({ document: id }) => id !== book.document && !open.has(id));
  const takeUp = async (id: string): Promise<void> => {
    await changes.keep();
    await show(await server.resume(id));
  };
  for (const { document: id, file, time, cells } of left) {
    const when = new Date(time).toLocaleString(undefined, { dateStyle: "medium", timeStyle: "short" });
    const failed = (error: unknown): void => status.say(plainError(error).message, true);
    notice(document, `${file} has changes from ${when} that were not saved${cells === 0 ? "" : `: ${cells} cells`}.`, [
      { label: "Take them up", act: () => void takeUp(id).catch(failed) },
      { label: "Throw them away", act: () => void server.discard(id).catch(failed) },
      { label: "Later", act: () => undefined },
    ]);
  }
}

function wireButtons({ open, server, status, changes, show }: Page): void {
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
    status.say([`Saved as ${path}`, ...notes, ...said].join(". "));
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
  onClick("save-as", () => naming.ask(run(() => save(naming.name()))));
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

function loadScript(name: string): Promise<void> {
  return new Promise((resolve, reject) => {
    const script = document.createElement("script");
    script.src = name;
    script.onload = () => resolve();
    script.onerror = () => reject(new Unavailable(`${name} cannot be loaded: build again`));
    document.head.append(script);
  });
}
