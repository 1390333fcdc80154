import { existsSync, readdirSync, rmSync } from "node:fs";
import { join } from "node:path";
import { chromium, type Browser, type Page } from "playwright-core";
import { DEMO_SURVEY } from "../../src/cli/demoSurvey";
import type { OpenedBook } from "../../src/page/openedBook";
import type { OpenGrid } from "../../src/page/openGrid";
import { writeCsv } from "../../src/workbook/writeCsv";
import { serving } from "./serving";

declare const openGrid: OpenGrid;
declare const before: OpenedBook;

/** A page in a browser, with all that it asked of other addresses and all that the browser found wrong. */
export interface OpenPage {
  readonly page: Page;
  readonly folder: string;
  readonly outside: readonly string[];
  readonly wrong: readonly string[];
  readonly close: () => Promise<void>;
}

/** Suites run side by side: threads and a small heap for short-lived objects, which spare time on an idle machine, cost work. */
const SPARING = [
  "--js-flags=--single-threaded --min-semi-space-size=32 --max-semi-space-size=64",
  "--num-raster-threads=1",
];

const CHROMIUM = "/usr/bin/chromium";
/** Chromium without windows: a window makes ready the lists of its address bar. */
const SHELL = "/usr/bin/chromium-headless-shell";

/** Starts Chromium's shell where that is installed, else Chromium. */
export function launched(): Promise<Browser> {
  return chromium.launch({ executablePath: existsSync(SHELL) ? SHELL : CHROMIUM, args: ["--no-sandbox", ...SPARING] });
}

/**
 * What the server refuses in words, the browser lists as an error of its own; and the grid logs that the cell in work
 * lies at its edge, where no text has room yet.
 */
const HARMLESS = ["status of 422", "The column width is less than 0"];

/**
 * A browser's one page, which shows one survey after the other: a file that is chosen in the page is shown as its first is,
 * for a tenth of the work of loading the page.
 */
interface Tab {
  readonly page: Page;
  readonly served: Awaited<ReturnType<typeof serving>>;
  inUse: boolean;
}

const tabs = new WeakMap<Browser, Tab>();
/** Which a person gives by a copy; the shell asks nobody. */
const CLIPBOARD = ["clipboard-read", "clipboard-write"];
const VIEWPORT = { width: 1280, height: 800 };

/** Opens a survey in the page, the demo survey unless another is given, and waits until it is there. */
export async function opened(browser: Browser, name = "survey.csv", bytes = writeCsv(DEMO_SURVEY)): Promise<OpenPage> {
  const outside: string[] = [];
  const wrong: string[] = [];
  const listen = (page: Page, origin: string): void => {
    page.on("request", (request) => {
      if (!request.url().startsWith(`${origin}/`) && !/^(data|blob):/.test(request.url())) outside.push(request.url());
    });
    page.on("pageerror", (error) => wrong.push(error.stack ?? error.message));
    page.on("dialog", (dialog) => void wrong.push(dialog.message()));
    page.on("console", (message) => {
      if (message.type() === "error" && !HARMLESS.some((known) => message.text().includes(known)))
        wrong.push(message.text());
    });
  };
  const known = tabs.get(browser);
  const again = known?.inUse === false && (await known.page.evaluate(isAtRest)) ? known : undefined;
  const tab = again ?? (await loaded(browser, name, bytes, listen));
  const { page, served } = tab;
  tab.inUse = true;
  if (again !== undefined) {
    listen(page, new URL(served.address).origin);
    await chosen(page, name, bytes);
  }
  const close = async (): Promise<void> => {
    page.removeAllListeners();
    await page.evaluate(() => localStorage.clear());
    await page.emulateMedia({ colorScheme: null });
    await page.setViewportSize(VIEWPORT);
    for (const left of readdirSync(served.folder)) rmSync(join(served.folder, left));
    tab.inUse = false;
  };
  return { page, folder: served.folder, outside, wrong, close };
}

/** A page of its own for the survey, in place of one that a test left with a question open. */
async function loaded(
  browser: Browser,
  name: string,
  bytes: Uint8Array,
  listen: (page: Page, origin: string) => void,
): Promise<Tab> {
  const served = await serving(name, bytes);
  const page = await browser.newPage({ viewport: VIEWPORT, permissions: CLIPBOARD });
  browser.on("disconnected", () => void served.close());
  page.setDefaultTimeout(PATIENCE);
  listen(page, new URL(served.address).origin);
  await page.goto(served.address);
  await page.waitForFunction(() => document.body.dataset["ready"] === "yes");
  const tab = { page, served, inUse: true };
  const former = tabs.get(browser);
  if (former?.inUse !== true) {
    tabs.set(browser, tab);
    await former?.page.close();
  }
  return tab;
}

/** Whether a page shows a workbook and asks nothing, so that another file can be opened in it. Runs in the page. */
function isAtRest(): boolean {
  const asks = document.querySelectorAll("dialog[open], [role=dialog], [role=menu], #notices > *, #pane[hidden]");
  return document.body.dataset["ready"] === "yes" && asks.length === 0 && !openGrid.workbook().isCellEditing();
}

/** Opens a file as a person does who chooses it, and waits until it and its pane are there. What was changed before is left. */
async function chosen(page: Page, name: string, bytes: Uint8Array): Promise<void> {
  await page.evaluate(() => void Object.assign(globalThis, { before: openGrid.opened() }));
  await page.setInputFiles("#chooser", { name, mimeType: "application/octet-stream", buffer: Buffer.from(bytes) });
  await page.waitForFunction(
    () => {
      const answers = Array.from(document.querySelectorAll<HTMLElement>("#notices button"));
      answers.find(({ textContent }) => textContent.includes("keep the changes for later"))?.click();
      // The pane of the file before goes before its workbook does, and the next comes last.
      return openGrid.opened() !== before && document.querySelector("#pane > *") !== null;
    },
    undefined,
    { polling: LOOK_EVERY },
  );
}

/** Asks again until the answer is the one that is wanted, with pauses ten times as long as an answer takes. */
export async function becomes<Value>(look: () => Promise<Value>, wanted: unknown): Promise<void> {
  for (let asked = 1; ; asked++) {
    const before = performance.now();
    const now = await look();
    try {
      return expect(now).toEqual(wanted);
    } catch (error) {
      if (asked === MOST_ASKED) throw error;
    }
    const pause = Math.max(LOOK_EVERY, 10 * (performance.now() - before));
    await new Promise((resolve) => setTimeout(resolve, pause));
  }
}

/** What a page is waited for, ms: long, for a busy machine; only a failing test takes all of it. */
const PATIENCE = 300_000;
const MOST_ASKED = 1200;
const LOOK_EVERY = 50;
