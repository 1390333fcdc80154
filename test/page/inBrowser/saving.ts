import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import ExcelJS from "exceljs";
import { createWorkbook } from "../../../src/workbook/createWorkbook";
import { openWorkbook } from "../../../src/workbook/openWorkbook";
import { readSheet } from "../../../src/workbook/readSheet";
import { becomes } from "../browser";
import { at, goTo, leave, open, page, said, type, valueOf } from "../openPage";

const HOSTILE = ["<img src=x onerror=alert(1)>", "=1+1", "שלום ‮abc", "📚👩‍🔬", "y".repeat(30_000)];

describe("saving", () => {
  afterEach(leave);

  test("a saved file holds what was typed, is read by another program, and opens again", async () => {
    await open();
    await type("C2", "320");
    await type("U2", '=ENC.OUTSIDE(C2,D2,E2,H2,"height")');
    await type("U3", '=ENC.OUTSIDE(C3,D3,E3,H3,"nowhere")');
    await becomes(() => valueOf("U3"), "#VALUE!");
    await type("V1", '=ENC.SURVEY(A1:T41,"mass")');
    await becomes(() => valueOf("V2"), expect.any(Number));
    // What reads the cells that it fills, one after the other.
    await type("X2", "=V2*2");
    await type("Y2", "=X2+1");
    const rest = async () => Math.round(Number(await valueOf("Y2")) - 2 * Number(await valueOf("V2")));
    await becomes(rest, 1);
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
    await becomes(rest, 1);
    expect(await valueOf("V2")).toBeGreaterThan(0);

    // Under a name of one's own; Escape leaves the question, and the grid has the keyboard again.
    const naming = async () => {
      await page.click("#save-as");
      await page.waitForSelector("#naming[open]");
    };
    await naming();
    expect(await page.inputValue("#new-name")).toBe("survey-edited 2.xlsx");
    await page.keyboard.type("no");
    await page.keyboard.press("Escape");
    await naming();
    expect(await page.inputValue("#new-name")).toBe("survey-edited 2.xlsx");
    await page.keyboard.type("Round two");
    await page.keyboard.press("Enter");
    await becomes(said, expect.stringMatching(/^Saved as .*Round two\.xlsx/));
    // The message about the saved file goes away at the next change.
    await type("C3", "331");
    await becomes(said, "");
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
});
