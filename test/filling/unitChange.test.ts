import { readBookSurvey } from "../../src/filling/readBookSurvey";
import { surveyEdits } from "../../src/filling/surveyEdits";
import { plainMeasures, unitEdits, type UnitMeaning } from "../../src/filling/unitChange";
import type { WorkbookUnit } from "../../src/measure/units";
import { bookOf } from "../../src/workbook/book";
import { createWorkbook } from "../../src/workbook/createWorkbook";
import type { CellContent } from "../../src/workbook/edits";
import { editWorkbook } from "../../src/workbook/editWorkbook";
import { openWorkbook, type Workbook } from "../../src/workbook/openWorkbook";
import { readSheet } from "../../src/workbook/readSheet";

const READ = { recognise: {}, settings: [] };
const ROWS = [
  ["Identifier", "Height", "Width", "Depth (cm)", "Weight", "Enclosure"],
  ["A1", 300, 210, 4, 1.5, "tray"],
  ["A2", "152.4", "4 in", 2.54, "300 g", "clamshell box"],
  ["A3", "", "tall", 2, "", "tray"],
];

const surveyOf = (workbook: Workbook) => {
  const book = bookOf(workbook);
  return { ...readBookSurvey(book, READ), book };
};

/** With settings, stock and guide of its own. */
function kept(rows: readonly (readonly CellContent[])[] = ROWS): Workbook {
  const bare = openWorkbook(createWorkbook([{ name: "Items", rows }]));
  const { edits } = surveyEdits(bookOf(bare), { ...READ, figures: [], values: false, cutList: false });
  return openWorkbook(editWorkbook(bare, { sheets: edits.sheets ?? [], names: edits.names ?? [] }).bytes);
}

function changed(workbook: Workbook, to: WorkbookUnit, meaning: UnitMeaning) {
  const before = surveyOf(workbook);
  return openWorkbook(editWorkbook(workbook, unitEdits(before, before.sized, to, meaning)).bytes);
}

const itemsOf = (workbook: Workbook) =>
  surveyOf(workbook).sized.outcomes.map((outcome) =>
    outcome.state === "sized" ? { ...outcome.sized.item, kg: outcome.sized.weightKg } : outcome.state,
  );
const unitsOf = (workbook: Workbook) => {
  const { surveyUnit, answerUnit } = surveyOf(workbook).sized.settings;
  return [surveyUnit, answerUnit];
};

test("what depends on the unit is a number without one, in cell, heading and row", () => {
  expect(
    plainMeasures(surveyOf(kept()).sized).map(({ identifier, field, text }) => `${identifier} ${field} ${text}`),
  ).toEqual(["A1 height 300", "A2 height 152.4", "A1 width 210", "A1 weight 1.5"]);
});

test.each(["cm", "in"] as const)("numbers in cm by their column's own texts are as long after a change to %s", (to) => {
  const rows = [
    ["Identifier", "H (cm)", "W", "D (cm)", "Enclosure"],
    ["A1", 19, 12, 3, "tray"],
    ["A2", 25, 18, 2, "slipcase"],
    ["A3", 22, "24 cm", 2.5, "tray"],
  ];
  const workbook = kept(rows);
  expect(plainMeasures(surveyOf(workbook).sized).map(({ text, readIn }) => [text, readIn])).toEqual([
    ["12", "cm"],
    ["18", "cm"],
  ]);
  const before = itemsOf(workbook).map((item) => (typeof item === "string" ? item : item.width));
  expect(before).toEqual([120, 180, 240]);
  const after = itemsOf(changed(workbook, to, "convert"));
  after.forEach((item, index) =>
    expect(typeof item === "string" ? item : item.width).toBeCloseTo(before[index] as number, 1),
  );
});

describe.each(["cm", "in"] as const)("to %s", (to) => {
  const workbook = kept();
  const before = itemsOf(workbook);

  test("only answers: no object changes its size, and no cell of the survey is written", () => {
    const after = changed(workbook, to, "answers");
    expect(unitsOf(after)).toEqual(["mm", to]);
    expect(itemsOf(after)).toEqual(before);
    expect(readSheet(after, "Items").rows).toEqual(readSheet(workbook, "Items").rows);
    expect(unitsOf(changed(after, "mm", "answers"))).toEqual(["mm", "mm"]);
  });

  test("converted: every object stays as large and as heavy as it was, and back again", () => {
    const after = changed(workbook, to, "convert");
    expect(unitsOf(after)).toEqual([to, to]);
    const near = (items: typeof before) =>
      items.map((item) =>
        typeof item === "string"
          ? item
          : Object.fromEntries(Object.entries(item).map(([name, size]) => [name, Number(size).toFixed(6)])),
      );
    expect(near(itemsOf(after))).toEqual(near(before));
    expect(near(itemsOf(changed(after, "mm", "convert")))).toEqual(near(before));
  });

  test("written already: the same cells are other sizes", () => {
    const after = changed(workbook, to, "written");
    expect(unitsOf(after)).toEqual([to, to]);
    expect(readSheet(after, "Items").rows).toEqual(readSheet(workbook, "Items").rows);
    expect(plainMeasures(surveyOf(after).sized).filter(({ field }) => field === "weight")[0]!.amount).toBeCloseTo(
      to === "in" ? 0.68038856 : 1.5,
      8,
    );
  });
});

test("a heading that names the unit of its column, and a size that is a formula, are never written over", () => {
  const workbook = kept([
    ["Identifier", "Height", "Width", "Depth", "Enclosure"],
    ["A1", 300, { formula: "2*105", result: 210 }, 40, "tray"],
  ]);
  expect(() => changed(workbook, "in", "convert")).toThrow(
    "cells: got a formula in C2; only typed numbers can be changed into others",
  );
  const texts = kept([
    ["Identifier", "Dimensions", "Enclosure"],
    ["A1", "300 x 210 x 40", "tray"],
  ]);
  expect(() => changed(texts, "in", "convert")).toThrow("a column of dimension texts");
});

test("headings follow the unit of answers in their places, and so do the formulas that name them", () => {
  const sum = 'SUM(Survey[outside height (mm)])&"[outside height (mm)]"&ROWS(Survey[[outside height (mm)]:[problem]])';
  const rows = [
    ["Identifier", "Height (mm)", "Width (mm)", "Depth (mm)", "Enclosure"],
    ["A1", 300, 210, 40, "tray"],
    ["A2", 152, 101, 25, "clamshell box"],
  ];
  const fill = (workbook: Workbook) => {
    const figures = ["outside height", "mass", "problem"];
    const { edits } = surveyEdits(bookOf(workbook), { ...READ, figures, values: false, cutList: false });
    const edit = editWorkbook(workbook, edits);
    return { book: openWorkbook(edit.bytes), edit };
  };
  const first = fill(openWorkbook(createWorkbook([{ name: "Items", table: "Survey", rows }]))).book;
  const own = [{ name: "Sums", rows: [[{ formula: sum, result: 0 }]] }];
  const filled = openWorkbook(editWorkbook(first, { sheets: own }).bytes);
  const headings = (book: Workbook) => readSheet(book, "Items").rows[0];
  const formula = (book: Workbook) => readSheet(book, "Sums", { formulas: true }).formulas.get("A1");
  const { book: inches, edit } = fill(changed(filled, "in", "answers"));
  const renamed = (heading: unknown) =>
    String(heading).replace("outside height (mm)", "outside height (in)").replace("mass (kg)", "mass (lb)");
  expect(headings(inches)).toEqual(headings(filled)!.map(renamed));
  expect(inches.tables[0]!.columns).toEqual(filled.tables[0]!.columns.map(renamed));
  expect(edit.columns.every(({ replaced }) => replaced)).toBe(true);
  expect(formula(inches)).toBe(
    sum
      .replace("Survey[outside height (mm)]", "Survey[outside height (in)]")
      .replace("[[outside height (mm)]", "[[outside height (in)]"),
  );
  const again = fill(changed(inches, "mm", "answers")).book;
  expect([headings(again), formula(again)]).toEqual([headings(filled), sum]);
  // A heading that the user wrote stays, and what its answers are in is said.
  const at = headings(again)!.indexOf("outside height (mm)") + 1;
  const mine = openWorkbook(
    editWorkbook(again, { cells: [{ sheet: "Items", row: 1, column: at, content: "how high" }] }).bytes,
  );
  const { book: kept, edit: written } = fill(changed(mine, "in", "answers"));
  expect(headings(kept)![at - 1]).toBe("how high");
  expect(written.notes).toEqual([expect.stringContaining('its answers are now "outside height (in)"')]);
});
