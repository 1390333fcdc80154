import { plainError } from "../measure/fault";
import { Unavailable } from "../measure/errors";
import { pagePort } from "./pagePort";
import { mountPane } from "../pane/mountPane";
import { openGrid, type OpenGrid } from "./openGrid";
import { pageServer, type PageServer } from "./pageServer";
import { writeThrough } from "./writeThrough";
import { elementById, statusLine, type StatusLine } from "./statusLine";

/** Opens the page: the workbook in the grid, the buttons over it, the pane at its side. */
export async function startPage(): Promise<void> {
  const server = pageServer();
  const status = statusLine(document);
  try {
    const [book, functions] = await Promise.all([server.book(), server.functions()]);
    const open = await openGrid({
      container: elementById(document, "grid"),
      dark: matchMedia("(prefers-color-scheme: dark)").matches,
      functions,
      status,
      loadScript,
    });
    nameFile(book.name);
    await open.show(book);
    if (book.said.length > 0) status.say(book.said.join(" "));
    wireButtons(open, server, status);
    const { workbook, book: live } = open;
    const port = pagePort({ api: open.grid.api, workbook, book: live, write: writeThrough(open, server) });
    mountPane(elementById(document, "pane"), port, { planWorker: "planWorker.js", fonts: "fonts/" });
    performance.mark("ready");
    document.body.dataset["ready"] = "yes";
    // For tests, which drive the grid and the port as the page does.
    Object.assign(globalThis, { openGrid: open, bookPort: port });
  } catch (error) {
    status.say(plainError(error).message, true);
    throw error;
  }
}

function wireButtons(open: OpenGrid, server: PageServer, status: StatusLine): void {
  const { api } = open.grid;
  const run = (work: () => Promise<unknown>) => (): void => {
    work().catch((error: unknown) => status.say(plainError(error).message, true));
  };
  const command = (id: string) => run(() => Promise.resolve(api.executeCommand(id)));
  const save = async (): Promise<void> => {
    status.say("Saving");
    const { edits, said } = open.changes();
    const { name, notes } = await server.save(edits);
    status.say([`Saved as ${name}`, ...notes, ...said].join(". "));
  };
  const openFile = async (file: File): Promise<void> => {
    status.say(`Opening ${file.name}`);
    const book = await server.open(file);
    nameFile(book.name);
    status.say(book.said.join(" "));
    await open.show(book);
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
  onClick("calculate", run(open.calculate));
  onClick("open", () => chooser.click());
  onClick("save", run(save));
  addEventListener("keydown", (event) => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey || event.key.toLowerCase() !== "s") return;
    event.preventDefault();
    run(save)();
  });
  // Pressed with the mouse, a button leaves the keyboard in the grid: what is typed next goes into the cell.
  elementById(document, "bar").addEventListener("mousedown", (event) => event.preventDefault());
  takeDroppedFiles((file) => run(() => openFile(file))());
  foldPane();
}

function takeDroppedFiles(take: (file: File) => void): void {
  const carriesFile = (event: DragEvent): boolean => event.dataTransfer?.types.includes("Files") === true;
  addEventListener("dragover", (event) => {
    if (!carriesFile(event)) return;
    event.preventDefault();
    document.body.classList.add("dropping");
  });
  addEventListener("dragleave", () => document.body.classList.remove("dropping"));
  addEventListener("drop", (event) => {
    if (!carriesFile(event)) return;
    event.preventDefault();
    document.body.classList.remove("dropping");
    const file = event.dataTransfer?.files[0];
    if (file) take(file);
  });
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

function nameFile(name: string): void {
  elementById(document, "file").textContent = name;
  document.title = `${name} - Enclosure Columns`;
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
