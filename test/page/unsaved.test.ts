import { spawn, type ChildProcess } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import type { Browser, Page } from "playwright-core";
import { DEMO_SURVEY } from "../../src/cli/demoSurvey";
import { createRandom } from "../../src/cutting/random";
import type { OpenGrid } from "../../src/page/openGrid";
import { openWorkbook } from "../../src/workbook/openWorkbook";
import { readSheet } from "../../src/workbook/readSheet";
import { writeCsv } from "../../src/workbook/writeCsv";
import { becomes, launched } from "./browser";

declare const openGrid: OpenGrid;

const SOAK = process.env["SOAK"] !== undefined;
const WAYS = ["both", "the program", "the tab"] as const;
/** How often one of them is killed while somebody types. */
const KILLS = SOAK ? 200 : WAYS.length;
/** A kill takes only what was typed this short before, ms. */
const MAY_BE_LOST = 2000;

let browser: Browser;
let program: ChildProcess | undefined;
let folder: string;
beforeAll(async () => {
  browser = await launched();
});
afterAll(() => browser?.close());
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "unsaved-"));
  writeFileSync(join(folder, "survey.csv"), writeCsv(DEMO_SURVEY));
});
afterEach(() => program?.kill("SIGKILL"));

/** Starts the program itself, as `npm start` does. @returns the address that it prints */
function begin(): Promise<string> {
  const args = [resolve("dist/enclosure-columns.js"), "open", "survey.csv"];
  const own = spawn(process.execPath, args, { cwd: folder, env: { ...process.env, CI: "1" } });
  program = own;
  return new Promise((found) => {
    let text = "";
    own.stdout.on("data", (piece: Buffer) => {
      text += piece.toString();
      const address = /http:\S+\/enter\/\w+/.exec(text)?.[0];
      if (address !== undefined) found(address);
    });
  });
}

async function end(): Promise<void> {
  const own = program!;
  const gone = new Promise((done) => own.once("exit", done));
  own.kill("SIGKILL");
  await gone;
}

/** Ends a tab as the system does, so that none of its own scripts hears of it. */
async function crash(page: Page): Promise<void> {
  const gone = new Promise((done) => page.once("crash", done));
  const wire = await page.context().newCDPSession(page);
  wire.send("Page.crash").catch(() => undefined);
  await gone;
}

const ready = (page: Page) =>
  page.waitForFunction(() => document.body.dataset["ready"] === "yes", undefined, { timeout: 300_000 });
async function tab(address: string, context = browser.contexts()[0]): Promise<Page> {
  const page = await (context ?? (await browser.newContext())).newPage();
  await page.goto(address);
  await ready(page);
  return page;
}
const heightOf = (page: Page) =>
  page.evaluate(() => openGrid.workbook().getSheetByName("Survey")!.getRange("C2").getValue());
async function type(page: Page, height: number): Promise<void> {
  await page.evaluate(() => void openGrid.workbook().getSheetByName("Survey")!.getRange("C2").activate());
  await page.keyboard.type(String(height));
  await page.keyboard.press("Enter");
}
const marked = (page: Page) => page.evaluate(() => [!document.getElementById("unsaved")!.hidden, document.title]);
const notices = (page: Page) => page.locator("#notices > div").allInnerTexts();
const left = () => readdirSync(folder).filter((name) => name.endsWith(".json"));
/** The height that lies beside the file. */
const keptHeight = () => {
  const [name] = left();
  if (name === undefined) return undefined;
  const { steps } = JSON.parse(readFileSync(join(folder, name), "utf8")) as {
    steps: { cells?: { row: number; column: number; content: unknown }[] }[];
  };
  return steps.flatMap(({ cells = [] }) => cells).findLast(({ row, column }) => row === 2 && column === 3)?.content;
};
const savedHeight = (name: string) =>
  readSheet(openWorkbook(new Uint8Array(readFileSync(join(folder, name)))), "Survey").rows[1]![2];

test("what is not saved is marked, survives a reload, and is saved by each tab in a file of its own", async () => {
  const address = await begin();
  const page = await tab(address);
  page.on("dialog", (dialog) => void dialog.accept());
  expect(await marked(page)).toEqual([false, "survey.csv - Enclosure Columns"]);
  await type(page, 340);
  await becomes(() => marked(page), [true, "Not saved: survey.csv - Enclosure Columns"]);
  await becomes(() => Promise.resolve(keptHeight()), 340);
  await page.reload();
  await ready(page);
  expect([await heightOf(page), await marked(page)]).toEqual([
    340,
    [true, "Not saved: survey.csv - Enclosure Columns"],
  ]);

  const second = await tab(new URL("/", address).href, page.context());
  expect([await heightOf(second), await notices(second)]).toEqual([
    312,
    [expect.stringContaining("survey.csv is open in another tab too")],
  ]);
  await type(second, 350);
  await becomes(() => marked(second), [true, expect.any(String)]);
  for (const each of [page, second]) {
    await each.bringToFront();
    await each.click("#save");
    await becomes(() => marked(each), [false, "survey.csv - Enclosure Columns"]);
  }
  expect(await page.textContent("#said")).toContain(join(folder, "survey-edited.xlsx"));
  expect([savedHeight("survey-edited.xlsx"), savedHeight("survey-edited-2.xlsx"), left()]).toEqual([340, 350, []]);

  // Another file is opened only when it is said what becomes of the changes.
  await type(page, 360);
  await page.setInputFiles("#chooser", join(folder, "survey-edited-2.xlsx"));
  await becomes(() => notices(page), [expect.stringContaining("survey.csv has changes that are not saved")]);
  await page.click("#notices >> text=Stay with survey.csv");
  expect([await heightOf(page), await notices(page)]).toEqual([360, []]);
  await page.setInputFiles("#chooser", join(folder, "survey-edited-2.xlsx"));
  await page.click("#notices >> text=keep the changes for later");
  await becomes(() => heightOf(page), 350);
  await becomes(() => marked(page), [false, "survey-edited-2.xlsx - Enclosure Columns"]);
  expect(keptHeight()).toBe(360);
  // What a save refuses is said at once, and all is kept again when it is undone.
  const name = (heading: string) =>
    page.evaluate((text) => void openGrid.workbook().getSheetByName("Survey")!.getRange("A1").setValue(text), heading);
  await name("Mark");
  await becomes(() => page.textContent("#said"), expect.stringContaining("another heading of the table"));
  await name("Shelfmark");
  await type(page, 370);
  await becomes(async () => (await marked(page))[0], true);
  await becomes(() => Promise.resolve(left().length), 2);
  // The pane is that of the file that is open now.
  await becomes(async () => (await page.textContent("#pane"))!.includes("Reading"), false);
  await page.context().close();
});

test(`${KILLS} times the program, the tab or both are killed while somebody types: what was kept comes back`, async () => {
  let page = await tab(await begin());
  const random = createRandom(1);
  const ages: number[] = [];
  for (let kill = 1; kill <= KILLS; kill++) {
    const killed = WAYS[kill % WAYS.length]!;
    const height = 400 + kill * 10;
    await type(page, height);
    await becomes(() => Promise.resolve(keptHeight()), height);
    const times = [Date.now()];
    const more = 1 + random.below(5);
    while (times.length <= more) {
      await type(page, height + times.length);
      times.push(Date.now());
      if (SOAK) await new Promise((done) => setTimeout(done, random.below(900)));
    }
    const at = Date.now();
    if (killed !== "the tab") await end();
    if (killed !== "the program") await crash(page);
    const onDisk = Number(keptHeight());
    let last = height + more;
    if (killed === "the program") {
      // The page says so, keeps what was typed, and goes on when there is a program again.
      await type(page, ++last);
      await becomes(() => notices(page), [expect.stringContaining("Your changes are still here")]);
      const other = await tab(await begin(), page.context());
      // Whichever page comes second hears of the other; what the first still has is not offered to it.
      expect((await notices(other)).join()).not.toContain("were not saved");
      await becomes(() => notices(page), []);
      await becomes(() => Promise.resolve(keptHeight()), last);
      expect(await heightOf(page)).toBe(last);
      await other.close();
    } else {
      // The next page offers what was kept, and takes it up.
      if (killed === "both") {
        await page.context().close();
        page = await tab(await begin());
      } else {
        const next = await tab(new URL("/", page.url()).href, page.context());
        await page.close();
        page = next;
      }
      expect(await notices(page)).toEqual([
        expect.stringMatching(/survey\.csv has changes from .* that were not saved/),
      ]);
      await page.click("#notices >> text=Take them up");
      await becomes(() => marked(page), [true, expect.any(String)]);
      const back = Number(await heightOf(page));
      expect(back).toBeGreaterThanOrEqual(onDisk);
      expect(back).toBeLessThanOrEqual(last);
    }
    // How long before the kill the first of what is not on the disk was typed.
    const lost = times[onDisk - height + 1];
    if (lost !== undefined) ages.push(at - lost);
    if (SOAK && kill % 10 === 0) console.log(`${kill} kills; lost at most what was ${Math.max(0, ...ages)} ms old`);
  }
  // A clock tells nothing on a busy machine, except that it was soon enough.
  if (SOAK) expect(Math.max(0, ...ages)).toBeLessThan(MAY_BE_LOST);
  await page.click("#save");
  await becomes(() => Promise.resolve(left()), []);
  expect(readFileSync(join(folder, "survey.csv"), "utf8")).toBe(Buffer.from(writeCsv(DEMO_SURVEY)).toString("utf8"));
  await page.context().close();
});
