import { readFileSync } from "node:fs";
import { join } from "node:path";
import { chooseSheet } from "../../../src/filling/chooseSheet";
import { fillWorkbook } from "../../../src/filling/fillWorkbook";
import type { OpenGrid } from "../../../src/page/openGrid";
import { bookOf } from "../../../src/workbook/book";
import { cellName } from "../../../src/workbook/cellRef";
import { createWorkbook } from "../../../src/workbook/createWorkbook";
import { typedFormula } from "../../../src/workbook/formulaText";
import { openWorkbook } from "../../../src/workbook/openWorkbook";
import { readSheet } from "../../../src/workbook/readSheet";
import { becomes } from "../browser";
import { at, leave, open, page } from "../openPage";
import {
  survey,
  openSurvey,
  view,
  press,
  decide,
  sheetNow,
  clicked,
  paneSaid,
  goToRow,
  cell,
  cells,
  put,
} from "../paneActs";

declare const openGrid: OpenGrid;

/** Rows whose sheets are searched for longer than the test looks. */
const LONG = 150;

describe("the pane, a survey for each", () => {
  afterEach(leave);

  test("columns added from the pane are those of the command line; a setting changed in its sheet changes them; undo takes them back", async () => {
    await openSurvey();
    const clicks = await clicked(async (click) => {
      await click("#pane [role=tab]:has-text('Columns')");
      await click("#pane .view:not([hidden]) button:has-text('Add the columns')");
    });
    expect(clicks).toBeLessThanOrEqual(2);
    await becomes(paneSaid, "Adding the columns: done.");
    expect((await sheetNow()).frozen).toBe(1);
    // The third click from the survey's first view.
    const filters = clicks + (await clicked((click) => click("#pane [aria-label='Rows by caliper'] button >> nth=0")));
    expect(filters).toBeLessThanOrEqual(3);
    // People read a caliper with its unit.
    expect(await paneSaid()).toMatch(/^Only rows with the caliper [\d.]+ mm are shown\./);
    const chosen = parseFloat((await paneSaid())!.replace("Only rows with the caliper ", ""));
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
    const [shown, live] = [await cells("Items", 1, headings.length), await cells("Items", 2, headings.length)];
    for (const [at, heading] of headings.entries()) {
      expect([at, shown[at]!.value]).toEqual([at, heading]);
      const stored = grid.formulas.get(cellName(2, at + 1));
      expect([heading, live[at]!.formula]).toEqual([heading, stored === undefined ? "" : `=${typedFormula(stored)}`]);
    }
    expect((await cell("Items", 2, height)).formula).toContain('=ENC.OUTSIDE($C2,$D2,$E2,$G2,"height",settings,stock,');
    await becomes(async () => Number((await cell("Items", 2, height)).value), grid.rows[1]![height - 1]);

    const settings = await page.evaluate(() => {
      return openGrid.workbook().getSheetByName("settings")!.getRange("A1:B80").getValues();
    });
    const row = settings.findIndex(([name]) => name === "covering allowance") + 1;
    expect(row).toBeGreaterThan(0);
    const before = (await cell("Items", 2, height)).value;
    await put("settings", row, 2, 9);
    await becomes(async () => (await cell("Items", 2, height)).value !== before, true);

    // Another unit is asked about: no size is read otherwise in silence.
    const unitRow = settings.findIndex(([name]) => name === "unit") + 1;
    await put("settings", unitRow, 2, "in");
    await page.waitForSelector("#pane .notice [aria-label='Which unit is meant']");
    expect(await page.textContent("#pane .notice")).toContain("were read in mm");
    await page.click("#pane .notice button:has-text('Only the answers')");
    await becomes(paneSaid, "Answers in inches: done.");
    expect((await cell("settings", unitRow, 2)).value).toBe("mm");
    await press("Undo: Answers in inches");
    await press("Undo: Adding the columns");
    await becomes(paneSaid, "Undone: Adding the columns.");
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
      page.selectOption(`#pane .view:not([hidden]) label:has-text("${label}") select`, { label: option });
    const shown = async () => (await page.textContent("#pane")) ?? "";
    await open("survey.xlsx", createWorkbook([{ name: "Items", rows }]));
    await page.waitForSelector("#pane .question button");
    expect(await shown()).toContain('2 rows say "Kassette" (rows 2, 3). Which kind is meant?');
    await page.click('#pane .question button:text-is("clamshell box")');
    await becomes(async () => (await shown()).includes("Which kind is meant?"), false);
    await view("Columns");
    // Declined by mistake, the survey lacks a measure; one press brings it back.
    await choose("D Dicke", "not used");
    await page.click('#pane button:has-text("Take back the last answer")');
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
    await goToRow(2);
    await becomes(() => page.textContent("#pane .view strong"), "tray");
    await page.click("#pane button[aria-label='Use this: slipcase for A1']");
    await becomes(() => page.textContent("#pane .view strong"), "slipcase");
    await press("Undo");
    await becomes(() => page.textContent("#pane .view strong"), "tray");
    // A decision without a column of its own gets one, and takes one step to undo.
    const outside = () => page.textContent("#pane .view:not([hidden]) .decisions + p");
    const usual = await outside();
    await decide("Fit", "loose");
    await becomes(async () => (await outside()) === usual, false);
    await becomes(async () => (await cell("Items", 2, 8)).value, "loose");
    await press("Undo: Fit: loose for A1");
    await becomes(outside, usual);
    await view("Board and cost");
    await page.waitForSelector("#pane [aria-label='Estimate'] tbody tr");
    const lines = await page.locator("#pane [aria-label='Estimate'] tbody tr td:last-child").allTextContents();
    const money = lines.map(Number);
    const total = money.at(-1)!;
    expect(money.slice(0, -1).reduce((sum, each) => sum + each, 0)).toBeCloseTo(total, 6);
    await page.click("#pane summary:has-text('Cutting plans as pictures')");
    expect(await page.locator("#pane details .drawing svg").count()).toBeGreaterThan(0);
    await press("Write the estimate to a sheet");
    await becomes(paneSaid, "Writing the estimate to a sheet: done.");
    // The plan is as good as it was: nothing that is cut has changed.
    expect(await page.textContent("#pane .sum")).toContain(total.toFixed(2));
    // A setting is chosen in the form, written into its sheet, and counts at once.
    await view("Set up");
    await page.fill("#pane .view:not([hidden]) input[type=search]", "currency");
    await page.selectOption("#pane .view:not([hidden]) .setting select", { label: "other…" });
    await page.fill("#pane .view:not([hidden]) .setting input", "EUR");
    await page.keyboard.press("Enter");
    await becomes(paneSaid, "Setting currency: EUR: done.");
    await view("Board and cost");
    await becomes(() => page.textContent("#pane .sum"), expect.stringContaining(`${total.toFixed(2)} EUR`));
    await page.click("#save");
    await page.waitForFunction(() => document.getElementById("said")?.textContent?.includes("Saved as"));
    const saved = openWorkbook(new Uint8Array(readFileSync(join(at.folder, "survey-edited.xlsx"))));
    const rows = readSheet(saved, "Estimate").rows;
    expect(rows.flat()).toContain(total);
  });

  test("a long search shows how far it has come, and stopping it keeps the best plans", async () => {
    await openSurvey(LONG);
    await view("Board and cost");
    await page.waitForSelector("#pane [aria-label='Sheets to buy'] tbody tr");
    await page.selectOption("#pane .row select", "600");
    await press("Plan the sheets");
    await page.waitForSelector("#pane progress[aria-label='Search']");
    await becomes(
      async () => /conservation board 2: \d+, /.test((await page.textContent("#pane .progress")) ?? ""),
      true,
    );
    // Another view may be looked at meanwhile.
    await view("This item");
    await view("Board and cost");
    await page.waitForSelector("#pane progress[aria-label='Search']");
    await press("Stop, keep the best");
    await becomes(paneSaid, "Stopped: the best plans so far are kept.");
    await view("Columns");
    await view("Board and cost");
    expect(await page.locator("#pane [aria-label='Sheets to buy'] tbody tr").count()).toBeGreaterThan(0);
  });
});
