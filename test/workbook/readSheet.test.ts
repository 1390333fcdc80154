import { InputError } from "../../src/measure/errors";
import { openWorkbook } from "../../src/workbook/openWorkbook";
import { readSheet } from "../../src/workbook/readSheet";
import { dateValue, isDateFormat } from "../../src/workbook/sheetValue";
import { contentTypes, MAIN, R, relations, small } from "./made/package";

const STYLES =
  `<styleSheet xmlns="${MAIN}"><numFmts count="3"><numFmt numFmtId="164" formatCode="yyyy\\-mm\\-dd"/>` +
  `<numFmt numFmtId="165" formatCode="[Red]0.0&quot; mm&quot;"/><numFmt numFmtId="166" formatCode="[h]:mm"/></numFmts>` +
  `<cellStyleXfs count="1"><xf numFmtId="14"/></cellStyleXfs>` +
  `<cellXfs count="5"><xf numFmtId="0"/><xf numFmtId="164"/><xf numFmtId="165"/><xf numFmtId="14"/><xf numFmtId="166"/></cellXfs></styleSheet>`;
const TEXTS =
  `<sst xmlns="${MAIN}"><si><t>plain</t></si><si><r><t xml:space="preserve">rich </t></r><r><rPr><b/></rPr><t>text</t></r>` +
  `<rPh sb="0" eb="1"><t>guide</t></rPh></si><si><t>line_x000D_
two _x005F_x0041_</t></si><si><t/></si></sst>`;

function sheet(rows: string, { after = "", book = "" } = {}): ReturnType<typeof openWorkbook> {
  return openWorkbook(
    small(`<worksheet xmlns="${MAIN}" xmlns:r="${R}"><sheetData>${rows}</sheetData>${after}</worksheet>`, {
      "[Content_Types].xml": contentTypes(
        ["xl/workbook.xml", ".spreadsheetml.sheet.main+xml"],
        ["xl/worksheets/sheet1.xml", ".spreadsheetml.worksheet+xml"],
        ["xl/styles.xml", ".spreadsheetml.styles+xml"],
        ["xl/sharedStrings.xml", ".spreadsheetml.sharedStrings+xml"],
      ),
      "xl/_rels/workbook.xml.rels": relations(
        ["rId1", "worksheet", "worksheets/sheet1.xml"],
        ["rId2", "styles", "styles.xml"],
        ["rId3", "sharedStrings", "sharedStrings.xml"],
      ),
      "xl/workbook.xml": `<workbook xmlns="${MAIN}" xmlns:r="${R}">${book}<sheets><sheet name="Survey" sheetId="1" r:id="rId1"/></sheets></workbook>`,
      "xl/styles.xml": STYLES,
      "xl/sharedStrings.xml": TEXTS,
    }),
  );
}

function rows(xml: string): unknown {
  return readSheet(sheet(xml), "Survey").rows;
}

const CELLS: readonly (readonly [title: string, xml: string, expected: unknown])[] = [
  ["a number", `<c r="A1"><v>10.375</v></c>`, 10.375],
  ["a number with an exponent", `<c r="A1"><v>1.5E-3</v></c>`, 0.0015],
  ["a shared text", `<c r="A1" t="s"><v>0</v></c>`, "plain"],
  ["a text in runs, its phonetic guide left out", `<c r="A1" t="s"><v>1</v></c>`, "rich text"],
  ["escaped letters", `<c r="A1" t="s"><v>2</v></c>`, "line\r\ntwo _x0041_"],
  ["an inline text", `<c r="A1" t="inlineStr"><is><t>here</t></is></c>`, "here"],
  [
    "an inline text in runs",
    `<c r="A1" t="inlineStr"><is><r><t>a</t></r><r><t>b</t></r><rPh sb="0" eb="1"><t>z</t></rPh></is></c>`,
    "ab",
  ],
  ["a text in CDATA", `<c r="A1" t="str"><v><![CDATA[<a & b>]]></v></c>`, "<a & b>"],
  ["true", `<c r="A1" t="b"><v>1</v></c>`, true],
  ["an error", `<c r="A1" t="e"><v>#N/A</v></c>`, { error: "#N/A" }],
  ["a date by a built-in format", `<c r="A1" s="3"><v>45359</v></c>`, { date: "2024-03-08", serial: 45359 }],
  [
    "a date by a custom format",
    `<c r="A1" s="1"><v>45359.75</v></c>`,
    { date: "2024-03-08T18:00:00", serial: 45359.75 },
  ],
  ["a colour and a quoted unit, which are no date", `<c r="A1" s="2"><v>45359</v></c>`, 45359],
  ["elapsed hours, which are", `<c r="A1" s="4"><v>1.5</v></c>`, { date: "1900-01-01T12:00:00", serial: 1.5 }],
  ["the cached result of a formula", `<c r="A1"><f>B1*2</f><v>8</v></c>`, 8],
  ["a cached text", `<c r="A1" t="str"><f>"a"</f><v>a</v></c>`, "a"],
];

describe("a cell holds", () => {
  test.each(CELLS)("%s", (_, xml, expected) => {
    expect(rows(`<row r="1">${xml}</row>`)).toEqual([[expected]]);
  });

  test("nothing when it is blank, only coloured, or an empty text", () => {
    expect(
      rows(
        `<row r="1"><c r="A1" s="2"/><c r="B1" t="s"><v>3</v></c><c r="C1" t="str"><f>""</f><v></v></c><c r="D1"><v>1</v></c></row>`,
      ),
    ).toEqual([[null, null, null, 1]]);
  });
});

describe("a sheet", () => {
  test("is read from its addresses, with gaps as blanks", () => {
    expect(rows(`<row r="2"><c r="C2"><v>1</v></c></row><row r="4"><c r="A4"><v>2</v></c></row>`)).toEqual([
      [],
      [null, null, 1],
      [],
      [2],
    ]);
  });

  test("may leave addresses out", () => {
    expect(
      rows(
        `<row><c><v>1</v></c><c><v>2</v></c></row><row r="3"><c r="B3"><v>3</v></c><c><v>4</v></c></row><row><c><v>5</v></c></row>`,
      ),
    ).toEqual([[1, 2], [], [null, 3, 4], [5]]);
  });

  test("may write its namespace with a prefix, beside foreign elements of the same names", () => {
    const xml =
      `<x:worksheet xmlns:x="${MAIN}" xmlns:y="urn:other"><x:sheetData><y:row r="9"/><x:row r="1"><x:c r="A1" t="inlineStr"><x:is><x:t>a</x:t></x:is></x:c>` +
      `<y:c r="B1"><y:v>7</y:v></y:c></x:row></x:sheetData></x:worksheet>`;
    expect(readSheet(openWorkbook(small(xml)), "Survey").rows).toEqual([["a"]]);
  });

  test("may be UTF-16, or begin with a byte order mark", () => {
    const xml = `<?xml version="1.0" encoding="UTF-16"?><worksheet xmlns="${MAIN}"><sheetData><row r="1"><c r="A1" t="str"><v>é ☃ 𝌆</v></c></row></sheetData></worksheet>`;
    const wide = new Uint8Array(Buffer.from(`\ufeff${xml}`, "utf16le"));
    const marked = new Uint8Array(Buffer.from(`\ufeff${xml.replace(' encoding="UTF-16"', "")}`, "utf8"));
    for (const bytes of [wide, marked]) {
      const workbook = openWorkbook(small("", { "xl/worksheets/sheet1.xml": bytes }));
      expect(readSheet(workbook, "Survey").rows).toEqual([["é ☃ 𝌆"]]);
    }
  });

  test("names the formulas that have no result, and does not guess one", () => {
    const grid = readSheet(
      sheet(`<row r="7"><c r="A7"><v>1</v></c><c r="B7"><f>A7*2</f></c><c r="C7"><f/><v>3</v></c></row>`),
      "Survey",
    );
    expect(grid.uncached).toEqual(["B7"]);
    expect(grid.rows[6]).toEqual([1, null, 3]);
  });

  test("gives formulas when asked, shared ones too", () => {
    const xml = `<row r="1"><c r="A1"><f t="shared" ref="A1:A2" si="0">B1*2</f><v>1</v></c></row><row r="2"><c r="A2"><f t="shared" si="0"/><v>2</v></c></row>`;
    expect([...readSheet(sheet(xml), "Survey", { formulas: true }).formulas]).toEqual([
      ["A1", "B1*2"],
      ["A2", "B1*2"],
    ]);
  });

  test("tells its merged cells and its lock", () => {
    const grid = readSheet(
      sheet("", { after: `<sheetProtection sheet="1"/><mergeCells count="1"><mergeCell ref="A1:C1"/></mergeCells>` }),
      "Survey",
    );
    expect(grid).toMatchObject({ locked: true, merged: [{ top: 1, left: 1, bottom: 1, right: 3 }] });
    expect(readSheet(sheet("", { after: `<sheetProtection objects="1"/>` }), "Survey").locked).toBe(false);
  });

  test("counts dates from 1904 when the workbook does", () => {
    const workbook = sheet(`<row r="1"><c r="A1" s="3"><v>43897</v></c></row>`, {
      book: `<workbookPr date1904="true"/>`,
    });
    expect(readSheet(workbook, "Survey").rows).toEqual([[{ date: "2024-03-08", serial: 43897 }]]);
  });

  test("is refused by name with the names there are", () => {
    expect(() => readSheet(sheet(""), "Surveys")).toThrow(
      new InputError("sheet", '"Surveys"', 'the workbook has "Survey"', "name one of these").message,
    );
  });

  test("that points to a missing text, or has an impossible address, is damaged", () => {
    expect(() => rows(`<row r="1"><c r="A1" t="s"><v>9</v></c></row>`)).toThrow(
      "cell A1, which points to a text that is not there",
    );
    expect(() => rows(`<row r="0"/>`)).toThrow("a row numbered 0");
    expect(() => rows(`<row r="1"><c r="XFE1"><v>1</v></c></row>`)).toThrow("a cell named XFE1");
  });

  test("is read to its last column", () => {
    const grid = rows(`<row r="1"><c r="XFD1"><v>1</v></c></row>`) as unknown[][];
    expect(grid[0]).toHaveLength(16_384);
  });

  test("tells how far it is", () => {
    const told: number[] = [];
    readSheet(
      sheet(
        Array.from({ length: 9_000 }, (_, i) => `<row r="${i + 1}"><c r="A${i + 1}"><v>${i * 7919}</v></c></row>`).join(
          "",
        ),
      ),
      "Survey",
      {
        onProgress: (fraction) => void told.push(fraction),
      },
    );
    expect(told.at(-1)).toBe(1);
    expect(told.length).toBeGreaterThan(2);
  });
});

test.each([
  [1, "1900-01-01"],
  [59, "1900-02-28"],
  [60, "1900-02-29"],
  [61, "1900-03-01"],
  [45_359, "2024-03-08"],
])("serial %d is %s", (serial, date) => {
  expect(dateValue(serial, false).date).toBe(date);
});

test.each([
  ["General", false],
  ["0.00", false],
  ["# ?/?", false],
  ['0 "days"', false],
  ["[Red]0.0", false],
  ["d mmm yyyy", true],
  ["[$-809]dd/mm/yyyy", true],
  ["h:mm AM/PM", true],
  ["[mm]:ss", true],
  ["0\\d", false],
])("the format %s shows a date: %s", (code, expected) => {
  expect(isDateFormat(code)).toBe(expected);
});
