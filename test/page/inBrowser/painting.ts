import ExcelJS from "exceljs";
import type { BookPort } from "../../../src/host/port";
import { BOOK_ID } from "../../../src/page/gridTerms";
import type { OpenGrid } from "../../../src/page/openGrid";
import { becomes } from "../browser";
import { at, leave, open, page } from "../openPage";

declare const openGrid: OpenGrid;
declare const bookPort: BookPort;
/** What the test counts in the page. */
declare const counted: { asked: Record<string, number>; frames: number; notes: number };
/** What the page had before the test counted. */
declare const uncounted: object;

/** Rows of a table with a rule on their own number, a rule on that of another cell, a list, and answers of formulas. */
async function made(): Promise<Uint8Array> {
  const book = new ExcelJS.Workbook();
  const sheet = book.addWorksheet("Survey", { views: [{ state: "frozen", xSplit: 1, ySplit: 2 }] });
  sheet.addRow(["Survey of boxes"]);
  sheet.mergeCells("A1:E1");
  sheet.addTable({
    name: "Items",
    ref: "A2",
    headerRow: true,
    columns: ["ID", "Height", "Seen", "Enclosure", "Twice"].map((name) => ({ name, filterButton: true })),
    rows: [1, 2, 3].map((i) => [`A ${i}`, i * 100, "yes", "tray", i * 200]),
  });
  for (const row of [3, 4, 5]) sheet.getCell(row, 5).value = { formula: `B${row}*2`, result: (row - 2) * 200 };
  sheet.getCell("D3").dataValidation = { type: "list", allowBlank: true, formulae: ['"tray,slipcase"'] };
  const fill = { type: "pattern", pattern: "solid", bgColor: { argb: "FFFFC7CE" } } as const;
  const rule = { priority: 1, style: { fill } };
  sheet.addConditionalFormatting({
    ref: "B3:B5",
    rules: [{ ...rule, type: "cellIs", operator: "greaterThan", formulae: [350] }],
  });
  sheet.addConditionalFormatting({ ref: "C3", rules: [{ ...rule, type: "expression", formulae: ["$B$5>350"] }] });
  return new Uint8Array(await book.xlsx.writeBuffer());
}

/** What the canvas shows of a cell, as text. */
const picture = (cell: string): Promise<string> =>
  page.evaluate((name) => {
    const { x, y, width, height } = openGrid.workbook().getActiveSheet().getRange(name).getCellRect();
    const seen = document.querySelector<HTMLCanvasElement>("#grid canvas[id^='univer-sheet-main']")!;
    const copy = Object.assign(document.createElement("canvas"), { width, height });
    copy.getContext("2d")!.drawImage(seen, x, y, width, height, 0, 0, width, height);
    return copy.toDataURL();
  }, cell);

/** Does something, and waits until each of the cells looks otherwise; then takes it back, and waits for the same again. */
async function seen(
  cells: readonly string[],
  act: () => Promise<unknown>,
  takeBack: () => Promise<unknown> = undo,
): Promise<void> {
  const look = () => Promise.all(cells.map(picture));
  for (const step of [act, takeBack]) {
    const before = await look();
    await step();
    await becomes(
      async () => (await look()).map((now, place) => now !== before[place]),
      cells.map(() => true),
    );
  }
}

const type = (cell: string, value: string | number) => () =>
  page.evaluate(([name, text]) => void openGrid.workbook().getActiveSheet().getRange(String(name)).setValue(text), [
    cell,
    value,
  ] as const);
const undo = () => page.evaluate(() => openGrid.grid.api.undo());

describe("painting", () => {
  beforeAll(async () => {
    await open("survey.xlsx", await made());
    // At once: what shows dialogs comes later than what asks for them.
    await page.click("#find");
    await page.waitForSelector("[data-u-comp=find-replace-dialog]");
    await page.keyboard.press("Escape");
    await page.waitForSelector("[data-u-comp=find-replace-dialog]", { state: "detached" });
    await page.evaluate(() => {
      // Away from the cells that are looked at: a frame is drawn round the selected one.
      openGrid.workbook().getActiveSheet().getRange("H9").activate();
      const sheet: { getCellRaw: (row: number, column: number) => unknown } = openGrid
        .workbook()
        .getActiveSheet()
        .getSheet();
      const { getCellRaw } = sheet;
      const all: typeof counted = { asked: {}, frames: 0, notes: 0 };
      Object.assign(globalThis, { counted: all });
      sheet.getCellRaw = function (row, column) {
        all.asked[`${row} ${column}`] = (all.asked[`${row} ${column}`] ?? 0) + 1;
        return getCellRaw.call(this, row, column);
      };
      Object.assign(globalThis, { uncounted: { MessageChannel, requestAnimationFrame } });
      window.MessageChannel = class extends MessageChannel {
        constructor() {
          super();
          all.notes++;
        }
      };
      const ask = window.requestAnimationFrame;
      window.requestAnimationFrame = (act) => {
        all.frames++;
        return ask.call(window, act);
      };
    });
  });
  afterEach(() => expect([at.outside, at.wrong]).toEqual([[], []]));
  afterAll(async () => {
    await page.evaluate(() => void Object.assign(window, uncounted));
    await leave();
  });

  test("what is typed shows at once, with the answers and the colours that follow from it, and so when it is taken back", async () => {
    await seen(["B3", "E3"], type("B3", 120));
    // The rule of the cell itself, and that of another cell, each worked out after the value.
    await seen(["B5", "C3", "E5"], type("B5", 400));
    // The mark of a value that is not in the list.
    await seen(["D3"], type("D3", "box"));
  });

  test("comments, filters and dark colours show when they come and when they go", async () => {
    const note = (id: string, given: object) => () =>
      page.evaluate(([name, params]) => openGrid.grid.api.executeCommand(name, params), [
        id,
        { unitId: BOOK_ID, sheetId: "sheet-1", row: 3, col: 2, ...given },
      ] as const);
    const text = { id: "n", row: 3, col: 2, width: 100, height: 80, note: "look again" };
    await seen(
      ["C4"],
      note("sheet.mutation.update-note", { note: text }),
      note("sheet.mutation.remove-note", { noteId: "n" }),
    );
    const rows = { sheet: "Survey", column: 2, headingRow: 2, lastRow: 5, firstColumn: 1, lastColumn: 5 };
    const filter = (value?: number) => () =>
      page.evaluate(([given, by]) => bookPort.showOnly(given, by), [rows, value] as const);
    await seen(["A3"], filter(300), filter());
    const dark = (is: boolean) => () => page.evaluate((now) => openGrid.grid.api.toggleDarkMode(now), is);
    await seen(["A3", "B3"], dark(true), dark(false));
  });

  test("a cell is asked once for a picture of the sheet, and not at all when only the selection or the pointer moves", async () => {
    const asked = async (act: () => Promise<unknown>): Promise<number[]> => {
      await page.evaluate(() => void (counted.asked = {}));
      await act();
      await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
      return Object.values(await page.evaluate(() => counted.asked));
    };
    // A blank cell is looked at twice, and some are also for their neighbours' sake.
    const whole = await asked(() => page.evaluate(() => void openGrid.workbook().getActiveSheet().refreshCanvas()));
    expect(whole.length).toBeGreaterThan(500);
    expect(whole.filter((times) => times > 2).length).toBeLessThan(whole.length / 10);
    const { x, y } = (await page.locator("#grid canvas[id^='univer-sheet-main']").boundingBox())!;
    const moved = await asked(async () => {
      for (let step = 0; step < 20; step++) await page.mouse.move(x + 100 + step * 5, y + 200 + step);
      for (const cell of ["C6", "D7", "E8", "H9"])
        await page.evaluate((name) => void openGrid.workbook().getActiveSheet().getRange(name).activate(), cell);
    });
    expect(moved.length).toBeLessThan(50);
  });

  test("a canvas notes once that its shapes have changed, however many there are", async () => {
    const notes = await page.evaluate(async () => {
      counted.notes = 0;
      openGrid.workbook().getActiveSheet().getRange("F6").activate();
      await new Promise((done) => requestAnimationFrame(done));
      return counted.notes;
    });
    expect(notes).toBeLessThan(10);
  });

  test("a page that nobody touches asks for no frames, also while the dashes stand round a copied cell", async () => {
    const frames = async (): Promise<number> => {
      await page.evaluate(() => void (counted.frames = 0));
      await new Promise((resolve) => setTimeout(resolve, 200));
      return page.evaluate(() => counted.frames);
    };
    await becomes(frames, 0);
    await page.evaluate(() => {
      openGrid.workbook().getActiveSheet().getRange("F6").activate();
      openGrid.grid.focus();
    });
    await becomes(frames, 0);
    const selected = await picture("F6");
    await page.keyboard.press("Control+c");
    await becomes(async () => (await picture("F6")) === selected, false);
    await becomes(frames, 0);
  });
});
