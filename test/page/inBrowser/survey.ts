import { readFileSync } from "node:fs";
import { join } from "node:path";
import ExcelJS from "exceljs";
import type { Locator } from "playwright-core";
import type { BookPort, WrittenEdits } from "../../../src/host/port";
import type { OpenGrid } from "../../../src/page/openGrid";
import { DEMO_SURVEY } from "../../../src/cli/demoSurvey";
import { csvToWorkbook } from "../../../src/filling/fillCsv";
import { fillWorkbook } from "../../../src/filling/fillWorkbook";
import { readBookSurvey } from "../../../src/filling/readBookSurvey";
import { bookOf } from "../../../src/workbook/book";
import { cellName } from "../../../src/workbook/cellRef";
import { openWorkbook } from "../../../src/workbook/openWorkbook";
import { readCsv } from "../../../src/workbook/readCsv";
import { readSheet } from "../../../src/workbook/readSheet";
import { sheetLook } from "../../../src/workbook/sheetLook";
import { writeCsv } from "../../../src/workbook/writeCsv";
import { becomes } from "../browser";
import { SHEET, at, formulaOf, goTo, leave, open, page, said, valueOf } from "../openPage";

declare const openGrid: OpenGrid;
declare const bookPort: BookPort;
declare const shownBefore: unknown;
declare const step: WrittenEdits;

/** The middle of a filter button from the right and lower edge of its heading, pixels. */
const FROM_EDGE = 9;

/** What spreadsheet programs and pages put on the clipboard. */
const TABLE_OF_A_PAGE =
  "<table><tr><th colspan='2'>Two &amp; more</th></tr><tr><td>Map &lt;1&gt;</td><td>312.5</td></tr>" +
  "<tr><td style='mso-number-format:\"@\"'>00017</td><td>=1+1</td></tr></table>";

/** The first rows and columns of the demo survey with their caliper worked out: so few that all are in sight. */
const FEW = DEMO_SURVEY.slice(0, 17).map((row) => row.slice(0, 9));
const FILLED = fillWorkbook(openWorkbook(csvToWorkbook(readCsv(writeCsv(FEW)), {})), {
  figures: ["caliper"],
  settings: [],
  recognise: {},
  values: false,
  cutList: false,
}).edit.bytes;

describe("the survey at work", () => {
  afterEach(leave);

  test("twelve rows get another board in four clicks, and the survey is filtered by its caliper with the mouse", async () => {
    await open("filled.xlsx", FILLED);
    const { rows } = readSheet(openWorkbook(FILLED), "Survey");
    const column = rows[0]!.indexOf("caliper");
    const calipers = rows.map((row) => row[column] ?? null);
    const wanted = Number(calipers.slice(1).find((caliper) => typeof caliper === "number"));
    const matching = rows.flatMap((_, row) => (calipers[row] === wanted ? [row + 1] : []));
    expect([matching.length > 1, matching.length < rows.length - 4]).toEqual([true, true]);
    // So wide that the column is in sight without scrolling.
    await page.setViewportSize({ width: 2200, height: 800 });
    let clicks = 0;
    const clickAt = async (x: number, y: number, more: { readonly modifiers?: "Shift"[] } = {}): Promise<void> => {
      clicks++;
      await page.click(SHEET, { position: { x, y }, ...more });
    };
    const clickOn = async (place: Locator): Promise<void> => {
      clicks++;
      await place.click();
    };
    const cellAt = (row: number, column: number) =>
      page.evaluate(([r, c]) => openGrid.workbook().getActiveSheet().getRange(r, c).getCellRect(), [
        row,
        column,
      ] as const);
    // The arrow in a selected cell of the preferences offers the boards; twelve rows take the choice by filling down.
    const [preferred, board] = ["preferred board", "board"].map((name) => rows[0]!.indexOf(name)) as [number, number];
    const other = readSheet(openWorkbook(FILLED), "board choices")
      .rows.slice(1)
      .map(([name]) => String(name))
      .at(-1)!;
    const [first, last] = [await cellAt(1, preferred), await cellAt(12, preferred)];
    const middle = ({ top, bottom }: typeof first): number => (top + bottom) / 2;
    await clickAt((first.left + first.right) / 2, middle(first));
    await clickAt(first.right - FROM_EDGE, middle(first));
    await clickOn(page.getByText(other, { exact: true }).and(page.locator("div")));
    await clickAt((last.left + last.right) / 2, middle(last), { modifiers: ["Shift"] });
    await page.keyboard.press("Control+d");
    expect(clicks).toBe(4);
    await becomes(() => valueOf(cellName(13, preferred + 1)), other);
    await becomes(() => valueOf(cellName(2, board + 1)), other);
    await page.keyboard.press("Control+z");
    await becomes(() => valueOf(cellName(13, preferred + 1)), null);
    await page.keyboard.press("Control+z");
    await becomes(() => valueOf(cellName(2, board + 1)), expect.not.stringMatching(new RegExp(`^${other}$`)));
    const { right, bottom } = await cellAt(0, column);
    await clickAt(right - FROM_EDGE, bottom - FROM_EDGE);
    await page.getByText("All", { exact: true }).click();
    await page.getByText(new RegExp(`^${wanted}$`)).click();
    await page.getByRole("button", { name: "Show these rows" }).click();
    const shown = () =>
      page.evaluate((last) => {
        const sheet = openGrid.workbook().getActiveSheet().getSheet();
        return Array.from({ length: last - 1 }, (_, i) => i + 2).filter((row) => sheet.getRowVisible(row - 1));
      }, rows.length);
    await becomes(shown, matching);
    // A write of the pane shows the workbook again: what rows are filtered by stays, in a table and in a sheet.
    const choices = () =>
      page.evaluate(() => {
        const sheet = openGrid.workbook().getSheetByName("board choices")!.getSheet();
        return Array.from({ length: 40 }, (_, row) => row).filter((row) => sheet.getRowVisible(row));
      });
    await page.evaluate((name) => {
      const sheet = openGrid.workbook().getSheetByName("board choices")!;
      const filter = sheet.getRange(0, 0, sheet.getLastRow() + 1, 1).createFilter();
      filter!.setColumnFilterCriteria(0, { colId: 0, filters: { filters: [name] } });
      Object.assign(globalThis, { shownBefore: openGrid.workbook() });
    }, other);
    const kept = await choices();
    expect(kept.length).toBeLessThan(40);
    await page.click("#pane [role=tab]:has-text('Columns')");
    await page.click("#pane .view:not([hidden]) button:has-text('columns')");
    await becomes(() => page.evaluate(() => openGrid.workbook() !== shownBefore), true);
    await becomes(shown, matching);
    await becomes(choices, kept);
    // A row that comes above moves the filter along, and taken back it is where it was.
    const below = kept.filter((row) => row < 39).map((row) => row + 1);
    await page.evaluate(async () => {
      const shift = { sheet: "board choices", axis: "row", at: 1, count: 1, goes: false } as const;
      Object.assign(globalThis, { step: await bookPort.write({ shift }) });
    });
    await becomes(choices, [0, ...below]);
    await page.evaluate(() => step.undo());
    await becomes(choices, kept);
    await becomes(shown, matching);
  });

  test("rows pasted below the survey join it, rows come and go by the menu of a heading, and a save has all of it", async () => {
    await open("filled.xlsx", FILLED);
    const { rows } = readSheet(openWorkbook(FILLED), "Survey");
    const caliper = cellName(1, rows[0]!.indexOf("caliper") + 1).replace(/\d+/, "");
    const next = rows.length + 1;
    const bottom = () =>
      page.evaluate(() => openGrid.workbook().getActiveSheet().getSubTableInfos()[0]!.range.endRow + 1);
    // From another program, as text.
    await page.evaluate(() =>
      navigator.clipboard.writeText(
        "LK 901\tOne more\t300\t200\t40\t\t\ttray\nLK 902\tAnd one\t310\t210\t30\t\t\ttray",
      ),
    );
    await goTo(`A${next}`);
    await page.keyboard.press("Control+v");
    await becomes(() => valueOf(`C${next + 1}`), 310);
    await becomes(bottom, next + 1);
    await becomes(() => valueOf(`${caliper}${next + 1}`), expect.any(Number));
    expect(await said()).toContain("join the table Survey");
    // To another program, as text and as a table of a page.
    await page.evaluate(
      (row) =>
        void openGrid
          .workbook()
          .getActiveSheet()
          .getRange(`A${row}:C${row + 1}`)
          .activate(),
      next,
    );
    await page.keyboard.press("Control+c");
    const copied = () =>
      page.evaluate(async () => {
        const [item] = await navigator.clipboard.read();
        const types = ["text/plain", "text/html"].filter((type) => item?.types.includes(type));
        // The clipboard may change between its reading and that of its parts.
        const read = types.map(async (type) => (await item!.getType(type)).text());
        return Promise.all(read).catch(() => []);
      });
    await becomes(copied, [
      "LK 901\tOne more\t300\nLK 902\tAnd one\t310",
      expect.stringMatching(/<table[\s\S]*LK 902[\s\S]*310/),
    ]);
    // From another program or a page, as a table of a page: values go in, a heading of two columns too.
    await page.evaluate(async (html) => {
      const text = new Blob(["of the text"], { type: "text/plain" });
      await navigator.clipboard.write([
        new ClipboardItem({ "text/html": new Blob([html], { type: "text/html" }), "text/plain": text }),
      ]);
    }, TABLE_OF_A_PAGE);
    await goTo("AB2");
    await page.keyboard.press("Control+v");
    await becomes(
      () => Promise.all(["AB2", "AB3", "AC3", "AB4", "AC4"].map(valueOf)),
      ["Two & more", "Map <1>", 312.5, "00017", "=1+1"],
    );
    expect(await formulaOf("AC4")).toBe("");
    await page.click("#undo");
    await becomes(() => Promise.all(["AC3", "AB4", "AC4"].map(valueOf)), [null, null, null]);
    // The drawing and the budget follow.
    const outcomes = readBookSurvey(bookOf(openWorkbook(FILLED)), { recognise: {}, settings: [] }).sized.outcomes;
    const trays = outcomes.reduce(
      (sum, each) => sum + (each.state === "sized" && each.sized.kind.name === "tray" ? each.quantity : 0),
      0,
    );
    await goTo(`A${next}`);
    await becomes(() => page.textContent("#pane .view:not([hidden]) h2"), expect.stringContaining("LK 901"));
    expect(await page.locator("#pane .view:not([hidden]) .figures svg").count()).toBeGreaterThan(0);
    await page.click("#pane [role=tab]:has-text('Board and cost')");
    await becomes(
      () =>
        page
          .locator("#pane [aria-label^='What each enclosure costs, by kind'] tbody tr")
          .evaluateAll((lines) =>
            lines
              .map((line) => [line.children[0]?.textContent, line.children[1]?.textContent])
              .filter(([kind]) => kind === "tray"),
          ),
      [["tray", String(trays + 2)]],
    );
    await page.click("#pane [role=tab]:has-text('This item')");
    await goTo("AB2");
    // A row comes above the third, by the menu of its heading, and Undo takes it back.
    const rowHeading = async (row: number) => {
      const { top, bottom } = await page.evaluate(
        (r) => openGrid.workbook().getActiveSheet().getRange(`A${r}`).getCellRect(),
        row,
      );
      return { position: { x: 20, y: (top + bottom) / 2 } };
    };
    const menuOf = async (row: number): Promise<void> => {
      await page.click(SHEET, await rowHeading(row));
      await page.click(SHEET, { ...(await rowHeading(row)), button: "right" });
    };
    await menuOf(3);
    await page.getByText("rows above").click({ position: { x: 170, y: 14 } });
    await becomes(said, "Inserted row 3. Undo takes it back.");
    await becomes(() => valueOf("A4"), "LK 002");
    expect(await bottom()).toBe(next + 2);
    await becomes(() => formulaOf(`${caliper}3`), expect.stringContaining("C3"));
    await page.click("#undo");
    await becomes(() => valueOf("A3"), "LK 002");
    expect(await bottom()).toBe(next + 1);
    await becomes(() => valueOf(`${caliper}${next + 1}`), expect.any(Number));
    await menuOf(4);
    await page.getByText("Delete the selected rows").click();
    await becomes(said, "Deleted row 4. Undo takes it back.");
    await becomes(() => valueOf("A4"), "LK 004");
    // A row is hidden by its menu, another made higher with the mouse, and two rows frozen.
    await menuOf(6);
    await page.getByText("Hide the selected rows").click();
    const { position } = await rowHeading(8);
    const edge = await page.evaluate(() => openGrid.workbook().getActiveSheet().getRange("A8").getCellRect().bottom);
    const { x, y } = (await page.locator(SHEET).boundingBox())!;
    await page.mouse.move(x + position.x, y + edge);
    await page.mouse.down();
    await page.mouse.move(x + position.x, y + edge + 30, { steps: 4 });
    await page.mouse.up();
    await page.evaluate(() => void openGrid.workbook().getActiveSheet().setFrozenRows(2));
    await page.click("#save");
    await becomes(said, expect.stringMatching(/^Saved as/));
    const look = sheetLook(openWorkbook(new Uint8Array(readFileSync(join(at.folder, "filled-edited.xlsx")))), "Survey");
    expect([look.rows.get(6)?.hidden, look.rows.get(8), look.frozen.rows]).toEqual([
      true,
      { height: expect.any(Number), own: true, hidden: false },
      2,
    ]);
    const other = new ExcelJS.Workbook();
    await other.xlsx.readFile(join(at.folder, "filled-edited.xlsx"));
    const sheet = other.getWorksheet("Survey")!;
    expect([3, 4, next - 1, next].map((row) => sheet.getCell(row, 1).value)).toEqual([
      "LK 002",
      "LK 004",
      "LK 901",
      "LK 902",
    ]);
    expect(sheet.getCell(`${caliper}${next}`).result).toEqual(expect.any(Number));
  });
});
