import { strFromU8 } from "fflate";
import { createWorkbook } from "../../src/workbook/createWorkbook";
import { editWorkbook } from "../../src/workbook/editWorkbook";
import type { WorkbookEdits } from "../../src/workbook/edits";
import { openWorkbook } from "../../src/workbook/openWorkbook";
import { readSheet } from "../../src/workbook/readSheet";
import { siblingCell } from "../../src/workbook/siblingCell";
import { verifyEdit } from "../../src/workbook/verifyEdit";
import { livedIn } from "./made/livedIn";
import { MAIN, packageOf, partsOf, R, small } from "./made/package";
import { edited, outside, inTable, formula, three, PLAIN, plainRows, beside } from "./editedBook";

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
