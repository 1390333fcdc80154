import { strToU8, zipSync } from "fflate";
import fc from "fast-check";
import { InputError } from "../../src/measure/errors";
import { openWorkbook } from "../../src/workbook/openWorkbook";
import { readSheet } from "../../src/workbook/readSheet";
import { LARGEST_PART } from "../../src/workbook/zip";
import { contentTypes, MAIN, packageOf, R, relations, small, smallParts } from "./made/package";

const ROW = `<row r="1"><c r="A1"><v>1</v></c></row>`;

/** Opens and reads the first sheet, as the command line would. */
function readAll(bytes: Uint8Array): void {
  const workbook = openWorkbook(bytes);
  for (const sheet of workbook.sheets) readSheet(workbook, sheet.name);
}

function message(bytes: Uint8Array): string {
  try {
    readAll(bytes);
  } catch (error) {
    if (error instanceof InputError) return error.message;
    throw error;
  }
  return "";
}

/** Overwrites a 32-bit figure of the first central directory entry whose name is given. */
function withDeclaredSize(bytes: Uint8Array, name: string, size: number): Uint8Array {
  const changed = bytes.slice();
  const view = new DataView(changed.buffer);
  for (let at = 0; at + 46 < changed.length; at++) {
    if (view.getUint32(at, true) !== 0x02014b50) continue;
    const length = view.getUint16(at + 28, true);
    if (new TextDecoder().decode(changed.subarray(at + 46, at + 46 + length)) === name)
      view.setUint32(at + 24, size, true);
  }
  return changed;
}

describe("a package is refused with the reason", () => {
  const whole = small(ROW);

  test("when it is cut short anywhere", () => {
    for (const share of [0.02, 0.3, 0.6, 0.9, 0.999]) {
      const text = message(whole.slice(0, Math.floor(whole.length * share)));
      expect(text).toMatch(/workbook: got .*(cut short|no zip archive)/);
      expect(text).toContain("copy it again");
    }
  });

  test("when it is empty, a text, an old or locked workbook, or another kind of document", () => {
    expect(message(new Uint8Array())).toContain("an empty file");
    expect(message(strToU8("a,b\n1,2\n"))).toContain("no zip archive");
    expect(message(Uint8Array.of(0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1, 0, 0))).toContain(
      "locked with a password",
    );
    expect(message(zipSync({ mimetype: strToU8("application/vnd.oasis.opendocument.spreadsheet") }))).toContain(
      "OpenDocument",
    );
    expect(message(zipSync({ "notes.txt": strToU8("hello") }))).toContain("a zip archive that is not a workbook");
  });

  test("when a part declares a gigabyte, before anything is unpacked", () => {
    const before = process.memoryUsage().arrayBuffers;
    expect(message(withDeclaredSize(whole, "xl/worksheets/sheet1.xml", 1_073_741_824))).toContain(
      "xl/worksheets/sheet1.xml of 1074 MB",
    );
    expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(50_000_000);
    expect(LARGEST_PART).toBeLessThan(536_870_888);
  });

  test("when a part unpacks a thousandfold (a bomb)", () => {
    const bomb = small(ROW, { "xl/media/image1.png": new Uint8Array(60_000_000) });
    expect(bomb.length).toBeLessThan(100_000);
    expect(message(bomb)).toMatch(/unpacks \d+-fold to 60 MB/);
  });

  test("when a part unpacks to more or less than it declares", () => {
    const sheet = `<worksheet xmlns="${MAIN}"><sheetData>${ROW}</sheetData>${" ".repeat(5_000_000)}</worksheet>`;
    expect(message(withDeclaredSize(small(sheet), "xl/worksheets/sheet1.xml", 3_000))).toContain(
      "more than it declares",
    );
    expect(message(withDeclaredSize(small(sheet), "xl/worksheets/sheet1.xml", 6_000_000))).toContain("wrong checksum");
  });

  test("when parts are many", () => {
    const many = Object.fromEntries(Array.from({ length: 20_001 }, (_, i) => [`x${i}`, ""]));
    expect(message(packageOf(many))).toContain("20001 parts");
  });

  test("when a name leads outside", () => {
    for (const name of [
      "../evil.xml",
      "xl/../../evil.xml",
      "/etc/evil",
      "C:/evil",
      "..\\evil.xml",
      "xl\\..\\..\\evil",
    ]) {
      expect(message(small(ROW, { [name]: "x" }))).toContain("points outside the workbook");
    }
    expect(
      message(small(ROW, { "xl/_rels/workbook.xml.rels": relations(["rId1", "worksheet", "../../../etc/passwd"]) })),
    ).toContain("points outside the workbook");
  });

  test("when two parts have one name", () => {
    expect(message(small(ROW, { "XL/Workbook.xml": "<workbook/>" }))).toContain("two parts with the name");
  });

  test("when bytes inside a part are wrong", () => {
    const flipped = small(ROW).slice();
    const at = new TextDecoder("latin1").decode(flipped).indexOf("xl/worksheets/sheet1.xml") + 30;
    flipped[at] = flipped[at]! ^ 0xff;
    expect(message(flipped)).toMatch(/xl\/worksheets\/sheet1\.xml(,| with)/);
  });

  test("when XML has a document type, so that entities are never expanded", () => {
    const laughs = `<!DOCTYPE worksheet [<!ENTITY a "ha"><!ENTITY b "&a;&a;&a;&a;"><!ENTITY c "&b;&b;&b;&b;">]>`;
    expect(
      message(
        small(
          `${laughs}<worksheet xmlns="${MAIN}"><sheetData><row r="1"><c r="A1" t="str"><v>&c;</v></c></row></sheetData></worksheet>`,
        ),
      ),
    ).toContain("a document type");
    const outside = `<!DOCTYPE x [<!ENTITY f SYSTEM "file:///etc/passwd">]>`;
    expect(message(small(ROW, { "xl/workbook.xml": `${outside}<workbook xmlns="${MAIN}"/>` }))).toContain(
      "a document type",
    );
  });

  test("when XML is not well-formed, or in an unknown encoding", () => {
    expect(message(small(`<row r="1"><c r="A1"></row>`))).toContain(
      "xl/worksheets/sheet1.xml, which is not well-formed XML",
    );
    expect(
      message(small(ROW, { "xl/workbook.xml": `<?xml version="1.0" encoding="klingon"?><workbook xmlns="${MAIN}"/>` })),
    ).toContain("klingon");
    expect(message(small(`<row r="1"><c r="A1" t="str"><v>&unknown;</v></c></row>`))).toContain("not well-formed");
  });

  test("when content types are wrong or missing", () => {
    const sheetType = ["xl/worksheets/sheet1.xml", ".spreadsheetml.worksheet+xml"] as const;
    const types = (main: string) => ({ "[Content_Types].xml": contentTypes(["xl/workbook.xml", main], sheetType) });
    expect(message(small(ROW, types(".wordprocessingml.document.main+xml")))).toContain("a text document");
    expect(message(small(ROW, types("application/vnd.ms-excel.sheet.binary.macroEnabled.main")))).toContain(".xlsb");
    expect(message(small(ROW, types(".spreadsheetml.styles+xml")))).toContain("has the content type");
    expect(
      message(
        small(ROW, { "[Content_Types].xml": contentTypes(["xl/workbook.xml", ".spreadsheetml.sheet.main+xml"]) }),
      ),
    ).toContain('the sheet "Survey" with the content type application/xml');
  });

  test("when the part of a sheet is missing", () => {
    const parts = smallParts(ROW);
    delete parts["xl/worksheets/sheet1.xml"];
    expect(message(packageOf(parts))).toContain("without its part xl/worksheets/sheet1.xml");
    expect(message(small(ROW, { "xl/_rels/workbook.xml.rels": relations() }))).toContain(
      'the sheet "Survey" without its part',
    );
  });

  test("when the used rectangle is larger than any survey", () => {
    const rows = Array.from(
      { length: 3_000 },
      (_, i) => `<row r="${i + 1}"><c r="XFD${i + 1}"><v>1</v></c></row>`,
    ).join("");
    expect(message(small(rows))).toContain("20 million cells");
  });

  test("and for any other damage, never with another kind of error", () => {
    const bytes = small(`<row r="1"><c r="A1" t="s"><v>0</v></c><c r="B1"><v>2</v></c></row>`);
    fc.assert(
      fc.property(fc.nat({ max: bytes.length - 1 }), fc.integer({ min: 1, max: 255 }), (at, change) => {
        const harmed = bytes.slice();
        harmed[at] = harmed[at]! ^ change;
        message(harmed);
      }),
      { numRuns: 400 },
    );
  });
});

describe("a workbook", () => {
  test("lists its sheets with their visibility, names, tables, dates and locks", () => {
    const parts = smallParts(ROW, {
      "xl/workbook.xml":
        `<x:workbook xmlns:x="${MAIN}" xmlns:rel="${R}"><x:workbookPr date1904="1"/><x:workbookProtection lockStructure="1"/><x:sheets>` +
        `<x:sheet name="Survey &amp; more" sheetId="4" rel:id="rId1" state="veryHidden"/></x:sheets><x:definedNames>` +
        `<x:definedName name="settings">'Survey &amp; more'!$A$1:$B$2</x:definedName><x:definedName name="_xlnm.Print_Area" localSheetId="0" hidden="1">x</x:definedName></x:definedNames></x:workbook>`,
    });
    const workbook = openWorkbook(packageOf(parts));
    expect(workbook).toMatchObject({
      date1904: true,
      structureLocked: true,
      strict: false,
      signed: false,
      macros: false,
    });
    expect(workbook.sheets).toEqual([
      {
        name: "Survey & more",
        state: "veryHidden",
        cells: true,
        part: "xl/worksheets/sheet1.xml",
        sheetId: 4,
        relation: "rId1",
      },
    ]);
    expect(workbook.names).toEqual([
      { name: "settings", refersTo: "'Survey & more'!$A$1:$B$2", sheet: undefined, hidden: false, comment: "" },
      { name: "_xlnm.Print_Area", refersTo: "x", sheet: "Survey & more", hidden: true, comment: "" },
    ]);
  });

  test("may have its main part anywhere and absolute targets", () => {
    const workbook = openWorkbook(
      packageOf({
        "[Content_Types].xml": contentTypes(
          ["book/main.xml", ".spreadsheetml.sheet.main+xml"],
          ["cells/one.xml", ".spreadsheetml.worksheet+xml"],
        ),
        "_rels/.rels": relations(["a", "officeDocument", "/book/main.xml"]),
        "book/main.xml": `<workbook xmlns="${MAIN}" xmlns:r="${R}"><sheets><sheet name="S" sheetId="1" r:id="b"/></sheets></workbook>`,
        "book/_rels/main.xml.rels": relations(["b", "worksheet", "../cells/one.xml"]),
        "cells/one.xml": `<worksheet xmlns="${MAIN}"><sheetData>${ROW}</sheetData></worksheet>`,
      }),
    );
    expect(readSheet(workbook, "s").rows).toEqual([[1]]);
  });

  test("in Strict form is read, and says so", () => {
    const strict = "http://purl.oclc.org/ooxml/spreadsheetml/main";
    const workbook = openWorkbook(
      small(
        `<worksheet xmlns="${strict}"><sheetData><row r="1"><c r="A1" t="d"><v>2024-03-08</v></c></row></sheetData></worksheet>`,
        {
          "xl/workbook.xml": `<workbook xmlns="${strict}" xmlns:r="http://purl.oclc.org/ooxml/officeDocument/relationships"><sheets><sheet name="Survey" sheetId="1" r:id="rId1"/></sheets></workbook>`,
        },
      ),
    );
    expect(workbook.strict).toBe(true);
    expect(readSheet(workbook, "Survey").rows).toEqual([[{ date: "2024-03-08", serial: 45359 }]]);
  });
});
