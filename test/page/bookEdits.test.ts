import type { ICellData } from "@univerjs/core";
import ExcelJS from "exceljs";
import { bookEdits } from "../../src/page/bookEdits";
import type { FilledArea } from "../../src/page/filledArea";
import { openedBook, type OpenedBook } from "../../src/page/openedBook";
import { createWorkbook } from "../../src/workbook/createWorkbook";
import { editWorkbook } from "../../src/workbook/editWorkbook";
import type { CellContent } from "../../src/workbook/edits";
import { openWorkbook, type Workbook } from "../../src/workbook/openWorkbook";
import { readSheet } from "../../src/workbook/readSheet";
import { sheetLook } from "../../src/workbook/sheetLook";
import type { DateValue } from "../../src/workbook/sheetValue";
import { verifyEdit } from "../../src/workbook/verifyEdit";
import { livedIn } from "../workbook/made/livedIn";
import { fromExcelJs, fromExcelJsStream, fromPrefixedXml, fromWriteExcelFile } from "../workbook/made/otherWriters";

const HOSTILE = [
  "<b>&amp;</b><script>alert(1)</script>",
  "=HYPERLINK(1)",
  "+1",
  "@x",
  "שלום עולם ‮abc",
  "📚👩‍🔬",
  "x".repeat(30_000),
  "00017",
  " two  spaces ",
  "line\nline",
];

type Change = (cells: (row: number, column: number) => ICellData) => void;

/** Opens, changes the first sheet as the grid would, and writes the edits. Rows and columns count from 0. */
function edited(bytes: Uint8Array, change: Change, filled: readonly FilledArea[] = []) {
  const workbook = openWorkbook(bytes);
  const opened = openedBook(workbook, "book.xlsx");
  const snapshot = structuredClone(opened.snapshot);
  const sheet = snapshot.sheets[snapshot.sheetOrder[0]!]!;
  change((row, column) => ((sheet.cellData![row] ??= {})[column] ??= {}));
  const { edits, own, said } = bookEdits(opened, { snapshot, filled: (id) => (id === sheet.id ? filled : []) });
  const edit = editWorkbook(workbook, edits);
  verifyEdit(workbook, edit, edit.bytes);
  return { opened, edits, own, said, edit, now: openWorkbook(edit.bytes) };
}

function bookOf(...rows: readonly (readonly CellContent[])[]): Uint8Array {
  return createWorkbook([{ name: "Survey", rows, headingRow: 0 }]);
}

function cellIn({ snapshot }: OpenedBook, sheet: number, row: number, column: number): ICellData | null | undefined {
  return snapshot.sheets[snapshot.sheetOrder[sheet]!]!.cellData![row]?.[column];
}

const rowsOf = (workbook: Workbook) => readSheet(workbook, workbook.sheets[0]!.name).rows;
const formulasIn = (workbook: Workbook) => readSheet(workbook, workbook.sheets[0]!.name, { formulas: true }).formulas;

test("a formula that is worked out again goes into the file, and is no change of the user's", () => {
  const bytes = bookOf([300, { formula: "A1*2", result: 600 }]);
  const fresh = edited(bytes, (cells) => void (cells(0, 1).v = 601));
  expect([fresh.edits.cells?.length, fresh.own]).toEqual([1, {}]);
  expect(rowsOf(fresh.now)).toEqual([[300, 601]]);
  const typed = edited(bytes, (cells) => {
    cells(0, 0).v = 310;
    cells(0, 1).v = 620;
  });
  expect(typed.own).toEqual({ cells: [{ sheet: "Survey", row: 1, column: 1, content: 310 }] });
  expect(edited(bytes, (cells) => void (cells(0, 1).f = "=A1*3")).own.cells?.length).toBe(1);
});

test.each([
  ["lived in", livedIn],
  ["of exceljs", fromExcelJs],
  ["of exceljs, streamed", fromExcelJsStream],
  ["of write-excel-file", fromWriteExcelFile],
  ["with prefixes", fromPrefixedXml],
])("a workbook %s that is only looked at has nothing to save", async (_, make) => {
  const opened = openedBook(openWorkbook(await make()), "book.xlsx");
  const { edits, own, said } = bookEdits(opened, { snapshot: structuredClone(opened.snapshot), filled: () => [] });
  expect([edits, own, said]).toEqual([{}, {}, []]);
});

test("a workbook that has been lived in shows its values, formulas, looks, widths, table and frozen rows", () => {
  const opened = openedBook(openWorkbook(livedIn()), "book.xlsx");
  const sheet = opened.snapshot.sheets["sheet-1"]!;
  expect(cellIn(opened, 0, 4, 2)).toMatchObject({ v: 300, t: 2 });
  expect(cellIn(opened, 0, 5, 1)).toMatchObject({ v: "=not a formula", t: 4 });
  expect(cellIn(opened, 0, 4, 5)).toMatchObject({ f: "=Items[[#This Row],[H (mm)]]*2", v: 600 });
  // The same formula in the next row is shared, and read once.
  expect(cellIn(opened, 0, 5, 5)).toMatchObject({ si: cellIn(opened, 0, 4, 5)!.si });
  expect(opened.snapshot.styles["x3"]).toMatchObject({ n: { pattern: '0.0" mm"' } });
  expect(sheet.columnData![1]).toEqual({ w: 215 });
  expect(sheet.freeze).toMatchObject({ ySplit: 4, startRow: 4, xSplit: 0 });
  expect(sheet.mergeData).toEqual([{ startRow: 0, endRow: 0, startColumn: 0, endColumn: 5 }]);
  const tables = opened.snapshot.resources!.find(({ name }) => name === "SHEET_TABLE_PLUGIN")!.data;
  expect(JSON.parse(tables)).toMatchObject({
    "sheet-1": { tables: [{ name: "Items", range: { startRow: 3, endRow: 6, startColumn: 0, endColumn: 5 } }] },
  });
  // Only the first cell of an array formula comes in: the grid fills the others.
  expect(opened.sheets.find(({ arrays }) => arrays.length > 0)!.arrays[0]!.area.bottom).toBe(3);
});

test("a changed cell and the results that follow it are written, and nothing else", () => {
  const { edits, now, edit } = edited(livedIn(), (cell) => {
    cell(4, 2).v = 310;
    cell(4, 5).v = 620;
  });
  expect(edits).toEqual({
    cells: [
      { sheet: "Survey", row: 5, column: 3, content: 310 },
      {
        sheet: "Survey",
        row: 5,
        column: 6,
        content: { formula: "Items[[#This Row],[H (mm)]]*2", result: 620 },
      },
    ],
  });
  expect(rowsOf(now)[4]).toEqual(["A 1", "First & foremost", 310, 210, 45, 620]);
  expect(edit.changed.filter((part) => part.includes("worksheets"))).toHaveLength(1);
});

test("hostile texts come back as the texts that they are", () => {
  const { now } = edited(bookOf(["before"]), (cell) =>
    HOSTILE.forEach((text, row) => Object.assign(cell(row, 1), { v: text, t: 1 })),
  );
  expect(rowsOf(now).map((row) => row[1])).toEqual(HOSTILE);
  expect(formulasIn(now).size).toBe(0);
  const opened = openedBook(now, "book.xlsx");
  expect(HOSTILE.map((_, row) => cellIn(opened, 0, row, 1)!.v)).toEqual(HOSTILE);
});

test("a typed formula is stored under its stored names, its error as an error", () => {
  const { now } = edited(bookOf([300, 200]), (cell) => {
    Object.assign(cell(0, 2), { f: "=ENC.WALL.LENGTH(A1,B1)", v: "#N/A", t: 1 });
    Object.assign(cell(0, 3), { f: '=IFNA(C1,"")', v: "", t: 1 });
    Object.assign(cell(0, 4), { f: "=A1>1", v: 1, t: 3 });
  });
  expect([...formulasIn(now)]).toEqual([
    ["C1", "_xldudf_ENC_WALL_LENGTH(A1,B1)"],
    ["D1", '_xlfn.IFNA(C1,"")'],
    ["E1", "A1>1"],
  ]);
  expect(rowsOf(now)[0]).toEqual([300, 200, { error: "#N/A" }, "\u00a0", true]);
});

test("rows that were sorted take their styles and formulas along", () => {
  const book = editWorkbook(openWorkbook(bookOf(["b", 2], ["a", 1])), {
    cells: [{ sheet: "Survey", row: 1, column: 2, content: 2, format: "0.00" }],
  }).bytes;
  const { now, edits } = edited(book, (cell) => {
    const [first, second] = [{ ...cell(0, 1) }, { ...cell(1, 1) }];
    Object.assign(cell(0, 0), { v: "a" });
    Object.assign(cell(1, 0), { v: "b" });
    Object.assign(cell(0, 1), { s: undefined }, second);
    Object.assign(cell(1, 1), first);
  });
  expect(rowsOf(now)).toEqual([
    ["a", 1],
    ["b", 2],
  ]);
  expect(edits.cells!.filter(({ style }) => style !== undefined)).toHaveLength(1);
  expect(sheetLook(now, "Survey").styles.get(2)?.get(2)).toBe(
    sheetLook(openWorkbook(book), "Survey").styles.get(1)?.get(2),
  );
});

/** Two titles, the second partly in bold, with numbers. */
async function partlyBold(): Promise<Uint8Array> {
  const book = new ExcelJS.Workbook();
  const sheet = book.addWorksheet("Survey");
  sheet.addRow(["Chart", 2]);
  sheet.addRow([{ richText: [{ text: "Keeper's " }, { text: "log", font: { bold: true } }] }, 1]);
  return new Uint8Array(await book.xlsx.writeBuffer());
}

/** What another program reads in a cell: its text, or its parts with their looks. */
async function otherReads(bytes: Uint8Array, cell: string): Promise<ExcelJS.CellValue> {
  const book = new ExcelJS.Workbook();
  await book.xlsx.load(bytes as unknown as ExcelJS.Buffer);
  return book.worksheets[0]!.getCell(cell).value;
}

const day = (date: string, serial: number): DateValue => ({ date, serial });

const swapRows: Change = (cell) => {
  const [first, second] = [0, 1].map((row) => [{ ...cell(row, 0) }, { ...cell(row, 1) }]);
  [second!, first!].forEach((row, r) =>
    row.forEach((now, c) => {
      for (const key of Object.keys(cell(r, c)) as (keyof ICellData)[]) delete cell(r, c)[key];
      Object.assign(cell(r, c), now);
    }),
  );
};

test("a sort takes the bold part of a text along", async () => {
  const { edit, said, now } = edited(await partlyBold(), swapRows);
  expect(await otherReads(edit.bytes, "A1")).toMatchObject({
    richText: [{ text: "Keeper's " }, { text: "log", font: { bold: true } }],
  });
  expect([rowsOf(now), said]).toEqual([
    [
      ["Keeper's log", 1],
      ["Chart", 2],
    ],
    [],
  ]);
  // And back: read from its new place.
  expect(await otherReads(edited(edit.bytes, swapRows).edit.bytes, "A2")).toHaveProperty("richText");
});

test("a text with a bold part that is typed over, or that its cell alone holds, is said to lose it", async () => {
  const typedOver = edited(await partlyBold(), (cell) => {
    cell(1, 0).v = "Keeper's logs";
    delete cell(1, 0).custom;
  });
  const lost = "1 cells lose the look of parts of their text, which the file that was opened still has";
  expect(typedOver.said).toEqual([lost]);
  expect(rowsOf(typedOver.now)[1]).toEqual(["Keeper's logs", 1]);
  const inline = edited(livedIn(), (cell) => {
    const moved = { ...cell(0, 0) };
    delete cell(0, 0).v;
    delete cell(0, 0).custom;
    Object.assign(cell(1, 0), moved);
  });
  expect(inline.said).toEqual([lost]);
});

test("the number of a shared text that reads otherwise is refused", async () => {
  const workbook = openWorkbook(await partlyBold());
  const cell = { sheet: "Survey", row: 1, column: 1, content: "Map", sharedText: 1 };
  expect(() => editWorkbook(workbook, { cells: [cell] })).toThrow(/A1.*shared text 1/);
});

test("dates in the calendar from 1904 are saved as the days that they show", async () => {
  const book = new ExcelJS.Workbook();
  book.properties.date1904 = true;
  const sheet = book.addWorksheet("Survey");
  const rows = [new Date("2020-03-01"), new Date("2021-05-09"), 0.5, 30, 7];
  rows.forEach((value, row) => (sheet.getCell(row + 1, 1).value = value));
  ["dd/mm/yyyy", "mmm d", "h:mm", "[h]:mm", "0"].forEach((format, row) => (sheet.getCell(row + 1, 1).numFmt = format));
  const bytes = new Uint8Array(await book.xlsx.writeBuffer());
  const opened = openedBook(openWorkbook(bytes), "book.xlsx");
  // 1 March 2020 is day 43,891 of the calendar from 1900 and day 42,429 of that from 1904.
  expect(rows.map((_, row) => cellIn(opened, 0, row, 0)!.v)).toEqual([43891, 44325, 0.5, 30, 7]);
  const { now, said } = edited(bytes, (cell) => {
    cell(0, 0).v = 43892;
    cell(2, 0).v = 0.25;
    cell(3, 0).v = 31;
    cell(4, 0).v = 8;
    Object.assign(cell(0, 1), { f: "=A1+1", v: 43893, t: 2, s: cell(0, 0).s });
    Object.assign(cell(1, 1), { v: 43891, t: 2, s: { n: { pattern: "yyyy-mm-dd" } } });
    Object.assign(cell(2, 1), { v: 43891, t: 2 });
  });
  expect(readSheet(now, "Survey").rows).toEqual([
    [day("2020-03-02", 42430), day("2020-03-03", 42431)],
    [day("2021-05-09", 42863), day("2020-03-01", 42429)],
    [day("1904-01-01T06:00:00", 0.25), 43891],
    [day("1904-02-01", 31)],
    [8],
  ]);
  expect(said).toEqual([]);
  expect(opened.said.join()).toContain("count from 1904");
  // Opened again, the grid has what it had.
  const again = openedBook(now, "book.xlsx");
  expect([cellIn(again, 0, 0, 0)!.v, cellIn(again, 0, 1, 1)!.v]).toEqual([43892, 43891]);
});

test("a formula that fills several cells is written with the cells that it fills", () => {
  const value = (row: number, column: number): ICellData => ({ v: row * 10 + column, t: 2 });
  const filled = [{ row: 1, column: 2, area: { top: 1, left: 2, bottom: 2, right: 3 }, value }];
  const { now } = edited(
    bookOf(["x"]),
    (cell) => Object.assign(cell(0, 1), { f: "=ENC.KINDS()", v: 12, t: 2 }),
    filled,
  );
  expect(sheetLook(now, "Survey").formulas.get(1)?.get(2)).toMatchObject({
    text: "_xldudf_ENC_KINDS()",
    fills: { top: 1, left: 2, bottom: 2, right: 3 },
  });
  expect(rowsOf(now)).toEqual([
    ["x", 12, 13],
    [null, 22, 23],
  ]);
  const again = openedBook(now, "book.xlsx");
  expect([cellIn(again, 0, 0, 1)?.f, cellIn(again, 0, 1, 2)]).toEqual(["=ENC.KINDS()", undefined]);
});

test("a formula that the grid cannot work out keeps the result that the file has", () => {
  const book = bookOf([{ formula: "_xlfn.IMAGE(1)", result: "seen" }]);
  expect(edited(book, (cell) => Object.assign(cell(0, 0), { v: "#NAME?" })).edits).toEqual({});
});

test("new sheets, number formats and column widths are carried", () => {
  const workbook = openWorkbook(bookOf(["x", 1]));
  const opened = openedBook(workbook, "book.xlsx");
  const snapshot = structuredClone(opened.snapshot);
  snapshot.sheetOrder.push("new");
  snapshot.sheets["new"] = { id: "new", name: "Notes", cellData: { 1: { 1: { v: "a", t: 1 } } } };
  const sheet = snapshot.sheets["sheet-1"]!;
  sheet.cellData![0]![1]!.s = { n: { pattern: "0.000" } };
  sheet.columnData![0] = { w: 215 };
  const { edits } = bookEdits(opened, { snapshot, filled: () => [] });
  const now = openWorkbook(editWorkbook(workbook, edits).bytes);
  expect(readSheet(now, "Notes").rows).toEqual([[], [null, "a"]]);
  expect(openedBook(now, "b").snapshot.styles["x1"]).toEqual({ n: { pattern: "0.000" } });
  expect(sheetLook(now, "Survey").columns[0]).toEqual({ first: 1, last: 1, width: 30, hidden: false });
});

test("a look that no save carries is said; a heading of a table, a protected sheet and a lost sheet are refused", () => {
  expect(edited(bookOf(["x"]), (cell) => Object.assign(cell(0, 0), { s: { bl: 1 } })).said).toEqual([
    "1 cells look different here than in the file: looks are not saved",
  ]);
  expect(() => edited(livedIn(), (cell) => Object.assign(cell(3, 2), { v: "Height" }))).toThrow(
    /heading of the table Items/,
  );
  const opened = openedBook(openWorkbook(livedIn()), "book.xlsx");
  const locked = opened.sheets.find((sheet) => sheet.locked)!;
  const changed = structuredClone(opened.snapshot);
  changed.sheets[locked.id]!.cellData![1]![0]!.v = 7;
  expect(() => bookEdits(opened, { snapshot: changed, filled: () => [] })).toThrow(/protected sheet/);
  const renamed = structuredClone(opened.snapshot);
  renamed.sheets[locked.id]!.name = "Other";
  expect(() => bookEdits(opened, { snapshot: renamed, filled: () => [] })).toThrow(/without the sheet/);
});
