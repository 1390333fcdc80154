import { readFileSync } from "node:fs";
import { KINDS } from "../../../src/enclosure/registry";
import type { OpenGrid } from "../../../src/page/openGrid";
import { readZipEntries } from "../../cli/zipEntries";
import { becomes } from "../browser";
import { leave, page, SHEET } from "../openPage";
import { seriousFaults } from "../seriousFaults";
import { HOSTILE, LISTS, openSurvey, view, press, clicked, paneSaid, goToRow, cell, put } from "../paneActs";

declare const openGrid: OpenGrid;

const KINDS_USED = ["clamshell-box", "lidded-box", "tray"];

// Opening is slow: the tests that change nothing share a page.
describe("the pane over one survey", () => {
  beforeAll(() => openSurvey(undefined, LISTS));
  afterAll(leave);

  test("a row that is selected shows its enclosure drawn, its parts and the other kinds", async () => {
    await goToRow(4);
    await becomes(() => page.textContent("#pane h2"), "A3Item 3");
    await becomes(
      () => page.textContent("#pane .wrong"),
      'height: got "21O"; give a length such as 40, 40 mm or 1 9/16 in',
    );
    await goToRow(2);
    await becomes(() => page.textContent("#pane .view strong"), "tray");
    expect(await page.locator("#pane .drawing svg[aria-label='Exploded view of a tray']").count()).toBe(1);
    const parts = await page.locator("#pane [aria-label='Parts to cut'] li strong").allTextContents();
    expect(parts).toEqual(expect.arrayContaining(["1 × base", "2 × side wall", "2 × head wall"]));
    const kinds = await page.locator("#pane [aria-label='Kinds compared'] tbody tr").count();
    expect(kinds).toBe(KINDS.length);
    // A press shows the drawing over the window, with names beside the parts; Escape closes it.
    await page.click("#pane button[aria-label='Enlarge: Exploded view of a tray']");
    expect(await page.textContent("#pane dialog[open] svg")).toContain("side wall");
    await page.keyboard.press("Escape");
    expect(await page.locator("#pane dialog[open]").count()).toBe(0);
    expect(await page.locator("#pane button[aria-label='Use this: slipcase for A1']").count()).toBe(1);
  });

  test("a title of markup, formula, Arabic and 30,000 characters stands there as text, without the blanks at its end", async () => {
    await goToRow(3);
    await becomes(async () => (await page.textContent("#pane h2 .title"))?.length, HOSTILE.trimEnd().length);
    expect(await page.textContent("#pane h2 .title")).toBe(HOSTILE.trimEnd());
    expect(await page.locator("#pane img").count()).toBe(0);
    expect(await page.title()).not.toBe("taken");
  });

  test("an empty pane leads to the first columns in three steps; help answers for the view, and for what is looked for", async () => {
    await goToRow(1);
    await view("This item");
    const steps = page.locator("#pane [aria-label='First steps'] li");
    expect(await steps.count()).toBe(3);
    expect(await steps.nth(1).textContent()).toContain("5 enclosures can be sized; 1 row cannot");
    await page.click("#pane button:has-text('Show the columns')");
    expect(await page.textContent("#pane [role=tab][aria-selected=true]")).toBe("Columns");
    await page.click("#pane button:text-is('Help')");
    const topics = () => page.locator("#help dt").allInnerTexts();
    expect(await topics()).toContain("Everything to cut");
    await page.fill("#help input", "drop spine");
    expect(await topics()).toEqual(["clamshell box kind"]);
    await page.click("#pane button:text-is('Help')");
    expect(await page.locator("#help").count()).toBe(0);
  });

  test("figures are found by a word, shown with their unit, and one tick takes all that is to be cut", async () => {
    await view("Columns");
    await page.fill("#pane .view:not([hidden]) input[type=search]", "strip length");
    const found = await page.locator("#pane .view:not([hidden]) .group[open] label").allInnerTexts();
    expect(found.length).toBeGreaterThan(1);
    for (const each of found) expect(each).toMatch(/strip.*length.*\(mm\)/);
    await page.fill("#pane .view:not([hidden]) input[type=search]", "");
    const chosen = async () => parseInt((await page.textContent("#pane .view:not([hidden]) .last .quiet")) ?? "", 10);
    const before = await chosen();
    await page.check("#pane label:has-text('Everything to cut for my kinds') input");
    expect(await chosen()).toBeGreaterThan(before + 20);
    await page.uncheck("#pane label:has-text('Everything to cut for my kinds') input");
    expect(await chosen()).toBe(before);
  });

  test("the budget as a PDF takes two clicks from the survey's first view, and what is said goes with its view", async () => {
    await goToRow(1);
    await view("This item");
    const waiting = page.waitForEvent("download");
    const clicks = await clicked(async (click) => {
      await click("#pane [role=tab]:has-text('Board and cost')");
      await click("#pane button:has-text('Budget as PDF')");
    });
    expect(clicks).toBeLessThanOrEqual(2);
    expect((await waiting).suggestedFilename()).toBe("budget.pdf");
    await becomes(paneSaid, "budget.pdf is in your downloads.");
    expect(await page.textContent("#pane .sum")).toMatch(/^\d+\.\d\d EURexample prices/);
    await view("Problems");
    expect(await page.textContent("#pane .acts [role=status]")).toBe("");
  });

  test("what is ticked stays ticked while another view is looked at", async () => {
    await view("Columns");
    await page.uncheck("#pane label:has-text('net area of board')");
    await view("Problems");
    await view("Columns");
    expect(await page.isChecked("#pane label:has-text('net area of board') input")).toBe(false);
    await page.check("#pane label:has-text('net area of board')");
  });

  test("problems are listed, and a press goes to the row", async () => {
    await view("Problems");
    await press("Row 4, A3");
    await view("Item");
    await becomes(() => page.textContent("#pane h2"), "A3Item 3");
  });

  test("bench tickets are made in the browser", async () => {
    await view("Board and cost");
    await page.waitForSelector("#pane h2:has-text('On paper')");
    const waiting = page.waitForEvent("download");
    await press("Bench tickets");
    const file = readFileSync(await (await waiting).path());
    expect(file.subarray(0, 5).toString()).toBe("%PDF-");
  });

  test("an application for funds is made in the browser: one archive of all its files", async () => {
    await view("Board and cost");
    const waiting = page.waitForEvent("download");
    await press("Application for funds");
    const download = await waiting;
    expect(download.suggestedFilename()).toBe("application.zip");
    const files = readZipEntries(readFileSync(await download.path()));
    expect([...files.keys()].sort()).toEqual([
      "application.pdf",
      "budget.csv",
      "budget.xlsx",
      ...KINDS_USED.map((kind) => `drawings/${kind}.svg`),
      ...["items.csv", "narrative.docx", "narrative.txt", "shelf.csv"],
    ]);
    // One total in all of them, as the pane shows it.
    const shown = (await page.locator("#pane [aria-label='Estimate'] tbody tr:last-child td").allTextContents()).at(
      -1,
    )!;
    expect(shown).toMatch(/^\d+\.\d\d$/);
    const text = (name: string) => Buffer.from(files.get(name)!).toString();
    expect(text("narrative.txt")).toContain(shown);
    expect(text("budget.csv")).toContain(String(Number(shown)));
  });

  test("a range of the user's own named sizes is the list from which ENC.SIZE chooses", async () => {
    const ask = async (row: number, item: string) => {
      await put("Sizes", row, 1, `=ENC.SIZE(${item},sizes,"wall board=2 mm")`);
      await becomes(async () => typeof (await cell("Sizes", row, 1)).value, "string");
    };
    await ask(6, '200,150,25,"tray"');
    await ask(7, '300,210,40,"tray"');
    await ask(8, '400,210,40,"tray"');
    await becomes(async () => (await cell("Sizes", 6, 1)).value, "Small");
    await becomes(async () => (await cell("Sizes", 7, 1)).value, "Large");
    await becomes(async () => (await cell("Sizes", 8, 1)).value, "made to measure");
  });

  test("kinds and directions are offered while a formula is typed: Tab takes the first, a press any", async () => {
    await goToRow(12, 1, "Sizes");
    await page.evaluate(() => openGrid.grid.focus());
    await page.keyboard.type('=ENC.INSIDE(200,150,25,"cl');
    await becomes(() => page.textContent("#values button"), "clamshell box");
    await page.keyboard.press("Tab");
    await page.waitForSelector("#values", { state: "hidden" });
    await page.keyboard.type(",");
    await page.click("#values button:text-is('height')");
    await page.keyboard.type(',"wall board=2 mm")');
    await page.keyboard.press("Enter");
    await becomes(
      async () => (await cell("Sizes", 12, 1)).formula,
      '=ENC.INSIDE(200,150,25,"clamshell box","height","wall board=2 mm")',
    );
    await becomes(async () => typeof (await cell("Sizes", 12, 1)).value, "number");
  });

  test.each([
    ["light", 1280],
    ["dark", 640],
  ] as const)(
    "neither the page nor a view has a serious fault for a screen reader or a weak eye, %s, window %i wide",
    async (colorScheme, width) => {
      await page.emulateMedia({ colorScheme });
      await page.setViewportSize({ width, height: 800 });
      await goToRow(3);
      for (const name of ["This item", "Columns", "Problems", "Board and cost", "Store", "Set up"]) {
        await view(name);
        if (name === "Board and cost") {
          // The tests before have changed the survey since its sheets were planned.
          await press("Plan the sheets");
          await page.waitForSelector("#pane [aria-label='Estimate'] tbody tr");
        }
        if (name === "Set up") await press("Add a stock");
        // What is around the views is the same for all: it is looked at with the first.
        expect({ name, found: await seriousFaults(name === "This item" ? ":root" : "#pane") }).toEqual({
          name,
          found: [],
        });
        if (name === "Set up") await press("Add a stock");
      }
      // At 200 % too the sheets can be pressed: nothing lies over their names.
      const uncovered = await page.evaluate(() =>
        Array.from(document.querySelectorAll("#grid footer [data-u-comp=slide-tab-item]"))
          .slice(0, 1)
          .map((tab) => {
            const { left, top, height } = tab.getBoundingClientRect();
            return tab.contains(document.elementFromPoint(left + height / 2, top + height / 2));
          }),
      );
      expect(uncovered).toEqual([true]);
    },
  );

  test.each(["light", "dark"] as const)(
    "no menu and no dialog of the grid has a serious fault for a screen reader or a weak eye, %s",
    async (colorScheme) => {
      await page.emulateMedia({ colorScheme });
      await page.setViewportSize({ width: 1280, height: 800 });
      // The shortest view: all of them are looked at in the tests before.
      await view("Problems");
      const shows = async (words: string): Promise<void> => {
        await page.waitForSelector(`text=${words}`);
        expect({ words, found: await seriousFaults(":root") }).toEqual({ words, found: [] });
      };
      const leaves = async (words: string): Promise<void> => {
        await page.keyboard.press("Escape");
        await becomes(() => page.getByText(words, { exact: true }).filter({ visible: true }).count(), 0);
      };
      const { x, y } = (await page.locator(SHEET).boundingBox())!;
      await page.mouse.click(x + 20, y + 120, { button: "right" });
      await shows("Row height");
      await leaves("Row height");
      await page.mouse.click(x + 120, y + 10, { button: "right" });
      await shows("Column width");
      await leaves("Column width");
      await page.click("#find");
      await shows("Whole cells alone");
      await leaves("Whole cells alone");
      await page.click("#sort");
      await shows("Rows are sorted whole");
      await page.getByRole("button", { name: "Cancel" }).click();
      await goToRow(2);
      await page.keyboard.type("=ENC.INSIDE(300,");
      await shows("ENC.INSIDE(");
      await page.keyboard.press("Escape");
      await becomes(() => page.evaluate(() => openGrid.workbook().isCellEditing()), false);
    },
  );

  test("the store is shown now and boxed, as other enclosures, and with fewer sizes as a curve", async () => {
    await view("Store");
    const rows = (label: string) => page.locator(`#pane [aria-label='${label}'] tbody tr`).allInnerTexts();
    expect(await rows("Room in the store")).toContainEqual(expect.stringMatching(/upright.*\d+\.\d+ *m?/s));
    await press("Show what each kind of enclosure would take");
    await becomes(
      async () => (await rows("Other enclosures")).find((row) => row.startsWith("clamshell box")),
      expect.stringMatching(/^clamshell box\s+\d+\s+\d+\.\d\d m\s+\d+$/),
    );
    await press("Show what standard sizes would take");
    await becomes(
      async () => (await rows("Standard sizes")).at(-1),
      expect.stringMatching(/^made to measure\s+\d+\.\d+/),
    );
    expect(await page.locator("#pane .view:not([hidden]) svg").count()).toBe(1);
  });

  test("the views are walked with the arrow keys", async () => {
    await view("This item");
    await page.focus("#pane [role=tab][aria-selected=true]");
    await page.keyboard.press("ArrowRight");
    expect(await page.textContent("#pane [role=tab][aria-selected=true]")).toBe("Columns");
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe("Columns");
  });
});
