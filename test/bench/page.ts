/**
 * How long the local page takes, in headless Chromium over the built page: from asking for it until the stored answers
 * are drawn, until it is ready, from one edit to its new answer; adding columns to a survey without any; and the longest
 * time for which planning holds the page up. Beside each time stands the work of the page's main thread, which a busy
 * machine does not change. Rows have six figures each.
 *
 *     npm run bench -- page [--rows 3000] [--rounds 5] [--part open|pane] [--profile FOLDER]
 */
import { spawn } from "node:child_process";
import { rmSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { parseArgs } from "node:util";
import { chromium, type Browser, type CDPSession, type Page } from "playwright-core";
import { createWorkbook } from "../../src/workbook/createWorkbook";
import { fillWorkbook } from "../../src/filling/fillWorkbook";
import { openWorkbook } from "../../src/workbook/openWorkbook";
import { serving } from "../page/serving";

const EDITS = 5;
const HEADINGS = ["Shelfmark", "Title", "Height", "Width", "Depth", "Enclosure", "Quantity"];
const KINDS = ["tray", "lidded box", "three-tray box", "clamshell box", "folded tray"];
const FIGURES = ["outside height", "outside width", "outside depth", "base length", "board area", "problem"];
const PATIENCE = 600_000;

const { values } = parseArgs({
  options: {
    rows: { type: "string" },
    rounds: { type: "string", default: "3" },
    part: { type: "string" },
    profile: { type: "string" },
  },
});

/** What is measured in one page; `--part` names the one that is wanted alone. */
type Part = "open" | "pane";

/** Wall time and the main thread's work, ms. */
interface Took {
  readonly time: number;
  readonly work: number;
}

function survey(rows: number): Uint8Array {
  const cells = Array.from({ length: rows }, (_, i) => [
    `S ${i + 1}`,
    `Item ${i + 1}`,
    150 + ((i * 7) % 300),
    100 + ((i * 5) % 200),
    8 + ((i * 3) % 70),
    KINDS[i % KINDS.length]!,
    1 + (i % 3),
  ]);
  return createWorkbook([{ name: "Survey", rows: [HEADINGS, ...cells], headingRow: 1, table: "Survey" }]);
}

function filled(bytes: Uint8Array): Uint8Array {
  const asked = { figures: FIGURES, settings: [], recognise: {}, values: false, cutList: false };
  return fillWorkbook(openWorkbook(bytes), asked).edit.bytes;
}

/** Runs in the page: text, since what builds this file names its functions in a way that a page does not know. */
const EDIT = (height: number): string => `(async () => {
  const sheet = openGrid.workbook().getSheetByName("Survey");
  const headings = sheet.getRange("A1:Z1").getValues()[0];
  const answer = sheet.getRange(2, headings.findIndex((text) => String(text).startsWith("outside height")));
  const before = answer.getValue();
  const start = performance.now();
  sheet.getRange("C3").setValue(${height});
  while (answer.getValue() === before) await new Promise((done) => setTimeout(done, 4));
  return performance.now() - start;
})()`;

/** Notes the longest time between two turns of the page's main thread, ms. */
const WATCH = `(() => {
  let last = performance.now();
  globalThis.longest = 0;
  const turn = () => {
    const now = performance.now();
    globalThis.longest = Math.max(globalThis.longest, now - last);
    last = now;
  };
  setInterval(turn, 10);
})()`;

async function measured(session: CDPSession, act: () => Promise<unknown>): Promise<Took> {
  const work = async (): Promise<number> => {
    const { metrics } = await session.send("Performance.getMetrics");
    return metrics.find(({ name }) => name === "TaskDuration")!.value * 1000;
  };
  const [before, start] = [await work(), performance.now()];
  await act();
  return { time: performance.now() - start, work: (await work()) - before };
}

interface Served {
  readonly page: Page;
  readonly session: CDPSession;
  readonly close: () => Promise<void>;
}

async function opened(browser: Browser, bytes: Uint8Array, part: Part): Promise<Served & { readonly took: Took }> {
  const served = await serving("survey.xlsx", bytes);
  const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  page.setDefaultTimeout(PATIENCE);
  page.on("pageerror", (error) => console.error(error.stack));
  const session = await page.context().newCDPSession(page);
  await session.send("Performance.enable", { timeDomain: "threadTicks" });
  if (values.profile !== undefined) {
    await session.send("Profiler.enable");
    await session.send("Profiler.setSamplingInterval", { interval: 500 });
    await session.send("Profiler.start");
  }
  const took = await measured(session, async () => {
    await page.goto(served.address);
    await page.waitForFunction(() => document.body.dataset["ready"] === "yes");
  });
  const close = async (): Promise<void> => {
    if (values.profile !== undefined) {
      const { profile } = await session.send("Profiler.stop");
      writeFileSync(join(values.profile, `${part}.cpuprofile`), JSON.stringify(profile));
    }
    await page.close();
    await served.close();
    rmSync(served.folder, { recursive: true });
  };
  return { page, session, took, close };
}

const markOf = (page: Page, name: string): Promise<number> =>
  page.evaluate(`performance.getEntriesByName("${name}")[0].startTime`);

type Measures = Record<string, Took>;

async function openAndEdit(browser: Browser, bytes: Uint8Array): Promise<Measures> {
  const { page, session, took, close } = await opened(browser, bytes, "open");
  const answers = await markOf(page, "answers");
  const edits: Took[] = [];
  for (let edit = 0; edit < EDITS; edit++) {
    let inside = 0;
    const { work } = await measured(session, async () => {
      inside = await page.evaluate<number>(EDIT(200 + edit * 11));
    });
    edits.push({ time: inside, work });
  }
  await close();
  return { "first answers": { time: answers, work: took.work }, ready: took, "an edit": middle(edits) };
}

async function addAndPlan(browser: Browser, bytes: Uint8Array): Promise<Measures> {
  const { page, session, close } = await opened(browser, bytes, "pane");
  const view = (name: string) => page.click(`#pane [role=tab]:has-text('${name}')`);
  await view("Columns");
  const add = page.locator("#pane .view:not([hidden]) button:has-text('Add the columns')");
  await add.waitFor();
  const columns = await measured(session, async () => {
    await add.click();
    await page.waitForSelector("text=Adding the columns: done");
  });
  const cost = await measured(session, async () => {
    await view("Board and cost");
    await page.waitForSelector("#pane [aria-label='Sheets to buy'] tbody tr");
  });
  await page.evaluate(WATCH);
  const plan = await measured(session, async () => {
    await page.click("#pane :is(.view:not([hidden]), .acts) button:has-text('Plan the sheets')");
    await page.waitForSelector("#pane progress[aria-label='Search']");
    await page.waitForSelector("#pane progress[aria-label='Search']", { state: "detached" });
  });
  const longest = await page.evaluate<number>("longest");
  await close();
  return {
    "columns added": columns,
    "board and cost": cost,
    plan,
    "longest hold of a plan": { time: longest, work: 0 },
  };
}

/** From starting the program as built until it prints its address. */
function programStart(): Promise<Took> {
  const start = performance.now();
  const program = spawn(process.execPath, [resolve("dist/enclosure-columns.js"), "open"], {
    env: { ...process.env, CI: "1" },
  });
  return new Promise((done) => {
    program.stdout.once("data", () => {
      program.kill("SIGKILL");
      done({ time: performance.now() - start, work: 0 });
    });
  });
}

async function main(): Promise<void> {
  const browser = await chromium.launch({ executablePath: "/usr/bin/chromium", args: ["--no-sandbox"] });
  const counts = values.rows === undefined ? [200, 3_000, 10_000] : [Number(values.rows)];
  console.log(`the program prints its address after ${seconds((await programStart()).time)} s`);
  for (const rows of counts) {
    const plain = survey(rows);
    const full = filled(plain);
    const rounds: Measures[] = [];
    for (let round = 0; round < Number(values.rounds); round++)
      rounds.push({
        ...(values.part === "pane" ? {} : await openAndEdit(browser, full)),
        ...(values.part === "open" ? {} : await addAndPlan(browser, plain)),
      });
    console.log(`${rows.toLocaleString("en")} rows, s (work of the main thread; fastest to slowest):`);
    for (const name of Object.keys(rounds[0]!)) {
      const all = rounds.map((each) => each[name]!);
      const { time, work } = middle(all);
      const times = all.map((each) => each.time);
      console.log(
        `  ${name}: ${seconds(time)} (${seconds(work)}; ${seconds(Math.min(...times))} to ${seconds(Math.max(...times))})`,
      );
    }
  }
  await browser.close();
}

function middle(all: readonly Took[]): Took {
  return [...all].sort((a, b) => a.time - b.time)[all.length >> 1]!;
}

function seconds(ms: number): string {
  return (ms / 1000).toFixed(2);
}

void main();
