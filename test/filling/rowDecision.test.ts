import { readBookSurvey } from "../../src/filling/readBookSurvey";
import { rowDecision, rowSays } from "../../src/filling/rowDecision";
import { surveyEdits } from "../../src/filling/surveyEdits";
import type { SettingKey } from "../../src/settings/schema";
import { bookOf } from "../../src/workbook/book";
import { createWorkbook } from "../../src/workbook/createWorkbook";
import { editWorkbook } from "../../src/workbook/editWorkbook";
import { openWorkbook } from "../../src/workbook/openWorkbook";

const READ = { recognise: {}, settings: [] };
const HEADINGS = ["Identifier", "Height", "Width", "Depth", "Enclosure", "Box"];
const TWO = [HEADINGS, ["A1", 300, 210, 40, "tray", ""], ["A2", 250, 180, 30, "tray", ""]];

/** A workbook to decide in, as the pane does: what is written is read again. */
function opened(rows: (string | number)[][], table?: string) {
  let workbook = openWorkbook(createWorkbook([{ name: "Items", rows, ...(table === undefined ? {} : { table }) }]));
  const survey = () => readBookSurvey(bookOf(workbook), READ);
  const write = (edits: Parameters<typeof editWorkbook>[1]) =>
    (workbook = openWorkbook(editWorkbook(workbook, edits).bytes));
  return {
    survey,
    decide: (index: number, key: SettingKey, text: string) => write(rowDecision(survey(), index, key, text)),
    fill: () =>
      write(
        surveyEdits(bookOf(workbook), { ...READ, figures: ["outside height"], values: false, cutList: false }).edits,
      ),
    says: (key: SettingKey) => survey().sized.survey.items.map((_, index) => rowSays(survey(), index, key)),
    headings: () => bookOf(workbook).grid("Items").rows[0],
  };
}

test.each([undefined, "Survey"])(
  "a decision without a column gets one, right of figures that stand already, table %s",
  (table) => {
    const book = opened(TWO, table);
    book.fill();
    const before = book.headings()!.length;
    book.decide(1, "fit", "loose");
    expect(book.headings()!.slice(before)).toEqual(["fit"]);
    expect(book.says("fit")).toEqual(["", "loose"]);
    book.decide(0, "fit", "4");
    expect(book.says("fit")).toEqual(["4", "loose"]);
    book.decide(1, "fit", "");
    book.decide(0, "fit", "");
    expect(book.says("fit")).toEqual(["", ""]);
    // The column is blank now, and still the one that the next decision is written into.
    book.decide(0, "fit", "snug");
    expect(book.says("fit")).toEqual(["snug", ""]);
    expect(book.headings()!.slice(before)).toEqual(["fit"]);
  },
);

test("a board goes into the column of preferences, and of all rows of a box that named another", () => {
  const book = opened([HEADINGS, ["A1", 300, 210, 40, "tray", "B1"], ["A2", 250, 180, 30, "", "B1"]]);
  book.decide(1, "wallBoard", "conservation board 3");
  expect(book.headings()!.at(-1)).toBe("preferred board");
  book.decide(0, "wallBoard", "conservation board 2");
  expect(book.says("wallBoard")).toEqual(["conservation board 2", "conservation board 2"]);
  expect(book.survey().sized.outcomes.map(({ state }) => state)).toEqual(["sized", "in box"]);
});

test("what a setting does not take is refused before anything is written", () => {
  const book = opened(TWO);
  expect(() => book.decide(0, "fit", "tightish")).toThrow('fit: got "tightish"; give snug, standard, loose');
  expect(() => book.decide(0, "wallBoard", "no such board")).toThrow("wall board");
});

test("a column of that name that says something else is left alone", () => {
  const rows = TWO.map((row, index) => [...row, ["Construction", "sewn on cords", "adhesive"][index]!]);
  const book = opened(rows);
  expect(() => book.decide(0, "construction", "on base")).toThrow('such as "sewn on cords"');
  expect(book.headings()).toEqual([...HEADINGS, "Construction"]);
});
