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

/** Opens a survey in the page, the demo survey unless another is given, and waits until it is there. */
export async function opened(browser: Browser, name?: string, bytes?: Uint8Array): Promise<OpenPage> {
  const served = await serving(name, bytes);
  const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  page.setDefaultTimeout(PATIENCE);
  const { origin } = new URL(served.address);
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
    await page.close();
    await served.close();
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
