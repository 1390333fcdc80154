import { readFileSync } from "node:fs";
import ExcelJS from "exceljs";
import { bookEdits } from "../../src/page/bookEdits";
import { openedBook, type OpenedBook } from "../../src/page/openedBook";
import { editWorkbook } from "../../src/workbook/editWorkbook";
import { openWorkbook, type Workbook } from "../../src/workbook/openWorkbook";
import { sheetLook } from "../../src/workbook/sheetLook";
import { verifyEdit } from "../../src/workbook/verifyEdit";
import { writeZip } from "../../src/workbook/writeZip";
import { livedIn } from "../workbook/made/livedIn";
import { partsOf } from "../workbook/made/package";

/** A picture of one pixel. */
const PICTURE = "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==";

/** A survey with the features of a workbook that people use, by another program. */
async function made(): Promise<Uint8Array> {
  const book = new ExcelJS.Workbook();
  const sheet = book.addWorksheet("Survey", { views: [{ state: "frozen", xSplit: 0, ySplit: 2 }] });
  sheet.addRow(["Survey of boxes"]);
  sheet.mergeCells("A1:F1");
  sheet.addTable({
    name: "Items",
    ref: "A2",
    headerRow: true,
    columns: ["ID", "Height", "Seen", "Enclosure", "Twice", "Link"].map((name) => ({ name, filterButton: true })),
    rows: [1, 2, 3].map((i) => [`A ${i}`, i * 100, new Date(Date.UTC(2024, 0, i)), "tray", i * 200, "x"]),
  });
  for (const row of [3, 4, 5]) {
    sheet.getCell(row, 2).numFmt = '0.0" mm"';
    sheet.getCell(row, 3).numFmt = "yyyy-mm-dd";
    sheet.getCell(row, 5).value = { formula: `B${row}*2`, result: (row - 2) * 200 };
  }
  sheet.getCell("A1").font = { bold: true, italic: true, underline: true, size: 18, color: { argb: "FF1F5F5B" } };
  sheet.getCell("A1").alignment = { horizontal: "center", vertical: "middle", wrapText: true };
  sheet.getCell("B3").fill = { type: "pattern", pattern: "solid", fgColor: { argb: "FFFFEECC" } };
  sheet.getCell("B4").border = { top: { style: "medium", color: { argb: "FFFF0000" } }, bottom: { style: "double" } };
  sheet.getColumn(1).width = 22;
  sheet.getColumn(7).hidden = true;
  sheet.getRow(1).height = 36;
  sheet.getCell("A4").note = "look again";
  sheet.getCell("D3").dataValidation = { type: "list", allowBlank: true, formulae: ['"tray,slipcase"'] };
  const style = { fill: { type: "pattern", pattern: "solid", bgColor: { argb: "FFFFC7CE" } } } as const;
  sheet.addConditionalFormatting({
    ref: "B3:B5",
    rules: [{ type: "cellIs", operator: "greaterThan", priority: 1, formulae: [150], style }],
  });
  sheet.getCell("A5").value = { richText: [{ text: "A " }, { text: "3", font: { bold: true } }] };
  sheet.getCell("F3").value = { text: "a page", hyperlink: "https://example.org/" };
  sheet.addImage(book.addImage({ base64: PICTURE, extension: "png" }), "H2:I4");
  sheet.headerFooter.oddFooter = "Page &P";
  book.definedNames.add("Survey!$B$3:$B$5", "heights");
  book.addWorksheet("Hidden", { state: "hidden" }).getCell("A1").value = "kept";
  const locked = book.addWorksheet("Locked");
  locked.getCell("A1").value = "as it is";
  await locked.protect("", {});
  return new Uint8Array(await book.xlsx.writeBuffer());
}

/** Changes heights, hidden rows and columns, and frozen parts as the grid does, and saves. */
function laidOut(bytes: Uint8Array): Workbook {
  const workbook = openWorkbook(bytes);
  const opened = openedBook(workbook, "survey.xlsx");
  const snapshot = structuredClone(opened.snapshot);
  const sheet = snapshot.sheets["sheet-1"]!;
  sheet.rowData![0] = { ...sheet.rowData![0], h: 64, ia: 0 };
  sheet.rowData![3] = { hd: 1 };
  sheet.rowData![9] = { h: 40, ia: 0 };
  sheet.columnData![2] = { hd: 1 };
  sheet.columnData![0] = { ...sheet.columnData![0], hd: 1 };
  sheet.freeze = { xSplit: 2, ySplit: 3, startRow: 4, startColumn: 2 };
  const { edits } = bookEdits(opened, { snapshot, filled: () => [] });
  const edit = editWorkbook(workbook, edits);
  verifyEdit(workbook, edit, edit.bytes);
  return openWorkbook(edit.bytes);
}

interface Shown {
  readonly opened: OpenedBook;
  readonly cell: (row: number, column: number) => Record<string, unknown>;
  readonly look: (row: number, column: number) => Record<string, unknown>;
  readonly plugin: (name: string) => string;
}

interface Feature {
  readonly name: string;
  /** Whether the grid shows it; what it does not show is listed in words. */
  readonly shown: (shown: Shown) => unknown;
  /** Whether another program still finds it in the saved file, where a row has come above row 4. */
  readonly carried: (book: ExcelJS.Workbook, sheet: ExcelJS.Worksheet) => unknown;
}

const listed =
  (words: string) =>
  ({ opened }: Shown) =>
    opened.said.join(" ").includes(words);

const FEATURES: readonly Feature[] = [
  {
    name: "numbers and texts",
    shown: ({ cell }) => cell(3, 2)["v"] === 100,
    carried: (_, s) => s.getCell("B5").value === 200,
  },
  {
    name: "formulas",
    shown: ({ cell }) => cell(3, 5)["f"] === "=B3*2",
    carried: (_, s) => s.getCell("E5").formula === "B5*2",
  },
  {
    name: "number formats",
    shown: ({ look }) => (look(3, 2)["n"] as { pattern: string }).pattern === '0.0" mm"',
    carried: (_, s) => s.getCell("B5").numFmt === '0.0" mm"',
  },
  {
    name: "dates",
    shown: ({ cell }) => cell(3, 3)["v"] === 45_292,
    carried: (_, s) => s.getCell("C5").value instanceof Date,
  },
  {
    name: "bold, italic, underlined",
    shown: ({ look }) => look(1, 1)["bl"] === 1 && look(1, 1)["it"] === 1 && look(1, 1)["ul"],
    carried: (_, s) => s.getCell("A1").font.bold && s.getCell("A1").font.italic,
  },
  {
    name: "font size and colour",
    shown: ({ look }) => look(1, 1)["fs"] === 18 && (look(1, 1)["cl"] as { rgb: string }).rgb === "#1f5f5b",
    carried: (_, s) => s.getCell("A1").font.size === 18,
  },
  {
    name: "fills",
    shown: ({ look }) => (look(3, 2)["bg"] as { rgb: string }).rgb === "#ffeecc",
    carried: (_, s) => s.getCell("B3").fill.type,
  },
  {
    name: "borders",
    shown: ({ look }) => (look(4, 2)["bd"] as { t: { s: number } }).t.s === 8,
    carried: (_, s) => s.getCell("B5").border.top?.style === "medium",
  },
  {
    name: "alignment and wrapped text",
    shown: ({ look }) => look(1, 1)["ht"] === 2 && look(1, 1)["tb"] === 3,
    carried: (_, s) => s.getCell("A1").alignment.wrapText,
  },
  {
    name: "widths of columns, heights of rows",
    shown: ({ opened }) => {
      const { columnData, rowData } = opened.snapshot.sheets["sheet-1"]!;
      return columnData![0]!.w === 159 && rowData![0]!.h === 48;
    },
    carried: (_, s) => s.getColumn(1).width === 22 && s.getRow(1).height === 36,
  },
  {
    name: "merged cells",
    shown: ({ opened }) => opened.snapshot.sheets["sheet-1"]!.mergeData!.length === 1,
    carried: (_, s) => s.getCell("F1").isMerged,
  },
  {
    name: "frozen rows and columns",
    shown: ({ opened }) => opened.snapshot.sheets["sheet-1"]!.freeze!.ySplit === 2,
    carried: (_, s) => s.views[0]!.state === "frozen",
  },
  {
    name: "hidden rows and columns",
    shown: ({ opened }) => opened.snapshot.sheets["sheet-1"]!.columnData?.[6]?.hd,
    carried: (_, s) => s.getColumn(7).hidden,
  },
  {
    name: "hidden sheets",
    shown: ({ opened }) => Boolean(opened.snapshot.sheets["sheet-2"]!.hidden),
    carried: (b) => b.getWorksheet("Hidden")!.state === "hidden",
  },
  {
    name: "protected sheets",
    shown: ({ opened }) => opened.sheets[2]!.locked,
    carried: (b) => b.getWorksheet("Locked")!.getCell("A1").value === "as it is",
  },
  {
    name: "tables with filters",
    shown: ({ plugin }) => plugin("SHEET_TABLE_PLUGIN").includes('"Items"'),
    carried: (_, s) => s.getTable("Items"),
  },
  {
    name: "names",
    shown: ({ plugin }) => plugin("SHEET_DEFINED_NAME_PLUGIN").includes("heights"),
    carried: (b) => b.definedNames.getRanges("heights").ranges[0] === "Survey!$B$3:$B$6",
  },
  {
    name: "lists of choices",
    shown: ({ plugin }) => plugin("SHEET_DATA_VALIDATION_PLUGIN").includes("tray,slipcase"),
    carried: (_, s) => s.getCell("D3").dataValidation.type === "list",
  },
  {
    name: "conditional formats",
    shown: ({ plugin }) => plugin("SHEET_CONDITIONAL_FORMATTING_PLUGIN").includes("#ffc7ce"),
    carried: (_, s) =>
      (s as unknown as { conditionalFormattings: { ref: string }[] }).conditionalFormattings[0]!.ref === "B3:B6",
  },
  {
    name: "comments",
    shown: ({ plugin }) => plugin("SHEET_NOTE_PLUGIN").includes("look again"),
    carried: (_, s) => s.getCell("A5").note,
  },
  {
    name: "looks of parts of a text",
    shown: ({ cell }) => cell(5, 1)["v"] === "A 3",
    carried: (_, s) => (s.getCell("A6").value as ExcelJS.CellRichTextValue).richText.length === 2,
  },
  {
    name: "links",
    shown: listed("1 link (as text)"),
    carried: (_, s) => s.getCell("F3").hyperlink === "https://example.org/",
  },
  { name: "pictures", shown: listed("1 picture"), carried: (_, s) => s.getImages().length === 1 },
  {
    name: "headers and footers of pages",
    shown: listed("1 header or footer"),
    carried: (_, s) => s.headerFooter.oddFooter === "Page &P",
  },
];

test("the grid shows or lists each feature of a workbook, and a saved file carries it, as the table says", async () => {
  const workbook = openWorkbook(await made());
  const opened = openedBook(workbook, "survey.xlsx");
  const { cellData } = opened.snapshot.sheets["sheet-1"]!;
  const cell = (row: number, column: number) => (cellData![row - 1]?.[column - 1] ?? {}) as Record<string, unknown>;
  const shown: Shown = {
    opened,
    cell,
    look: (row, column) => opened.snapshot.styles[String(cell(row, column)["s"])] as Record<string, unknown>,
    plugin: (name) => opened.snapshot.resources!.find((each) => each.name === name)!.data,
  };
  const changed = openWorkbook(
    editWorkbook(workbook, { cells: [{ sheet: "Survey", row: 3, column: 1, content: "A 1b" }] }).bytes,
  );
  const { bytes } = editWorkbook(changed, { shift: { sheet: "Survey", axis: "row", at: 4, count: 1, goes: false } });
  const saved = new ExcelJS.Workbook();
  await saved.xlsx.load(bytes as unknown as ExcelJS.Buffer);
  const sheet = saved.getWorksheet("Survey")!;
  for (const { name, shown: isShown, carried } of FEATURES)
    expect([name, Boolean(isShown(shown)), Boolean(carried(saved, sheet))]).toEqual([name, true, true]);
  const table = readFileSync("DEVELOPERS.md", "utf8");
  for (const { name } of FEATURES) expect(table).toContain(`| ${name} |`);
});

test("heights, hidden rows and columns and frozen parts that are changed in the page are read by another program, and again here", async () => {
  const bytes = await made();
  const saved = laidOut(bytes);
  const other = new ExcelJS.Workbook();
  const zipped = writeZip([...saved.zip.values()]);
  await other.xlsx.load(zipped as unknown as ExcelJS.Buffer);
  const sheet = other.getWorksheet("Survey")!;
  expect([1, 3, 4, 10].map((row) => [sheet.getRow(row).height, sheet.getRow(row).hidden])).toEqual([
    [48, false],
    [undefined, false],
    [undefined, true],
    [30, false],
  ]);
  expect([1, 2, 3].map((column) => [sheet.getColumn(column).width, sheet.getColumn(column).hidden])).toEqual([
    [22, true],
    [undefined, false],
    [9.14, true],
  ]);
  expect(sheet.views[0]).toMatchObject({ state: "frozen", xSplit: 2, ySplit: 3, topLeftCell: "C5" });
  // What is saved is what the page shows when it opens the file again: then there is nothing to save.
  const again = openedBook(saved, "survey.xlsx");
  expect(again.snapshot.sheets["sheet-1"]!.freeze).toEqual({ xSplit: 2, ySplit: 3, startRow: 4, startColumn: 2 });
  expect(bookEdits(again, { snapshot: structuredClone(again.snapshot), filled: () => [] }).edits).toEqual({});
  // And all of it can be taken back.
  const snapshot = structuredClone(again.snapshot);
  const back = snapshot.sheets["sheet-1"]!;
  back.rowData = { 0: { h: 48, ia: 0 }, 3: {}, 9: { ia: 1 } };
  back.columnData = { 0: { w: 159 }, 2: { w: 69 } };
  back.freeze = { xSplit: 0, ySplit: 0, startRow: -1, startColumn: -1 };
  const { edits } = bookEdits(again, { snapshot, filled: () => [] });
  const look = sheetLook(openWorkbook(editWorkbook(saved, edits).bytes), "Survey");
  expect([look.frozen, [...look.rows], look.columns.some(({ hidden }) => hidden)]).toEqual([
    { rows: 0, columns: 0, firstRow: 1, firstColumn: 1 },
    [[1, { height: 36, own: true, hidden: false }]],
    false,
  ]);
});

test("charts and sparklines are listed, and a saved file carries them", () => {
  const workbook = openWorkbook(livedIn());
  expect(openedBook(workbook, "survey.xlsx").said).toEqual([
    "Not shown here, and kept by a save: 1 chart, 1 picture, 1 sparkline",
  ]);
  const { bytes } = editWorkbook(workbook, { cells: [{ sheet: "Survey", row: 5, column: 1, content: "A 1b" }] });
  const [before, after] = [partsOf(livedIn()), partsOf(bytes)];
  expect(after["xl/charts/chart1.xml"]).toEqual(before["xl/charts/chart1.xml"]);
  expect(Buffer.from(after["xl/worksheets/sheet1.xml"]!).toString()).toContain("x14:sparkline");
});
