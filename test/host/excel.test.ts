import fc from "fast-check";
import { excelAnswers, excelPort } from "../../src/host/excel";
import { entered } from "../../src/host/excelCells";
import { excelShowing } from "../../src/host/excelShowing";
import type { SheetCell } from "../../src/host/port";
import { paneModel } from "../../src/pane/paneModel";
import { createWorkbook } from "../../src/workbook/createWorkbook";
import type { CellContent, WorkbookEdits } from "../../src/workbook/edits";
import { ownColumns } from "../../src/workbook/ownMarks";
import { surveyEdits } from "../../src/filling/surveyEdits";
import { PREFERRED_BOARD } from "../../src/settings/definitions/materialSettings";
import { DEFAULT_FIGURES } from "../../src/item/figureCatalogue";
import { contractOf, FIGURES, FILES, FILL, headingsOf } from "./contract";
import { blankSheet, cellOf, enter, STANDARD_WIDTH, type FakeCell } from "./fakeWorkbook";
import { EXCELS, type ExcelName } from "./officeScript";
import { openInExcel, type OpenInExcel } from "./openInExcel";

const HOSTS = Object.keys(EXCELS) as ExcelName[];

// Their scripts differ, and not by the file: the hardest of the files is enough for all but the strictest host.
for (const host of HOSTS)
  contractOf(
    host,
    (bytes) => Promise.resolve(openInExcel(bytes, { host })),
    host === "Excel on the web" ? undefined : ["a survey with totals and merged cells"],
  );

const SURVEY = FILES["a survey in a table"]!();

/** A survey of so many rows in a table. */
function surveyOf(rows: number): Uint8Array {
  const items = Array.from({ length: rows }, (_, i): CellContent[] => [
    `B ${i + 1}`,
    200 + (i % 90),
    150,
    20 + (i % 40),
  ]);
  const headings = ["shelfmark", "height mm", "width mm", "depth mm"];
  return createWorkbook([{ name: "Survey", rows: [headings, ...items], table: "Survey" }]);
}

/** Rounds of reading, and of writing columns, the first time or again. */
const READ_ROUNDS = 4;
const WRITE_ROUNDS = 6;

let at: OpenInExcel;
const open = (bytes: Uint8Array, options?: Parameters<typeof openInExcel>[1]): OpenInExcel =>
  (at = openInExcel(bytes, options));
afterEach(() => at?.close());

/** Rounds to Excel that some work takes. */
async function roundsOf(work: () => Promise<unknown>): Promise<number> {
  const before = at.excel.rounds();
  await work();
  return at.excel.rounds() - before;
}

const addFigures = async () => at.port.write(surveyEdits(await at.port.read(), FILL).edits);
const oneColumn = (cells: readonly CellContent[], more: object = {}): WorkbookEdits => ({
  columns: {
    sheet: "Survey",
    table: "Survey",
    headingRow: 1,
    firstRow: 2,
    lastRow: 1 + cells.length,
    lastColumn: 4,
    columns: [{ heading: "ours", cells, ...more }],
  },
});
const valueAt = (sheet: string, row: number, column: number) => cellOf(at.sheet(sheet), row, column).value;

describe("rounds to Excel", () => {
  test("reading takes four, whatever the number of sheets", async () => {
    open(SURVEY);
    expect(await roundsOf(at.port.read)).toBe(READ_ROUNDS);
    for (let i = 0; i < 60; i++) {
      const sheet = blankSheet(`Sheet ${i}`);
      cellOf(sheet, 3, 2).value = i;
      at.book.sheets.push(sheet);
    }
    expect(await roundsOf(at.port.read)).toBe(READ_ROUNDS);
  });

  test("a long sheet is read in slices, none over what Excel on the web sends", async () => {
    open(surveyOf(40));
    for (let row = 1; row <= 60_000; row++)
      cellOf(at.sheet("Survey"), row, 9).value = `a note of thirty letters ${row}`;
    expect(await roundsOf(at.port.read)).toBe(3 + 6);
  });

  test("a write takes as many for 400 rows as for 12, and few for 4,000, first and again", async () => {
    // The list of boards to choose from is read once more before it is written over.
    const usual = [READ_ROUNDS + WRITE_ROUNDS, READ_ROUNDS + WRITE_ROUNDS + 1];
    open(surveyOf(12));
    expect([await roundsOf(addFigures), await roundsOf(addFigures)]).toEqual(usual);
    open(surveyOf(400));
    expect([await roundsOf(addFigures), await roundsOf(addFigures)]).toEqual(usual);
    open(surveyOf(4000));
    const figures = [...new Set([...FIGURES, ...DEFAULT_FIGURES])];
    const { edits } = surveyEdits(await at.port.read(), { ...FILL, figures });
    const first = await roundsOf(() => at.port.write(edits));
    const columns = surveyEdits(await at.port.read(), { ...FILL, figures }).edits.columns!;
    const again = await roundsOf(() => at.port.write({ columns }));
    // Ten columns of some 120 letters a cell make 5 MB, sent 3 MB at a time.
    expect(first).toBe(WRITE_ROUNDS + 1);
    // What stands there is read before it is written over, 20,000 formulas at a time.
    expect(again).toBeLessThanOrEqual(first + 6);
    expect(at.book.tables[0]!.area).toEqual({ top: 1, left: 1, bottom: 4001, right: 4 + headingsOf(figures).length });
  });
});

test("one formula for all rows: one cell is written, beside the table, and its columns are known", async () => {
  open(SURVEY);
  const step = await at.port.write(surveyEdits(await at.port.read(), { ...FILL, oneFormula: true }).edits);
  const formulas = [...at.sheet("Survey").cells].flatMap(([row, cells]) =>
    [...cells].flatMap(([column, { formula }]) =>
      formula?.includes("ENC.") === true ? [[row, column, formula] as const] : [],
    ),
  );
  expect(formulas).toHaveLength(1);
  const [[row, column, formula]] = formulas as [(typeof formulas)[0]];
  expect(formula).toMatch(/^=DROP\(ENC\.SURVEY\(\$A\$1:\$\w+\$\d+,\{"/);
  const { tables, names } = await at.port.read();
  expect([row, column]).toEqual([2, tables[0]!.area.right + 2]);
  expect(ownColumns({ sheets: (await at.port.read()).sheets, names }).map(({ holds }) => holds)).toEqual(
    step.columns.map(() => "one formula"),
  );
  // Excel fills the rest: a value there would be in its way.
  for (const { column: own } of step.columns.slice(1)) expect(valueAt("Survey", 2, own)).toBe("");
  const again = await at.port.write(surveyEdits(await at.port.read(), FILL).edits);
  await again.undo();
  expect(valueAt("Survey", 3, column)).toBe("");
  expect(cellOf(at.sheet("Survey"), row, column).formula).toBe(formula);
  await at.port
    .write(surveyEdits(await at.port.read(), { ...FILL, oneFormula: true }).edits)
    .then((third) => third.undo());
  expect(cellOf(at.sheet("Survey"), row, column).formula).toBe(formula);
});

test("one formula for all rows, undone at once, leaves nothing", async () => {
  open(SURVEY);
  const held = JSON.stringify([...at.sheet("Survey").cells].map(([row, cells]) => [row, [...cells]]));
  const step = await at.port.write(surveyEdits(await at.port.read(), { ...FILL, oneFormula: true }).edits);
  await step.undo();
  const after = [...at.sheet("Survey").cells].map(([each, cells]) => [each, [...cells]]);
  expect(filledCells(JSON.stringify(after))).toEqual(filledCells(held));
});

function filledCells(cells: string): unknown {
  const rows = JSON.parse(cells) as [number, [number, FakeCell][]][];
  return rows.flatMap(([row, own]) =>
    own.flatMap(([column, { formula, value }]) =>
      formula !== undefined || value !== "" ? [[row, column, formula, value]] : [],
    ),
  );
}

test("the column of preferred boards offers the stocked ones, and takes another text; undone, the list goes too", async () => {
  open(SURVEY);
  const first = await addFigures();
  const preferred = first.columns.find(({ wantedName }) => wantedName === PREFERRED_BOARD)!.column;
  const { source, ...list } = at.sheet("Survey").lists[0]!;
  expect(list).toEqual({ area: { top: 2, bottom: 12, left: preferred, right: preferred }, refuses: false });
  expect(source).toBe("=OFFSET('board choices'!$A$2,0,0,COUNTA('board choices'!$A:$A)-1,1)");
  const offered = Array.from({ length: 60 }, (_, i) => valueAt("board choices", 2 + i, 1)).filter(
    (name) => name !== "",
  );
  expect(offered).toEqual(
    expect.arrayContaining(["conservation board 2", "2 x conservation board 2", "conservation card 20 pt"]),
  );
  const second = await addFigures();
  expect(at.sheet("Survey").lists).toHaveLength(1);
  await second.undo();
  expect(at.sheet("Survey").lists).toHaveLength(1);
  await first.undo();
  expect(at.sheet("Survey").lists).toEqual([]);
});

describe("what is entered", () => {
  const HOSTILE = [
    "=HYPERLINK(1)",
    "+1",
    "-2 boxes",
    "@x",
    "'quoted",
    "00017",
    "3/4",
    "May 3",
    "10 %",
    "TRUE",
    "#N/A",
    " spaced ",
    "line\nline",
    "שלום",
    "📚",
  ];

  test("texts stay the texts that they are, in columns, cells and sheets", async () => {
    open(surveyOf(HOSTILE.length));
    await at.port.write({
      ...oneColumn(HOSTILE),
      cells: HOSTILE.map((content, i) => ({ sheet: "Survey", row: 30 + i, column: 1, content })),
      sheets: [{ name: "Texts", rows: HOSTILE.map((text) => [text]), headingRow: 0 }],
    });
    HOSTILE.forEach((text, i) => {
      const cells = [cellOf(at.sheet("Survey"), 2 + i, 5), cellOf(at.sheet("Survey"), 30 + i, 1)];
      for (const cell of [...cells, cellOf(at.sheet("Texts"), 1 + i, 1)])
        expect([cell.value, cell.formula]).toEqual([text, undefined]);
    });
  });

  test("any text comes back as it was", () => {
    const words = fc.constantFrom("=", "+", "-", "@", "'", "1", "TRUE", "May", "/", " ", "a", ".", "%", "$", "#N/A");
    const text = fc.oneof(
      fc.string({ unit: "grapheme", minLength: 1 }),
      fc.array(words).map((each) => each.join("")),
    );
    fc.assert(
      fc.property(text, (typed) => {
        const cell: FakeCell = { value: "", format: "General", bold: false };
        enter(cell, entered(typed));
        expect([cell.value, cell.formula]).toEqual([typed, undefined]);
      }),
    );
  });

  test.each([
    ["a stored name", "_xldudf_ENC_WALL_LENGTH(B2,settings)", "=ENC.WALL.LENGTH(B2,settings)"],
    ["a newer function", '_xlfn.IFNA(_xldudf_ENC_MASS(B2),"_xlfn.X")', '=IFNA(ENC.MASS(B2),"_xlfn.X")'],
  ])("%s is entered as it is typed", (_, formula, typed) => {
    expect(entered({ formula, result: 1 })).toBe(typed);
  });

  test("a blank empties a cell, and an error is one", () => {
    expect([entered(null), entered({ error: "#N/A" }), entered(0), entered(false)]).toEqual(["", "#N/A", 0, false]);
  });

  test("a cell that another's formula fills is left to it", async () => {
    open(surveyOf(3));
    const fills = { top: 10, left: 2, bottom: 11, right: 2 };
    await at.port.write({
      cells: [
        { sheet: "Survey", row: 10, column: 2, content: { formula: "_xldudf_ENC_SURVEY(A1:D4)", result: 1, fills } },
        { sheet: "Survey", row: 11, column: 2, content: 2, format: "0.0" },
      ],
      sheets: [
        {
          name: "Filled",
          rows: [[{ formula: "A1:A2", result: 1, fills: { ...fills, top: 1, left: 1, right: 1 } }], [7]],
        },
      ],
    });
    expect(cellOf(at.sheet("Survey"), 10, 2).formula).toBe("=ENC.SURVEY(A1:D4)");
    expect([valueAt("Survey", 11, 2), valueAt("Filled", 2, 1)]).toEqual(["", ""]);
  });
});

describe("columns", () => {
  test("a neighbour of texts or dates lends no format under which a formula would stay text", async () => {
    open(surveyOf(3));
    for (const [row, format] of [
      [2, "@"],
      [3, "yyyy-mm-dd"],
      [4, '0.0" mm"'],
    ] as const)
      cellOf(at.sheet("Survey"), row, 4).format = format;
    await at.port.write(oneColumn([1, 2, 3].map((result) => ({ formula: "A1+1", result }))));
    const column = [2, 3, 4].map((row) => cellOf(at.sheet("Survey"), row, 5));
    expect(column.map(({ format }) => format)).toEqual(["General", "General", '0.0" mm"']);
    expect(column.map(({ formula }) => formula)).toEqual(["=A1+1", "=A1+1", "=A1+1"]);
  });

  test("the heading takes its neighbour's look, the column a width in points", async () => {
    open(surveyOf(2));
    await at.port.write(oneColumn([1, 2], { width: 20 }));
    expect(cellOf(at.sheet("Survey"), 1, 5).bold).toBe(cellOf(at.sheet("Survey"), 1, 4).bold);
    // 20 characters: 20 * 7 + 5 pixels, three quarters of a point each.
    expect(at.sheet("Survey").widths.get(5)).toBe(108.75);
  });

  test("what stands right of the survey, or is merged there, stays: the columns begin past it", async () => {
    open(surveyOf(2));
    cellOf(at.sheet("Survey"), 2, 6).value = "a note";
    at.sheet("Survey").merged = [{ top: 2, bottom: 3, left: 5, right: 7 }];
    const { columns, notes } = await at.port.write(oneColumn([1, 2]));
    expect([columns[0]!.column, notes]).toEqual([8, [expect.stringContaining("begin at column H")]]);
    expect(at.book.tables[0]!.area.right).toBe(4);
  });

  test("a chart right of the survey's rows is passed, one below them is not in the way", async () => {
    open(surveyOf(4));
    const chart = { left: 5 * STANDARD_WIDTH, top: 0, width: 3 * STANDARD_WIDTH, height: 40 };
    at.sheet("Survey").charts = [{ ...chart, top: 2000 }];
    const below = await at.port.write(oneColumn([1, 2, 3, 4]));
    expect([below.columns[0]!.column, below.notes]).toEqual([5, []]);
    await below.undo();
    at.sheet("Survey").charts = [{ ...chart, left: 4 * STANDARD_WIDTH }];
    const beside = await at.port.write(oneColumn([1, 2, 3, 4]));
    expect([beside.columns[0]!.column, beside.notes]).toEqual([8, [expect.stringContaining("begin at column H")]]);
  });

  test("the sheet's own filter grows along; one that hides rows is left, and said", async () => {
    const bare = FILES["a survey in bare cells"]!();
    const filter = { top: 3, left: 1, bottom: 6, right: 4 };
    open(bare);
    Object.assign(at.sheet("Shelves of 2024"), { filter });
    const { undo } = await addFigures();
    expect(at.sheet("Shelves of 2024").filter).toEqual({ ...filter, right: 4 + headingsOf(FIGURES).length });
    await undo();
    expect(at.sheet("Shelves of 2024").filter).toEqual(filter);
    open(bare);
    Object.assign(at.sheet("Shelves of 2024"), { filter, filtered: true });
    expect((await addFigures()).notes).toEqual([expect.stringContaining("before you sort")]);
    expect(at.sheet("Shelves of 2024").filter).toEqual(filter);
  });
});

test("rows of one caliper alone are shown, by the filter of the table or of the sheet, and all again", async () => {
  open(SURVEY);
  const place = { headingRow: 3, lastRow: 8, firstColumn: 1, lastColumn: 4 };
  const table = at.book.tables[0]!;
  const rows = { ...place, sheet: table.sheet.name, column: table.area.left + 2, headingRow: table.area.top };
  await at.port.showOnly(rows, 2.5);
  expect(table.only).toEqual({ index: 2, criterion: "=2.5" });
  await at.port.showOnly(rows, undefined);
  expect(table.only).toBeUndefined();
  open(FILES["a survey in bare cells"]!());
  const sheet = at.sheet("Shelves of 2024");
  await at.port.showOnly({ ...place, sheet: sheet.name, column: 6 }, 2);
  expect([sheet.filter, sheet.only]).toEqual([
    { top: 3, left: 1, bottom: 8, right: 6 },
    { index: 5, criterion: "=2" },
  ]);
  await at.port.showOnly({ ...place, sheet: sheet.name, column: 6 }, undefined);
  expect(sheet.only).toBeUndefined();
  // A caliper in points is a text; a filter of the user's own takes the column in, and still goes by what it did.
  const own = { filterOn: "Values", values: ["slipcase"] };
  Object.assign(sheet, { filter: { top: 3, left: 2, bottom: 8, right: 4 }, criteria: [undefined, own] });
  await at.port.showOnly({ ...place, sheet: sheet.name, column: 6 }, "20 pt");
  expect(sheet.filter).toEqual({ top: 3, left: 1, bottom: 8, right: 6 });
  expect([sheet.criteria![2], sheet.only]).toEqual([own, { index: 5, criterion: "=20 pt" }]);
  const elsewhere = { top: 20, left: 1, bottom: 30, right: 3 };
  Object.assign(sheet, { filter: elsewhere });
  await expect(at.port.showOnly({ ...place, sheet: sheet.name, column: 6 }, 2)).rejects.toThrow("A20:C30");
  expect(sheet.filter).toEqual(elsewhere);
});

test("the identifier stays in sight beside added columns: frozen rows stay, frozen columns are the user's, undo takes it back", async () => {
  open(FILES["a survey in bare cells"]!());
  const sheet = at.sheet("Shelves of 2024");
  const add = async () => {
    const { columns, ...edits } = surveyEdits(await at.port.read(), { ...FILL, figures: FIGURES }).edits;
    return at.port.write({ ...edits, columns: { ...columns!, keepsInSight: 1 } });
  };
  for (const [rows, columns, after] of [
    [0, 0, [0, 1]],
    [3, 0, [3, 1]],
    [3, 2, [3, 2]],
  ] as const) {
    Object.assign(sheet, { frozen: rows, frozenColumns: columns });
    const { undo } = await add();
    expect([sheet.frozen, sheet.frozenColumns]).toEqual(after);
    await undo();
    expect([sheet.frozen, sheet.frozenColumns]).toEqual([rows, columns]);
  }
});

describe("sheets", () => {
  const list = (text: string): WorkbookEdits => ({
    sheets: [
      {
        name: "Cut list",
        rows: [
          ["part", "length"],
          [text, 12.5],
        ],
        formats: [undefined, "0.0"],
        widths: [30],
        replaceable: true,
      },
    ],
  });

  test("a new one has its heading in bold and in sight, formats, widths and its table", async () => {
    open(SURVEY);
    const [sheet] = list("wall").sheets!;
    await at.port.write({ sheets: [{ ...sheet!, table: "Parts" }] });
    const made = at.sheet("Cut list");
    expect([1, 2].map((row) => cellOf(made, row, 2).bold)).toEqual([true, false]);
    expect([1, 2].map((row) => cellOf(made, row, 2).format)).toEqual(["General", "0.0"]);
    expect([made.frozen, made.widths.get(1)]).toEqual([1, 161.25]);
    expect(at.book.tables.at(-1)).toMatchObject({ name: "Parts", area: { top: 1, left: 1, bottom: 2, right: 2 } });
  });

  test("one of an earlier run is written again under the name that the user gave it, and comes back", async () => {
    open(SURVEY);
    await at.port.write(list("wall"));
    const made = at.sheet("Cut list");
    made.name = "My parts";
    for (const name of at.book.names) name.formula = name.formula.replace("Cut list", "My parts");
    cellOf(made, 9, 1).value = "longer before";
    const { undo } = await at.port.write(list("base"));
    expect(at.book.sheets.map(({ name }) => name)).not.toContain("Cut list");
    expect([valueAt("My parts", 2, 1), valueAt("My parts", 9, 1)]).toEqual(["base", ""]);
    await undo();
    expect([valueAt("My parts", 2, 1), valueAt("My parts", 9, 1)]).toEqual(["wall", "longer before"]);
  });

  test("one with a table is written again with its table", async () => {
    open(SURVEY);
    const parts = (text: string) => ({ sheets: list(text).sheets!.map((sheet) => ({ ...sheet, table: "Parts" })) });
    await at.port.write(parts("wall"));
    await at.port.write(parts("base"));
    expect(at.book.tables.map(({ name }) => name)).toEqual(["Survey", "Parts"]);
    expect(valueAt("Cut list", 2, 1)).toBe("base");
  });

  test("one of ours is deleted unless something uses it, and comes back", async () => {
    open(SURVEY);
    await at.port.write(list("wall"));
    cellOf(at.sheet("Survey"), 30, 1).formula = "='Cut list'!A2";
    await expect(at.port.write({ removeSheets: ["cut list"] })).rejects.toThrow("uses");
    delete cellOf(at.sheet("Survey"), 30, 1).formula;
    const { undo } = await at.port.write({ removeSheets: ["cut list"] });
    expect([at.sheet("Cut list"), at.book.names]).toEqual([undefined, []]);
    await undo();
    expect([valueAt("Cut list", 2, 1), at.book.names.map(({ comment }) => comment)]).toEqual(["wall", ["Cut list"]]);
  });
});

describe("refused, and nothing changed", () => {
  const protect = () => (at.sheet("Survey").locked = true);
  const cases: readonly [string, () => unknown, WorkbookEdits, string][] = [
    ["a protected survey", protect, oneColumn([1, 2]), "unprotect it in Excel (Review)"],
    [
      "a cell on a protected sheet",
      protect,
      { cells: [{ sheet: "survey", row: 1, column: 1, content: 1 }] },
      "unprotect",
    ],
    [
      "a locked workbook",
      () => (at.book.locked = true),
      { sheets: [{ name: "New", rows: [[1]] }] },
      "structure is protected",
    ],
    [
      "a sheet of the user's",
      () => undefined,
      { sheets: [{ name: "SURVEY", rows: [[1]], replaceable: true }] },
      "rename that sheet",
    ],
    [
      "a sheet asked for twice",
      () => undefined,
      {
        sheets: [
          { name: "a", rows: [] },
          { name: "A", rows: [] },
        ],
      },
      "rename that sheet",
    ],
    [
      "a sheet with a name that Excel refuses",
      () => undefined,
      { sheets: [{ name: "a/b", rows: [] }] },
      "a name has 1 to 31",
    ],
    [
      "a table name that is taken",
      () => undefined,
      { sheets: [{ name: "T", rows: [["a"]], table: "survey" }] },
      "already has a table",
    ],
    ["a sheet to delete that is the user's", () => undefined, { removeSheets: ["Survey"] }, "did not write"],
    [
      "a sheet that is not there",
      () => undefined,
      { cells: [{ sheet: "Nowhere", row: 1, column: 1, content: 1 }] },
      'got "Nowhere"',
    ],
  ];

  test.each(cases)("%s", async (_, prepare, edits, cure) => {
    open(surveyOf(2));
    prepare();
    const before = structuredClone(at.book);
    await expect(at.port.write(edits)).rejects.toMatchObject({
      name: "InputError",
      message: expect.stringContaining(cure),
    });
    expect(at.book).toEqual(before);
  });

  test("a step that Excel refuses takes back those before it", async () => {
    open(surveyOf(2));
    const before = [await at.held("Survey"), at.book.tables[0]!.area];
    // The stand-in refuses a stored name anywhere in a formula.
    const wrong = { formula: '"_xldudf_"', result: 1 };
    const edits = { ...oneColumn([1, wrong]), sheets: [{ name: "New", rows: [[1]], replaceable: true }] };
    await expect(at.port.write(edits)).rejects.toMatchObject({ name: "Unavailable" });
    expect([await at.held("Survey"), at.book.tables[0]!.area]).toEqual(before);
    expect([at.book.sheets.map(({ name }) => name), at.book.names]).toEqual([["Survey"], []]);
  });
});

describe("undo", () => {
  test("cells, formats, widths and names come back; what was changed elsewhere stays", async () => {
    open(surveyOf(2));
    Object.assign(cellOf(at.sheet("Survey"), 2, 1), { value: "=a text of the user's" });
    Object.assign(cellOf(at.sheet("Survey"), 3, 1), { formula: "=A1", value: "shelfmark" });
    const { undo, notes } = await at.port.write({
      cells: [
        { sheet: "Survey", row: 2, column: 2, content: "=x", format: "0.00" },
        { sheet: "Survey", row: 2, column: 1, content: null },
        { sheet: "Survey", row: 3, column: 1, content: null },
      ],
      widths: [{ sheet: "Survey", column: 2, width: 30 }],
      names: [{ name: "fresh", refersTo: "Survey!$A$1:$B$2" }],
    });
    expect([valueAt("Survey", 2, 2), cellOf(at.sheet("Survey"), 2, 2).format, notes]).toEqual(["=x", "0.00", []]);
    cellOf(at.sheet("Survey"), 3, 2).value = 999;
    await undo();
    expect([valueAt("Survey", 2, 2), cellOf(at.sheet("Survey"), 2, 2).format]).toEqual([200, "General"]);
    expect([valueAt("Survey", 2, 1), cellOf(at.sheet("Survey"), 2, 1).formula]).toEqual([
      "=a text of the user's",
      undefined,
    ]);
    expect(cellOf(at.sheet("Survey"), 3, 1).formula).toBe("=A1");
    expect([at.sheet("Survey").widths.get(2), at.book.names, valueAt("Survey", 3, 2)]).toEqual([
      STANDARD_WIDTH,
      [],
      999,
    ]);
  });

  test("a name of the user's stays as it is, and is not taken back", async () => {
    open(surveyOf(2));
    at.book.names.push({ name: "Stock", formula: "=Survey!$A$1:$B$2", comment: "", visible: true });
    const { undo, notes } = await at.port.write({ names: [{ name: "stock", refersTo: "Survey!$C$1:$D$2" }] });
    expect(notes).toEqual(["the name stock is in the workbook already and stays as it is"]);
    await undo();
    expect(at.book.names).toHaveLength(1);
  });

  test.each([
    ["columns that were moved", () => (at.book.names[0]!.formula = "='Survey'!$G$1:$G$3"), "moved"],
    ["columns that were deleted", () => (at.book.names = []), "moved"],
    [
      "a table that got columns of the user's",
      () => (at.book.tables[0]!.area = { top: 1, left: 1, bottom: 3, right: 7 }),
      "other columns",
    ],
  ])("%s since is refused", async (_, change, words) => {
    open(surveyOf(2));
    const { undo } = await at.port.write(oneColumn([1, 2]));
    change();
    const before = structuredClone(at.book);
    await expect(undo()).rejects.toMatchObject({ name: "InputError", message: expect.stringContaining(words) });
    expect(at.book).toEqual(before);
  });
});

describe("the selected cell", () => {
  test("is told, gone to, and followed until it is stopped", async () => {
    open(SURVEY);
    at.book.sheets.push(blankSheet("It's another"));
    const heard: SheetCell[] = [];
    const stop = await at.port.onSelect((cell) => heard.push(cell));
    const wanted = { sheet: "It's another", row: 30, column: 28 };
    await at.port.goTo({ ...wanted, sheet: "IT'S ANOTHER" });
    await at.excel.fire("onSelectionChanged");
    await at.excel.fire("onSelectionChanged");
    expect([await at.port.selected(), heard]).toEqual([wanted, [wanted]]);
    stop();
    await at.port.goTo({ sheet: "Survey", row: 1, column: 1 });
    await at.excel.fire("onSelectionChanged");
    expect([heard.length, at.excel.listeners()]).toEqual([1, 0]);
  });

  test("is none on a chart sheet; a hidden or missing sheet is refused", async () => {
    open(SURVEY);
    at.book.sheets.push({ ...blankSheet("Away"), visibility: "VeryHidden" });
    await expect(at.port.goTo({ sheet: "Away", row: 1, column: 1 })).rejects.toThrow("unhide it in Excel");
    await expect(at.port.goTo({ sheet: "Gone", row: 1, column: 1 })).rejects.toThrow('got "Gone"');
    at.book.active = undefined;
    expect(await at.port.selected()).toBeUndefined();
  });
});

describe("a pane that cannot be seen", () => {
  /** The page of a pane, which its browser may hide, too. */
  const pageOf = (innerWidth: number) => {
    const heard = new Map<string, () => void>();
    const addEventListener = (sign: string, listener: () => void) => void heard.set(sign, listener);
    const page = { innerWidth, document: { hidden: false, addEventListener }, addEventListener };
    return { page, hear: (sign: string) => heard.get(sign)!() };
  };

  test("asks Excel nothing, and hears once what it missed when Excel shows it", async () => {
    open(SURVEY);
    // Excel starts the page without the pane, to calculate.
    const showing = excelShowing(pageOf(0).page);
    const port = excelPort(showing);
    let changes = 0;
    const stop = await port.onChange(() => changes++);
    const stopSelecting = await port.onSelect(() => undefined);
    const burst = async () => {
      for (let report = 0; report < 100; report++) await at.excel.fire("onCalculated", "Survey");
      await at.excel.fire("onSelectionChanged");
    };
    expect([await roundsOf(burst), changes]).toEqual([0, 0]);
    await at.excel.show(true);
    expect(changes).toBe(1);
    await at.excel.show(false);
    expect([await roundsOf(burst), changes]).toEqual([0, 1]);
    stop();
    stopSelecting();
    await at.excel.show(true);
    expect(changes).toBe(1);
  });

  test.each(["pointerdown", "keydown", "focus"])("is seen by whoever uses it, whatever Excel has said: %s", (sign) => {
    open(SURVEY);
    const { page, hear } = pageOf(0);
    const showing = excelShowing(page);
    const shown = [showing.now()];
    hear(sign);
    expect([...shown, showing.now()]).toEqual([false, true]);
  });

  test("follows the browser where Excel says nothing", () => {
    open(SURVEY);
    const { page, hear } = pageOf(320);
    const showing = excelShowing(page);
    const shown = [showing.now()];
    page.document.hidden = true;
    hear("visibilitychange");
    shown.push(showing.now());
    page.document.hidden = false;
    hear("resize");
    expect([...shown, showing.now()]).toEqual([true, false, true]);
  });
});

describe("while our own cells are being calculated", () => {
  afterEach(() => jest.useRealTimers());
  const settled = () => new Promise(setImmediate);

  test("a burst of reports is one read, when it ends; then the pane follows at once again", async () => {
    const rows = [
      ["shelfmark", "height mm", "width mm", "depth mm", "enclosure"],
      ["B 1", 300, 210, 40, "tray"],
      ["B 2", 250, 180, 30, "tray"],
    ];
    open(createWorkbook([{ name: "Survey", rows, table: "Survey" }]));
    const model = paneModel(at.port);
    await model.start();
    await model.write("Adding", ({ book }) => ({ edits: surveyEdits(book, FILL).edits }));
    const busy = () =>
      [...at.sheet("Survey").cells.values()]
        .flatMap((row) => [...row.values()])
        .filter(({ value }) => value === "#BUSY!");
    expect(busy().length).toBeGreaterThan(3);
    jest.useFakeTimers({ doNotFake: ["setImmediate"] });
    const during = await roundsOf(async () => {
      for (let report = 0; report < 100; report++) {
        await at.excel.fire("onCalculated", "Survey");
        jest.advanceTimersByTime(1000);
        await settled();
      }
    });
    for (const cell of busy()) cell.value = 1;
    await at.excel.fire("onCalculated", "Survey");
    const after = await roundsOf(async () => {
      jest.advanceTimersByTime(2000);
      await settled();
    });
    expect([during, after]).toEqual([0, READ_ROUNDS]);
    cellOf(at.sheet("Survey"), 2, 2).value = 321;
    await at.excel.fire("onChanged", "Survey");
    jest.advanceTimersByTime(250);
    await settled();
    expect(model.state().survey?.sized.outcomes[0]).toMatchObject({ sized: { item: { height: 321 } } });
    await model.stop();
  });
});

describe("reading again", () => {
  test("takes the cells of what changed alone, once changes are followed", async () => {
    open(SURVEY);
    at.book.sheets.push({ ...blankSheet("Large") });
    for (let row = 1; row <= 3; row++) cellOf(at.sheet("Large"), row, 1).value = "note";
    const stop = await at.port.onChange(() => undefined);
    await at.port.read();
    cellOf(at.sheet("Survey"), 2, 2).value = 333;
    cellOf(at.sheet("Large"), 2, 1).value = "changed unheard";
    await at.excel.fire("onCalculated", "Survey");
    let book = await at.port.read();
    expect([book.grid("Survey").rows[1]![1], book.grid("Large").rows[1]![0]]).toEqual([333, "note"]);
    // Nothing changed: two rounds for the look and the one that ends every run, none for cells.
    expect(await roundsOf(() => at.port.read())).toBe(3);
    await at.excel.fire("onChanged", "Large");
    book = await at.port.read();
    expect(book.grid("Large").rows[1]![0]).toBe("changed unheard");
    stop();
  });

  test("an answer that is too large is asked for by halves, down to a row", async () => {
    open(surveyOf(400));
    // Notes of 32,000 letters: 12.8 MB.
    for (let row = 2; row <= 401; row++) cellOf(at.sheet("Survey"), row, 6).value = `${row}${"n".repeat(32_000)}`;
    const rows = (await at.port.read()).grid("Survey").rows;
    expect(rows.slice(1, 401).map((row) => Number.parseInt(String(row[5])))).toEqual(
      Array.from({ length: 400 }, (_, index) => index + 2),
    );
  });
});

test.each([
  [20, [true, true]],
  [19, [undefined, undefined]],
])("a write and its undo are one step of Excel's own where it has ExcelApi 1.%i", async (supports, merged) => {
  open(surveyOf(2), { supports });
  const { undo } = await at.port.write(oneColumn([1, 2]));
  await undo();
  const runs = at.excel.runs() as readonly { readonly mergeUndoGroup?: boolean }[];
  expect(runs.map(({ mergeUndoGroup }) => mergeUndoGroup)).toEqual(merged);
});

test("changes are told, whether entered or calculated, until stopped", async () => {
  open(SURVEY);
  let changes = 0;
  const stop = await at.port.onChange(() => changes++);
  await at.excel.fire("onChanged");
  await at.excel.fire("onCalculated");
  stop();
  await at.excel.fire("onChanged");
  expect([changes, at.excel.listeners()]).toEqual([2, 0]);
});

test("protected, hidden and error cells are read as such", async () => {
  open(SURVEY);
  Object.assign(at.sheet("Survey"), { locked: true, visibility: "Hidden" });
  cellOf(at.sheet("Survey"), 2, 3).value = "#DIV/0!";
  const book = await at.port.read();
  expect(book.sheets[0]!.state).toBe("hidden");
  const { locked, rows } = book.grid("Survey");
  expect([locked, rows[1]![2]]).toEqual([true, { error: "#DIV/0!" }]);
});

test("a sheet of more than four million cells is judged by its first rows, and not read", async () => {
  open(surveyOf(3));
  const far = blankSheet("Far");
  cellOf(far, 1, 1).value = "stray";
  cellOf(far, 1_048_576, 5).value = "stray";
  at.book.sheets.push(far);
  const book = await at.port.read();
  expect(book.grid("Far", { lastRow: 130 }).rows[0]).toEqual(["stray"]);
  expect(() => book.grid("Far")).toThrow("delete the stray cells");
});

test("the pane says that Excel calculates only by hand", async () => {
  open(SURVEY);
  expect((await at.port.read()).said).toEqual([]);
  at.book.calculation = "Manual";
  expect((await at.port.read()).said).toEqual([expect.stringContaining("press F9")]);
});

test("outside Excel nothing answers", async () => {
  expect(await excelAnswers()).toBe(false);
});

/** What the stand-in must do for these tests to mean anything: the rules of Office.js are Microsoft's own. */
describe.each(HOSTS)("Microsoft's script of %s", (host) => {
  test("gives a property only after it was loaded, and an object that is not there as a null object", async () => {
    open(surveyOf(1), { host });
    at.book.sheets.push(blankSheet("Empty"));
    await Excel.run(async (context) => {
      const sheet = context.workbook.worksheets.getItem("Empty");
      const used = sheet.getUsedRangeOrNullObject(true).load("address");
      expect(() => sheet.name).toThrow("load");
      await context.sync();
      expect(used.isNullObject).toBe(true);
      context.workbook.worksheets.getItem("Nowhere").load("name");
      await expect(context.sync()).rejects.toMatchObject({ code: "ItemNotFound" });
    });
  });

  test("sends and takes at most 5 MB at a time in the browser, and more on a computer", async () => {
    open(surveyOf(1), { host });
    const codes = await Excel.run(async (context) => {
      const cells = context.workbook.worksheets.getItem("Survey").getRange("J1:K1");
      const sent = () =>
        context.sync().then(
          () => "",
          (error: { readonly code: string }) => error.code,
        );
      const found: string[] = [];
      for (const megabytes of [3, 6]) {
        cells.formulas = [["n".repeat(megabytes * 1_000_000), ""]];
        found.push(await sent());
      }
      for (const column of [10, 11]) cellOf(at.sheet("Survey"), 1, column).value = "n".repeat(3_000_000);
      cells.load("values");
      return [...found, await sent()];
    });
    const refused = ["", "RequestPayloadSizeLimitExceeded", "ResponsePayloadSizeLimitExceeded"];
    expect(codes).toEqual(host === "Excel on the web" ? refused : ["", "", ""]);
  });
});
