import { strFromU8, unzipSync } from "fflate";
import fc from "fast-check";
import { STARTER_STOCK, stockCells } from "../../src/settings/starterStock";
import type { CellEdit } from "../../src/workbook/edits";
import { editWorkbook } from "../../src/workbook/editWorkbook";
import type { FillOptions } from "../../src/filling/surveyEdits";
import { openWorkbook } from "../../src/workbook/openWorkbook";
import { readSheet } from "../../src/workbook/readSheet";
import { anySurvey, FORMS } from "../survey/anySurvey";
import { agree, bookOf, calculated, filled, type Calculated, type Cells } from "./filledBook";

const FIGURES = [
  "outside height",
  "inside depth",
  "caliper",
  "board",
  "board area",
  "base length",
  "side wall height",
  "wall strip count",
  "base stock",
  "mass",
  "cautions",
  "problem",
];

/** Surveys of each form; each has more than 200 formulas. */
const RUNS = 2;

describe("every formula that is written gives the result stored beside it", () => {
  test.each(FORMS.map((form) => [form.name, form] as const))("%s", async (_name, form) => {
    let comma = false;
    await fc.assert(
      fc.asyncProperty(anySurvey(form), async (cells) => {
        const { edit } = filled(bookOf(cells), { figures: FIGURES, settings: form.settings ?? ["unit=mm"] });
        // Every other survey is calculated by an Excel in French or German.
        const all = await calculated(edit.bytes, 1, comma);
        comma = !comma;
        expect(all.length).toBeGreaterThan(FIGURES.length * 16);
        const wrong = all.filter((each) => !agree(each));
        expect(wrong.slice(0, 3).map((each) => ({ ...each, cells: cells[each.row - 1] }))).toEqual([]);
      }),
      { numRuns: RUNS, endOnFailure: true },
    );
  });
});

test("numbers with three decimals are joined with a point where Excel shows a comma", async () => {
  const cells = [
    ["Shelfmark", "Height (cm)", "Width", "Depth", "Weight", "Enclosure", "Fit", "Unit"],
    ["S 1", 30.125, 210.125, 40.125, 1.234, "tray", 2.125, null],
    ["S 2", 30.125, 8.125, 1.125, 1.234, "tray", 2.125, "in"],
    ["S 3", 30.125, 8.125, 1.125, "12.75", "tray", 2.125, "in"],
  ];
  for (const [heading, settings] of [
    ["Weight (kg)", "unit=mm"],
    ["Weight (g)", "unit=mm"],
  ] as const) {
    const survey = cells.map((row, index) =>
      index === 0 ? row.map((each) => (each === "Weight" ? heading : each)) : row,
    );
    const { edit } = filled(bookOf(survey), { figures: FIGURES, settings: [settings] });
    const [point, comma] = [await calculated(edit.bytes), await calculated(edit.bytes, 1, true)];
    expect(comma.map((each) => each.calculated)).toEqual(point.map((each) => each.calculated));
    expect(point.filter((each) => !agree(each))).toEqual([]);
    expect(point.find((each) => each.heading.startsWith("outside height"))!.calculated).toEqual(expect.any(Number));
  }
});

test("eighths typed under feet, which no other unit reads, are feet", async () => {
  const cells = [
    ["Shelfmark", "Height", "Width", "Depth", "Unit", "Enclosure"],
    ["S 1", "1 5/8", 1, "200 mm", "ft", "tray"],
    ["S 2", "1 5/8 in", 1, "200 mm", "ft", "tray"],
  ];
  const all = await calculated(filled(bookOf(cells), { figures: ["outside height"] }).edit.bytes);
  // 1 5/8 ft = 495.3, and 1 5/8 in = 41.275; + 3 inside, up to the half, + 2 boards + 1 covering.
  const heights = all.filter(({ heading }) => heading === "outside height (mm)");
  expect(heights.map((each) => each.calculated)).toEqual([505.5, 50.5]);
  expect(all.filter((each) => !agree(each))).toEqual([]);
});

test("a hazard column that says no draws no caution, in whatever words, and one that says anything else does", async () => {
  const said = ["no", "None", "-", 0, false, "n/a", 1, true, "yes", "lead  paint", "no label, smells of almonds"];
  const cells = [
    ["Shelfmark", "Height", "Width", "Depth", "Enclosure", "Hazard"],
    ...said.map((hazard, index) => [`S ${index}`, 300, 210, 40, "tray", hazard]),
  ];
  const all = await calculated(filled(bookOf(cells), { figures: ["cautions"] }).edit.bytes);
  const cautions = all.filter(({ heading }) => heading === "cautions");
  expect(cautions.map((each) => /^hazard \((.*)\)/.exec(String(each.calculated))?.[1])).toEqual([
    ...Array.from({ length: 6 }, () => undefined),
    ...["1", "TRUE", "yes", "lead paint", "no label, smells of almonds"],
  ]);
  expect(all.filter((each) => !agree(each))).toEqual([]);
});

describe("formulas follow the cells they read", () => {
  const HEADINGS = ["Shelfmark", "Height", "Width", "Depth", "Enclosure", "Quantity"];

  async function afterEdit(cells: Cells, edit: CellEdit, options: Partial<FillOptions> = {}) {
    const { edit: first } = filled(bookOf(cells), { figures: ["outside height", "board area", "problem"], ...options });
    const edited = editWorkbook(openWorkbook(first.bytes), { cells: [edit] });
    const row = (await calculated(edited.bytes)).filter((each) => each.row === edit.row);
    return Object.fromEntries(row.map(({ heading, calculated: value }) => [heading, value]));
  }

  test("a quantity that is mended", async () => {
    const good = ["S 2", 300, 210, 40, "tray", 3];
    const cells = [HEADINGS, ["S 1", 300, 210, 40, "tray", "two"], good, good];
    const before = await calculated(filled(bookOf(cells), { figures: ["board area", "problem"] }).edit.bytes);
    const [, , area, problem0] = before;
    expect([area, problem0].map((each) => each!.calculated)).toEqual([
      { error: "#VALUE!" },
      'quantity: got "two"; give a whole number of 1 or more, or leave it blank for 1',
    ]);
    const edit = { sheet: "Survey", row: 2, column: 6, content: 2 };
    // Base 303 x 213, side walls 307 x 42.5 (2 of), head walls 213 x 42.5 (2 of): see the worked example.
    const { "outside height (mm)": height, problem, "board area (m2)": two } = await afterEdit(cells, edit);
    expect([height, problem]).toEqual([309, ""]);
    const { "board area (m2)": one } = await afterEdit(cells, { ...edit, content: 1 });
    expect(two).toBeCloseTo(2 * (one as number), 12);
  });

  test("measures that are deleted, or typed where there were none", async () => {
    const cells = [
      HEADINGS,
      ["S 1", 300, 210, 40, "tray"],
      ["S 2", null, 0, null, " Tray"],
      ["S 3", null, null, null, "none "],
      ["S 4", null, null, null, null],
      ["S 5", 300, 210, 40, "Solander box"],
    ];
    const before = await calculated(filled(bookOf(cells), { figures: ["problem"] }).edit.bytes);
    expect(before.filter((each) => !agree(each))).toEqual([]);
    const problems = before.filter(({ heading }) => heading === "problem").map((each) => each.calculated);
    const unmeasured = expect.stringMatching(/^height: got no measures/);
    const notMade = 'enclosure: got "Solander box"; a structure that is not made here; choose another kind, or none';
    expect(problems).toEqual(["", unmeasured, "", "", notMade]);
    const typed = async (row: number, column: number, content: string | number | null) =>
      (await afterEdit(cells, { sheet: "Survey", row, column, content }))["problem"];
    expect(await typed(5, 5, "tray")).toEqual(unmeasured);
    expect(await typed(6, 5, "tray")).toBe("");
    expect(await typed(3, 2, 300)).toMatch(/^width: got 0/);
    expect(await typed(3, 5, "none")).toBe("");
  });

  test("sizes typed where a dimension text was", async () => {
    const cells = [
      ["Shelfmark", "Height", "Width", "Depth", "Dimensions", "Enclosure"],
      ["S 1", null, null, null, "30 x 21 x 4 cm", "tray"],
      ["S 2", 300, 210, 40, null, "tray"],
    ];
    const blank = await afterEdit(cells, { sheet: "Survey", row: 2, column: 5, content: null });
    const problem = expect.stringMatching(/^height: got no measures/);
    expect(blank).toEqual({ board: "", caliper: "", "outside height (mm)": "", "board area (m2)": "", problem });
    const typed = await afterEdit(cells, { sheet: "Survey", row: 2, column: 2, content: 400 });
    // Width and depth are then missing, and the text no longer counts.
    expect(typed["problem"]).toMatch(/^width: got (?:a blank|0)/);
  });

  test("a unit that is changed in its column", async () => {
    const cells = [
      [...HEADINGS.slice(0, 5), "Unit"],
      ["S 1", 30, 21, 4, "tray", "cm"],
    ];
    const inches = await afterEdit(cells, { sheet: "Survey", row: 2, column: 6, content: "in" });
    // 30 in = 762, + 7 inside play, + 2 x 2 x 2 board + 1 covering, rounded up to the half.
    expect(inches["outside height (mm)"]).toBeCloseTo(774, 6);
  });

  test("a board preferred in one cell changes the row's board, caliper, parts and area; the others stay", async () => {
    const cells = [
      [...HEADINGS.slice(0, 5), "Weight (kg)"],
      ["S 1", 300, 220, 40, "tray", 0.9],
      ["S 2", 300, 220, 40, "tray", 0.9],
    ];
    const figures = ["base stock", "base count", "base caliper", "board area", "cautions", "problem"];
    const { edit } = filled(bookOf(cells), { figures });
    const preferred = edit.columns.find(({ wantedName }) => wantedName === "preferred board")!.column;
    const typed = editWorkbook(openWorkbook(edit.bytes), {
      cells: [{ sheet: "Survey", row: 2, column: preferred, content: "2 x conservation board 2" }],
    });
    const rowOf = (all: readonly Calculated[], row: number) =>
      all.filter((each) => each.row === row && each.heading !== "board area (m2)").map((each) => each.calculated);
    const all = await calculated(typed.bytes);
    expect(rowOf(all, 2)).toEqual(["2 x conservation board 2", 4, "conservation board 2", 2, 2, "", ""]);
    expect(rowOf(all, 3)).toEqual(["conservation board 2.5", 2.5, "conservation board 2.5", 1, 2.5, "", ""]);
    const sheetXml = strFromU8(unzipSync(edit.bytes)["xl/worksheets/sheet1.xml"]!);
    expect(sheetXml).toContain('<dataValidation type="list" allowBlank="1" showErrorMessage="0" sqref="G2:G3">');
    expect(readSheet(openWorkbook(edit.bytes), "board choices").rows.flat()).toEqual(
      expect.arrayContaining(["conservation board 2", "2 x conservation board 2", "conservation card 20 pt"]),
    );
    // Filled again, the decision stays, and the stored results are those that the formulas gave.
    const again = filled(openWorkbook(typed.bytes), { figures });
    const refilled = await calculated(again.edit.bytes);
    expect(refilled.filter((each) => !agree(each))).toEqual([]);
    expect(rowOf(refilled, 2)).toEqual(rowOf(all, 2));
    expect(readSheet(openWorkbook(again.edit.bytes), "Survey").rows[1]![preferred - 1]).toBe(
      "2 x conservation board 2",
    );
  });
});

test("of two columns that name a row's board the preferred one counts, in the formulas too, and that is said", async () => {
  const cells = [
    ["Shelfmark", "Height", "Width", "Depth", "Enclosure", "Preferred board", "Wall board"],
    ["S 1", 300, 220, 40, "tray", "3 mm", "1.5 mm"],
    ["S 2", 300, 220, 40, "tray", null, "1.5 mm"],
    ["S 3", 300, 220, 40, "tray", "3 mm", "3 mm"],
  ];
  const { edit, said } = filled(bookOf(cells), { figures: ["base stock"] });
  const all = await calculated(edit.bytes);
  expect(all.filter((each) => !agree(each))).toEqual([]);
  const boards = all.filter(({ heading }) => heading === "board").map((each) => each.calculated);
  expect(boards).toEqual(["conservation board 3", "conservation board 1.5", "conservation board 3"]);
  expect(said).toContain(
    'columns "Wall board" and "Preferred board" both name the board of a row: "Preferred board" counts where both are filled; they differ in row 2',
  );
  // A second column for the same is not added.
  expect(edit.columns.map(({ wantedName }) => wantedName)).not.toContain("preferred board");
});

test("a word for a material on the sheet words counts in the cautions, and in the formulas that say them", async () => {
  const cells = [
    ["Shelfmark", "Height", "Width", "Depth", "Weight (kg)", "Enclosure", "Material"],
    ["S 1", 300, 220, 20, 0.4, "tray", "Baryta prints; mounted"],
    ["S 2", 300, 220, 20, 0.4, "tray", "paper"],
    ["S 3", 300, 220, 20, 0.4, "tray", null],
  ];
  const words = [
    ["heading or value", "meaning", "unit", "sheet"],
    ["baryta", "photograph", "", ""],
  ];
  const book = editWorkbook(bookOf(cells), { sheets: [{ name: "words", rows: words }] });
  const all = await calculated(filled(openWorkbook(book.bytes), { figures: ["cautions"] }).edit.bytes);
  expect(all.filter((each) => !agree(each))).toEqual([]);
  const cautions = all.filter(({ heading }) => heading === "cautions").map((each) => String(each.calculated));
  expect(cautions[0]).toMatch(/^photograph beside .* not known to pass ISO 18916/);
  expect(cautions.slice(1)).toEqual(["", ""]);
});

describe("settings of a run on a workbook that has its own", () => {
  const CELLS = [
    ["Shelfmark", "Height", "Width", "Depth", "Enclosure"],
    ["S 1", 300, 210, 40, "tray"],
    ["S 2", 300, 210, 40, "lidded box"],
  ];
  const first = () => openWorkbook(filled(bookOf(CELLS)).edit.bytes);

  test("stand in each formula, shared by all rows: a tray passes over what a lid has", async () => {
    const { edit } = filled(first(), {
      settings: [
        "lid reveal=6; fit=loose",
        [
          ["setting", "value"],
          ["turn-in", 18],
        ],
      ],
    });
    const all = await calculated(edit.bytes);
    expect(all.filter((each) => !agree(each))).toEqual([]);
    expect(all[0]!.formula).toContain('{"setting","value";"lid reveal","6";"fit","loose";"turn-in",18}');
    expect(all.map((each) => each.calculated)).not.toContainEqual({ error: "#VALUE!" });
  });

  test("another stock table than the workbook's is refused, for plain values it is used", () => {
    const stock = stockCells(STARTER_STOCK);
    expect(() => filled(first(), { settings: [stock] })).toThrow(
      "stock: got a stock table beside the workbook's own, called stock; formulas read the workbook's own; change it there, or ask for plain values",
    );
    expect(filled(first(), { settings: [stock], values: true }).sized.outcomes.map(({ state }) => state)).toEqual([
      "sized",
      "sized",
    ]);
  });
});

describe("rows that share a box", () => {
  const HEADINGS = [
    "Shelfmark",
    "Height",
    "Width",
    "Depth (cm)",
    "Weight (g)",
    "Enclosure",
    "Box",
    "Quantity",
    "Hazard",
  ];
  const CELLS: Cells = [
    HEADINGS,
    ["S 1", 300, 210, 4, 900, "tray", "B7", "", "mould"],
    ["S 2", 310, "20 cm", "15 mm", 300, "", "B7", 2, "mould"],
    ["S 3", 200, 150, 3, 400, "lidded box", "", "", ""],
    ["S 4", 290, 215, 1, 250, "tray", "B7", "", "arsenic"],
  ];
  const columns = ["outside height", "outside width", "outside depth", "board", "mass", "cautions", "problem"];
  const inRow = (all: readonly Calculated[], row: number) =>
    Object.fromEntries(
      all.filter((each) => each.row === row).map(({ heading, calculated: value }) => [heading, value]),
    );

  test("are formulas on the first of them, which give what is stored", async () => {
    const all = await calculated(filled(bookOf(CELLS), { figures: columns }).edit.bytes);
    expect(all.filter((each) => each.row === 2).length).toBeGreaterThanOrEqual(columns.length);
    expect(all.filter((each) => !agree(each))).toEqual([]);
    const board = Number(/conservation board (.+)/.exec(String(inRow(all, 2)["board"]))![1]);
    // Greatest 310 x 215; depths 40 + 2 x 15 + 10 = 80. Inside 313 x 218 x 82.5, two boards and two coverings more, or
    // one board, the flange card and two coverings.
    expect(inRow(all, 2)).toMatchObject({
      "outside height (mm)": 313 + 2 * board + 1,
      "outside width (mm)": 218 + 2 * board + 1,
      "outside depth (mm)": 82.5 + board + 0.4 + 1,
    });
    expect(inRow(all, 2)["cautions"]).toMatch(/^hazard \(mould, arsenic\)/);
  });

  const manyRows = (count: number): Cells => [
    HEADINGS,
    ...Array.from({ length: count }, (_, index) => [`S ${index}`, 300, 210, 1, 90, "tray", "B7", "", ""]),
  ];

  test("too many for one formula are values, and it is said; so few that a formula holds them all are not", () => {
    const said = (count: number) => filled(bookOf(manyRows(count)), { figures: columns }).said.join("\n");
    expect(said(3)).not.toContain("too many");
    expect(said(20)).toContain(
      "box B7: 20 rows are too many for one formula, so values are written (board, caliper, cautions, problem); when something changes, fill the columns again",
    );
  });

  const BESIDE: Cells = CELLS.map((row, index) => [...row, ["Arrangement", "side by side"][index] ?? ""]);

  test("side by side they have their widths added, with dividers between them: 3 boards and 6 coverings", async () => {
    const all = await calculated(filled(bookOf(BESIDE), { figures: columns, settings: ["wall board=2"] }).edit.bytes);
    expect(all.filter((each) => each.row === 2).length).toBeGreaterThanOrEqual(columns.length);
    expect(all.filter((each) => !agree(each))).toEqual([]);
    // 210 + 2 x 200 + 215 and 4 x 2 of play, 3 dividers of 2 + 1, 1; greatest depth 40.
    expect(inRow(all, 2)).toMatchObject({
      "outside width (mm)": 825 + 8 + 9 + 1 + 4 + 1,
      "outside depth (mm)": 42.5 + 2 + 0.4 + 1,
      problem: "",
    });
  });

  test.each([
    ["stacked again", "J2", "stacked", "outside width (mm)", 213 + 5 + 5 - 848],
    ["one copy more of another row", "H3", 3, "outside width (mm)", 200 + 2 + 3],
  ] as const)("side by side they follow the cells: %s", async (_, cell, value, heading, more) => {
    const { edit } = filled(bookOf(BESIDE), { figures: columns, settings: ["wall board=2"] });
    const before = inRow(await calculated(edit.bytes), 2);
    const [, column, row] = /^([A-Z])(\d)$/.exec(cell)!;
    const changed = { sheet: "Survey", row: Number(row), column: column!.charCodeAt(0) - 64, content: value };
    const after = inRow(await calculated(editWorkbook(openWorkbook(edit.bytes), { cells: [changed] }).bytes), 2);
    expect(Number(after[heading]) - Number(before[heading])).toBeCloseTo(more, 6);
  });

  const lying = (first: string, others: Cells[number] = []): Cells => [
    ...BESIDE.slice(0, 1).map((row) => [...row, ...(others.length === 0 ? [] : ["Rests on"])]),
    ...BESIDE.slice(1).map((row, index) => [
      ...row.slice(0, -1),
      index === 0 ? first : "",
      ...others.slice(index, index + 1),
    ]),
  ];
  const outside = (all: readonly Calculated[]) =>
    ["height", "width", "depth"].map((way) => Number(inRow(all, 2)[`outside ${way} (mm)`]));
  const WALLS = 2 * 2 + 1;

  test("in rows of two they lie as they are listed, each copy in its place", async () => {
    const { edit } = filled(bookOf(lying("rows of 2")), { figures: columns, settings: ["wall board=2"] });
    const all = await calculated(edit.bytes);
    expect(all.filter((each) => !agree(each))).toEqual([]);
    // 300 x 210 and 310 x 200; 310 x 200 and 290 x 215: rows of 310 and 310, columns of 210 and 215; play of 2 each, a
    // divider of 3, 1.
    const [high, wide] = [310 + 310 + 2 * 2 + 3 + 1, 210 + 215 + 2 * 2 + 3 + 1];
    expect(outside(all)).toEqual([high + WALLS, wide + WALLS, 42.5 + 2 + 0.4 + 1]);
    expect(inRow(all, 2)["problem"]).toBe("");
  });

  test.each([
    // Play of none; dividers of 3, and 1 at the walls.
    ["a row of three, the fourth below the first", "J2", "rows of 3", [310 + 290 + 3, 215 + 200 + 200 + 2 * 3]],
    ["stacked", "J2", "stacked", [310, 215]],
    ["a third copy, alone in a third row", "H3", 3, [310 + 310 + 290 + 2 * 3, 215 + 200 + 3]],
  ] as const)("in rows they follow the cells: %s", async (_, cell, value, [high, wide]) => {
    const { edit } = filled(bookOf(lying("rows of 2")), { figures: columns, settings: ["wall board=2; fit=none"] });
    const [, column, row] = /^([A-Z])(\d)$/.exec(cell)!;
    const changed = { sheet: "Survey", row: Number(row), column: column!.charCodeAt(0) - 64, content: value };
    const after = await calculated(editWorkbook(openWorkbook(edit.bytes), { cells: [changed] }).bytes);
    expect(outside(after).slice(0, 2)).toEqual([high + 1 + WALLS, wide + 1 + WALLS]);
  });

  test("on their edges in a row the depths are added; weights with units of their own are added too", async () => {
    const cells = lying("side by side", ["edge"]).map((row, index) =>
      row.map((cell, place) => (index > 1 && place === 4 && cell !== "" ? `${String(cell)} g` : cell)),
    );
    const all = await calculated(
      filled(bookOf(cells), { figures: columns, settings: ["wall board=2; fit=none"] }).edit.bytes,
    );
    expect(all.filter((each) => !agree(each))).toEqual([]);
    expect(all.filter((each) => each.row === 2).length).toBeGreaterThanOrEqual(columns.length);
    // 40 + 2 x 15 + 10, three dividers of 3, 1; as high as the widest.
    expect(outside(all)).toEqual([310 + 1 + WALLS, 80 + 9 + 1 + WALLS, 215 + 0.5 + 2 + 0.4 + 1]);
  });

  test("rows of one box that lie otherwise than its first are refused", () => {
    const other = BESIDE.map((row, index) => (index === 2 ? [...row.slice(0, -1), "stacked"] : row));
    const { outcomes } = filled(bookOf(other), { figures: columns }).sized;
    expect(outcomes[0]).toMatchObject({
      state: "problem",
      error: expect.objectContaining({
        message:
          'arrangement: got "stacked" for S 2 in box B7, whose first row says "side by side"; items of one box lie in one way; give both rows the same, or another box',
      }) as Error,
    });
  });

  test.each([
    ["a height of another row", "B5", 350, "outside height (mm)", 40],
    ["a depth of another row", "D3", "20 mm", "outside depth (mm)", 10],
    ["the copies of another row", "H5", 3, "outside depth (mm)", 20],
  ] as const)("follow %s", async (_, cell, value, heading, more) => {
    const { edit } = filled(bookOf(CELLS), { figures: [...columns, "caliper"], settings: ["unit=mm; wall board=2"] });
    const before = inRow(await calculated(edit.bytes), 2);
    const [, column, row] = /^([A-Z])(\d)$/.exec(cell)!;
    const changed = { sheet: "Survey", row: Number(row), column: column!.charCodeAt(0) - 64, content: value };
    const edited = editWorkbook(openWorkbook(edit.bytes), { cells: [changed] });
    const after = inRow(await calculated(edited.bytes), 2);
    expect(Number(after[heading]) - Number(before[heading])).toBeCloseTo(more, 6);
  });
});
