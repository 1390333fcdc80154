import { plainError } from "../measure/fault";
import { Unavailable } from "../measure/errors";
import { mountPane } from "../pane/mountPane";
import { shiftByCommand, told } from "./grid/shiftByCommand";
import { undoWrites } from "./grid/undoWrites";
import { notice } from "./notice";
import { openGrid, type OpenGrid } from "./openGrid";
import type { StartedBook } from "./openedBook";
import { pagePort } from "./pagePort";
import { pageServer, type PageServer } from "./pageServer";
import { elementById, statusLine, type StatusLine } from "./statusLine";
import { tabDocument, type TabDocument } from "./tabDocument";
import { unsavedChanges } from "./unsavedChanges";
import { waitForProgram } from "./waitForProgram";
import { writeThrough } from "./writeThrough";
import { type Page, wireButtons } from "./wireButtons";

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
      if (isUnsaved) status.changed();
      elementById(document, "unsaved").hidden = !isUnsaved;
      document.title = `${isUnsaved ? "Not saved: " : ""}${name} - Enclosure Columns`;
    },
    onAway: waitForProgram(server, status, () => changes.keep()),
  });
  const through = writeThrough(open, server, changes);
  const port = pagePort({
    api: open.grid.api,
    workbook,
    book: live,
    write: through.write,
    onRefresh: open.onRefresh,
    settled: open.settled,
  });
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

function loadScript(name: string): Promise<void> {
  return new Promise((resolve, reject) => {
    const script = document.createElement("script");
    script.src = name;
    script.onload = () => resolve();
    script.onerror = () => reject(new Unavailable(`${name} cannot be loaded: build again`));
    document.head.append(script);
  });
}
