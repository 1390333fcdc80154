import { join } from "node:path";
import ExcelJS from "exceljs";
import type { OpenGrid } from "../../../src/page/openGrid";
import { becomes } from "../browser";
import { SHEET, at, goTo, leave, open, page, said, type, valueOf } from "../openPage";

declare const openGrid: OpenGrid;

describe("sorting, filters and what is refused", () => {
  afterEach(leave);

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
});
