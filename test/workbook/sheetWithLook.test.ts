import ExcelJS from "exceljs";
import { openWorkbook } from "../../src/workbook/openWorkbook";
import { readSheet } from "../../src/workbook/readSheet";
import { frozenOf, sheetLook, sheetWithLook } from "../../src/workbook/sheetLook";
import { eachChunk } from "../../src/workbook/zip";

jest.mock("../../src/workbook/zip", () => {
  const zip = jest.requireActual<{ eachChunk: () => void }>("../../src/workbook/zip");
  return { ...zip, eachChunk: jest.fn(zip.eachChunk) };
});

async function made() {
  const book = new ExcelJS.Workbook();
  const sheet = book.addWorksheet("Survey", { views: [{ state: "frozen", xSplit: 1, ySplit: 2 }] });
  sheet.addRow(["Survey of boxes"]);
  sheet.mergeCells("A1:C1");
  sheet.addRow(["ID", "Height", "Twice"]);
  for (const i of [1, 2, 3]) sheet.addRow([`A ${i}`, i * 100, { formula: `B${i + 2}*2`, result: i * 200 }]);
  sheet.getCell("B4").numFmt = "0.0";
  sheet.getColumn(2).width = 30;
  sheet.getRow(5).hidden = true;
  sheet.getCell("A3").dataValidation = { type: "list", allowBlank: true, formulae: ['"A 1,A 2"'] };
  return openWorkbook(new Uint8Array(await book.xlsx.writeBuffer()));
}

test("values and all beside them are read as each alone, in one pass", async () => {
  const workbook = await made();
  const both = sheetWithLook(workbook, "Survey");
  const passes = jest.mocked(eachChunk).mock.calls.filter(([{ name }]) => name.includes("sheet1.xml"));
  expect(passes).toHaveLength(1);
  expect(both).toEqual({ grid: readSheet(workbook, "Survey"), look: sheetLook(workbook, "Survey") });
  expect([both.grid.rows.length, both.look.columns.length, both.look.choices.length]).toEqual([5, 1, 1]);
});

test("what stays in sight is known before the cells are read", async () => {
  const workbook = await made();
  expect(frozenOf(workbook, "Survey")).toEqual({ rows: 2, columns: 1, firstRow: 1, firstColumn: 1 });
  expect(frozenOf(workbook, "Survey")).toEqual(sheetLook(workbook, "Survey").frozen);
});
