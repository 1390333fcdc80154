import { ownColumns } from "../../src/workbook/ownMarks";
import { bookOf as bookOfFile } from "../../src/workbook/book";
import { openWorkbook, type Workbook } from "../../src/workbook/openWorkbook";
import { readSheet } from "../../src/workbook/readSheet";
import type { Argument, Cell } from "../runtime/marshal";
import { cell } from "../functions/cell";
import { bookOf, filled, namedRange, type Cells } from "./filledBook";

const ROWS: Cells = [
  ["Identifier", "Height mm", "Width mm", "Depth mm", "Enclosure"],
  ["A1", 300, 210, 40, "tray"],
  ["A2", 310, 215, 41, "clamshell box"],
  ["", null, null, null, null],
  ["A3", 300, 210, "4O", "tray"],
];
const FIGURES = ["outside height", "side wall length", "problem"];

const fill = (book: Workbook, options: object = {}) =>
  openWorkbook(filled(book, { figures: FIGURES, recognise: {}, oneFormula: true, ...options }).edit.bytes);
const formulasOf = (book: Workbook) => [...readSheet(book, "Survey", { formulas: true }).formulas];
const hold = (book: Workbook) => ownColumns(bookOfFile(book)).map(({ column, holds }) => [column, holds]);

test("one formula below the headings answers every cell of the columns, as Microsoft's runtime gives them", async () => {
  const book = fill(bookOf(ROWS, false));
  const formulas = formulasOf(book);
  expect(formulas).toHaveLength(1);
  const [[place, formula]] = formulas as [[string, string]];
  const pattern =
    /^_xlfn\.DROP\(_xldudf_ENC_SURVEY\(\$A\$1:\$E\$5,\{("[^}]*")\},settings,stock,"unit=mm",board_guide\),1\)$/;
  const [, names] = pattern.exec(formula)!;
  expect(place).toBe("F2");
  const figures = names!.split(",").map((name) => name.slice(1, -1));
  const ranges = ["settings", "stock"].map((name): Argument => namedRange(book, name));
  const answer = (await cell(
    "SURVEY",
    ROWS,
    [figures],
    ...ranges,
    "unit=mm",
    namedRange(book, "board_guide"),
  )) as Cell[][];
  const { rows } = readSheet(book, "Survey");
  const plain = (value: unknown) => (value === "\u00a0" ? "" : (value ?? ""));
  const stored = rows.slice(1).map((row) => figures.map((_, i) => plain(row[5 + i])));
  expect(stored).toHaveLength(4);
  expect(stored.map((row) => row.map(comparable))).toEqual(answer.slice(1).map((row) => row.map(comparable)));
  expect(stored[0]!.filter((value) => typeof value === "number").length).toBeGreaterThanOrEqual(2);
});

test("under a row of units the one formula begins beside the first item, and answers that item there", async () => {
  const [headings, ...items] = ROWS as [Cells[number], ...Cells];
  const cells: Cells = [headings, ["", "mm", "mm", "mm", ""], ...items];
  const [[place, formula]] = formulasOf(fill(bookOf(cells, false))) as [[string, string]];
  expect(place).toBe("F3");
  const dropped = Number(/,(\d+)\)$/.exec(formula)![1]);
  const [first] = ((await cell("SURVEY", cells, [["identifier"]])) as Cell[][]).slice(dropped);
  expect(first).toEqual(["A1"]);
});

/** Numbers as they are; a text of a problem may name its place. */
function comparable(value: unknown): unknown {
  if (typeof value !== "object" || value === null) return value;
  return "error" in value ? value.error : value;
}

test("a table takes no such formula: the columns stand beside it with one between, and a formula in every row goes", () => {
  const live = fill(bookOf(ROWS), { oneFormula: false });
  const [table] = live.tables.filter(({ name }) => name === "Survey");
  expect(formulasOf(live).length).toBeGreaterThan(ROWS.length);
  expect(hold(live).every(([, holds]) => holds === "formulas")).toBe(true);
  const once = fill(live);
  const survey = once.tables.find(({ name }) => name === "Survey")!;
  // The column of preferred boards is the user's and stays.
  expect(table!.area.right - survey.area.right).toBe(hold(live).length);
  const own = hold(once);
  expect(own[0]).toEqual([survey.area.right + 2, "one formula"]);
  expect(formulasOf(once)).toHaveLength(1);
  const twice = fill(once, { figures: ["outside height", "problem"] });
  expect(hold(twice)[0]).toEqual(own[0]);
  expect(hold(twice)).toHaveLength(own.length - 1);
  expect(formulasOf(twice)).toHaveLength(1);
  const values = fill(twice, { values: true, figures: ["outside height", "problem"] });
  expect(hold(values).map(([, holds]) => holds)).toEqual(hold(twice).map(() => "values"));
  expect(formulasOf(values)).toEqual([]);
});

test("what only the user knows of the headings is in no cell: then a formula in every row is asked for", () => {
  const odd: Cells = [["Identifier", "Zz", "Yy", "Xx", "Enclosure"], ...ROWS.slice(1)];
  const words = [
    { word: "Zz", meaning: "height", unit: "mm" },
    { word: "Yy", meaning: "width", unit: "mm" },
    { word: "Xx", meaning: "depth", unit: "mm" },
  ];
  expect(() => fill(bookOf(odd), { recognise: { words } })).toThrow(
    "columns: got one formula for all rows; it would read this survey in another way",
  );
  expect(() => fill(bookOf(odd), { recognise: { words }, oneFormula: false })).not.toThrow();
});
