import { readBookSurvey } from "../../src/filling/readBookSurvey";
import {
  changedSettings,
  guideEdits,
  guideRows,
  settingEdits,
  settingSays,
  type GuideChange,
} from "../../src/filling/settingEdits";
import { surveyEdits } from "../../src/filling/surveyEdits";
import { rowsNaming, stockEdits, stockLines, type StockChange } from "../../src/filling/stockEdits";
import type { SettingKey } from "../../src/settings/schema";
import { bookOf } from "../../src/workbook/book";
import { createWorkbook } from "../../src/workbook/createWorkbook";
import type { WorkbookEdits } from "../../src/workbook/edits";
import { editWorkbook } from "../../src/workbook/editWorkbook";
import { openWorkbook } from "../../src/workbook/openWorkbook";

const READ = { recognise: {}, settings: [] };

/** A workbook with the sheets that are made for it. */
function kept(settings: readonly string[] = []) {
  const rows = [
    ["Identifier", "Height", "Width", "Depth", "Enclosure"],
    ["A1", 300, 210, 40, "tray"],
  ];
  const bare = openWorkbook(createWorkbook([{ name: "Items", rows }]));
  const { edits } = surveyEdits(bookOf(bare), { ...READ, settings, figures: [], values: false, cutList: false });
  let workbook = openWorkbook(editWorkbook(bare, { sheets: edits.sheets ?? [], names: edits.names ?? [] }).bytes);
  const survey = () => ({ ...readBookSurvey(bookOf(workbook), READ), book: bookOf(workbook) });
  const write = (edits: WorkbookEdits) => (workbook = openWorkbook(editWorkbook(workbook, edits).bytes));
  return {
    survey,
    set: (key: SettingKey, text: string) => write(settingEdits(survey(), { [key]: text })),
    change: (change: GuideChange) => write({ cells: guideEdits(survey(), change) }),
    stock: (change: StockChange) => write(stockEdits(survey(), change)),
    boards: () => guideRows(survey().found.guide!).map(({ board }) => board),
  };
}

test("a setting is written into its row of the sheet, is in force, and goes back to the usual", () => {
  const book = kept();
  expect(settingSays(book.survey(), "currency")).toBe("");
  book.set("currency", "EUR");
  book.set("contingency", "15");
  book.set("fit", "snug");
  expect(book.survey().sized.settings).toMatchObject({ currency: "EUR", contingency: 15, fit: "snug" });
  expect((["currency", "contingency", "fit"] as const).map((key) => settingSays(book.survey(), key))).toEqual([
    "EUR",
    "15",
    "snug",
  ]);
  book.set("fit", "");
  expect(settingSays(book.survey(), "fit")).toBe("");
  expect(book.survey().sized.settings.origins.has("fit")).toBe(false);
});

test("only what somebody changed counts as changed, in a survey of any unit", () => {
  const book = kept();
  expect([...changedSettings(book.survey())]).toEqual([]);
  book.set("currency", "EUR");
  book.set("fit", "snug");
  book.set("turnIn", "20");
  expect([...changedSettings(book.survey())].sort()).toEqual(["currency", "fit", "turnIn"]);
  book.set("fit", "");
  book.set("turnIn", "auto");
  expect([...changedSettings(book.survey())]).toEqual(["currency"]);
  const inches = kept(["unit=in"]);
  expect([...changedSettings(inches.survey())]).toEqual(["surveyUnit"]);
});

test("what a setting does not take is refused in words", () => {
  const { survey } = kept();
  expect(() => settingEdits(survey(), { contingency: "a lot" })).toThrow('contingency: got "a lot"');
  expect(() => settingEdits(survey(), { covering: "sailcloth" })).toThrow('covering: got "sailcloth"');
});

/** A workbook with a short settings sheet of the user's own, and perhaps something below it. */
function shortSheet(...below: readonly (readonly string[])[]) {
  const items = [
    ["Identifier", "Height", "Width", "Depth", "Enclosure"],
    ["A1", 300, 210, 40, "tray"],
  ];
  const settings = [["my settings", ""], ["setting", "value"], ["fit", "loose"], ...below];
  const sheets = [
    { name: "Items", rows: items },
    { name: "Mine", rows: settings },
  ] as const;
  return openWorkbook(createWorkbook(sheets, [{ name: "Settings", refersTo: "Mine!$A$2:$B$3" }]));
}

test("a setting without a row in the sheet gets one below the last, and the name of the range takes it in", () => {
  let workbook = shortSheet();
  const survey = () => ({ ...readBookSurvey(bookOf(workbook), READ), book: bookOf(workbook) });
  const edits = settingEdits(survey(), { currency: "EUR", fit: "snug", answerUnit: "in" });
  workbook = openWorkbook(editWorkbook(workbook, edits).bytes);
  expect(workbook.names).toMatchObject([{ name: "Settings", refersTo: "'Mine'!$A$2:$B$5" }]);
  expect(survey().sized.settings).toMatchObject({ currency: "EUR", fit: "snug", answerUnit: "in", surveyUnit: "mm" });
  // Left to the usual, it needs no row.
  expect(settingEdits(survey(), { contingency: "" })).toEqual({ cells: [], names: [] });
});

test("cells below the settings that are in use are left alone, and where to put the row is said", () => {
  const workbook = shortSheet(["a note of mine", ""]);
  const survey = { ...readBookSurvey(bookOf(workbook), READ), book: bookOf(workbook) };
  expect(() => settingEdits(survey, { currency: "EUR" })).toThrow("insert a row between two others there");
});

test("rows of the board guide are changed, inserted and deleted in their order", () => {
  const book = kept();
  const before = book.boards();
  const first = guideRows(book.survey().found.guide!)[3]!;
  book.change({ does: "replace", row: 4, cells: { ...first, board: "2 mm", "weight up to": "0.5" } });
  expect(guideRows(book.survey().found.guide!)[3]).toMatchObject({
    board: "2 mm",
    "weight up to": "0.5",
    standing: "shop",
  });
  book.change({ does: "insert", row: 4, cells: { ...first, board: "3 mm" } });
  expect(book.boards()).toEqual([...before.slice(0, 3), "3 mm", "2 mm", ...before.slice(4)]);
  book.change({ does: "delete", row: 4 });
  book.change({ does: "replace", row: 4, cells: first });
  expect(book.boards()).toEqual(before);
  expect(() => book.change({ does: "replace", row: 4, cells: { ...first, "weight up to": "heavy" } })).toThrow("heavy");
  expect(book.boards()).toEqual(before);
});

const lineOf = (book: ReturnType<typeof kept>, stock: string) =>
  stockLines(book.survey().found.stock!).find(({ texts }) => texts.stock === stock)!;

test("a stock is changed, added below the last and removed on its sheet, and no other row moves", () => {
  const book = kept();
  const before = stockLines(book.survey().found.stock!);
  const { row } = lineOf(book, "conservation board 2");
  book.stock({ does: "replace", row, texts: { price: "7.25", "on hand": "12" } });
  const inForce = (name: string) => book.survey().sized.settings.stock.find(({ stock }) => stock === name);
  // A price of the user's own is no example.
  expect(inForce("conservation board 2")).toMatchObject({ price: 7.25, onHand: 12, examplePrice: false, caliper: 2 });
  book.stock({
    does: "add",
    texts: {
      stock: "museum board 4",
      material: "board",
      caliper: "80 pt",
      "sheet length": "1200",
      "sheet width": "800",
    },
  });
  expect(inForce("museum board 4")).toMatchObject({
    caliper: 2.032,
    caliperAsGiven: "80 pt",
    sheetLength: 1200,
    pack: 1,
  });
  expect(
    stockLines(book.survey().found.stock!)
      .slice(0, before.length)
      .map(({ texts }) => texts.stock),
  ).toEqual(before.map(({ texts }) => texts.stock));
  book.stock({ does: "remove", row: lineOf(book, "grey board 2").row });
  expect(inForce("grey board 2")).toBeUndefined();
  // The next one takes the first row that is free below, and the name of the range still ends with the table.
  book.stock({ does: "remove", row: lineOf(book, "museum board 4").row });
  book.stock({ does: "add", texts: { stock: "blotter", material: "lining", caliper: "0.5" } });
  expect(stockLines(book.survey().found.stock!).at(-1)).toMatchObject({
    row: before.length + 1,
    texts: { caliper: "0.5" },
  });
});

test("a stock that cannot be read is refused with its cure, and so is removing one that a setting names", () => {
  const book = kept();
  const { row } = lineOf(book, "book cloth");
  const refused = (change: StockChange) => () => stockEdits(book.survey(), change);
  expect(refused({ does: "replace", row, texts: { price: "a lot" } })).toThrow("give a number, zero or more");
  expect(refused({ does: "replace", row, texts: { material: "bord" } })).toThrow("board");
  expect(refused({ does: "add", texts: { stock: "a; b", material: "board", caliper: "2" } })).toThrow(
    "without ; and =",
  );
  expect(refused({ does: "add", texts: { stock: "thick", material: "board", caliper: "20" } })).toThrow("0.3 to 10 mm");
  book.set("covering", "book cloth");
  expect(refused({ does: "remove", row })).toThrow('covering: got "book cloth"');
  expect(rowsNaming("book cloth", book.survey())).toBe(0);
});

test("cells below the stock that are in use are left alone, and a price that is a formula is not written over", () => {
  const items = {
    name: "Items",
    rows: [
      ["Identifier", "Height", "Width", "Depth", "Enclosure"],
      ["A1", 300, 210, 40, "tray"],
    ],
  };
  const stock = [
    ["stock", "material", "caliper", "sheet length", "sheet width", "price"],
    ["board", "board", 2, 1000, 700, { formula: "2*3", result: 6 }],
    ["cloth", "covering", 0.3, null, 1000, 4],
    ["paper", "lining", 0.1, 1000, 700, 1],
    ["ours: ask the supplier"],
  ];
  const names = [{ name: "stock", refersTo: "Mine!$A$1:$F$4" }];
  const workbook = openWorkbook(createWorkbook([items, { name: "Mine", rows: stock }] as never, names));
  const survey = { ...readBookSurvey(bookOf(workbook), READ), book: bookOf(workbook) };
  expect(() => stockEdits(survey, { does: "add", texts: { stock: "card", material: "card", caliper: "0.5" } })).toThrow(
    "insert a row between two others on the sheet Mine",
  );
  const edits = stockEdits(survey, { does: "replace", row: 1, texts: { price: "8" } });
  expect(() => editWorkbook(workbook, edits)).toThrow("formula");
});
