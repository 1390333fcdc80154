import "./page.css";
import { cellMessages } from "./functions/cellMessages";
import { loadFunctions } from "./functions/loadFunctions";
import { functionInfo, registerFunctions } from "./functions/registerFunctions";
import type { FunctionMetadata } from "./functions/metadata";
import { createGrid } from "./grid/createGrid";
import type { OpenedBook } from "./openedBook";

const t0 = performance.now();
async function start() {
  const [book, { functions: metadata }] = await Promise.all([
    fetch("book").then((answer) => answer.json() as Promise<OpenedBook>),
    fetch("functions.json").then((answer) => answer.json() as Promise<{ functions: FunctionMetadata[] }>),
  ]);
  const tLoad = performance.now();
  const loaded = await loadFunctions(metadata, loadScript);
  const messages = cellMessages();
  const grid = createGrid({
    container: document.getElementById("grid")!,
    dark: matchMedia("(prefers-color-scheme: dark)").matches,
    functions: metadata.map(functionInfo),
  });
  const workbook = grid.api.createWorkbook(book.snapshot);
  registerFunctions(grid.injector, loaded, messages.notesOf);
  await grid.drawn();
  const tDrawn = performance.now();
  const formula = grid.api.getFormula();
  const done = formula.onCalculationResultApplied(100000);
  formula.executeCalculation();
  await done;
  Object.assign(window, {
    lab: {
      grid,
      workbook,
      formula,
      messages,
      times: { tLoad: tLoad - t0, tDrawn: tDrawn - t0, done: performance.now() - t0 },
    },
  });
}

function loadScript(name: string): Promise<void> {
  return new Promise((resolve, reject) => {
    const script = document.createElement("script");
    script.src = name;
    script.onload = () => resolve();
    script.onerror = () => reject(new Error(`${name} cannot be loaded`));
    document.head.append(script);
  });
}

void start();
