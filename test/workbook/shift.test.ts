import ExcelJS from "exceljs";
import * as fc from "fast-check";
import { columnLetters, parseArea } from "../../src/workbook/cellRef";
import { editWorkbook } from "../../src/workbook/editWorkbook";
import { openWorkbook, type Workbook } from "../../src/workbook/openWorkbook";
import { textOf } from "../../src/workbook/readXml";
import { readSheet } from "../../src/workbook/readSheet";
import { areaAfter, reverseOf, type Shift } from "../../src/workbook/shift/shift";
import { shiftedEdits } from "../../src/workbook/shift/shiftedEdits";
import { shiftedFormula } from "../../src/workbook/shift/shiftedFormula";
import { verifyEdit } from "../../src/workbook/verifyEdit";
import { livedIn } from "./made/livedIn";
import { partsOf } from "./made/package";

const SHIFT: Shift = { sheet: "My survey", axis: "row", at: 5, count: 2, goes: false };

test.each([
  ["A5+A4", "A7+A4", "#REF!+A4"],
  ["$A$5:B$9", "$A$7:B$11", "$A$5:B$7"],
  ["SUM(A3:A6,A1:A4)", "SUM(A3:A8,A1:A4)", "SUM(A3:A4,A1:A4)"],
  ["'My survey'!A5+Other!A5", "'My survey'!A7+Other!A5", "'My survey'!#REF!+Other!A5"],
  ["'[1]My survey'!A5+[1]Sheet!A5", "'[1]My survey'!A5+[1]Sheet!A5", "'[1]My survey'!A5+[1]Sheet!A5"],
  ['"A5"&A9', '"A5"&A11', '"A5"&A7'],
  ["Items[[#This Row],[A5]]*LOG10(A9)", "Items[[#This Row],[A5]]*LOG10(A11)", "Items[[#This Row],[A5]]*LOG10(A7)"],
  ["SUM(A:A)+SUM($4:$9)", "SUM(A:A)+SUM($4:$11)", "SUM(A:A)+SUM($4:$7)"],
  ["A9:INDEX(B9,1)+Sheet1:Sheet3!A9", "A11:INDEX(B11,1)+Sheet1:Sheet3!A9", "A7:INDEX(B7,1)+Sheet1:Sheet3!A9"],
  [
    '_xldudf_ENC_INSIDE(B9,"height",settings)',
    '_xldudf_ENC_INSIDE(B11,"height",settings)',
    '_xldudf_ENC_INSIDE(B7,"height",settings)',
  ],
])("%s reads %s after two rows come, and %s after they go", (formula, after, without) => {
  expect(shiftedFormula(formula, "my survey", SHIFT)).toBe(after);
  expect(shiftedFormula(formula, "my survey", reverseOf(SHIFT))).toBe(without);
});

test("what comes and goes again leaves every formula and area as it was", () => {
  const place = fc.integer({ min: 1, max: 40 });
  const corner = fc.tuple(place, place, fc.boolean(), fc.boolean());
  const axis = fc.constantFrom("row" as const, "column" as const);
  fc.assert(
    fc.property(corner, corner, axis, place, fc.integer({ min: 1, max: 5 }), (a, b, axis, at, count) => {
      const named = ([row, column, c, r]: typeof a): string =>
        `${c ? "$" : ""}${columnLetters(column)}${r ? "$" : ""}${row}`;
      const formula = `SUM(${named(a)}:${named(b)},${named(a)})`;
      const shift: Shift = { sheet: "S", axis, at, count, goes: false };
      const there = shiftedFormula(formula, "S", shift);
      expect(shiftedFormula(there, "S", reverseOf(shift))).toBe(formula);
      const area = parseArea(`${named(a)}:${named(b)}`.replaceAll("$", ""))!;
      expect(areaAfter(areaAfter(area, shift)!, reverseOf(shift))).toEqual(area);
    }),
  );
});

function shifted(
  bytes: Uint8Array,
  shift: Shift,
): { readonly before: Workbook; readonly now: Workbook; readonly bytes: Uint8Array } {
  const before = openWorkbook(bytes);
  const edit = editWorkbook(before, { shift });
  verifyEdit(before, edit, edit.bytes);
  return { before, now: openWorkbook(edit.bytes), bytes: edit.bytes };
}

const partIn = ({ zip }: Workbook, name: string): string => textOf(zip.get(name)!);
const SURVEY = "xl/worksheets/sheet1.xml";

test("rows that come into a survey take everything with them, and the new rows their formulas and looks", () => {
  const { now, bytes } = shifted(livedIn(), { sheet: "Survey", axis: "row", at: 6, count: 2, goes: false });
  const grid = readSheet(now, "Survey", { formulas: true });
  expect(grid.rows.map((row) => row[0] ?? null)).toEqual([
    "Survey of boxes",
    null,
    null,
    "Shelfmark",
    "A 1",
    null,
    null,
    "A 2",
    "A 3",
    "Total",
  ]);
  expect(grid.formulas.get("F7")).toBe("Items[[#This Row],[H (mm)]]*2");
  const [table] = now.tables;
  expect(table!.area).toEqual({ top: 4, left: 1, bottom: 10, right: 6 });
  const sheet = partIn(now, SURVEY);
  for (const piece of [
    '<row r="6" ht="18" customHeight="1"><c r="A6" s="2"/>',
    'mergeCell ref="A1:F1"',
    'conditionalFormatting sqref="C5:C9"',
    'sqref="C5:E9"',
    "<xm:sqref>A11</xm:sqref>",
  ])
    expect(sheet).toContain(piece);
  expect(partIn(now, "xl/charts/chart1.xml")).toContain("<c:f>Survey!$C$5:$C$9</c:f>");
  expect(partIn(now, "xl/comments1.xml")).toContain('ref="B8"');
  expect(partIn(now, "xl/drawings/vmlDrawing1.vml")).toContain("<x:Row>7</x:Row>");
  expect(partIn(now, "xl/drawings/drawing1.xml")).toContain("<xdr:row>12</xdr:row>");
  // Back again, all parts that name a cell read as before.
  const back = partsOf(shifted(bytes, { sheet: "survey", axis: "row", at: 6, count: 2, goes: true }).bytes);
  const first = partsOf(livedIn());
  for (const name of [
    "xl/charts/chart1.xml",
    "xl/comments1.xml",
    "xl/drawings/drawing1.xml",
    "xl/drawings/vmlDrawing1.vml",
    "xl/tables/table1.xml",
  ])
    expect([name, Buffer.from(back[name]!).toString()]).toEqual([name, Buffer.from(first[name]!).toString()]);
  const text = (parts: typeof back): string =>
    Buffer.from(parts[SURVEY]!)
      .toString()
      .replaceAll(/ spans="[^"]*"|<!--.*?-->/g, "");
  expect(text(back)).toBe(text(first));
});

test("a column that comes into a table has a heading of its own, and one that goes leaves the others their filter", () => {
  const { now } = shifted(livedIn(), { sheet: "Survey", axis: "column", at: 3, count: 1, goes: false });
  expect(now.tables[0]!.columns).toEqual(["Shelfmark", "Title", "Column1", "H (mm)", "W (mm)", "D (mm)", "Twice"]);
  expect(readSheet(now, "Survey").rows[3]![2]).toBe("Column1");
  expect(partIn(now, "xl/tables/table1.xml")).toContain('<filterColumn colId="3">');
  const without = shifted(livedIn(), { sheet: "Survey", axis: "column", at: 4, count: 1, goes: true }).now;
  expect(without.tables[0]!.columns).toEqual(["Shelfmark", "Title", "H (mm)", "D (mm)", "Twice"]);
  expect(partIn(without, SURVEY)).toContain('mergeCell ref="A1:E1"');
});

test("another program reads the shifted workbook: shared formulas, formulas of other sheets, names", async () => {
  const book = new ExcelJS.Workbook();
  const sheet = book.addWorksheet("My survey");
  sheet.addRows([["Height", "Twice"], ...[10, 20, 30, 40].map((height) => [height])]);
  sheet.fillFormula("B2:B5", "A2*2", [20, 40, 60, 80]);
  sheet.getCell("A8").value = { formula: "SUM(A2:A5)", result: 100 };
  book.addWorksheet("Sums").getCell("A1").value = { formula: "SUM('My survey'!A2:A5)", result: 100 };
  book.definedNames.add("'My survey'!$A$2:$A$5", "heights");
  const bytes = new Uint8Array(await book.xlsx.writeBuffer());
  const { bytes: after } = shifted(bytes, { sheet: "My survey", axis: "row", at: 3, count: 1, goes: false });
  const other = new ExcelJS.Workbook();
  await other.xlsx.load(after as unknown as ExcelJS.Buffer);
  const [survey, sums] = other.worksheets;
  expect([2, 3, 4, 5, 6].map((row) => survey!.getCell(row, 2).formula)).toEqual([
    "A2*2",
    "A3*2",
    "A4*2",
    "A5*2",
    "A6*2",
  ]);
  expect([survey!.getCell("A9").formula, sums!.getCell("A1").formula]).toEqual([
    "SUM(A2:A6)",
    "SUM('My survey'!A2:A6)",
  ]);
  expect(other.definedNames.getRanges("heights").ranges).toEqual(["'My survey'!$A$2:$A$6"]);
});

test.each([
  ["the headings of the table Items", { sheet: "Survey", axis: "row", at: 4, count: 1, goes: true }],
  ["the totals of the table Items", { sheet: "Survey", axis: "row", at: 8, count: 1, goes: true }],
  ["every row of the table Items", { sheet: "Survey", axis: "row", at: 5, count: 3, goes: true }],
  ['the column "H (mm)" of the table Items', { sheet: "Survey", axis: "column", at: 3, count: 1, goes: true }],
  ["a formula that fills A1:A3", { sheet: "Summary", axis: "row", at: 2, count: 1, goes: false }],
  ["a protected sheet", { sheet: "Locked", axis: "row", at: 2, count: 1, goes: false }],
] as const)("%s is named before anything is done", (what, shift) => {
  expect(() => editWorkbook(openWorkbook(livedIn()), { shift })).toThrow(what);
});

test("heights and frozen parts that were changed go along with their rows and columns", () => {
  const placed = {
    cells: [],
    widths: [{ sheet: "Items", column: 3, width: 12, hidden: true }],
    rows: [
      { sheet: "Items", row: 2, height: 40 },
      { sheet: "Items", row: 6, hidden: true },
      { sheet: "Other", row: 6, hidden: true },
    ],
    frozen: [{ sheet: "Items", rows: 4, columns: 1, firstRow: 1, firstColumn: 1 }],
    tables: [],
  };
  const shift = { sheet: "Items", axis: "row", at: 3, count: 2 } as const;
  const came = shiftedEdits(placed, { ...shift, goes: false });
  expect([came.rows.map(({ row }) => row), came.frozen[0]!.rows, came.widths]).toEqual([[2, 8, 6], 6, placed.widths]);
  const went = shiftedEdits(placed, { ...shift, goes: true });
  expect([went.rows.map(({ row }) => row), went.frozen[0]!.rows]).toEqual([[2, 4, 6], 2]);
  const column = shiftedEdits(placed, { sheet: "Items", axis: "column", at: 1, count: 1, goes: true });
  expect([column.widths[0]!.column, column.rows, column.frozen[0]!.columns]).toEqual([2, placed.rows, 0]);
  expect(shiftedEdits(came, reverseOf({ ...shift, goes: false }))).toEqual(placed);
});
