import { createHash } from "node:crypto";
import { fillWorkbook } from "../../src/filling/fillWorkbook";
import { InputError } from "../../src/measure/errors";
import { createWorkbook } from "../../src/workbook/createWorkbook";
import { openWorkbook } from "../../src/workbook/openWorkbook";
import { readSheet } from "../../src/workbook/readSheet";
import { verifyEdit } from "../../src/workbook/verifyEdit";
import { HOSTILE_FILES, rows, sheet, stylesPart, table } from "../hostile/hostileFiles";
import { contentTypes, relations, small } from "./made/package";

const OPTIONS = { figures: ["outside height", "problem"], settings: [], recognise: {}, values: false, cutList: false };
const HEADINGS = ["id", "height", "width", "depth", "enclosure"];
const ITEM = ["A", "300", "210", "40", "tray"];

/** Fills a workbook as the command line does; gives the reason where it is refused. */
function outcome(bytes: Uint8Array): string {
  const before = createHash("sha256").update(bytes).digest("hex");
  try {
    const workbook = openWorkbook(bytes);
    const { edit } = fillWorkbook(workbook, OPTIONS);
    verifyEdit(workbook, edit, edit.bytes);
    return "filled";
  } catch (error) {
    if (error instanceof InputError) return error.message;
    throw error;
  } finally {
    expect(createHash("sha256").update(bytes).digest("hex")).toBe(before);
  }
}

/** What each file is refused for, before the work that it asks for is done; those left out are filled. */
const REFUSED: Readonly<Record<string, string>> = {
  "namespaces declared in one tag": "more than 100 namespaces at one place",
  "a namespace declared in each of many nested tags": "more than 100 namespaces at one place",
  "namespaces declared in each of many tags": "more than 100 namespaces at one place",
  "tags nested without end": "more than 256 tags one in another",
  "white space in the XML declaration": "an XML declaration of more than 1000 letters",
  "one part listed as 100,000 sheets": "more than 2000 sheets",
  "one table listed 100,000 times": "the part xl/tables/table1.xml listed twice",
  "an item in the last row": "1048575 rows; one survey has up to 200000",
  "formulas without results in the last column": "more than 20 million cells",
  "the name settings over a whole sheet": "a range of 5 columns without headings that are known",
  "the name settings over a whole full sheet": "it has up to 100000; let it mean the settings alone",
  "the same row twice": "row 2 twice",
  "rows out of order": "row 2 twice, or below row 3",
  "the same cell twice": "the cell E2 twice, or out of its order",
  "cells out of order": "the cell E2 twice, or out of its order",
  "defined names without end": "more than 10000 defined names",
  "cell styles without end": "more than 65490 cell styles",
  "relationships without end": "more than 100000 relationships",
};
const BOOKS = HOSTILE_FILES.filter(({ extension }) => extension === ".xlsx");

test("every refusal is of a file that there is", () => {
  expect(Object.keys(REFUSED).filter((name) => !BOOKS.some((file) => file.name === name))).toEqual([]);
});

test.each(BOOKS.map((file) => [file.name, file] as const))("%s", (name, { bytes }) => {
  expect(outcome(bytes())).toContain(REFUSED[name] ?? "filled");
});

test("a table that names fewer columns than it has is refused, the first time and the second", () => {
  const odd = small(
    sheet(rows([HEADINGS, ITEM])).replace(
      "</worksheet>",
      `<tableParts count="1"><tablePart r:id="t"/></tableParts></worksheet>`,
    ),
    {
      "[Content_Types].xml": contentTypes(
        ["xl/workbook.xml", ".spreadsheetml.sheet.main+xml"],
        ["xl/worksheets/sheet1.xml", ".spreadsheetml.worksheet+xml"],
        ["xl/tables/table1.xml", ".spreadsheetml.table+xml"],
      ),
      "xl/worksheets/_rels/sheet1.xml.rels": relations(["t", "table", "../tables/table1.xml"]),
      "xl/tables/table1.xml": table("A1:E2", HEADINGS.slice(0, 4)),
    },
  );
  expect(outcome(odd)).toContain("the table Items, which names 4 columns for the 5 of its cells");
});

test.each(['<fonts count="1"><font/></fonts>', ""])(
  "styles without cell formats get those that are needed: %s",
  (inside) => {
    const odd = small(sheet(rows([HEADINGS, ITEM])), stylesPart(inside));
    const workbook = openWorkbook(odd);
    const { edit } = fillWorkbook(workbook, { ...OPTIONS, figures: ["board area", "problem"] });
    verifyEdit(workbook, edit, edit.bytes);
    const [headings, filled] = readSheet(openWorkbook(edit.bytes), "Survey").rows;
    expect(filled!.slice(0, 5)).toEqual(["A", 300, 210, 40, "tray"]);
    expect(filled![headings!.indexOf("board area (m2)")]).toEqual(expect.any(Number));
  },
);

test("a list longer than the arguments of a call is written; one longer than a sheet is refused", () => {
  const list = Array.from({ length: 130_000 }, (_, i) => [`piece ${i}`]);
  const book = openWorkbook(createWorkbook([{ name: "Cut list", rows: list }]));
  expect(readSheet(book, "Cut list").rows.length).toBe(130_000);
  const endless = { length: 1_048_577 } as unknown as string[][];
  expect(() => createWorkbook([{ name: "Cut list", rows: endless }])).toThrow(
    'sheet "Cut list": got 1048577 rows; a sheet has 1048576; divide the survey, or ask for the list as .csv',
  );
});
