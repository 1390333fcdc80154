import { strFromU8 } from "fflate";
import { editWorkbook } from "../../src/workbook/editWorkbook";
import type { ColumnsEdit } from "../../src/workbook/edits";
import { openWorkbook } from "../../src/workbook/openWorkbook";
import { ownColumns } from "../../src/workbook/ownMarks";
import { readSheet } from "../../src/workbook/readSheet";
import { livedIn } from "./made/livedIn";
import { MAIN, packageOf, partsOf, relations, small, smallParts } from "./made/package";
import { edited, outside, inTable, three, PLAIN, plainRows, beside } from "./editedBook";

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
