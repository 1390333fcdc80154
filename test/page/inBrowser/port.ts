import { readFileSync } from "node:fs";
import { join } from "node:path";
import { DEMO_SURVEY } from "../../../src/cli/demoSurvey";
import type { BookPort, SheetCell, WrittenEdits } from "../../../src/host/port";
import type { OpenGrid } from "../../../src/page/openGrid";
import { DEFAULT_FIGURES } from "../../../src/item/figureCatalogue";
import { bookOf } from "../../../src/workbook/book";
import { csvToWorkbook } from "../../../src/filling/fillCsv";
import { fillWorkbook } from "../../../src/filling/fillWorkbook";
import { openWorkbook } from "../../../src/workbook/openWorkbook";
import { readCsv } from "../../../src/workbook/readCsv";
import { readSheet } from "../../../src/workbook/readSheet";
import { surveyEdits } from "../../../src/filling/surveyEdits";
import { writeCsv } from "../../../src/workbook/writeCsv";
import { cellName } from "../../../src/workbook/cellRef";
import { headingsOf } from "../../host/contract";
import { becomes } from "../browser";
import { at, leave, open, page } from "../openPage";

declare const openGrid: OpenGrid;
declare const bookPort: BookPort;
declare const heard: { cells: SheetCell[]; changes: number };
declare const steps: WrittenEdits[];

const DEMO = openWorkbook(csvToWorkbook(readCsv(writeCsv(DEMO_SURVEY)), {}));
const FILL = { figures: DEFAULT_FIGURES, settings: [], recognise: {}, values: false, cutList: false };

/** The columns to the right of the survey's own; problems are last. */
const HEADINGS = headingsOf(DEFAULT_FIGURES);
const OWN = DEMO_SURVEY[0]!.length;
const PROBLEM_AT = OWN + HEADINGS.length - 1;
/** Of LK 001: 312 mm in the clamshell box that ENC.OUTSIDE sizes at 334 of board 2; four walls of the guide's board 2.5 add 2. */
const HEIGHT_OF_FIRST = 336;
const HEIGHT = cellName(2, OWN + 1 + HEADINGS.indexOf("outside height (mm)"));

const valueOf = (sheet: string, cell: string) =>
  page.evaluate(([s, c]) => openGrid.workbook().getSheetByName(s!)!.getRange(c!).getRawValue(), [sheet, cell]);
const setValue = (sheet: string, cell: string, value: string | number) =>
  page.evaluate(([s, c, v]) => void openGrid.workbook().getSheetByName(String(s))!.getRange(String(c)).setValue(v), [
    sheet,
    cell,
    value,
  ] as const);

/** Adds the default figures, as the pane does. */
async function addColumns({ again = false } = {}) {
  const book = again ? openWorkbook(fillWorkbook(DEMO, FILL).edit.bytes) : DEMO;
  const { edits: whole } = surveyEdits(bookOf(book), FILL);
  const edits = again ? { columns: whole.columns! } : whole;
  return page.evaluate(async (asked) => {
    Object.assign(globalThis, { steps: (globalThis as { steps?: WrittenEdits[] }).steps ?? [] });
    const step = await bookPort.write(asked);
    steps.push(step);
    return { columns: step.columns, notes: step.notes };
  }, edits);
}

// The tests share a survey, and each leaves it as it was, until one saves it.
describe("the port", () => {
  beforeAll(() => open());
  afterEach(() => expect([at.outside, at.wrong]).toEqual([[], []]));
  afterAll(leave);

  test("it reads the sheets, tables and cells as they are now", async () => {
    await setValue("Survey", "C2", 320);
    const read = await page.evaluate(async () => {
      const book = await bookPort.read();
      const grid = book.grid("survey", { lastRow: 2 });
      const { sheets, tables } = book;
      return { sheets, table: tables[0]!.name, area: tables[0]!.area, rows: grid.rows, locked: grid.locked };
    });
    expect(read).toMatchObject({
      sheets: [{ name: "Survey", state: "visible", cells: true }],
      table: "Survey",
      area: { top: 1, left: 1, bottom: 41, right: OWN },
      locked: false,
    });
    expect(read.rows).toHaveLength(2);
    expect(read.rows[1]!.slice(0, 5)).toEqual(["LK 001", "Keeper's log, first volume", 320, 205, 38]);
    await setValue("Survey", "C2", 312);
  });

  test("taking a step back leaves what was changed elsewhere since; only the last step can be taken back", async () => {
    const before = await valueOf("Survey", "C3");
    await addColumns();
    const { columns } = await addColumns({ again: true });
    expect(columns.every(({ replaced }) => replaced)).toBe(true);
    await setValue("Survey", "C3", 299);
    const first = () =>
      page.evaluate(() =>
        steps[0]!.undo().then(
          () => "",
          (error: Error) => error.message,
        ),
      );
    expect(await first()).toContain("takes back the last step first");
    await page.evaluate(() => steps[1]!.undo());
    expect(await valueOf("Survey", "C3")).toBe(299);
    expect(await valueOf("Survey", cellName(1, OWN + 1))).toBe(HEADINGS[0]);
    expect(await first()).toBe("");
    expect(await valueOf("Survey", "C3")).toBe(299);
    expect(await valueOf("Survey", cellName(1, OWN + 1))).toBeFalsy();
    const sheets = await page.evaluate(async () => (await bookPort.read()).sheets.map(({ name }) => name));
    expect(sheets).toEqual(["Survey"]);
    await setValue("Survey", "C3", Number(before));
  });

  test("it goes to a cell and tells of selections and changes until it is stopped", async () => {
    const depth = await valueOf("Survey", "C4");
    await addColumns();
    await page.evaluate(async () => {
      Object.assign(globalThis, { heard: { cells: [], changes: 0 } });
      const stops = [
        await bookPort.onSelect((cell) => heard.cells.push(cell)),
        await bookPort.onChange(() => heard.changes++),
      ];
      Object.assign(globalThis, { stopAll: () => stops.forEach((stop) => stop()) });
      await bookPort.goTo({ sheet: "stock", row: 3, column: 2 });
    });
    const heardCells = () => page.evaluate(() => heard.cells.at(-1));
    await becomes(heardCells, { sheet: "stock", row: 3, column: 2 });
    expect(await page.evaluate(() => bookPort.selected())).toEqual({ sheet: "stock", row: 3, column: 2 });
    await setValue("Survey", "C4", 1);
    await becomes(() => page.evaluate(() => heard.changes > 0), true);
    const before = await page.evaluate(() => {
      (globalThis as unknown as { stopAll: () => void }).stopAll();
      return heard.cells.length;
    });
    await page.evaluate(() => bookPort.goTo({ sheet: "Survey", row: 1, column: 1 }));
    expect(await page.evaluate(() => heard.cells.length)).toBe(before);
    const lost = await page
      .evaluate(() =>
        bookPort.goTo({ sheet: "Nowhere", row: 1, column: 1 }).then(
          () => "",
          (error: Error) => error.message,
        ),
      )
      .catch((error: Error) => error.message);
    expect(lost).toContain('got "Nowhere"');
    await setValue("Survey", "C4", Number(depth));
    await page.evaluate(() => steps.at(-1)!.undo());
  });

  test("what cannot be written is refused in the port's own words, and nothing changes", async () => {
    const refused = await page.evaluate(() =>
      bookPort.write({ cells: [{ sheet: "Nowhere", row: 1, column: 1, content: 1 }] }).then(
        () => undefined,
        ({ name, argument }: { name: string; argument: string }) => ({ name, argument }),
      ),
    );
    expect(refused).toEqual({ name: "InputError", argument: "sheet" });
    expect(await valueOf("Survey", "C2")).toBe(312);
  });

  test("columns added in the page are those that the command line writes, and follow a changed setting", async () => {
    const { columns } = await addColumns();
    expect(columns.map(({ heading }) => heading)).toEqual(HEADINGS);
    await becomes(() => valueOf("Survey", HEIGHT), HEIGHT_OF_FIRST);
    await page.evaluate(() => {
      const sheet = openGrid.workbook().getSheetByName("settings")!;
      const row = Array.from({ length: 90 }, (_, i) => i).find((r) => sheet.getRange(r, 0).getValue() === "fit")!;
      sheet.getRange(row, 1).setValue("loose");
    });
    await becomes(async () => Number(await valueOf("Survey", HEIGHT)) > HEIGHT_OF_FIRST, true);
    await page.click("#undo");
    await becomes(() => valueOf("Survey", HEIGHT), HEIGHT_OF_FIRST);
    await page.click("#save");
    await becomes(() => page.textContent("#said"), expect.stringMatching(/^Saved/));
    const saved = openWorkbook(new Uint8Array(readFileSync(join(at.folder, "survey-edited.xlsx"))));
    const filled = openWorkbook(fillWorkbook(DEMO, FILL).edit.bytes);
    for (const sheet of ["Survey", "settings", "stock", "board guide", "board choices"]) {
      const ours = readSheet(saved, sheet, { formulas: true });
      const theirs = readSheet(filled, sheet, { formulas: true });
      expect([...ours.formulas]).toEqual([...theirs.formulas]);
      // A problem of a dimension text comes from a formula inside another, and no spreadsheet passes on its message.
      const figures = (rows: typeof theirs.rows) =>
        rows.map((row) => row.slice(0, sheet === "Survey" ? PROBLEM_AT : undefined));
      expect(figures(ours.rows)).toEqual(figures(theirs.rows));
    }
    expect(saved.tables.map(({ name, area }) => [name, area])).toEqual(
      filled.tables.map(({ name, area }) => [name, area]),
    );
    expect(saved.names).toEqual(filled.names);
  });

  test("a board preferred in one cell changes its row, the totals by board, the sheets and the budget", async () => {
    // The columns of the test before are there.
    const column = (heading: string) => OWN + 1 + HEADINGS.indexOf(heading);
    const letters = (heading: string) => cellName(1, column(heading)).replace(/\d+/, "");
    // On another sheet, as a person adds up; the survey is given up to the user's own column.
    const own = `Survey!$A$1:$${letters("preferred board")}$41`;
    const area = "Survey[board area (m2)]";
    const FORMULAS = [
      `=SUMIFS(${area},Survey[board],"conservation board 3")`,
      `=SUMIFS(${area},Survey[board],"*conservation board 3")`,
      `=SUMIFS(${area},Survey[caliper],6)`,
      `=ENC.SHEETS(${own},"conservation board 3",settings,stock,board_guide)`,
    ];
    for (const [at, formula] of FORMULAS.entries()) await setValue("settings", cellName(2 + at, 12), formula);
    const budget = `=ENC.ESTIMATE(${own},settings,stock,board_guide)`;
    await setValue("settings", "P2", budget);
    const answers = async () => Promise.all(FORMULAS.map((_, at) => valueOf("settings", cellName(2 + at, 12))));
    const spilled = () =>
      page.evaluate(() => openGrid.workbook().getSheetByName("settings")!.getRange("P2:Z110").getValues());
    const total = async () => (await spilled()).find(([cell]) => cell === "total")?.[10];
    await becomes(async () => typeof (await total()), "number");
    await becomes(
      answers,
      FORMULAS.map((): unknown => expect.any(Number)),
    );
    const [before, money] = [(await answers()) as number[], (await total()) as number];
    expect((await spilled())[0]![0]).toMatch(/^Example prices, not quotes/);
    await setValue("Survey", cellName(2, column("preferred board")), "2 x conservation board 3");
    await becomes(() => valueOf("Survey", cellName(2, column("board"))), "2 x conservation board 3");
    await becomes(() => valueOf("Survey", cellName(2, column("caliper"))), 6);
    await becomes(async () => Number((await answers())[3]) > before[3]!, true);
    const rowArea = Number(await valueOf("Survey", cellName(2, column("board area (m2)"))));
    const [single, laminated, ofCaliper] = (await answers()) as number[];
    expect(single).toBeCloseTo(before[0]!, 9);
    expect(laminated! - before[1]!).toBeCloseTo(rowArea, 9);
    expect(ofCaliper! - before[2]!).toBeCloseTo(rowArea, 9);
    await becomes(async () => Number(await total()) > money, true);
    // Plans are made beside the page, which stays alive meanwhile.
    expect(page.workers().map((worker) => new URL(worker.url()).pathname)).toContain("/surveyWorker.js");
  });

  test("a cell that changes during a calculation loses no answer", async () => {
    // The columns of the tests before are there, and one setting works all of them out.
    const column = HEADINGS.indexOf("outside height (mm)") + OWN;
    const heights = () =>
      page.evaluate(
        (c) => openGrid.workbook().getSheetByName("Survey")!.getRange(1, c, 40, 1).getRawValues().flat(),
        column,
      );
    const before = await heights();
    await page.evaluate(() => {
      const formula = openGrid.grid.api.getFormula();
      let edits = 0;
      const listening = formula.calculationProcessing(({ completedFormulasCount }) => {
        if (completedFormulasCount === 0) return;
        openGrid
          .workbook()
          .getSheetByName("Survey")!
          .getRange("C2")
          .setValue(400 + ++edits);
        if (edits === 3) listening.dispose();
      });
      const sheet = openGrid.workbook().getSheetByName("settings")!;
      const row = Array.from({ length: 90 }, (_, i) => i).find((r) => sheet.getRange(r, 0).getValue() === "fit")!;
      sheet.getRange(row, 1).setValue("loose");
    });
    const wider = before.map((height, row): unknown =>
      row === 0 ? Number(height) + 403 - 312 + 1 : typeof height === "number" ? expect.any(Number) : height,
    );
    await becomes(heights, wider);
  });
});
