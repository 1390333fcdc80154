import { chromium, type Browser, type Page } from "playwright-core";
import { serving } from "./serving";

/** A page in a browser, with all that it asked of other addresses and all that the browser found wrong. */
export interface OpenPage {
  readonly page: Page;
  readonly folder: string;
  readonly outside: readonly string[];
  readonly wrong: readonly string[];
  readonly close: () => Promise<void>;
}

export function launched(): Promise<Browser> {
  return chromium.launch({ executablePath: "/usr/bin/chromium", args: ["--no-sandbox"] });
}

/**
 * What the server refuses in words, the browser lists as an error of its own; and the grid logs that the cell in work
 * lies at its edge, where no text has room yet.
 */
const HARMLESS = ["status of 422", "The column width is less than 0"];

/** A browser's one tab, and the port of the surveys in it: scripts of one address are compiled once in a tab. */
interface Tab {
  readonly page: Page;
  port: number;
  inUse: boolean;
}

const tabs = new WeakMap<Browser, Tab>();
const VIEWPORT = { width: 1280, height: 800 };

async function tabOf(browser: Browser): Promise<Tab> {
  const known = tabs.get(browser);
  if (known !== undefined && !known.inUse) return known;
  const tab = { page: await browser.newPage({ viewport: VIEWPORT }), port: 0, inUse: false };
  tab.page.setDefaultTimeout(PATIENCE);
  if (known === undefined) tabs.set(browser, tab);
  return tab;
}

/** Opens a survey in the page, the demo survey unless another is given, and waits until it is there. */
export async function opened(browser: Browser, name?: string, bytes?: Uint8Array): Promise<OpenPage> {
  const tab = await tabOf(browser);
  tab.inUse = true;
  const served = await serving(name, bytes, undefined, tab.port);
  const { page } = tab;
  const { origin, port } = new URL(served.address);
  tab.port = Number(port);
  const outside: string[] = [];
  const wrong: string[] = [];
  page.on("request", (request) => {
    if (!request.url().startsWith(`${origin}/`) && !/^(data|blob):/.test(request.url())) outside.push(request.url());
  });
  page.on("pageerror", (error) => wrong.push(error.stack ?? error.message));
  page.on("dialog", (dialog) => void wrong.push(dialog.message()));
  page.on("console", (message) => {
    if (message.type() === "error" && !HARMLESS.some((known) => message.text().includes(known)))
      wrong.push(message.text());
  });
  await page.goto(served.address);
  await page.waitForFunction(() => document.body.dataset["ready"] === "yes");
  const close = async (): Promise<void> => {
    page.removeAllListeners();
    // What a test typed and did not save.
    page.on("dialog", (dialog) => void dialog.accept());
    await page.evaluate(() => {
      localStorage.clear();
      sessionStorage.clear();
    });
    await page.goto("about:blank");
    page.removeAllListeners();
    await page.emulateMedia({ colorScheme: null });
    await page.setViewportSize(VIEWPORT);
    await served.close();
    tab.inUse = false;
  };
  return { page, folder: served.folder, outside, wrong, close };
}

/** Asks again until the answer is the one that is wanted. */
export async function becomes<Value>(look: () => Promise<Value>, wanted: unknown): Promise<void> {
  for (let asked = 1; ; asked++) {
    const now = await look();
    try {
      return expect(now).toEqual(wanted);
    } catch (error) {
      if (asked === MOST_ASKED) throw error;
    }
    await new Promise((resolve) => setTimeout(resolve, ASK_EVERY));
  }
}

/** What a page is waited for, ms: long, for a busy machine; only a failing test takes all of it. */
const PATIENCE = 300_000;
const MOST_ASKED = 1200;
const ASK_EVERY = 50;
