import ExcelJS from "exceljs";
import { PassThrough } from "node:stream";
import writeExcelFile from "write-excel-file/node";
import { MAIN, small } from "./package";

/** A survey from exceljs: a table with totals, validation, a conditional format, a comment, a picture, merged titles, a second sheet. */
export async function fromExcelJs(): Promise<Uint8Array> {
  const book = new ExcelJS.Workbook();
  const sheet = book.addWorksheet("Items", { views: [{ state: "frozen", ySplit: 3 }] });
  sheet.getCell("A1").value = { richText: [{ text: "Survey " }, { text: "of boxes", font: { bold: true } }] };
  sheet.mergeCells("A1:E1");
  sheet.addTable({
    name: "Boxes",
    ref: "A3",
    headerRow: true,
    totalsRow: true,
    style: { theme: "TableStyleMedium4", showRowStripes: true },
    columns: [
      { name: "Call number", totalsRowLabel: "Total" },
      { name: "Height (cm)" },
      { name: "Width (cm)" },
      { name: "Thickness (cm)", totalsRowFunction: "sum" },
    ],
    rows: [
      ["A 1", 30, 21, 4.5],
      ["@A 2", 25.05, 18, 3],
      ["A 3", 12, 9, 1.25],
    ],
  });
  sheet.getCell("B4").dataValidation = { type: "decimal", operator: "greaterThan", formulae: [0] };
  sheet.addConditionalFormatting({
    ref: "B4:B6",
    rules: [{ type: "cellIs", operator: "greaterThan", formulae: [20], priority: 1, style: { font: { bold: true } } }],
  });
  sheet.getCell("A4").note = "fragile";
  sheet.getCell("G1").value = { formula: "SUM(B4:B6)", result: 67.05 };
  const picture = book.addImage({
    base64: "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==",
    extension: "png",
  });
  sheet.addImage(picture, "H8:I12");
  book.addWorksheet("Key").getCell("A1").value = "kept";
  return new Uint8Array(await book.xlsx.writeBuffer());
}

/** A survey from exceljs as a stream, which writes rows as they come, with texts inside their cells. */
export async function fromExcelJsStream(): Promise<Uint8Array> {
  const chunks: Buffer[] = [];
  const stream = new PassThrough();
  stream.on("data", (chunk: Buffer) => chunks.push(chunk));
  const book = new ExcelJS.stream.xlsx.WorkbookWriter({ stream, useSharedStrings: false, useStyles: true });
  const sheet = book.addWorksheet("List");
  sheet.addRow(["Inventory no.", "Height (mm)", "Width (mm)", "Depth (mm)", "Qty"]).commit();
  sheet.addRow(["I 1", 300, 210, 45, 2]).commit();
  sheet.addRow(["I 2", { formula: "B2/2", result: 150 }, 100, 20, 1]).commit();
  sheet.commit();
  await book.commit();
  return new Uint8Array(Buffer.concat(chunks));
}

/** A survey from a second writer, with column widths, frozen rows, formats and a picture-less second sheet. */
export async function fromWriteExcelFile(): Promise<Uint8Array> {
  const bold = { fontWeight: "bold" as const };
  const data = [
    [
      { value: "Object number", ...bold },
      { value: "Ht (mm)", ...bold },
      { value: "Wd (mm)", ...bold },
      { value: "Dp (mm)", ...bold },
      { value: "Seen", ...bold },
    ],
    [
      "O 1",
      { value: 300, format: "0.0" },
      { value: 210 },
      { value: 45 },
      { value: new Date(Date.UTC(2024, 2, 8)), format: "yyyy-mm-dd" },
    ],
    ["+O 2", { value: 120.25, format: "0.0" }, { value: 90 }, { value: 12 }, null],
  ];
  const sheets = [
    { data, sheet: "Objects", columns: [{ width: 20 }, {}, {}, {}, { width: 14 }], stickyRowsCount: 1 },
    { data: [["kept"]], sheet: "Key" },
  ];
  return new Uint8Array(await writeExcelFile(sheets).toBuffer());
}

/** A workbook by hand in the oddest legal manner: a prefix on every element, cells without addresses, one quote for attributes. */
export function fromPrefixedXml(): Uint8Array {
  const text = (value: string) => `<x:c t='inlineStr'><x:is><x:t>${value}</x:t></x:is></x:c>`;
  const number = (value: number) => `<x:c><x:v>${value}</x:v></x:c>`;
  return small(
    `<?xml version='1.0'?><x:worksheet xmlns:x='${MAIN}'><x:sheetData><x:row>${["ID", "H", "W", "D"].map(text).join("")}</x:row><!-- > -->` +
      `<x:row>${text("p &gt; 1")}${[30, 20, 4].map(number).join("")}</x:row><x:row><?odd <x:row> ?>${text("p2")}${[31, 21, 5].map(number).join("")}</x:row></x:sheetData></x:worksheet>`,
  );
}
