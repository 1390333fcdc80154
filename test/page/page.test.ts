import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import ExcelJS from "exceljs";
import type { Browser, Locator, Page } from "playwright-core";
import type { BookPort, WrittenEdits } from "../../src/host/port";
import type { OpenGrid } from "../../src/page/openGrid";
import { DEMO_SURVEY } from "../../src/cli/demoSurvey";
import { csvToWorkbook } from "../../src/filling/fillCsv";
import { fillWorkbook } from "../../src/filling/fillWorkbook";
import { readBookSurvey } from "../../src/filling/readBookSurvey";
import { bookOf } from "../../src/workbook/book";
import { readCsv } from "../../src/workbook/readCsv";
import { writeCsv } from "../../src/workbook/writeCsv";
import { createWorkbook } from "../../src/workbook/createWorkbook";
import { openWorkbook } from "../../src/workbook/openWorkbook";
import { readSheet } from "../../src/workbook/readSheet";
import { sheetLook } from "../../src/workbook/sheetLook";
import { cellName } from "../../src/workbook/cellRef";
import { becomes, launched, opened, type OpenPage } from "./browser";

declare const openGrid: OpenGrid;
declare const bookPort: BookPort;
declare const shownBefore: unknown;
declare const step: WrittenEdits;

const HOSTILE = ["<img src=x onerror=alert(1)>", "=1+1", "שלום ‮abc", "📚👩‍🔬", "y".repeat(30_000)];

/** What the grid draws its cells on. */
const SHEET = "#univer-sheet-main-canvas_book";

/** Contrast of small text with what is behind it. Source: Web Content Accessibility Guidelines 2.2, 1.4.3. */
const READABLE = 4.5;

/** The middle of a filter button from the right and lower edge of its heading, pixels. */
const FROM_EDGE = 9;

/** What spreadsheet programs and pages put on the clipboard. */
const TABLE_OF_A_PAGE =
  "<table><tr><th colspan='2'>Two &amp; more</th></tr><tr><td>Map &lt;1&gt;</td><td>312.5</td></tr>" +
  "<tr><td style='mso-number-format:\"@\"'>00017</td><td>=1+1</td></tr></table>";

/** The demo survey with its caliper worked out. */
const FILLED = fillWorkbook(openWorkbook(csvToWorkbook(readCsv(writeCsv(DEMO_SURVEY)), {})), {
  figures: ["caliper"],
  settings: [],
  recognise: {},
  values: false,
  cutList: false,
}).edit.bytes;

let browser: Browser;
let at: OpenPage;
let page: Page;

beforeAll(async () => {
  browser = await launched();
});
afterAll(() => browser?.close());
afterEach(async () => {
  await at.close();
  expect([at.outside, at.wrong]).toEqual([[], []]);
});

async function open(name?: string, bytes?: Uint8Array): Promise<void> {
  at = await opened(browser, name, bytes);
  page = at.page;
}

const goTo = (cell: string) =>
  page.evaluate((cell) => void openGrid.workbook().getActiveSheet().getRange(cell).activate(), cell);
const valueOf = (cell: string) =>
  page.evaluate((at) => openGrid.workbook().getActiveSheet().getRange(at).getValue(), cell);
const formulaOf = (cell: string) =>
  page.evaluate((at) => openGrid.workbook().getActiveSheet().getRange(at).getFormula(), cell);
const said = () => page.textContent("#said");
const cellLine = () => page.textContent("#cell");

/** Types into a cell as a person would, who presses Enter until the cell is done: a list of suggestions may take a press. */
async function type(cell: string, text: string): Promise<void> {
  await goTo(cell);
  await page.keyboard.type(text, { delay: 3 });
  await page.keyboard.press("Enter");
  await becomes(async () => {
    const editing = await page.evaluate(() => openGrid.workbook().isCellEditing());
    if (editing) await page.keyboard.press("Enter");
    return editing;
  }, false);
}

/** Contrast of every text around the cells, by what it reads, and of two headings that are drawn. Runs in the page. */
function partContrasts(canvas: string): { part: string; contrast: number }[] {
  const luminance = (colour: readonly number[]): number => {
    const [r = 0, g = 0, b = 0] = colour.map((c) =>
      c / 255 <= 0.04045 ? c / 255 / 12.92 : ((c / 255 + 0.055) / 1.055) ** 2.4,
    );
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const contrastOf = (a: readonly number[], b: readonly number[]): number => {
    const [dark = 0, light = 0] = [luminance(a), luminance(b)].sort((x, y) => x - y);
    return (light + 0.05) / (dark + 0.05);
  };
  const numbersIn = (colour: string): number[] => (colour.match(/[\d.]+/g) ?? []).map(Number);
  const behind = (element: Element | null): number[] => {
    for (let at = element; at; at = at.parentElement) {
      const [r = 0, g = 0, b = 0, alpha = 1] = numbersIn(getComputedStyle(at).backgroundColor);
      if (alpha > 0.5) return [r, g, b];
    }
    return [255, 255, 255];
  };
  const parts = Array.from(document.querySelectorAll("#grid *")).flatMap((element) => {
    const own = Array.from(element.childNodes).filter(({ nodeType }) => nodeType === Node.TEXT_NODE);
    const text = element instanceof HTMLInputElement ? element.value : own.map((node) => node.textContent).join("");
    if (text.trim() === "" || !element.checkVisibility() || element instanceof HTMLStyleElement) return [];
    const ink = numbersIn(getComputedStyle(element).color).slice(0, 3);
    return [{ part: text.trim(), contrast: contrastOf(ink, behind(element)) }];
  });
  const drawn = document.querySelector<HTMLCanvasElement>(canvas)!;
  const scale = drawn.width / drawn.clientWidth;
  const drawing = (part: string, rect: readonly [number, number, number, number]) => {
    const [x, y, width, height] = rect.map((length) => length * scale) as [number, number, number, number];
    const { data } = drawn.getContext("2d")!.getImageData(x, y, width, height);
    const pixels = Array.from({ length: data.length / 4 }, (_, i) => [...data.slice(i * 4, i * 4 + 3)]);
    const paper = pixels[0]!;
    return { part, contrast: Math.max(...pixels.map((pixel) => contrastOf(pixel, paper))) };
  };
  const sheet = openGrid.workbook().getActiveSheet();
  const [c, fifth] = [sheet.getRange("C1").getCellRect(), sheet.getRange("A5").getCellRect()];
  return [
    ...parts,
    drawing("heading C", [c.left + 3, 3, c.width - 6, c.top - 6]),
    drawing("heading 5", [3, fifth.top + 3, fifth.left - 6, fifth.height - 6]),
  ];
}

test("a function is found while it is typed, tells its arguments, and answers", async () => {
  await open();
  await goTo("U2");
  await page.keyboard.type("=ENC.OUTS", { delay: 20 });
  await page.getByText("Outside size of the enclosure", { exact: false }).click();
  const hint = page.getByText("[settings", { exact: false });
  await hint.waitFor();
  await page.keyboard.type("C2,D2,", { delay: 20 });
  expect(await hint.isVisible()).toBe(true);
  await page.keyboard.type('E2,H2,"height")', { delay: 5 });
  await page.keyboard.press("Enter");
  await becomes(() => valueOf("U2"), 334);
  // An edit is followed.
  await type("C2", "412");
  await becomes(() => valueOf("U2"), 434);
  // So is its undoing.
  await page.click("#undo");
  await becomes(() => valueOf("U2"), 334);
  // The press leaves the keyboard in the grid.
  await type("C2", "422");
  await becomes(() => valueOf("U2"), 444);
  // Who types on while the list is still that of the first letter, and ends with Enter, gets what was typed.
  await goTo("U3");
  await page.keyboard.type("=R");
  await page.locator('ul[data-u-comp="sheets-formula-editor"]').waitFor();
  await page.keyboard.type("OUND(2.4,0)");
  await page.keyboard.press("Enter");
  await becomes(() => formulaOf("U3"), "=ROUND(2.4,0)");
  expect(await page.evaluate(() => openGrid.workbook().isCellEditing())).toBe(false);
  // A list that is for the name takes the press.
  await goTo("U4");
  await page.keyboard.type("=ENC.MAS");
  await page.locator('ul[data-u-comp="sheets-formula-editor"] li:first-child:has-text("ENC.MASS")').waitFor();
  await page.keyboard.press("Enter");
  await becomes(() => page.evaluate(() => openGrid.workbook().isCellEditing()), true);
  await page.keyboard.press("Escape");
});

test("the message of the selected cell in error stands below the grid, and goes with another cell", async () => {
  await open();
  await type("U2", '=ENC.OUTSIDE(C39,D39,E39,H39,"height")');
  await becomes(() => valueOf("U2"), "#VALUE!");
  await goTo("U2");
  await becomes(cellLine, expect.stringMatching(/^U2: width: got "21O"/));
  await goTo("A2");
  await becomes(cellLine, "");
  await type("V2", "=ENC.MASS(C2)");
  await goTo("V2");
  await becomes(cellLine, expect.stringContaining("ENC.MASS needs 4 arguments, and got 1"));
});

test("columns of the table, names and a whole survey work in formulas", async () => {
  await open();
  await type("T2", '=ENC.OUTSIDE([@Height],Survey[@Width],Survey[[#This Row],[Depth]],[@Enclosure],"height")');
  await becomes(() => valueOf("T2"), 334);
  await becomes(() => formulaOf("T2"), expect.stringContaining("Survey[[#This Row],[Height]]"));
  // A half-typed reference leaves no trace in later formulas.
  await goTo("T3");
  await page.keyboard.type("=SUM(Survey[", { delay: 3 });
  await page.keyboard.press("Enter");
  await page.keyboard.press("Escape");
  await type("T4", "=SUM(C2:C3)");
  await becomes(() => valueOf("T4"), 622);
  await type("W1", '=ENC.SURVEY(A1:T41,"outside height")');
  await becomes(() => formulaOf("W1"), '=ENC.SURVEY(A1:T41,"outside height")');
  await becomes(() => valueOf("W1"), "outside height");
  await becomes(() => valueOf("W5"), 273);
  await becomes(() => valueOf("W39"), "#VALUE!");
  await goTo("W39");
  await becomes(cellLine, expect.stringMatching(/^W39: .*21O/));
});

test("what a save could not carry is refused in words, and nothing changes", async () => {
  await open();
  const before = await page.evaluate(() => JSON.stringify(openGrid.workbook().save().sheets));
  const commands = [
    ["sheet.command.insert-range-move-right", "Parts of rows"],
    ["sheet.command.remove-sheet", "Sheets of the file"],
    ["sheet.command.set-worksheet-name", "Sheets of the file"],
    ["sheet.command.set-range-bold", "look of cells"],
    ["sheet.command.add-worksheet-merge-all", "look of cells"],
    ["sheet.command.delete-table", "Tables and names"],
    ["sheet.command.insert-defined-name", "Tables and names"],
  ] as const;
  for (const [id, words] of commands) {
    await page.evaluate((command) => {
      document.getElementById("said")!.textContent = "";
      return openGrid.grid.api.executeCommand(command).catch(() => undefined);
    }, id);
    expect([id, await said()]).toEqual([id, expect.stringContaining(words)]);
  }
  expect(await page.evaluate(() => JSON.stringify(openGrid.workbook().save().sheets))).toBe(before);
});

test("a filter hides rows and a sort moves them, with their formulas", async () => {
  await open();
  await type("U2", "=C2+1");
  await page.evaluate(() => {
    const sheet = openGrid.workbook().getActiveSheet();
    const range = sheet.getRange("A2:U11");
    range.sort({ column: 2, ascending: true });
  });
  await becomes(() => valueOf("C2"), 178);
  const moved = await page.evaluate(() => {
    const sheet = openGrid.workbook().getActiveSheet();
    const rows = Array.from({ length: 10 }, (_, i) => i + 2);
    const row = rows.find((r) => sheet.getRange(`A${r}`).getValue() === "LK 001")!;
    return [row, sheet.getRange(`U${row}`).getFormula()];
  });
  expect(moved[1]).toBe(`=C${moved[0]}+1`);
  await becomes(() => valueOf(`U${moved[0]}`), 313);
  await page.evaluate(async () => {
    const sheet = openGrid.workbook().getActiveSheet();
    const table = sheet.getSubTableInfos()[0]!;
    const filter = { filterType: "manual", values: ["slipcase"] } as unknown as Parameters<
      typeof sheet.setTableFilter
    >[2];
    await sheet.setTableFilter(table.id, 7, filter);
  });
  const shown = () =>
    page.evaluate(() => {
      const sheet = openGrid.workbook().getActiveSheet();
      return Array.from({ length: 40 }, (_, i) => i + 1)
        .filter((row) => sheet.getSheet().getRowVisible(row))
        .map((row) => sheet.getRange(row, 7).getValue());
    });
  await becomes(shown, ["slipcase", "slipcase", "slipcase"]);
});

test("the keyboard goes from the grid to the toolbar and the pane and back, and folds the pane", async () => {
  await open();
  await type("U2", "1");
  const at = () =>
    page.evaluate(() => {
      const now = document.activeElement;
      return `${now?.closest("#bar, #grid, #pane")?.id} ${now?.textContent}`.trim();
    });
  await page.keyboard.press("F6");
  expect(await at()).toBe("bar Undo");
  await page.keyboard.press("F6");
  expect(await at()).toBe("pane This item");
  await page.keyboard.press("F6");
  expect(await at()).toMatch(/^grid/);
  await page.keyboard.type("7");
  await page.keyboard.press("Enter");
  await becomes(() => valueOf("U3"), 7);
  await page.keyboard.press("Shift+F6");
  expect(await at()).toBe("pane This item");
  await page.focus("#side");
  await page.keyboard.press("Enter");
  expect(await page.getAttribute("#side", "aria-expanded")).toBe("false");
  await page.keyboard.press("Enter");
  expect(await page.getAttribute("#side", "aria-expanded")).toBe("true");
});

test("twelve rows get another board in four clicks, and the survey is filtered by its caliper with the mouse", async () => {
  await open("filled.xlsx", FILLED);
  const { rows } = readSheet(openWorkbook(FILLED), "Survey");
  const column = rows[0]!.indexOf("caliper");
  const calipers = rows.map((row) => row[column] ?? null);
  const wanted = Number(calipers.slice(1).find((caliper) => typeof caliper === "number"));
  const matching = rows.flatMap((_, row) => (calipers[row] === wanted ? [row + 1] : []));
  expect([matching.length > 1, matching.length < rows.length - 4]).toEqual([true, true]);
  // So wide that the column is in sight without scrolling.
  await page.setViewportSize({ width: 3600, height: 900 });
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
  await page.getByText("Select All").click();
  await page.getByText(new RegExp(`^${wanted}$`)).click();
  await page.getByRole("button", { name: "Confirm" }).click();
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
  await page.context().grantPermissions(["clipboard-read", "clipboard-write"]);
  const { rows } = readSheet(openWorkbook(FILLED), "Survey");
  const caliper = cellName(1, rows[0]!.indexOf("caliper") + 1).replace(/\d+/, "");
  const next = rows.length + 1;
  const bottom = () =>
    page.evaluate(() => openGrid.workbook().getActiveSheet().getSubTableInfos()[0]!.range.endRow + 1);
  // From another program, as text.
  await page.evaluate(() =>
    navigator.clipboard.writeText("LK 901\tOne more\t300\t200\t40\t\t\ttray\nLK 902\tAnd one\t310\t210\t30\t\t\ttray"),
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
  await page.getByText("Delete Selected Row").click();
  await becomes(said, "Deleted row 4. Undo takes it back.");
  await becomes(() => valueOf("A4"), "LK 004");
  // A row is hidden by its menu, another made higher with the mouse, and two rows frozen.
  await menuOf(6);
  await page.getByText("Hide Selected Row").click();
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

test("a sort of the rows takes the bold part of a title into the saved file", async () => {
  const book = new ExcelJS.Workbook();
  const sheet = book.addWorksheet("Survey");
  sheet.addRow(["Title", "Height"]);
  sheet.addRow(["Chart", 9]);
  sheet.addRow([{ richText: [{ text: "Keeper's " }, { text: "log", font: { bold: true } }] }, 5]);
  await open("rich.xlsx", new Uint8Array(await book.xlsx.writeBuffer()));
  await page.evaluate(() => {
    openGrid.workbook().getActiveSheet().getRange("A2:B3").sort({ column: 1, ascending: true });
  });
  await becomes(() => valueOf("A2"), "Keeper's log");
  await page.click("#save");
  await becomes(said, `Saved as ${join(at.folder, "rich-edited.xlsx")}`);
  const other = new ExcelJS.Workbook();
  await other.xlsx.readFile(join(at.folder, "rich-edited.xlsx"));
  expect(other.worksheets[0]!.getCell("A2").value).toMatchObject({
    richText: [{ text: "Keeper's " }, { text: "log", font: { bold: true } }],
  });
  expect(other.worksheets[0]!.getCell("A3").value).toBe("Chart");
});

test("a protected sheet refuses every change at once and in words, and the others take theirs", async () => {
  const book = new ExcelJS.Workbook();
  const rows = [
    ["b", 2],
    ["a", 1],
  ];
  for (const name of ["Register", "Survey"]) book.addWorksheet(name).addRows(rows);
  await book.worksheets[0]!.protect("", {});
  await open("locked.xlsx", new Uint8Array(await book.xlsx.writeBuffer()));
  const refused = expect.stringMatching(/^The sheet "Register" is protected/);
  const tried = async (act: () => Promise<unknown>): Promise<void> => {
    await page.evaluate(() => void (document.getElementById("said")!.textContent = ""));
    await act();
    await becomes(said, refused);
  };
  await tried(() => type("A1", "7"));
  await tried(() => page.keyboard.press("F2"));
  await page.keyboard.press("Escape");
  await goTo("A1");
  await tried(() => page.keyboard.press("Delete"));
  await tried(() => page.dblclick(SHEET, { position: { x: 90, y: 60 } }));
  const commands = ["sheet.command.sort-range-asc", "sheet.command.auto-fill", "sheet.command.numfmt.set.percent"];
  for (const id of commands) await tried(() => page.evaluate((id) => openGrid.grid.api.executeCommand(id), id));
  const values = ["A1", "B1", "A2", "B2"].map(valueOf);
  expect(await Promise.all(values)).toEqual(["b", 2, "a", 1]);
  await page.evaluate(() => {
    const book = openGrid.workbook();
    book.setActiveSheet(book.getSheetByName("Survey")!);
    document.getElementById("said")!.textContent = "";
  });
  await type("A1", "7");
  await becomes(() => valueOf("A1"), 7);
  await page.click("#save");
  await becomes(said, `Saved as ${join(at.folder, "locked-edited.xlsx")}`);
});

test("a saved file holds what was typed, is read by another program, and opens again", async () => {
  await open();
  await type("C2", "320");
  await type("U2", '=ENC.OUTSIDE(C2,D2,E2,H2,"height")');
  await type("U3", '=ENC.OUTSIDE(C3,D3,E3,H3,"nowhere")');
  await becomes(() => valueOf("U3"), "#VALUE!");
  await type("V1", '=ENC.SURVEY(A1:T41,"mass")');
  await becomes(() => valueOf("V2"), expect.any(Number));
  await page.keyboard.press("Control+s");
  await becomes(said, expect.stringMatching(/^Saved as .*survey-edited\.xlsx/));
  const bytes = readFileSync(join(at.folder, "survey-edited.xlsx"));
  const ours = readSheet(openWorkbook(new Uint8Array(bytes)), "Survey", { formulas: true });
  expect(ours.rows[1]!.slice(0, 3)).toEqual(["LK 001", "Keeper's log, first volume", 320]);
  expect(ours.formulas.get("U2")).toBe('_xldudf_ENC_OUTSIDE(C2,D2,E2,H2,"height")');
  expect([ours.rows[1]![20], ours.rows[2]![20]]).toEqual([342, { error: "#VALUE!" }]);
  const other = new ExcelJS.Workbook();
  await other.xlsx.load(bytes as unknown as ExcelJS.Buffer);
  const sheet = other.getWorksheet("Survey")!;
  expect(sheet.getCell("C2").value).toBe(320);
  expect(sheet.getCell("U2").result).toBe(342);
  expect(sheet.getCell("V2").value).toEqual(expect.any(Number));
  expect(sheet.getTable("Survey")).toBeDefined();

  await page.setInputFiles("#chooser", join(at.folder, "survey-edited.xlsx"));
  await becomes(() => page.textContent("#file"), "survey-edited.xlsx");
  await becomes(() => valueOf("U2"), 342);
  await type("C2", "330");
  await becomes(() => valueOf("U2"), 352);
  // The formula of the whole survey came back as one, and fills its cells again.
  await becomes(() => valueOf("V1"), "mass");

  // Under a name of one's own; Escape leaves the question, and the grid has the keyboard again.
  await page.click("#save-as");
  await page.keyboard.type("no");
  await page.keyboard.press("Escape");
  await page.click("#save-as");
  await page.keyboard.type("Round two");
  await page.keyboard.press("Enter");
  await becomes(said, expect.stringMatching(/^Saved as .*Round two\.xlsx/));
  await type("C3", "331");
  await page.keyboard.press("Control+s");
  await becomes(said, expect.stringMatching(/^Saved as .*Round two\.xlsx.*Round two\.backup-1\.xlsx/));
  expect(readdirSync(at.folder).filter((name) => name.startsWith("no"))).toEqual([]);
});

test("hostile texts are shown as texts and come back so", async () => {
  const rows = [["Height", "Title"], ...HOSTILE.map((text, row) => [row + 1, text])];
  await open("hostile.xlsx", createWorkbook([{ name: "Survey", rows, table: "Survey" }]));
  for (const [row, text] of HOSTILE.entries()) expect(await valueOf(`B${row + 2}`)).toBe(text);
  await goTo("B2");
  expect(await page.locator("#grid img[src=x]").count()).toBe(0);
  await type("A2", "9");
  await page.click("#save");
  await becomes(said, expect.stringMatching(/^Saved/));
  const saved = openWorkbook(new Uint8Array(readFileSync(join(at.folder, "hostile-edited.xlsx"))));
  const grid = readSheet(saved, "Survey", { formulas: true });
  expect([grid.rows.slice(1).map((row) => row[1]), grid.formulas.size]).toEqual([HOSTILE, 0]);
});

test("the grid's own parts are readable in light and in dark", async () => {
  const parts = () => page.evaluate(partContrasts, SHEET);
  const named = async () => (await parts()).map(({ part }) => part);
  const readable = async () => {
    await goTo("C2");
    await becomes(named, expect.arrayContaining(["C2", "Survey", "heading C", "heading 5"]));
    // The grid draws the cells first and the headings of rows and columns a frame later.
    await becomes(async () => (await parts()).filter(({ contrast }) => contrast < READABLE), []);
  };
  await open();
  await readable();
  await page.emulateMedia({ colorScheme: "dark" });
  await page.reload();
  await page.waitForFunction(() => document.body.dataset["ready"] === "yes");
  await readable();
});
