import { DEMO_SURVEY } from "../../src/cli/demoSurvey";
import { csvToWorkbook } from "../../src/filling/fillCsv";
import { fillWorkbook } from "../../src/filling/fillWorkbook";
import { bookOf, type Book } from "../../src/workbook/book";
import { readCsv } from "../../src/workbook/readCsv";
import { writeCsv } from "../../src/workbook/writeCsv";
import { chooseSheet, surveyPlace } from "../../src/filling/chooseSheet";
import { createWorkbook } from "../../src/workbook/createWorkbook";
import { editWorkbook } from "../../src/workbook/editWorkbook";
import type { NewSheet } from "../../src/workbook/edits";
import { openWorkbook } from "../../src/workbook/openWorkbook";
import { livedIn } from "../workbook/made/livedIn";
import { MAIN, packageOf, partsOf, R } from "../workbook/made/package";

const SURVEY: NewSheet = {
  name: "Items",
  rows: [
    ["ID", "H", "W", "D"],
    ["A", 1, 2, 3],
  ],
};
const TEXTS: NewSheet = {
  name: "Dimensions read",
  rows: [
    ["Call number", "Dimensions"],
    ["A", "30 x 20 x 4 cm"],
  ],
};
const KEY: NewSheet = {
  name: "Key",
  rows: [
    ["Code", "Meaning"],
    ["x", "urgent"],
  ],
};

const chosen = (...sheets: [NewSheet, ...NewSheet[]]) => chooseSheet(bookOf(openWorkbook(createWorkbook(sheets))));

test("the only sheet that looks like a survey is taken, and said", () => {
  expect(chosen(KEY, SURVEY)).toMatchObject({
    sheet: { name: "Items" },
    said: 'sheet "Items", the only one that looks like a survey',
  });
  expect(chosen(KEY, TEXTS)).toMatchObject({ sheet: { name: "Dimensions read" } });
});

test("two that look like surveys are asked about", () => {
  expect(() => chosen(SURVEY, TEXTS)).toThrow(
    'sheet: got a workbook in which "Items", "Dimensions read" look like surveys; reads one survey; name the sheet',
  );
});

test("none that looks like a survey is asked about, unless there is only one sheet", () => {
  expect(() => chosen(KEY, { ...KEY, name: "Key 2" })).toThrow(
    "in which no sheet has columns for height, width and depth",
  );
  expect(chosen(KEY)).toMatchObject({ sheet: { name: "Key" }, said: 'sheet "Key", the only one' });
});

test("a sheet is named in any case; a table by its own name", () => {
  const workbook = openWorkbook(createWorkbook([SURVEY, { ...SURVEY, name: "More", table: "Boxes" }]));
  expect(chooseSheet(bookOf(workbook), "items")).toMatchObject({
    sheet: { name: "Items" },
    table: undefined,
    said: 'sheet "Items"',
  });
  expect(chooseSheet(bookOf(workbook), "more")).toMatchObject({ table: { name: "Boxes" } });
  expect(chooseSheet(bookOf(workbook), "BOXES")).toMatchObject({ sheet: { name: "More" }, table: { name: "Boxes" } });
  expect(() => chooseSheet(bookOf(workbook), "Boxen")).toThrow('the workbook has "Items", "More"');
});

test("a sheet of an earlier run is passed over, and so is a hidden one", () => {
  const workbook = openWorkbook(createWorkbook([SURVEY]));
  const cuts = { name: "cut list", rows: SURVEY.rows, replaceable: true };
  const again = openWorkbook(editWorkbook(workbook, { sheets: [cuts] }).bytes);
  expect(chooseSheet(bookOf(again)).sheet.name).toBe("Items");
  expect(chooseSheet(bookOf(openWorkbook(livedIn())))).toMatchObject({
    sheet: { name: "Survey" },
    table: { name: "Items" },
  });
  expect(chooseSheet(bookOf(openWorkbook(livedIn())), "Locked").sheet.state).toBe("hidden");
});

test("plain cells are the survey where the sheet's table is something else", () => {
  const workbook = openWorkbook(createWorkbook([{ ...KEY, name: "All", table: "KeyTable" }, KEY]));
  const more = editWorkbook(workbook, {
    cells: [
      ["ID", "H", "W", "D"],
      ["A", 1, 2, 3],
    ].flatMap((row, r) => row.map((content, c) => ({ sheet: "All", row: 5 + r, column: 1 + c, content }))),
  });
  expect(chooseSheet(bookOf(openWorkbook(more.bytes)))).toMatchObject({ sheet: { name: "All" }, table: undefined });
});

test("a chart sheet is listed, never read", () => {
  const parts = partsOf(createWorkbook([SURVEY, KEY]));
  const text = (part: string) => new TextDecoder().decode(parts[part]);
  const workbook = openWorkbook(
    packageOf({
      ...parts,
      "xl/workbook.xml": text("xl/workbook.xml"),
      "xl/_rels/workbook.xml.rels": text("xl/_rels/workbook.xml.rels").replace(
        /worksheet" Target="worksheets\/sheet2.xml"/,
        'chartsheet" Target="worksheets/sheet2.xml"',
      ),
      "xl/worksheets/sheet2.xml": `<chartsheet xmlns="${MAIN}" xmlns:r="${R}"/>`,
    }),
  );
  expect(workbook.sheets.map((sheet) => sheet.cells)).toEqual([true, false]);
  expect(chooseSheet(bookOf(workbook)).said).toBe('sheet "Items"');
  expect(() => chooseSheet(bookOf(workbook), "Key")).toThrow('sheet: got "Key", which is a chart');
});

test("the place of the survey leaves out a totals row and the columns of an earlier run", () => {
  const workbook = openWorkbook(livedIn());
  const columns = {
    sheet: "Survey",
    table: "Items",
    headingRow: 4,
    firstRow: 5,
    lastRow: 7,
    lastColumn: 6,
    columns: [{ heading: "mass", cells: [1, 2, 3] }],
  };
  const again = openWorkbook(editWorkbook(workbook, { columns }).bytes);
  const { sheet, table } = chooseSheet(bookOf(again));
  expect(surveyPlace(bookOf(again), sheet, table)).toEqual({
    ignore: [7],
    region: { headingRow: 4, firstColumn: 1, lastColumn: 7, lastRow: 7 },
  });
});

test("the stock table and the guide of a filled survey are no surveys, settings beside a survey hide nothing", () => {
  const survey = csvToWorkbook(readCsv(writeCsv(DEMO_SURVEY)), {});
  const options = { figures: ["caliper"], settings: [], recognise: {}, values: false, cutList: false };
  const filled = bookOf(openWorkbook(fillWorkbook(openWorkbook(survey), options).edit.bytes));
  expect(filled.sheets.map(({ name }) => name)).toEqual(expect.arrayContaining(["settings", "stock", "board guide"]));
  expect(chooseSheet(filled)).toMatchObject({ sheet: { name: "Survey" } });
  const beside = bookOf(openWorkbook(createWorkbook([SURVEY, KEY])));
  const names = [...beside.names, { name: "settings", refersTo: "Items!$F$1:$G$40", hidden: false }];
  expect(chooseSheet({ ...beside, names } as Book)).toMatchObject({ sheet: { name: "Items" } });
});
