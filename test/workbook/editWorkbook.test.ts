import { strFromU8 } from "fflate";
import { createWorkbook } from "../../src/workbook/createWorkbook";
import { editWorkbook } from "../../src/workbook/editWorkbook";
import type { CellContent, ColumnsEdit, EditResult, NewColumn, WorkbookEdits } from "../../src/workbook/edits";
import { openWorkbook, type Workbook } from "../../src/workbook/openWorkbook";
import { ownColumns, ownSheets } from "../../src/workbook/ownMarks";
import { readSheet } from "../../src/workbook/readSheet";
import { siblingCell } from "../../src/workbook/siblingCell";
import { verifyEdit } from "../../src/workbook/verifyEdit";
import { livedIn } from "./made/livedIn";
import { MAIN, packageOf, partsOf, R, relations, small, smallParts } from "./made/package";

/** Edits, proves the bytes, opens the result. */
function edited(
  bytes: Uint8Array,
  edits: WorkbookEdits,
): { result: EditResult; after: Workbook; xml: (part: string) => string } {
  const before = openWorkbook(bytes);
  const result = editWorkbook(before, edits);
  verifyEdit(before, result, result.bytes);
  const parts = partsOf(result.bytes);
  return { result, after: openWorkbook(result.bytes), xml: (part) => strFromU8(parts[part]!) };
}

const outside = (values: readonly CellContent[], more: Partial<NewColumn> = {}): NewColumn => ({
  heading: "outside height",
  cells: values,
  ...more,
});
const inTable = (...columns: NewColumn[]): ColumnsEdit => ({
  sheet: "Survey",
  table: "Items",
  headingRow: 4,
  firstRow: 5,
  lastRow: 7,
  lastColumn: 6,
  columns,
});
const formula = (r: number, result: number): CellContent => ({
  formula: `_xldudf_ENC_OUTSIDE(C${r},D${r},E${r},"tray","height")`,
  result,
});
const three = [formula(5, 304.5), formula(6, 255), formula(7, 124.5)];

const PLAIN = (rows: string, after = "") =>
  `<worksheet xmlns="${MAIN}" xmlns:r="${R}"><sheetData>${rows}</sheetData>${after}</worksheet>`;
const plainRows = (extra = "") =>
  `<row r="1"><c r="A1" t="str"><v>ID</v></c><c r="B1" t="str"><v>H</v></c></row>` +
  `<row r="2"><c r="A2" t="str"><v>a</v></c><c r="B2"><v>1</v></c>${extra}</row><row r="3"><c r="A3" t="str"><v>b</v></c><c r="B3"><v>2</v></c></row>`;
const beside = (...columns: NewColumn[]): ColumnsEdit => ({
  sheet: "Survey",
  headingRow: 1,
  firstRow: 2,
  lastRow: 3,
  lastColumn: 2,
  columns,
});

describe("a calculation on opening, at which figures become #NAME? without the add-in", () => {
  const book = (extra = "") => small(PLAIN(plainRows(extra)));
  const columns = beside(outside([formula(2, 1), formula(3, 2)]));
  const calculation = (bytes: Uint8Array) => /<calcPr[^>]*>/.exec(strFromU8(partsOf(bytes)["xl/workbook.xml"]!))?.[0];

  test("is not asked for where no formula but ours is there, the first time or again", () => {
    const { result } = edited(book(), { columns });
    expect(calculation(result.bytes)).toBe(`<calcPr calcId="191029"/>`);
    expect(calculation(edited(result.bytes, { columns }).result.bytes)).toBe(`<calcPr calcId="191029"/>`);
  });

  test("is asked for where a formula of the user may read what is written again", () => {
    const sum = `<c r="H2"><f>SUM(C2:C3)</f><v>0</v></c>`;
    const once = edited(book(sum), { columns }).result.bytes;
    expect(calculation(once)).not.toContain("fullCalcOnLoad");
    expect(calculation(edited(once, { columns }).result.bytes)).toContain(`fullCalcOnLoad="1"`);
  });
});

describe("new columns of a table", () => {
  const { result, after, xml } = edited(livedIn(), {
    columns: inTable(
      outside(three, { format: "0.00", everyRow: "_xldudf_ENC_OUTSIDE(Items[[#This Row],[H (mm)]])" }),
      outside(["=x", null, { error: "#VALUE!" }], { heading: "Twice" }),
    ),
  });

  test("grow its reference, its filter and its columns, with ids and names of their own", () => {
    expect(xml("xl/tables/table1.xml")).toContain(
      `ref="A4:H8" totalsRowCount="1"><autoFilter ref="A4:H7"><filterColumn colId="2">`,
    );
    expect(xml("xl/tables/table1.xml")).toContain(
      `<tableColumns count="8"><tableColumn id="1" name="Shelfmark" totalsRowLabel="Total"/>`,
    );
    expect(xml("xl/tables/table1.xml")).toContain(
      `<tableColumn id="8" name="outside height"><calculatedColumnFormula>_xldudf_ENC_OUTSIDE(Items[[#This Row],[H (mm)]])</calculatedColumnFormula></tableColumn><tableColumn id="9" name="Twice 2"/></tableColumns>`,
    );
    expect(result.columns).toEqual([
      { heading: "outside height", wantedName: "outside height", column: 7, replaced: false },
      { heading: "Twice 2", wantedName: "Twice", column: 8, replaced: false },
    ]);
  });

  test("hold live formulas with cached results, texts as texts, errors and blanks", () => {
    const grid = readSheet(after, "Survey", { formulas: true });
    expect(grid.rows.slice(3, 8).map((row) => row.slice(6))).toEqual([
      ["outside height", "Twice 2"],
      [304.5, "=x"],
      [255],
      [124.5, { error: "#VALUE!" }],
      [],
    ]);
    expect(grid.formulas.get("G6")).toBe(`_xldudf_ENC_OUTSIDE(C6,D6,E6,"tray","height")`);
    expect(grid.uncached).toEqual([]);
    expect(xml("xl/worksheets/sheet1.xml")).toContain(`<f>_xldudf_ENC_OUTSIDE(C5,D5,E5,"tray","height")</f>`);
  });

  test("look like their neighbour: its heading, its cells with the format asked for, its totals cell", () => {
    const sheet = xml("xl/worksheets/sheet1.xml");
    expect(sheet).toContain(`<c r="G4" s="1" t="inlineStr">`);
    expect(sheet).toContain(`<c r="G5" s="4"><f>`);
    expect(sheet).toContain(`<c r="G8" s="1"/>`);
    expect(xml("xl/styles.xml")).toContain(
      `<xf numFmtId="2" fontId="0" fillId="0" borderId="0" xfId="0" applyNumberFormat="1"><alignment horizontal="right"/></xf>`,
    );
  });

  test("cut a stretch of column widths around them", () => {
    expect(xml("xl/worksheets/sheet1.xml")).toContain(
      `<col min="5" max="6" width="10" style="3" hidden="0"/><col min="7" max="7" width="18" style="3" customWidth="1"/><col min="8" max="8" width="11" style="3" customWidth="1"/><col min="9" max="16384" width="10" style="3" hidden="0"/></cols>`,
    );
  });

  test("leave every other letter of the sheet as it was", () => {
    const before = strFromU8(partsOf(livedIn())["xl/worksheets/sheet1.xml"]!);
    const now = xml("xl/worksheets/sheet1.xml");
    const strip = (text: string) =>
      text
        .replace(/<c r="[GH]\d+"[^>]*?(?:\/>|>.*?<\/c>)/g, "")
        .replace(/<cols>.*<\/cols>/, "")
        .replace(/<dimension[^>]*>/, "")
        .replace(/ spans="1:6"/g, "");
    expect(strip(now)).toBe(strip(before));
    expect(now.slice(now.indexOf("</sheetData>"))).toBe(before.slice(before.indexOf("</sheetData>")));
  });

  test("touch no part but those that must know", () => {
    expect([...result.changed].sort()).toEqual([
      "[Content_Types].xml",
      "xl/_rels/workbook.xml.rels",
      "xl/styles.xml",
      "xl/tables/table1.xml",
      "xl/workbook.xml",
      "xl/worksheets/sheet1.xml",
    ]);
    expect(result.removed).toEqual(["xl/calcChain.xml"]);
    expect(result.added).toEqual([]);
  });

  test("ask for a full calculation, since formulas of the user may read the whole table, and drop its old order", () => {
    expect(xml("xl/workbook.xml")).toContain(`<calcPr calcId="191029" fullCalcOnLoad="1"/>`);
    expect(xml("xl/_rels/workbook.xml.rels")).not.toContain("calcChain");
    expect(xml("[Content_Types].xml")).not.toContain("calcChain");
  });

  test("are marked by hidden names, with the heading as it was asked for", () => {
    expect(ownColumns(after).map(({ column, wantedName, lastRow }) => ({ column, wantedName, lastRow }))).toEqual([
      { column: 7, wantedName: "outside height", lastRow: 7 },
      { column: 8, wantedName: "Twice", lastRow: 7 },
    ]);
    expect(after.names.filter((name) => !name.hidden).map((name) => name.name)).toEqual(["unit", "_xlnm.Print_Titles"]);
  });
});

describe("a later run", () => {
  const first = edited(livedIn(), { columns: inTable(outside(three), outside([1, 2, 3], { heading: "caliper" })) })
    .result.bytes;

  test("with the same columns gives the same file", () => {
    const again = edited(first, { columns: inTable(outside(three), outside([1, 2, 3], { heading: "caliper" })) });
    expect(Buffer.from(again.result.bytes).equals(Buffer.from(first))).toBe(true);
    expect(again.result.columns.map((column) => column.replaced)).toEqual([true, true]);
  });

  test("writes its own columns again in their places, and adds others after them", () => {
    const { after } = edited(first, { columns: inTable(outside([9, 8, 7], { heading: "mass" }), outside([4, 5, 6])) });
    expect(
      readSheet(after, "Survey")
        .rows.slice(3, 7)
        .map((row) => row.slice(5)),
    ).toEqual([
      ["Twice", "outside height", "mass"],
      [600, 4, 9],
      [501, 5, 8],
      [240, 6, 7],
    ]);
    expect(after.tables[0]!.columns.slice(5)).toEqual(["Twice", "outside height", "mass"]);
    expect(after.tables[0]!.area.right).toBe(8);
  });

  test("keeps a column that the user renamed under the user's name", () => {
    const parts = partsOf(first);
    const rename = (part: string) => strFromU8(parts[part]!).replaceAll("outside height", "Box height");
    const renamed = packageOf({
      ...parts,
      "xl/worksheets/sheet1.xml": rename("xl/worksheets/sheet1.xml"),
      "xl/tables/table1.xml": rename("xl/tables/table1.xml"),
    });
    const { after, result } = edited(renamed, { columns: inTable(outside([4, 5, 6])) });
    expect(result.columns).toEqual([
      { heading: "Box height", wantedName: "outside height", column: 7, replaced: true },
    ]);
    expect(after.tables[0]!.columns).toEqual([
      "Shelfmark",
      "Title",
      "H (mm)",
      "W (mm)",
      "D (mm)",
      "Twice",
      "Box height",
    ]);
  });

  test("empties, and does not delete, a column that the user's own follow in the table", () => {
    const parts = partsOf(first);
    const sheet = strFromU8(parts["xl/worksheets/sheet1.xml"]!).replace(
      /(<c r="H4".*?<\/c>)/,
      `$1<c r="I4" t="str"><v>Mine</v></c>`,
    );
    const table = strFromU8(parts["xl/tables/table1.xml"]!)
      .replace("A4:H8", "A4:I8")
      .replace("A4:H7", "A4:I7")
      .replace(`count="8"`, `count="9"`)
      .replace("</tableColumns>", `<tableColumn id="20" name="Mine"/></tableColumns>`);
    const { after, result } = edited(
      packageOf({ ...parts, "xl/worksheets/sheet1.xml": sheet, "xl/tables/table1.xml": table }),
      {
        columns: inTable(outside([4, 5, 6])),
      },
    );
    expect(
      readSheet(after, "Survey")
        .rows.slice(3, 6)
        .map((row) => row.slice(6)),
    ).toEqual([["outside height", "caliper", "Mine"], [4], [5]]);
    expect(result.notes).toEqual([expect.stringContaining('column H "caliper" of an earlier run is emptied')]);
    expect(ownColumns(after).map((column) => column.wantedName)).toEqual(["outside height", "caliper"]);
  });

  test("finds its columns by their marks when columns were inserted before them", () => {
    const moved = partsOf(edited(small(PLAIN(plainRows())), { columns: beside(outside([1, 2])) }).result.bytes);
    const sheet = strFromU8(moved["xl/worksheets/sheet1.xml"]!).replace(/r="C(\d)"/g, 'r="E$1"');
    const book = strFromU8(moved["xl/workbook.xml"]!).replace("$C$1:$C$3", "$E$1:$E$3");
    const { after, result } = edited(
      packageOf({ ...moved, "xl/worksheets/sheet1.xml": sheet, "xl/workbook.xml": book }),
      { columns: beside(outside([7, 8])) },
    );
    expect(result.columns[0]).toMatchObject({ column: 5, replaced: true });
    expect(readSheet(after, "Survey").rows[1]).toEqual(["a", 1, null, null, 7]);
  });

  test("clears cells below the survey when it has become shorter", () => {
    const long = edited(small(PLAIN(plainRows())), { columns: beside(outside([1, 2])) }).result.bytes;
    const { after } = edited(long, { columns: { ...beside(outside([5])), lastRow: 2 } });
    expect(readSheet(after, "Survey").rows.map((row) => row[2] ?? null)).toEqual(["outside height", 5, null]);
  });

  test("drops the mark of a column that the user deleted", () => {
    const parts = partsOf(first);
    const book = strFromU8(parts["xl/workbook.xml"]!).replace("'Survey'!$H$4:$H$7", "#REF!");
    const { after } = edited(packageOf({ ...parts, "xl/workbook.xml": book }), { columns: inTable(outside(three)) });
    expect(after.names.filter((name) => name.name.startsWith("_enclosure"))).toHaveLength(1);
  });
});

describe("new columns beside a plain survey", () => {
  test("stand right of it, in rows that may not exist yet", () => {
    const { after, xml } = edited(
      small(PLAIN(`<row r="1"><c r="A1" t="str"><v>ID</v></c></row><row r="4"><c r="A4"><v>9</v></c></row>`)),
      {
        columns: {
          sheet: "Survey",
          headingRow: 1,
          firstRow: 2,
          lastRow: 5,
          lastColumn: 1,
          columns: [outside([1, null, 3, 4])],
        },
      },
    );
    expect(readSheet(after, "Survey").rows).toEqual([["ID", "outside height"], [null, 1], [], [9, 3], [null, 4]]);
    expect(xml("xl/worksheets/sheet1.xml")).toContain(
      `<cols><col min="2" max="2" width="18" customWidth="1"/></cols><sheetData><row r="1">`,
    );
  });

  test("go past whatever stands in their way, and say so", () => {
    const { result } = edited(small(PLAIN(plainRows(`<c r="D2"><v>5</v></c>`))), {
      columns: beside(outside([1, 2]), outside([1, 2])),
    });
    expect(result.columns.map(({ column, heading }) => [column, heading])).toEqual([
      [5, "outside height"],
      [6, "outside height 2"],
    ]);
    expect(result.notes[0]).toContain("so the new columns begin at column E");
  });

  test("go past merged cells that would hide them", () => {
    const merged = `<mergeCells count="1"><mergeCell ref="C2:D2"/></mergeCells>`;
    expect(
      edited(small(PLAIN(plainRows(), merged)), { columns: beside(outside([1, 2])) }).result.columns[0]!.column,
    ).toBe(5);
  });

  describe("where a chart or picture floats", () => {
    const place = (corner: string, column: number, row: number) =>
      `<x:${corner}><x:col>${column}</x:col><x:colOff>0</x:colOff><x:row>${row}</x:row><x:rowOff>0</x:rowOff></x:${corner}>`;
    const picture = `<x:pic><x:spPr><a:xfrm xmlns:a="a"><a:ext cx="9999999" cy="9999999"/></a:xfrm></x:spPr></x:pic><x:clientData/>`;
    /** Where a column goes when the survey is in A1:B3 and this floats. */
    const columnBeside = (anchors: string) => {
      const parts = smallParts(PLAIN(plainRows(), `<drawing r:id="rId1"/>`));
      const drawing = `<x:wsDr xmlns:x="http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing">${anchors}</x:wsDr>`;
      const bytes = packageOf({
        ...parts,
        "xl/worksheets/_rels/sheet1.xml.rels": relations(["rId1", "drawing", "../drawings/drawing1.xml"]),
        "xl/drawings/drawing1.xml": drawing,
      });
      const { result, xml } = edited(bytes, { columns: beside(outside([1, 2])) });
      expect(xml("xl/drawings/drawing1.xml")).toBe(drawing);
      return result.columns[0]!.column;
    };

    test.each([
      ["two corners", `<x:twoCellAnchor>${place("from", 3, 1)}${place("to", 6, 12)}${picture}</x:twoCellAnchor>`, 3],
      [
        "two corners over C",
        `<x:twoCellAnchor>${place("from", 2, 0)}${place("to", 5, 1)}${picture}</x:twoCellAnchor>`,
        7,
      ],
      [
        "one corner and a size of three columns",
        `<x:oneCellAnchor>${place("from", 2, 1)}<x:ext cx="1828800" cy="190500"/>${picture}</x:oneCellAnchor>`,
        7,
      ],
      [
        "a distance and a size",
        `<x:absoluteAnchor><x:pos x="1219200" y="0"/><x:ext cx="609600" cy="190500"/>${picture}</x:absoluteAnchor>`,
        5,
      ],
      [
        "two corners far below",
        `<x:twoCellAnchor>${place("from", 2, 30)}${place("to", 6, 40)}${picture}</x:twoCellAnchor>`,
        3,
      ],
      ["a damaged corner", `<x:twoCellAnchor>${picture}</x:twoCellAnchor>`, 3],
    ])("%s: the columns stand clear of it", (_, anchors, column) => {
      expect(columnBeside(anchors)).toBe(column);
    });
  });

  test("are taken into the sheet's own filter, so that sorting keeps rows together", () => {
    const parts = smallParts(PLAIN(plainRows(), `<autoFilter ref="A1:B3"/>`));
    const book = (parts["xl/workbook.xml"] as string).replace(
      "</sheets>",
      `</sheets><definedNames><definedName name="_xlnm._FilterDatabase" localSheetId="0" hidden="1">Survey!$A$1:$B$3</definedName></definedNames>`,
    );
    const { xml } = edited(packageOf({ ...parts, "xl/workbook.xml": book }), { columns: beside(outside([1, 2])) });
    expect(xml("xl/worksheets/sheet1.xml")).toContain(`<autoFilter ref="A1:C3"/>`);
    expect(xml("xl/workbook.xml")).toContain(`hidden="1">'Survey'!$A$1:$C$3<`);
  });

  test("fit a sheet without addresses, with a prefix, or whose rows are one empty element", () => {
    const bare = `<x:worksheet xmlns:x="${MAIN}"><x:sheetData><x:row><x:c><x:v>1</x:v></x:c></x:row><x:row><x:c><x:v>2</x:v></x:c></x:row></x:sheetData></x:worksheet>`;
    const one: ColumnsEdit = {
      sheet: "Survey",
      headingRow: 1,
      firstRow: 2,
      lastRow: 3,
      lastColumn: 1,
      columns: [outside([true, "two\r\n<3"])],
    };
    const { after, xml } = edited(small(bare), { columns: one });
    expect(readSheet(after, "Survey").rows).toEqual([
      [1, "outside height"],
      [2, true],
      [null, "two\r\n<3"],
    ]);
    expect(xml("xl/worksheets/sheet1.xml")).toContain(`<x:c r="B2" t="b"><x:v>1</x:v></x:c>`);
    const empty = edited(small(`<worksheet xmlns="${MAIN}"><sheetData/></worksheet>`), { columns: one });
    expect(readSheet(empty.after, "Survey").rows).toEqual([
      [null, "outside height"],
      [null, true],
      [null, "two\r\n<3"],
    ]);
  });

  test("are refused past the last column of a sheet", () => {
    const wide = `<row r="1"><c r="XFD1"><v>1</v></c></row>`;
    const columns = { ...beside(outside([1, 2])), lastColumn: 16_384 };
    expect(() => editWorkbook(openWorkbook(small(PLAIN(wide))), { columns })).toThrow(
      "a sheet ends at column XFD (16384)",
    );
    const many = Array.from({ length: 16_383 }, () => outside([1, 2]));
    expect(() => editWorkbook(openWorkbook(small(PLAIN(plainRows()))), { columns: beside(...many) })).toThrow(
      "columns up to number 16385",
    );
  });

  test("take up to the last column of a sheet", () => {
    const last = edited(small(PLAIN(plainRows())), { columns: { ...beside(outside([1, 2])), lastColumn: 16_383 } });
    expect(last.result.columns[0]!.column).toBe(16_384);
  });

  test("take the number format of the neighbour, but never a date's or a text's", () => {
    const styles = `<styleSheet xmlns="${MAIN}"><cellXfs count="4"><xf numFmtId="0"/><xf numFmtId="14"/><xf numFmtId="49"/><xf numFmtId="2"/></cellXfs></styleSheet>`;
    for (const [style, expected] of [
      [1, 0],
      [2, 0],
      [3, 3],
    ]) {
      const parts = smallParts(PLAIN(plainRows().replaceAll(`<c r="B`, `<c s="${style}" r="B`)), {
        "xl/styles.xml": styles,
        "xl/_rels/workbook.xml.rels": relations(
          ["rId1", "worksheet", "worksheets/sheet1.xml"],
          ["rId2", "styles", "styles.xml"],
        ),
      });
      const { xml } = edited(packageOf(parts), { columns: beside(outside([1, 2])) });
      const number = Number(/<c r="C2" s="(\d+)"/.exec(xml("xl/worksheets/sheet1.xml"))![1]);
      const formats = [...xml("xl/styles.xml").matchAll(/<xf numFmtId="(\d+)"/g)].map((match) => Number(match[1]));
      expect(formats[number]).toBe(expected === 3 ? 2 : 0);
    }
  });
});

describe("an edit is refused with the reason", () => {
  const edit = (bytes: Uint8Array, edits: WorkbookEdits) => () => editWorkbook(openWorkbook(bytes), edits);

  test("a formula that names a new column which nobody writes: a fault in the caller, said as one", () => {
    const lonely = outside([{ formula: `${siblingCell("caliper", 5)}*2`, result: 4 }, null, null]);
    expect(edit(livedIn(), { columns: inTable(lonely) })).toThrow(
      new RangeError('a formula names the new column "caliper", and no such column is written'),
    );
  });

  test("on a protected sheet", () => {
    expect(edit(livedIn(), { cells: [{ sheet: "Locked", row: 1, column: 4, content: 1 }] })).toThrow(
      'sheet "Locked": got a protected sheet; is kept as it is',
    );
  });

  test("when the structure is protected and a sheet would be added", () => {
    const locked = small(PLAIN(plainRows()), {
      "xl/workbook.xml": `<workbook xmlns="${MAIN}" xmlns:r="${R}"><workbookProtection lockStructure="1"/><sheets><sheet name="Survey" sheetId="1" r:id="rId1"/></sheets></workbook>`,
    });
    expect(edit(locked, { sheets: [{ name: "cut list", rows: [[1]] }] })).toThrow(
      "a workbook whose structure is protected",
    );
    expect(edit(locked, { columns: beside(outside([1, 2])) })).not.toThrow();
  });

  test("on a signed workbook, and on a Strict one", () => {
    expect(edit(livedIn({ "_xmlsignatures/origin.sigs": "" }), {})).toThrow("digitally signed");
    const strict = "http://purl.oclc.org/ooxml/spreadsheetml/main";
    const bytes = small(PLAIN(plainRows()).replace(MAIN, strict), {
      "xl/workbook.xml": `<workbook xmlns="${strict}" xmlns:r="http://purl.oclc.org/ooxml/officeDocument/relationships"><sheets><sheet name="Survey" sheetId="1" r:id="rId1"/></sheets></workbook>`,
    });
    expect(edit(bytes, { columns: beside(outside([1, 2])) })).toThrow("a Strict Open XML workbook");
  });

  test("when it would break a formula that cells share", () => {
    const shared = plainRows().replace("<v>1</v>", `<f t="shared" ref="B2:B3" si="0">A2</f><v>1</v>`);
    expect(edit(small(PLAIN(shared)), { cells: [{ sheet: "Survey", row: 2, column: 2, content: 5 }] })).toThrow(
      'cell B2 of "Survey": got a formula that B3 shares',
    );
  });

  test("when a sheet or table name is the user's, or no spreadsheet takes it", () => {
    expect(edit(livedIn(), { sheets: [{ name: "summary", rows: [] }] })).toThrow(
      "has a sheet of that name that this program did not write",
    );
    expect(edit(livedIn(), { sheets: [{ name: "cuts", rows: [["a"]], table: "items" }] })).toThrow(
      'table: got "items"',
    );
    expect(edit(livedIn(), { sheets: [{ name: "a/b", rows: [] }] })).toThrow('sheet: got "a/b"');
    expect(edit(livedIn(), { sheets: [{ name: "cuts", rows: [["a", "A"]], table: "Cuts" }] })).toThrow("none twice");
  });

  test("when a text is longer than a cell holds", () => {
    expect(edit(small(PLAIN(plainRows())), { columns: beside(outside(["x".repeat(32_768), 1])) })).toThrow(
      "cell C2: got a text of 32768 letters",
    );
  });

  test("when a sheet to delete is the user's", () => {
    expect(edit(livedIn(), { removeSheets: ["Summary"] })).toThrow("did not write");
  });
});

describe("sheets of our own", () => {
  const cuts = {
    name: "cut list",
    rows: [
      ["part", "length"],
      ["base", 300],
    ] as CellContent[][],
    table: "CutList",
    replaceable: true,
    formats: [undefined, "0.0"],
  };
  const first = edited(livedIn(), {
    sheets: [
      cuts,
      {
        name: "settings",
        rows: [
          ["setting", "value"],
          ["unit", "mm"],
        ],
      },
    ],
    names: [{ name: "settings", refersTo: "settings!$A$1:$B$2" }],
  });

  test("come after the last, with a bold heading, widths, frozen rows, a table, and names for what is missing", () => {
    expect(first.after.sheets.map((sheet) => sheet.name)).toEqual([
      "Survey",
      "Summary",
      "Locked",
      "cut list",
      "settings",
    ]);
    expect(first.after.tables.find((table) => table.name === "CutList")).toMatchObject({
      sheet: "cut list",
      id: 4,
      columns: ["part", "length"],
    });
    const sheet = first.xml("xl/worksheets/sheet4.xml");
    expect(sheet).toContain(`<pane ySplit="1" topLeftCell="A2" activePane="bottomLeft" state="frozen"/>`);
    expect(sheet).toContain("<cols>");
    expect(first.after.names.map((name) => name.name)).toEqual([
      "unit",
      "_xlnm.Print_Titles",
      "_enclosure_sheet_1",
      "settings",
    ]);
    expect(ownSheets(first.after)).toEqual([{ mark: "_enclosure_sheet_1", sheet: "cut list", wantedName: "cut list" }]);
  });

  test("are replaced by a later run, with all that hung on them, and nothing else", () => {
    const again = edited(first.result.bytes, {
      sheets: [
        {
          ...cuts,
          rows: [
            ["part", "length"],
            ["wall", 120],
            ["wall", 90],
          ],
        },
      ],
    });
    expect(again.after.sheets.map((sheet) => sheet.name)).toEqual([
      "Survey",
      "Summary",
      "Locked",
      "cut list",
      "settings",
    ]);
    expect(readSheet(again.after, "cut list").rows).toEqual([
      ["part", "length"],
      ["wall", 120],
      ["wall", 90],
    ]);
    expect(again.after.tables.map((table) => table.name).sort()).toEqual(["CutList", "Items"]);
    expect(again.result.removed).toEqual(["xl/tables/table2.xml"]);
  });

  test("keep the name that the user gave them", () => {
    const parts = partsOf(first.result.bytes);
    const book = strFromU8(parts["xl/workbook.xml"]!)
      .replace('name="cut list"', 'name="To cut"')
      .replace("'cut list'!$A$1", "'To cut'!$A$1");
    const again = edited(packageOf({ ...parts, "xl/workbook.xml": book }), { sheets: [cuts] });
    expect(again.after.sheets.map((sheet) => sheet.name)).toContain("To cut");
    expect(again.after.sheets).toHaveLength(5);
  });

  test("go when wantedName, with their parts, names and marks; positions that others are known by move", () => {
    const parts = partsOf(first.result.bytes);
    const book = strFromU8(parts["xl/workbook.xml"]!)
      .replace(
        "</definedNames>",
        `<definedName name="_xlnm.Print_Area" localSheetId="4">settings!$A$1</definedName></definedNames>`,
      )
      .replace('activeTab="1"', 'activeTab="4"');
    const gone = edited(packageOf({ ...parts, "xl/workbook.xml": book }), { removeSheets: ["cut list"] });
    expect(gone.after.sheets.map((sheet) => sheet.name)).toEqual(["Survey", "Summary", "Locked", "settings"]);
    expect([...gone.result.removed].sort()).toEqual([
      "xl/tables/table2.xml",
      "xl/worksheets/_rels/sheet4.xml.rels",
      "xl/worksheets/sheet4.xml",
    ]);
    expect(gone.after.names.find((name) => name.name === "_xlnm.Print_Area")?.sheet).toBe("settings");
    expect(gone.xml("xl/workbook.xml")).toContain('activeTab="3"');
    expect(gone.xml("xl/workbook.xml")).not.toContain("_enclosure_sheet");
  });

  test("stay when a formula elsewhere uses them", () => {
    const parts = partsOf(first.result.bytes);
    const sheet = strFromU8(parts["xl/worksheets/sheet2.xml"]!).replace(
      "</row></sheetData>",
      `<c r="B3"><f>'Cut list'!B2</f><v>1</v></c></row></sheetData>`,
    );
    const used = openWorkbook(packageOf({ ...parts, "xl/worksheets/sheet2.xml": sheet }));
    expect(() => editWorkbook(used, { removeSheets: ["cut list"] })).toThrow(
      "which something else in the workbook uses (xl/worksheets/sheet2.xml)",
    );
  });

  test("never take a name from the user", () => {
    const { after, result } = edited(livedIn(), { names: [{ name: "UNIT", refersTo: "Survey!$A$1" }] });
    expect(after.names.map((name) => [name.name, name.refersTo])).toContainEqual(["unit", "Summary!$A$1"]);
    expect(after.names).toHaveLength(2);
    expect(result.notes).toEqual(["the name UNIT is in the workbook already and stays as it is"]);
  });
});

test("single cells are written with their style kept", () => {
  const { xml } = edited(livedIn(), { cells: [{ sheet: "Survey", row: 6, column: 3, content: 77 }] });
  expect(xml("xl/worksheets/sheet1.xml")).toContain(`<c r="C6" s="3"><v>77</v></c><c r="D6" s="3"><v>180</v></c>`);
});

test("macros are kept, and stay known", () => {
  const bytes = livedIn({
    "xl/vbaProject.bin": Uint8Array.of(1, 2, 3),
    "[Content_Types].xml": strFromU8(partsOf(livedIn())["[Content_Types].xml"]!).replace(
      "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml",
      "application/vnd.ms-excel.sheet.macroEnabled.main+xml",
    ),
    "xl/_rels/workbook.xml.rels": strFromU8(partsOf(livedIn())["xl/_rels/workbook.xml.rels"]!).replace(
      "</Relationships>",
      `<Relationship Id="rId9" Type="http://schemas.microsoft.com/office/2006/relationships/vbaProject" Target="vbaProject.bin"/></Relationships>`,
    ),
  });
  const { after, result } = edited(bytes, { columns: inTable(outside(three)) });
  expect(after.macros).toBe(true);
  expect(result.changed).not.toContain("xl/vbaProject.bin");
});

test("an untouched part keeps even its packed bytes", () => {
  const before = openWorkbook(livedIn());
  const { result } = edited(livedIn(), { columns: inTable(outside(three)) });
  const after = openWorkbook(result.bytes);
  for (const entry of before.zip.values()) {
    if (result.changed.includes(entry.name) || result.removed.includes(entry.name)) continue;
    expect(Buffer.from(after.zip.get(entry.name)!.packed).equals(Buffer.from(entry.packed))).toBe(true);
  }
});

describe("the proof of an edit", () => {
  const before = openWorkbook(livedIn());
  const result = editWorkbook(before, { columns: inTable(outside(three)) });
  const parts = partsOf(result.bytes);

  test("fails when an untouched part differs, is lost, or a part came from nowhere", () => {
    expect(() => verifyEdit(before, result, packageOf({ ...parts, "customXml/item1.xml": "<notes/>" }))).toThrow(
      "customXml/item1.xml has changed",
    );
    const lost = Object.fromEntries(Object.entries(parts).filter(([name]) => name !== "xl/media/image1.png"));
    expect(() => verifyEdit(before, result, packageOf(lost))).toThrow("xl/media/image1.png is lost");
    expect(() => verifyEdit(before, result, packageOf({ ...parts, "xl/extra.xml": "<x/>" }))).toThrow(
      "xl/extra.xml came from nowhere",
    );
  });

  test("fails when a changed part is not well-formed or the file is cut short", () => {
    expect(() =>
      verifyEdit(before, result, packageOf({ ...parts, "xl/worksheets/sheet1.xml": "<worksheet>" })),
    ).toThrow("not well-formed");
    expect(() => verifyEdit(before, result, result.bytes.slice(0, -100))).toThrow("cut short");
  });
});

describe("a new workbook", () => {
  const bytes = createWorkbook(
    [
      {
        name: "Survey",
        table: "Survey",
        rows: [
          ["ID", "Height"],
          ["0012", 30.5],
          ["=1+1", { formula: "B2*2", result: 61 }],
        ],
        formats: [undefined, "0.0"],
      },
    ],
    [{ name: "mine", refersTo: "Survey!$A$1" }],
  );
  const workbook = openWorkbook(bytes);

  test("holds its rows, table and names", () => {
    expect(readSheet(workbook, "Survey", { formulas: true })).toMatchObject({
      rows: [
        ["ID", "Height"],
        ["0012", 30.5],
        ["=1+1", 61],
      ],
    });
    expect(workbook.tables).toMatchObject([
      { name: "Survey", columns: ["ID", "Height"], area: { top: 1, left: 1, bottom: 3, right: 2 } },
    ]);
    expect(workbook.names).toMatchObject([{ name: "mine" }]);
  });

  test("has a bold heading, and marks a text that reads as a formula as text", () => {
    const styles = strFromU8(partsOf(bytes)["xl/styles.xml"]!);
    const sheet = strFromU8(partsOf(bytes)["xl/worksheets/sheet1.xml"]!);
    const style = (cell: string) => Number(new RegExp(`<c r="${cell}" s="(\\d+)"`).exec(sheet)![1]);
    const formats = [...styles.slice(styles.indexOf("<cellXfs")).matchAll(/<xf [^>]*>/g)].map((match) => match[0]);
    expect(styles).toContain("<font><b/><sz");
    expect(formats[style("A1")]).toContain('fontId="1"');
    expect(formats[style("A3")]).toContain('quotePrefix="1"');
    expect(formats[style("B2")]).toContain('numFmtId="164"');
  });

  test("is the same each time", () => {
    const again = () => createWorkbook([{ name: "S", rows: [[1]] }]);
    expect(Buffer.from(again()).equals(Buffer.from(again()))).toBe(true);
  });
});
