import { readFileSync } from "node:fs";
import { join } from "node:path";
import axe from "axe-core";
import type { Browser } from "playwright-core";
import { KINDS } from "../../src/enclosure/registry";
import { fillWorkbook } from "../../src/filling/fillWorkbook";
import { bookOf } from "../../src/workbook/book";
import { cellName } from "../../src/workbook/cellRef";
import { typedFormula } from "../../src/workbook/formulaText";
import { openWorkbook } from "../../src/workbook/openWorkbook";
import { readSheet } from "../../src/workbook/readSheet";
import { createWorkbook } from "../../src/workbook/createWorkbook";
import { chooseSheet } from "../../src/filling/chooseSheet";
import { readZipEntries } from "../cli/zipEntries";
import { becomes, launched, opened, type OpenPage } from "./browser";

/*
 * The pane beside the local workbook, driven as a person drives it.
 */

const HEADINGS = ["Identifier", "Title", "Height", "Width", "Depth", "Weight (kg)", "Enclosure"];
const HOSTILE = `<img src=x onerror="document.title='taken'"> =1+1 مرحبا 📦 ${"long ".repeat(6000)}`;

/** A user's own list of sizes, and a currency, under the names that the functions are given. */
const LISTS = {
  sheets: [
    {
      name: "Sizes",
      rows: [
        ["size", "enclosure", "height", "width", "depth"],
        ["Small", "tray", 250, 180, 35],
        ["Large", "tray", 320, 230, 50],
      ],
    },
    {
      name: "Settings",
      rows: [
        ["setting", "value"],
        ["currency", "EUR"],
      ],
    },
  ],
  names: [
    { name: "sizes", refersTo: "Sizes!$A$1:$E$3" },
    { name: "settings", refersTo: "Settings!$A$1:$B$2" },
  ],
} as const;

function survey(rows = 6, lists?: typeof LISTS): Uint8Array {
  const kinds = ["tray", "lidded box", "clamshell box"];
  const items = [
    {
      name: "Items",
      table: "Survey",
      rows: [
        HEADINGS,
        ...Array.from({ length: rows }, (_, i) => [
          `A${i + 1}`,
          i === 1 ? HOSTILE : `Item ${i + 1}`,
          i === 2 ? "21O" : 200 + ((i * 7) % 90),
          150 + ((i * 5) % 60),
          20 + (i % 9),
          0.3,
          kinds[i % 3]!,
        ]),
      ],
    },
  ] as const;
  return createWorkbook([...items, ...(lists?.sheets ?? [])], lists?.names);
}

const KINDS_USED = ["clamshell-box", "lidded-box", "tray"];

/** Rows whose sheets are searched for longer than the test looks. */
const LONG = 150;

let browser: Browser;
let open: OpenPage;

beforeAll(async () => {
  browser = await launched();
});
afterAll(() => browser.close());
afterEach(() => {
  const { outside, wrong } = open;
  expect({ outside, wrong }).toEqual({ outside: [], wrong: [] });
});

async function openSurvey(rows?: number, lists?: typeof LISTS): Promise<void> {
  open = await opened(browser, "survey.xlsx", survey(rows, lists));
  await open.page.waitForSelector("#pane .view:not([hidden]) h2, #pane .view:not([hidden]) p");
}

const view = (name: string) => open.page.click(`#pane [role=tab]:has-text("${name}")`);
const press = (name: string) => open.page.click(`#pane :is(.view:not([hidden]), .acts) button:has-text("${name}")`);
const decide = (label: string, option: string) =>
  open.page.selectOption(`#pane .view:not([hidden]) .decisions label:has-text("${label}") select`, { label: option });
/** Columns that are frozen, headings, and rows of the survey that no filter hides, as the grid has them. */
const sheetNow = () =>
  open.page.evaluate(() => {
    const { openGrid } = globalThis as unknown as {
      openGrid: {
        workbook: () => {
          getSheetByName: (name: string) => {
            getFreeze: () => { xSplit: number };
            getSheet: () => { getRowVisible: (row: number) => boolean };
            getRange: (cells: string) => { getValues: () => unknown[][] };
          };
        };
      };
    };
    const sheet = openGrid.workbook().getSheetByName("Items");
    return {
      frozen: sheet.getFreeze().xSplit,
      headings: sheet.getRange("A1:Z1").getValues()[0]!,
      visible: [2, 3, 4, 5, 6, 7].filter((row) => sheet.getSheet().getRowVisible(row - 1)),
    };
  });
/** Does something by clicks. @returns how many they were */
async function clicked(work: (click: (target: string) => Promise<void>) => Promise<void>): Promise<number> {
  let clicks = 0;
  await work(async (target) => {
    clicks++;
    await open.page.click(target);
  });
  return clicks;
}
const said = () => open.page.textContent("#pane .acts [role=status] span:first-child");
const goTo = (row: number, column = 1, sheet = "Items") =>
  open.page.evaluate(
    (cell) => (globalThis as unknown as { bookPort: { goTo: (cell: unknown) => Promise<void> } }).bookPort.goTo(cell),
    { sheet, row, column },
  );
const cell = (sheet: string, row: number, column: number) =>
  open.page.evaluate(
    ([name, r, c]) => {
      const { openGrid } = globalThis as unknown as {
        openGrid: {
          workbook: () => {
            getSheetByName: (n: string) => {
              getRange: (r: number, c: number) => { getValue: () => unknown; getFormula: () => string };
            };
          };
        };
      };
      const range = openGrid
        .workbook()
        .getSheetByName(name)
        .getRange(r - 1, c - 1);
      return { value: range.getValue(), formula: range.getFormula() };
    },
    [sheet, row, column] as const,
  );
const type = (sheet: string, row: number, column: number, value: unknown) =>
  open.page.evaluate(
    ([name, r, c, v]) => {
      const { openGrid } = globalThis as unknown as {
        openGrid: {
          workbook: () => {
            getSheetByName: (n: unknown) => {
              getRange: (r: unknown, c: unknown) => { setValue: (v: unknown) => void };
            };
          };
        };
      };
      openGrid
        .workbook()
        .getSheetByName(name)
        .getRange(r - 1, c - 1)
        .setValue(v);
    },
    [sheet, row, column, value] as const,
  );

// Opening is slow: the tests that change nothing share a page.
describe("one survey, only looked at", () => {
  beforeAll(() => openSurvey(undefined, LISTS));
  afterAll(() => open.close());

  test("a row that is selected shows its enclosure drawn, its parts and the other kinds", async () => {
    await goTo(4);
    await becomes(() => open.page.textContent("#pane h2"), "A3Item 3");
    await becomes(
      () => open.page.textContent("#pane .wrong"),
      'height: got "21O"; give a length such as 40, 40 mm or 1 9/16 in',
    );
    await goTo(2);
    await becomes(() => open.page.textContent("#pane .view strong"), "tray");
    expect(await open.page.locator("#pane .drawing svg[aria-label='Exploded view of a tray']").count()).toBe(1);
    const parts = await open.page.locator("#pane [aria-label='Parts to cut'] li strong").allTextContents();
    expect(parts).toEqual(expect.arrayContaining(["1 × base", "2 × side wall", "2 × head wall"]));
    const kinds = await open.page.locator("#pane [aria-label='Kinds compared'] tbody tr").count();
    expect(kinds).toBe(KINDS.length);
    // A press shows the drawing over the window, with names beside the parts; Escape closes it.
    await open.page.click("#pane button[aria-label='Enlarge: Exploded view of a tray']");
    expect(await open.page.textContent("#pane dialog[open] svg")).toContain("side wall");
    await open.page.keyboard.press("Escape");
    expect(await open.page.locator("#pane dialog[open]").count()).toBe(0);
    expect(await open.page.locator("#pane button[aria-label='Use this: slipcase for A1']").count()).toBe(1);
  });

  test("a title of markup, formula, Arabic and 30,000 characters stands there as text, without the blanks at its end", async () => {
    await goTo(3);
    await becomes(async () => (await open.page.textContent("#pane h2 .title"))?.length, HOSTILE.trimEnd().length);
    expect(await open.page.textContent("#pane h2 .title")).toBe(HOSTILE.trimEnd());
    expect(await open.page.locator("#pane img").count()).toBe(0);
    expect(await open.page.title()).not.toBe("taken");
  });

  test("an empty pane leads to the first columns in three steps; help answers for the view, and for what is looked for", async () => {
    await goTo(1);
    await view("This item");
    const steps = open.page.locator("#pane [aria-label='First steps'] li");
    expect(await steps.count()).toBe(3);
    expect(await steps.nth(1).textContent()).toContain("5 enclosures can be sized; 1 row cannot");
    await open.page.click("#pane button:has-text('Show the columns')");
    expect(await open.page.textContent("#pane [role=tab][aria-selected=true]")).toBe("Columns");
    await open.page.click("#pane button:text-is('Help')");
    const topics = () => open.page.locator("#help dt").allInnerTexts();
    expect(await topics()).toContain("Everything to cut");
    await open.page.fill("#help input", "drop spine");
    expect(await topics()).toEqual(["clamshell box kind"]);
    await open.page.click("#pane button:text-is('Help')");
    expect(await open.page.locator("#help").count()).toBe(0);
  });

  test("figures are found by a word, shown with their unit, and one tick takes all that is to be cut", async () => {
    await view("Columns");
    await open.page.fill("#pane .view:not([hidden]) input[type=search]", "strip length");
    const found = await open.page.locator("#pane .view:not([hidden]) .group[open] label").allInnerTexts();
    expect(found.length).toBeGreaterThan(1);
    for (const each of found) expect(each).toMatch(/strip.*length.*\(mm\)/);
    await open.page.fill("#pane .view:not([hidden]) input[type=search]", "");
    const chosen = async () =>
      parseInt((await open.page.textContent("#pane .view:not([hidden]) .last .quiet")) ?? "", 10);
    const before = await chosen();
    await open.page.check("#pane label:has-text('Everything to cut for my kinds') input");
    expect(await chosen()).toBeGreaterThan(before + 20);
    await open.page.uncheck("#pane label:has-text('Everything to cut for my kinds') input");
    expect(await chosen()).toBe(before);
  });

  test("the budget as a PDF takes two clicks from the survey's first view, and what is said goes with its view", async () => {
    await goTo(1);
    await view("This item");
    const waiting = open.page.waitForEvent("download");
    const clicks = await clicked(async (click) => {
      await click("#pane [role=tab]:has-text('Board and cost')");
      await click("#pane button:has-text('Budget as PDF')");
    });
    expect(clicks).toBeLessThanOrEqual(2);
    expect((await waiting).suggestedFilename()).toBe("budget.pdf");
    await becomes(said, "budget.pdf is in your downloads.");
    expect(await open.page.textContent("#pane .sum")).toMatch(/^\d+\.\d\d EURexample prices/);
    await view("Problems");
    expect(await open.page.textContent("#pane .acts [role=status]")).toBe("");
  });

  test("what is ticked stays ticked while another view is looked at", async () => {
    await view("Columns");
    await open.page.uncheck("#pane label:has-text('net area of board')");
    await view("Problems");
    await view("Columns");
    expect(await open.page.isChecked("#pane label:has-text('net area of board') input")).toBe(false);
    await open.page.check("#pane label:has-text('net area of board')");
  });

  test("problems are listed, and a press goes to the row", async () => {
    await view("Problems");
    await press("Row 4, A3");
    await view("Item");
    await becomes(() => open.page.textContent("#pane h2"), "A3Item 3");
  });

  test("bench tickets are made in the browser", async () => {
    await view("Board and cost");
    await open.page.waitForSelector("#pane h2:has-text('On paper')");
    const waiting = open.page.waitForEvent("download");
    await press("Bench tickets");
    const file = readFileSync(await (await waiting).path());
    expect(file.subarray(0, 5).toString()).toBe("%PDF-");
  });

  test("an application for funds is made in the browser: one archive of all its files", async () => {
    await view("Board and cost");
    const waiting = open.page.waitForEvent("download");
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
    const shown = (
      await open.page.locator("#pane [aria-label='Estimate'] tbody tr:last-child td").allTextContents()
    ).at(-1)!;
    expect(shown).toMatch(/^\d+\.\d\d$/);
    const text = (name: string) => Buffer.from(files.get(name)!).toString();
    expect(text("narrative.txt")).toContain(shown);
    expect(text("budget.csv")).toContain(String(Number(shown)));
  });

  test("a range of the user's own named sizes is the list from which ENC.SIZE chooses", async () => {
    const ask = async (row: number, item: string) => {
      await type("Sizes", row, 1, `=ENC.SIZE(${item},sizes,"wall board=2 mm")`);
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
    await goTo(12, 1, "Sizes");
    await open.page.evaluate(() =>
      (globalThis as unknown as { openGrid: { grid: { focus: () => void } } }).openGrid.grid.focus(),
    );
    await open.page.keyboard.type('=ENC.INSIDE(200,150,25,"cl');
    await becomes(() => open.page.textContent("#values button"), "clamshell box");
    await open.page.keyboard.press("Tab");
    await open.page.waitForSelector("#values", { state: "hidden" });
    await open.page.keyboard.type(",");
    await open.page.click("#values button:text-is('height')");
    await open.page.keyboard.type(',"wall board=2 mm")');
    await open.page.keyboard.press("Enter");
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
      await open.page.emulateMedia({ colorScheme });
      await open.page.setViewportSize({ width, height: 800 });
      await goTo(3);
      await open.page.evaluate(axe.source);
      for (const name of ["This item", "Columns", "Problems", "Board and cost", "Store", "Set up"]) {
        await view(name);
        if (name === "Board and cost") {
          // The tests before have changed the survey since its sheets were planned.
          await press("Plan the sheets");
          await open.page.waitForSelector("#pane [aria-label='Estimate'] tbody tr");
        }
        if (name === "Set up") await press("Add a stock");
        const found = await open.page.evaluate(async () => {
          const { violations } = await (globalThis as unknown as { axe: typeof axe }).axe.run();
          return violations.map(({ id, impact, nodes }) => `${id}, ${impact}: ${nodes[0]?.html.slice(0, 120)}`);
        });
        expect({ name, found: found.filter((line) => /, (serious|critical):/.test(line)) }).toEqual({
          name,
          found: [],
        });
        if (name === "Set up") await press("Add a stock");
      }
      // At 200 % too the sheets can be pressed: nothing lies over their names.
      const uncovered = await open.page.evaluate(() =>
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

  test("the store is shown now and boxed, as other enclosures, and with fewer sizes as a curve", async () => {
    await view("Store");
    const rows = (label: string) => open.page.locator(`#pane [aria-label='${label}'] tbody tr`).allInnerTexts();
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
    expect(await open.page.locator("#pane .view:not([hidden]) svg").count()).toBe(1);
  });

  test("the views are walked with the arrow keys", async () => {
    await view("This item");
    await open.page.focus("#pane [role=tab][aria-selected=true]");
    await open.page.keyboard.press("ArrowRight");
    expect(await open.page.textContent("#pane [role=tab][aria-selected=true]")).toBe("Columns");
    expect(await open.page.evaluate(() => document.activeElement?.textContent)).toBe("Columns");
  });
});

describe("a survey for each", () => {
  afterEach(() => open.close());

  test("columns added from the pane are those of the command line; a setting changed in its sheet changes them; undo takes them back", async () => {
    await openSurvey();
    const clicks = await clicked(async (click) => {
      await click("#pane [role=tab]:has-text('Columns')");
      await click("#pane .view:not([hidden]) button:has-text('Add the columns')");
    });
    expect(clicks).toBeLessThanOrEqual(2);
    await becomes(said, "Adding the columns: done.");
    expect((await sheetNow()).frozen).toBe(1);
    // The third click from the survey's first view.
    const filters = clicks + (await clicked((click) => click("#pane [aria-label='Rows by caliper'] button >> nth=0")));
    expect(filters).toBeLessThanOrEqual(3);
    const chosen = parseFloat((await said())!.replace("Only rows with the caliper ", ""));
    const caliperAt =
      (await sheetNow()).headings.indexOf("caliper (mm)") + 1 || (await sheetNow()).headings.indexOf("caliper") + 1;
    const matching: number[] = [];
    for (let row = 2; row <= 7; row++) if ((await cell("Items", row, caliperAt)).value === chosen) matching.push(row);
    expect(matching.length).toBeGreaterThan(0);
    await becomes(async () => (await sheetNow()).visible, matching);
    await press("All rows");
    await becomes(async () => (await sheetNow()).visible, [2, 3, 4, 5, 6, 7]);
    const file = openWorkbook(survey());
    const { edit } = fillWorkbook(file, {
      figures: ["outside height", "outside width", "outside depth", "caliper", "board area", "problem"],
      settings: [],
      recognise: {},
      values: false,
      cutList: false,
    });
    const filled = openWorkbook(edit.bytes);
    const grid = readSheet(filled, chooseSheet(bookOf(filled)).sheet.name, { formulas: true });
    const headings = grid.rows[0]!;
    const height = headings.indexOf("outside height (mm)") + 1;
    await becomes(async () => (await cell("Items", 1, height)).value, "outside height (mm)");
    for (const [at, heading] of headings.entries()) {
      const shown = await cell("Items", 1, at + 1);
      expect([at, shown.value]).toEqual([at, heading]);
      const stored = grid.formulas.get(cellName(2, at + 1));
      const live = await cell("Items", 2, at + 1);
      expect([heading, live.formula]).toEqual([heading, stored === undefined ? "" : `=${typedFormula(stored)}`]);
    }
    expect((await cell("Items", 2, height)).formula).toContain('=ENC.OUTSIDE($C2,$D2,$E2,$G2,"height",settings,stock,');
    await becomes(async () => Number((await cell("Items", 2, height)).value), grid.rows[1]![height - 1]);

    const settings = await open.page.evaluate(() => {
      const { openGrid } = globalThis as unknown as {
        openGrid: {
          workbook: () => {
            getSheetByName: (n: string) => { getRange: (a: string) => { getValues: () => unknown[][] } };
          };
        };
      };
      return openGrid.workbook().getSheetByName("settings").getRange("A1:B80").getValues();
    });
    const row = settings.findIndex(([name]) => name === "covering allowance") + 1;
    expect(row).toBeGreaterThan(0);
    const before = (await cell("Items", 2, height)).value;
    await type("settings", row, 2, 9);
    await becomes(async () => (await cell("Items", 2, height)).value !== before, true);

    // Another unit is asked about: no size is read otherwise in silence.
    const unitRow = settings.findIndex(([name]) => name === "unit") + 1;
    await type("settings", unitRow, 2, "in");
    await open.page.waitForSelector("#pane .notice [aria-label='Which unit is meant']");
    expect(await open.page.textContent("#pane .notice")).toContain("were read in mm");
    await open.page.click("#pane .notice button:has-text('Only the answers')");
    await becomes(said, "Answers in inches: done.");
    expect((await cell("settings", unitRow, 2)).value).toBe("mm");
    await press("Undo: Answers in inches");
    await press("Undo: Adding the columns");
    await becomes(said, "Undone: Adding the columns.");
    await becomes(async () => (await cell("Items", 1, height)).value || null, null);
  });

  test("a survey that cannot be read at once asks with buttons, takes an answer back, and sets a word and a unit right in all rows at once", async () => {
    const rows = [
      ["Inv.", "Höhe", "Breite", "Dicke", "Einheit", "Verpackung"],
      ["007", 30, 21, 4, "cm", "Kassette"],
      ["008", 29, 20, 3, "cm", "Kassette"],
      ["009", 12, 8, 2, "tommer", "Schuber"],
      ["010", 11, 7, 1, "tommer", "Schuber"],
      ["010", 28, 19, 3, "cm", "Dose"],
      ["011", 27, 19, "3O", "cm", "Schuber"],
      ["012", 26, 18, 3, "cm", "keine"],
    ];
    const choose = (label: string, option: string) =>
      open.page.selectOption(`#pane .view:not([hidden]) label:has-text("${label}") select`, { label: option });
    const shown = async () => (await open.page.textContent("#pane")) ?? "";
    open = await opened(browser, "survey.xlsx", createWorkbook([{ name: "Items", rows }]));
    await open.page.waitForSelector("#pane .question button");
    expect(await shown()).toContain('2 rows say "Kassette" (rows 2, 3). Which kind is meant?');
    await open.page.click('#pane .question button:text-is("clamshell box")');
    await becomes(async () => (await shown()).includes("Which kind is meant?"), false);
    await view("Columns");
    // Declined by mistake, the survey lacks a measure; one press brings it back.
    await choose("D Dicke", "not used");
    await open.page.click('#pane button:has-text("Take back the last answer")');
    await becomes(async () => (await shown()).includes("Take back the last answer"), false);
    await view("Problems");
    expect(await shown()).toContain('identifier "010" is in rows 5, 6');
    await choose("2 rows say “tommer”", "in");
    await becomes(async () => (await shown()).includes("tommer"), false);
    await choose("One row says “Dose”", "lidded box");
    await becomes(async () => (await shown()).includes("Dose"), false);
    expect(await shown()).toContain("Cannot be sized: 1");
    expect(await shown()).toContain('Row 7, 011: got "3O"');
  });

  test("sheets, estimate and pictures; the estimate written to a sheet, saved, and read by another reader", async () => {
    await openSurvey();
    // A kind that is used is written into the row, and undone.
    await goTo(2);
    await becomes(() => open.page.textContent("#pane .view strong"), "tray");
    await open.page.click("#pane button[aria-label='Use this: slipcase for A1']");
    await becomes(() => open.page.textContent("#pane .view strong"), "slipcase");
    await press("Undo");
    await becomes(() => open.page.textContent("#pane .view strong"), "tray");
    // A decision without a column of its own gets one, and takes one step to undo.
    const outside = () => open.page.textContent("#pane .view:not([hidden]) .decisions + p");
    const usual = await outside();
    await decide("Fit", "loose");
    await becomes(async () => (await outside()) === usual, false);
    await becomes(async () => (await cell("Items", 2, 8)).value, "loose");
    await press("Undo: Fit: loose for A1");
    await becomes(outside, usual);
    await view("Board and cost");
    await open.page.waitForSelector("#pane [aria-label='Estimate'] tbody tr");
    const lines = await open.page.locator("#pane [aria-label='Estimate'] tbody tr td:last-child").allTextContents();
    const money = lines.map(Number);
    const total = money.at(-1)!;
    expect(money.slice(0, -1).reduce((sum, each) => sum + each, 0)).toBeCloseTo(total, 6);
    await open.page.click("#pane summary:has-text('Cutting plans as pictures')");
    expect(await open.page.locator("#pane details .drawing svg").count()).toBeGreaterThan(0);
    await press("Write the estimate to a sheet");
    await becomes(said, "Writing the estimate to a sheet: done.");
    // The plan is as good as it was: nothing that is cut has changed.
    expect(await open.page.textContent("#pane .sum")).toContain(total.toFixed(2));
    // A setting is chosen in the form, written into its sheet, and counts at once.
    await view("Set up");
    await open.page.fill("#pane .view:not([hidden]) input[type=search]", "currency");
    await open.page.selectOption("#pane .view:not([hidden]) .setting select", { label: "other…" });
    await open.page.fill("#pane .view:not([hidden]) .setting input", "EUR");
    await open.page.keyboard.press("Enter");
    await becomes(said, "Setting currency: EUR: done.");
    await view("Board and cost");
    await becomes(() => open.page.textContent("#pane .sum"), expect.stringContaining(`${total.toFixed(2)} EUR`));
    await open.page.click("#save");
    await open.page.waitForFunction(() => document.getElementById("said")?.textContent?.includes("Saved as"));
    const saved = openWorkbook(new Uint8Array(readFileSync(join(open.folder, "survey-edited.xlsx"))));
    const rows = readSheet(saved, "Estimate").rows;
    expect(rows.flat()).toContain(total);
  });

  test("a long search shows how far it has come, and stopping it keeps the best plans", async () => {
    await openSurvey(LONG);
    await view("Board and cost");
    await open.page.waitForSelector("#pane [aria-label='Sheets to buy'] tbody tr");
    await open.page.selectOption("#pane .row select", "600");
    await press("Plan the sheets");
    await open.page.waitForSelector("#pane progress[aria-label='Search']");
    await becomes(
      async () => /conservation board 2: \d+, /.test((await open.page.textContent("#pane .progress")) ?? ""),
      true,
    );
    // Another view may be looked at meanwhile.
    await view("This item");
    await view("Board and cost");
    await open.page.waitForSelector("#pane progress[aria-label='Search']");
    await press("Stop, keep the best");
    await becomes(said, "Stopped: the best plans so far are kept.");
    await view("Columns");
    await view("Board and cost");
    expect(await open.page.locator("#pane [aria-label='Sheets to buy'] tbody tr").count()).toBeGreaterThan(0);
  });
});
