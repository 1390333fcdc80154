import { strFromU8 } from "fflate";
import { recogniseColumns, surveyRows } from "../../src/headings/recognise";
import { bookOf } from "../../src/workbook/book";
import { fillWorkbook } from "../../src/filling/fillWorkbook";
import { chooseSheet, surveyPlace } from "../../src/filling/chooseSheet";
import { createWorkbook } from "../../src/workbook/createWorkbook";
import { editWorkbook } from "../../src/workbook/editWorkbook";
import type { ColumnsEdit, EditResult } from "../../src/workbook/edits";
import { openWorkbook, type Workbook } from "../../src/workbook/openWorkbook";
import { ownColumns, ownSheets } from "../../src/workbook/ownMarks";
import { readSheet } from "../../src/workbook/readSheet";
import { verifyEdit } from "../../src/workbook/verifyEdit";
import { converted, EVERY_SHEET_CSV, FLAT_SURVEY, hasLibreOffice, shownRows } from "./made/libreOffice";
import { livedIn } from "./made/livedIn";
import { fromExcelJs, fromExcelJsStream, fromPrefixedXml, fromWriteExcelFile } from "./made/otherWriters";
import { partsOf } from "./made/package";

/** Each workbook with where its survey must be found, and the cells that must be read. */
const EXPECTED: Readonly<Record<string, { said: string; rows: string; height: readonly unknown[] }>> = {
  "libreoffice-flat": {
    said: 'sheet "Boxes", the only one that looks like a survey',
    rows: "headings in row 4, rows 5 to 6",
    height: [300, 250.5],
  },
  "libreoffice-csv": {
    said: 'sheet "libreoffice-csv"',
    rows: "headings in row 2, rows 3 to 4",
    height: [12.5, 8],
  },
  exceljs: {
    said: 'sheet "Items", table Boxes, the only one that looks like a survey',
    rows: "headings in row 3, rows 4 to 6",
    height: [30, 25.05, 12],
  },
  "exceljs-stream": { said: 'sheet "List"', rows: "headings in row 1, rows 2 to 3", height: [300, 150] },
  "write-excel-file": {
    said: 'sheet "Objects", the only one that looks like a survey',
    rows: "headings in row 1, rows 2 to 3",
    height: [300, 120.25],
  },
  "by-hand": {
    said: 'sheet "Survey", table Items, the only one that looks like a survey',
    rows: "headings in row 4, rows 5 to 7",
    height: [300, 250.5, 120],
  },
  "by-hand-prefixed": { said: 'sheet "Survey"', rows: "headings in row 1, rows 2 to 3", height: [30, 31] },
};

interface Case {
  readonly bytes: Uint8Array;
  readonly before: Workbook;
  readonly edit: ColumnsEdit;
  readonly result: EditResult;
  readonly said: string;
  readonly recognised: readonly string[];
  readonly heights: readonly unknown[];
}

/** The way of the command line: open, choose, recognise, add columns and a sheet. */
function filled(bytes: Uint8Array): Case {
  const before = openWorkbook(bytes);
  const { sheet, table, said } = chooseSheet(bookOf(before));
  const { rows } = readSheet(before, sheet.name);
  const found = recogniseColumns(rows, surveyPlace(bookOf(before), sheet, table));
  const items = surveyRows(rows, found);
  const column = (field: "height" | "width") => String.fromCharCode(64 + found.columns[field]!.column);
  const edit: ColumnsEdit = {
    sheet: sheet.name,
    ...(table ? { table: table.name } : {}),
    headingRow: found.headingRow,
    firstRow: found.firstRow,
    lastRow: found.lastRow,
    lastColumn: found.lastColumn,
    columns: [
      {
        heading: "outside height",
        format: "0.00",
        cells: items.map(({ row }, i) => ({
          formula: `_xldudf_ENC_OUTSIDE(${column("height")}${row},${column("width")}${row})`,
          result: 100 + i / 4,
        })),
      },
      {
        heading: "problem",
        cells: items.map((_, i) => ({
          formula: `_xldudf_ENC_PROBLEM(A1)`,
          result: i === 0 ? "none" : "=width: got a blank",
        })),
      },
      {
        heading: "cautions",
        cells: items.map(() => ({ formula: `IFERROR(_xldudf_ENC_CAUTIONS(A1),"")`, result: "" })),
      },
      { heading: "board", cells: items.map((_, i) => (i === 0 ? "-2 mm" : { error: "#N/A" })) },
    ],
  };
  const sheets = [
    {
      name: "cut list",
      rows: [
        ["part", "length"],
        ["base", 12.5],
      ],
      replaceable: true,
    },
  ];
  const result = editWorkbook(before, {
    columns: edit,
    sheets,
    names: [{ name: "enclosure_settings", refersTo: "'cut list'!$A$1" }],
  });
  verifyEdit(before, result, result.bytes);
  return {
    bytes,
    before,
    edit,
    result,
    said,
    recognised: found.said,
    heights: items.map(({ values }) => values.height),
  };
}

const cases: Record<string, Case> = {};
const names = Object.keys(EXPECTED).filter((name) => hasLibreOffice || !name.startsWith("libreoffice"));

beforeAll(async () => {
  if (hasLibreOffice) {
    const made = converted(
      {
        "libreoffice-flat.fods": FLAT_SURVEY,
        "libreoffice-csv.csv": "Survey of prints,,,\nRef,H (in),W (in),T (in)\nP 1,12.5,9,1\nP 2,8,6,2\n",
      },
      "xlsx",
    );
    for (const [name, bytes] of Object.entries(made)) cases[name.replace(/\.xlsx$/, "")] = filled(bytes);
  }
  cases["exceljs"] = filled(await fromExcelJs());
  cases["exceljs-stream"] = filled(await fromExcelJsStream());
  cases["write-excel-file"] = filled(await fromWriteExcelFile());
  cases["by-hand"] = filled(livedIn());
  cases["by-hand-prefixed"] = filled(fromPrefixedXml());
});

describe.each(names)("a survey made by %s", (name) => {
  test("is found and read", () => {
    expect(cases[name]!.said).toBe(EXPECTED[name]!.said);
    expect(cases[name]!.recognised[0]).toBe(EXPECTED[name]!.rows);
    expect(cases[name]!.heights).toEqual(EXPECTED[name]!.height);
  });

  test("keeps every untouched part byte for byte, by the reading of another library", () => {
    const { bytes, result } = cases[name]!;
    const before = partsOf(bytes);
    const after = partsOf(result.bytes);
    const untouched = Object.keys(before).filter(
      (part) => !result.changed.includes(part) && !result.removed.includes(part),
    );
    for (const part of untouched)
      expect([part, Buffer.from(after[part]!).equals(Buffer.from(before[part]!))]).toEqual([part, true]);
    const mayChange =
      /^(\[Content_Types\]\.xml|xl\/(workbook\.xml|_rels\/workbook\.xml\.rels|styles\.xml|worksheets\/[^/]+\.xml|tables\/[^/]+\.xml))$/i;
    expect(result.changed.filter((part) => !mayChange.test(part))).toEqual([]);
    expect(result.removed.filter((part) => !part.endsWith("calcChain.xml"))).toEqual([]);
  });

  test("reads the same as before, with the new columns beside", () => {
    const { before, result, edit } = cases[name]!;
    const after = openWorkbook(result.bytes);
    const left = Math.min(...result.columns.map(({ column }) => column)) - 1;
    for (const sheet of before.sheets.filter((s) => s.cells)) {
      const cells = (workbook: Workbook) =>
        readSheet(workbook, sheet.name).rows.map((row) => (sheet.name === edit.sheet ? row.slice(0, left) : row));
      const trimmed = (rows: readonly (readonly unknown[])[]) =>
        rows.map((row) => JSON.stringify(row).replace(/(,null)*\]$/, "]"));
      expect(trimmed(cells(after))).toEqual(trimmed(cells(before)));
    }
    const grid = readSheet(after, edit.sheet, { formulas: true });
    const at = result.columns.map(({ column }) => column - 1);
    expect(at.map((column) => grid.rows[edit.headingRow - 1]![column])).toEqual([
      "outside height",
      "problem",
      "cautions",
      "board",
    ]);
    expect(at.map((column) => grid.rows[edit.firstRow - 1]![column] ?? null)).toEqual([100, "none", null, "-2 mm"]);
    expect(at.map((column) => grid.rows[edit.firstRow]![column] ?? null)).toEqual([
      100.25,
      "=width: got a blank",
      null,
      { error: "#N/A" },
    ]);
  });

  test("is filled again without a trace of the first run left over", () => {
    const { result, edit } = cases[name]!;
    const again = filled(result.bytes);
    const { lastColumn } = edit.table === undefined ? edit : again.edit;
    expect(again.edit).toEqual({ ...edit, lastColumn });
    expect(again.result.columns.every(({ replaced }) => replaced)).toBe(true);
    expect(again.result.added).toEqual([]);
    const [once, twice] = [partsOf(result.bytes), partsOf(again.result.bytes)];
    const differing = Object.keys(twice).filter(
      (part) => !Buffer.from(twice[part]!).equals(Buffer.from(once[part] ?? [])),
    );
    // The marks are written last, behind a name that came after them in the first run.
    expect(differing).toEqual(["xl/workbook.xml"]);
    expect(Buffer.from(filled(again.result.bytes).result.bytes).equals(Buffer.from(again.result.bytes))).toBe(true);
  });
});

const CREATED = createWorkbook([
  {
    name: "Survey",
    table: "Survey",
    rows: [
      ["ID", "Height", "board"],
      ["0012", 30.5, { formula: `_xldudf_ENC_BOARD_STOCK(B2)`, result: "conservation board 2 mm" }],
      ["=1+1", 12, { formula: `_xldudf_ENC_BOARD_STOCK(B3)`, result: "conservation board 3 mm" }],
    ],
    formats: [undefined, "0.00"],
  },
]);

const WAYS = { "a formula in every cell": {}, values: { values: true } };

(hasLibreOffice ? describe : describe.skip)("LibreOffice", () => {
  let before: Readonly<Record<string, Uint8Array>>;
  let after: Readonly<Record<string, Uint8Array>>;
  let saved: Readonly<Record<string, Uint8Array>>;

  beforeAll(() => {
    const each = (pick: (made: Case) => Uint8Array) =>
      Object.fromEntries(names.map((name) => [`${name}.xlsx`, pick(cases[name]!)]));
    before = converted(
      each(({ bytes }) => bytes),
      EVERY_SHEET_CSV,
    );
    after = converted(
      { ...each(({ result }) => result.bytes), "created.xlsx": CREATED, ...filledSurveys() },
      EVERY_SHEET_CSV,
    );
    saved = converted(
      each(({ result }) => result.bytes),
      "xlsx",
    );
  });

  test.each(names)("opens the filled %s with the same values and our cached results", (name) => {
    const { edit, result, before: workbook } = cases[name]!;
    const at = result.columns.map(({ column }) => column - 1);
    const height = at[0];
    // LibreOffice trusts cached texts only of programs it knows, and never an empty one; IFERROR then shows it empty.
    const application = strFromU8(partsOf(result.bytes)["docProps/app.xml"] ?? new Uint8Array());
    const trusted = /Microsoft Excel|LibreOffice/.test(application);
    const text = (cached: string) => (trusted ? cached : "#NAME?");
    for (const sheet of workbook.sheets.filter((s) => s.cells)) {
      const was = shownRows(before, name, sheet.name);
      const is = shownRows(after, name, sheet.name);
      was.forEach((row, r) =>
        expect(is[r]!.slice(0, sheet.name === edit.sheet ? height! : undefined).join("|")).toBe(
          padded(row, is[r]!.length, sheet.name === edit.sheet ? height! : undefined),
        ),
      );
    }
    const rows = shownRows(after, name, edit.sheet);
    const shown = (row: number) => at.map((column) => rows[row - 1]![column]);
    expect(shown(edit.headingRow)).toEqual(["outside height", "problem", "cautions", "board"]);
    expect(shown(edit.firstRow)).toEqual(["100.00", text("none"), "", "-2 mm"]);
    expect(shown(edit.firstRow + 1)).toEqual(["100.25", text("=width: got a blank"), "", "#N/A"]);
    expect(shownRows(after, name, "cut list")).toEqual([
      ["part", "length"],
      ["base", "12.5"],
    ]);
  });

  test.each(names)(
    "keeps the marks of %s through its own save, so that a later run knows its columns and sheet",
    (name) => {
      const { result } = cases[name]!;
      const workbook = openWorkbook(saved[`${name}.xlsx`]!);
      expect(ownColumns(workbook).map(({ column }) => column)).toEqual(result.columns.map(({ column }) => column));
      expect(ownSheets(workbook).map(({ sheet }) => sheet)).toEqual(["cut list"]);
      const again = filled(saved[`${name}.xlsx`]!);
      expect(again.result.columns.every(({ replaced }) => replaced)).toBe(true);
    },
  );

  test.each(Object.keys(WAYS))("without the add-in every figure of a filled survey is shown: %s", (name) => {
    const [headings = [], ...rows] = shownRows(after, name, "Survey");
    expect(headings).toContain("outside height (mm)");
    const from = headings.indexOf("board");
    expect(from).toBeGreaterThan(0);
    // The third row has a depth that cannot be read: LibreOffice works out again what is stored as an error.
    expect(rows.slice(0, 2).map((row) => row.slice(from).filter((cell) => cell.startsWith("#")))).toEqual([[], []]);
    expect(rows.map((row) => row[headings.indexOf("outside height (mm)")])).toEqual([
      expect.stringMatching(/^3\d\d\.\d$/),
      expect.stringMatching(/^3\d\d\.\d$/),
      expect.stringMatching(/^#/),
    ]);
    expect(rows[2]!.at(-1)).toMatch(/^depth: got "4O"/);
  });

  test("opens a workbook that we made, with its texts as texts and its cached results", () => {
    expect(shownRows(after, "created", "Survey")).toEqual([
      ["ID", "Height", "board"],
      ["0012", "30.50", "conservation board 2 mm"],
      ["=1+1", "12.00", "conservation board 3 mm"],
    ]);
  });
});

/** A survey filled twice in each way, as the command line or the pane fills it. */
function filledSurveys(): Readonly<Record<string, Uint8Array>> {
  const rows = [
    ["ID", "Height mm", "Width mm", "Depth mm", "Enclosure"],
    ["A1", 300, 210, 40, "tray"],
    ["A2", 310, 215, 41, "clamshell box"],
    ["A3", 300, 210, "4O", "tray"],
  ];
  const empty = createWorkbook([{ name: "Survey", rows, table: "Survey" }]);
  const fill = (bytes: Uint8Array, way: object) =>
    fillWorkbook(openWorkbook(bytes), {
      ...{ figures: ["outside height", "problem"], settings: [], recognise: {}, values: false, cutList: false },
      ...way,
    }).edit.bytes;
  return Object.fromEntries(Object.entries(WAYS).map(([name, way]) => [`${name}.xlsx`, fill(fill(empty, way), way)]));
}

function padded(row: readonly string[], length: number, to: number | undefined): string {
  return Array.from({ length: Math.min(length, to ?? length) }, (_, i) => row[i] ?? "").join("|");
}

test("the workbooks are at least six, by four programs and by hand", () => {
  expect(Object.keys(EXPECTED).length).toBeGreaterThanOrEqual(6);
});
