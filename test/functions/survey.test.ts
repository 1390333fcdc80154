import fc from "fast-check";
import { DEMO_SURVEY } from "../../src/cli/demoSurvey";
import { anySurvey, FORMS } from "../survey/anySurvey";
import type { Cells } from "../filling/filledBook";
import type { CellAnswer } from "../runtime/excelRuntime";
import type { Argument, Cell } from "../runtime/marshal";
import { cell, excel, refusal } from "./cell";

type Table = readonly (readonly unknown[])[];

async function survey(items: Argument, columns: Argument, ...settings: readonly Argument[]): Promise<Table> {
  return (await cell("SURVEY", items, columns, ...settings)) as Table;
}

/** A column of the answer, its heading left off. */
const column = (table: Table, heading: string): unknown[] => {
  const index = table[0]!.indexOf(heading);
  expect({ heading, index }).not.toEqual({ heading, index: -1 });
  return table.slice(1).map((row) => row[index]);
};

/** What a scalar function shows, with its message where it is an error. */
async function scalars(calls: readonly (readonly [id: string, args: readonly Argument[]])[]): Promise<unknown[]> {
  return (await excel.callMany(calls)).map(shownCell);
}

function shownCell(answer: CellAnswer): unknown {
  if ("error" in answer) return answer;
  const rows = answer.value as Table;
  return rows.length === 1 && rows[0]!.length === 1 ? rows[0]![0] : rows;
}

/** Figures of a survey and the scalar call that must give the same, for the cells of a row by heading. */
type RowCells = Readonly<Record<string, Cell>>;
type Scalar = (row: RowCells, own: readonly Argument[]) => readonly [id: string, args: readonly Argument[]];

const sizes = (row: RowCells) => [row["Height"], row["Width"], row["Depth"]] as const;
const part =
  (name: string, measure: string): Scalar =>
  (row, own) => ["PART", [...sizes(row), row["Enclosure"], name, measure, ...own]];

const SCALARS: Readonly<Record<string, Scalar>> = {
  "outside height": (row, own) => ["OUTSIDE", [...sizes(row), row["Enclosure"], "height", ...own]],
  "inside depth": (row, own) => ["INSIDE", [...sizes(row), row["Enclosure"], "depth", ...own]],
  "side wall length": (row, own) => ["WALL.LENGTH", [...sizes(row), row["Enclosure"], "side wall", ...own]],
  "head wall height": (row, own) => ["WALL.HEIGHT", [...sizes(row), row["Enclosure"], "head wall", ...own]],
  "lid base length": part("lid base", "length"),
  "wall strip width": part("wall strip", "width"),
  "base stock": part("base", "stock"),
  "base count": part("base", "count"),
  "board area": (row, own) => ["BOARD.AREA", [...sizes(row), row["Enclosure"], "all", ...own]],
  mass: (row, own) => ["MASS", [...sizes(row), row["Enclosure"], ...own]],
  caliper: (row, own) => ["BOARD.CALIPER", [...sizes(row), null, row["Enclosure"], ...own]],
  problem: (row, own) => ["PROBLEM", [...sizes(row), row["Enclosure"], ...own]],
};
const FIGURES = Object.keys(SCALARS);
/** A wall that a kind lacks is told by WALL.LENGTH among the walls, by the figure among all parts. */
const WALLS = ["side wall length", "head wall height"];
const UNIT_DOUBT = /^\w+ is read in \w+, but texts of its column are in .*$/;
const MULTIPLIED = ["board area", "base count"];
const SIZE_HEADINGS = new Set(["Shelfmark", "Title", "Height", "Width", "Depth", "Enclosure", "Quantity", "Hazard"]);

/** A row's own settings as a text: columns that are headed with a setting's name. */
function ownText(row: RowCells): string {
  return Object.entries(row)
    .filter(([heading, value]) => !SIZE_HEADINGS.has(heading) && value !== null && value !== 0)
    .map(([heading, value]) => {
      const unit = typeof value === "number" ? (/\((\w+)\)/.exec(heading)?.[1] ?? "") : "";
      return `${heading.replace(/ \(.*/, "")}=${String(value)} ${unit}`.trim();
    })
    .join("; ");
}

/** Numbers of a settings text are told in quotes, with the unit that was joined to them. */
function comparable(value: unknown, figure = ""): unknown {
  const plain = (text: string) => text.replace(/got "([^"]*?)(?: (?:kg|g))?"/, "got $1");
  if (typeof value === "string") return plain(value);
  if (typeof value !== "object" || value === null || !("message" in value)) return value;
  const message = plain(String(value.message));
  return {
    ...value,
    message: WALLS.includes(figure) ? message.replace(/^(?:wall|part): this .*/, "no such wall") : message,
  };
}

/** The scalar functions have no guide of their own: the boards are named, so that both size by the same. */
const BOARDS = [
  ["setting", "value"],
  ["wall board", "2 mm"],
  ["wrapper card", "0.4 mm"],
];

async function expectSameAsScalars(cells: Cells, own: readonly Argument[]): Promise<void> {
  const settings: readonly Argument[] = [BOARDS, ...own];
  const [headings = [], ...rows] = cells;
  const table = await survey(cells, [FIGURES], ...settings);
  expect(table[0]).toEqual(FIGURES);
  const kept = rows
    .slice(0, table.length - 1)
    .map((row): RowCells =>
      Object.fromEntries(headings.map((heading, index) => [String(heading), row[index] ?? null])),
    );
  const lost = rows.slice(kept.length).flatMap((row) => row.slice(2, 6));
  expect(lost.filter((value) => value !== null && value !== "")).toEqual([]);
  const calls = kept.flatMap((row) => {
    const own = ownText(row);
    return FIGURES.map((figure) => SCALARS[figure]!(row, [...settings, ...(own === "" ? [] : [own])]));
  });
  const answers = await scalars(calls);
  kept.forEach((row, index) => {
    const quantity = row["Quantity"] ?? null;
    const copies = quantity === null || quantity === 0 ? 1 : Number(quantity);
    if (!Number.isInteger(copies) || copies < 1) return expectQuantityRefused(table[index + 1]!, row);
    FIGURES.forEach((figure, place) => {
      const one = answers[index * FIGURES.length + place];
      const wanted = MULTIPLIED.includes(figure) && typeof one === "number" ? one * copies : one;
      const answer = table[index + 1]![place];
      // Only a whole survey shows that its numbers lie between texts in another unit.
      const found = typeof answer === "string" ? answer.replace(UNIT_DOUBT, "") : answer;
      expect({ row, figure, found: comparable(found, figure) }).toEqual({
        row,
        figure,
        found: comparable(wanted, figure),
      });
    });
  });
}

/** No scalar function reads a quantity; without one the survey says so, unless the row has another fault or nothing to size. */
function expectQuantityRefused(answer: readonly unknown[], row: RowCells): void {
  const problem = String(answer.at(-1));
  const nothing = sizes(row).every((size) => size === null || size === 0 || String(size).trim() === "");
  if (nothing || /^none$/i.test(String(row["Enclosure"])))
    return expect(answer.every((each) => each === "")).toBe(true);
  expect(problem).toMatch(
    /^(quantity|height|width|depth|weight|fit|cushion base|wall board|construction|end cards): got /,
  );
  for (const figure of answer.slice(0, -1)) expect(figure).toEqual({ error: "#VALUE!", message: problem });
}

describe("SURVEY answers as the scalar functions do, cell by cell", () => {
  test.each([
    ["millimetres", []],
    ["millimetres", ["fit=loose; covering allowance=2; round to=1"]],
    ["inches", ["unit=in"]],
    [
      "inches",
      [
        [
          ["setting", "value"],
          ["unit", "in"],
          ["wall board", "2.5 mm"],
          ["lid reveal", "1/4 in"],
        ],
      ],
    ],
  ])("generated surveys in %s, settings %j", async (name, settings) => {
    const form = FORMS.find((each) => each.name === name)!;
    await fc.assert(
      fc.asyncProperty(anySurvey(form), (cells) => expectSameAsScalars(cells, settings)),
      { numRuns: 3, endOnFailure: true },
    );
  });

  test("the demo survey, its dimension texts read by DIMENSIONS and its weights given as settings", async () => {
    const [headings = [], ...rows] = DEMO_SURVEY;
    const table = await survey(DEMO_SURVEY, [FIGURES]);
    expect(table.length).toBe(DEMO_SURVEY.length);
    const own = rows.map((row) => {
      const at = Object.fromEntries(headings.map((heading, index) => [heading, row[index] ?? ""]));
      return { at, boxed: at["Box"] !== "" };
    });
    for (const [index, { at, boxed }] of own.entries()) {
      if (boxed || at["Shelfmark"] === "LK 039") continue;
      const text = at["Dimensions"]!;
      const read = text === "" ? sizes(at) : ((await cell("DIMENSIONS", text, "all")) as [Cell[]])[0];
      const row = { ...at, Height: read[0]!, Width: read[1]!, Depth: read[2]! };
      const settings = ["Rests on", "Cushion base", "Cushion sides", "Chemise", "Well", "Lifting ribbon"]
        .filter((heading) => at[heading] !== "")
        .map((heading) => `${heading}=${at[heading]}`);
      const weight = at["Weight (kg)"] === "" ? "none" : at["Weight (kg)"];
      const given = [["wall board=auto", `weight=${weight}`, ...settings].join("; ")];
      const wanted = await scalars(FIGURES.map((figure) => SCALARS[figure]!(row, given)));
      const copies = Number(at["Quantity"] || 1);
      const times = wanted.map((value, place) =>
        MULTIPLIED.includes(FIGURES[place]!) && typeof value === "number" ? value * copies : value,
      );
      const compared = (cells: readonly unknown[]) => cells.map((each, place) => comparable(each, FIGURES[place]));
      expect({ at, found: compared(table[index + 1]!) }).toEqual({ at, found: compared(times) });
    }
  });
});

/** What a whole survey does for a row without a weight, as settings of one cell: the guide's board, by size alone. */
const BY_GUIDE = "wall board=auto; weight=none";

const H = ["Shelfmark", "Height", "Width", "Depth", "Enclosure"] as const;

describe("units", () => {
  const WANTED = ["outside height", "problem"];

  test.each([
    ["in headings", ["Shelfmark", "Height (in)", "Width (cm)", "Depth", "Enclosure"], [12, 21, 40]],
    ["in a heading above, in feet", ["Shelfmark", "Height (ft)", "Width (cm)", "Depth (mm)", "Enclosure"], [1, 21, 40]],
    ["in the text", [...H], ["12 in", "21 cm", "40 mm"]],
  ])("%s: 12 in, 21 cm and 40 mm", async (_name, headings, [h, w, d]) => {
    const table = await survey([[...headings], ["S 1", h!, w!, d!, "tray"]], [WANTED]);
    expect(table[1]).toEqual([await cell("OUTSIDE", "12 in", 210, 40, "tray", "height", BY_GUIDE), ""]);
  });

  test("of a unit column, row by row; a unit that is none is that row's problem", async () => {
    const table = await survey(
      [
        [...H, "Unit"],
        ["S 1", 30, 21, 4, "tray", "cm"],
        ["S 2", "11 3/4", 8, 2, "tray", "in"],
        ["S 3", 300, 210, 40, "tray", null],
        ["S 4", 30, 21, 4, "tray", "span"],
      ],
      [WANTED],
    );
    const height = (...args: Argument[]) => cell("OUTSIDE", ...args, "tray", "height", BY_GUIDE);
    expect(column(table, "outside height")).toEqual([
      await height(300, 210, 40),
      await height("11 3/4 in", "8 in", "2 in"),
      await height(300, 210, 40),
      { error: "#VALUE!", message: 'unit: got "span"; give mm, cm, m, in or ft' },
    ]);
    expect(column(table, "problem")).toEqual(["", "", "", 'unit: got "span"; give mm, cm, m, in or ft']);
  });

  test("a row of units below the headings: the answers stay in step", async () => {
    const items = [
      ["Shelfmark", "Height", "Width", "Depth", "Weight", "Enclosure"],
      [null, "cm", "cm", "cm", "kg", null],
      ["S 1", 30, 21, 4, 0.8, "tray"],
    ];
    const table = await survey(items, [WANTED]);
    expect(table).toEqual([WANTED, ["", ""], [await cell("OUTSIDE", 300, 210, 40, "tray", "height", BY_GUIDE), ""]]);
  });
});

describe("boxed sets, none, blank and totals", () => {
  const BOXED = [
    [...H, "Box", "Quantity", "Weight (kg)"],
    ["S 1", 180, 110, 14, "slipcase", "B 7", 1, 0.2],
    ["S 2", 178, 115, 16, null, "B 7", 2, 0.3],
    ["S 3", 300, 210, 40, "tray", null, 1, 1],
    ["S 4", null, null, null, null, null, 1, null],
    ["S 5", 100, 80, 20, "none", null, 1, null],
    ["S 6", 100, 80, 20, null, null, 1, null],
    ["Total", 858, 595, 110, null, null, 6, 1.5],
  ];

  test("rows that share a box are answered on its first row", async () => {
    const table = await survey(BOXED, [["outside height", "outside depth", "board area", "problem"]]);
    // Greatest height 180, greatest width 115, depths 14 + 2 x 16.
    const one = ["slipcase", "height"] as const;
    expect(table[1]).toEqual([
      await cell("OUTSIDE", 180, 115, 46, ...one),
      await cell("OUTSIDE", 180, 115, 46, "slipcase", "depth"),
      await cell("BOARD.AREA", 180, 115, 46, "slipcase", "all"),
      "",
    ]);
    expect(table[2]).toEqual(["in box B 7", "in box B 7", "in box B 7", ""]);
  });

  test("none and blank rows are blank, a blank enclosure is a problem, a row of totals is left out", async () => {
    const table = await survey(BOXED, [["outside height", "problem"]]);
    expect(table.slice(4)).toEqual([
      ["", ""],
      ["", ""],
      [
        { error: "#VALUE!", message: expect.stringMatching(/^enclosure: got a blank; give tray/) as unknown },
        "enclosure not chosen",
      ],
      ["", "row of totals: left out"],
    ]);
  });

  test("a box with two enclosures, or an item that cannot be read, says which row", async () => {
    const other = BOXED.map((row) => (row[0] === "S 2" ? ["S 2", 178, 115, 16, "tray", "B 7", 1, 0.3] : row));
    expect((await survey(other, [["problem"]]))[1]).toEqual([
      'enclosure: got "tray" for S 2 in box B 7, whose first row says "slipcase"; one box is one enclosure; give both rows the same, or another box',
    ]);
    const bad = BOXED.map((row) => (row[0] === "S 2" ? ["S 2", 178, "wide", 16, null, "B 7", 1, 0.3] : row));
    expect((await survey(bad, [["problem"]]))[1]).toEqual([
      'S 2, width: got "wide"; give a length such as 40, 40 mm or 1 9/16 in',
    ]);
  });
});

describe("columns", () => {
  const ITEMS = [
    ["Call number", "Object title", "Height", "Width", "Depth", "Housing", "Batch", "Notes"],
    ["S 1", "Log", 300, 210, 40, "tray", 3, "brittle"],
    ["S 2", "Atlas", "4O", 210, 40, "lidded box", 4, null],
  ];

  test("default", async () => {
    expect((await survey(ITEMS, "default"))[0]).toEqual([
      "outside height",
      "outside width",
      "outside depth",
      "caliper",
      "board area",
      "problem",
    ]);
    expect(await survey(ITEMS, " Default ")).toEqual(await survey(ITEMS, null));
  });

  test("a field or any heading passes through, also on a row with a problem", async () => {
    const columns = [["identifier", "title", "batch", "Notes", "problem"]];
    expect(await survey(ITEMS, columns)).toEqual([
      ["identifier", "title", "batch", "Notes", "problem"],
      ["S 1", "Log", 3, "brittle", ""],
      ["S 2", "Atlas", 4, "", 'height: got "4O"; give a length such as 40, 40 mm or 1 9/16 in'],
    ]);
  });

  test("a part that one kind lacks is #N/A in its own cell", async () => {
    const items = [ITEMS[0]!, ITEMS[1]!, ["S 3", "Box", 300, 210, 40, "lidded box", 1, null]];
    const table = await survey(items, [["lid base length", "base length"]]);
    expect(table[1]).toEqual([
      { error: "#N/A", message: expect.stringMatching(/^part: this tray has no part called lid base/) as unknown },
      303,
    ]);
    // Of 2.5 mm by the guide: two boards more each way for the box's walls, and two for the lid's.
    expect(table[2]).toEqual([316, 303]);
  });

  test.each([
    [
      "outside hight",
      'columns: got "outside hight"; give inside or outside with a direction, .*; did you mean outside height',
    ],
    ["bord area", ".*did you mean board area"],
    ["side wall lenght", ".*did you mean side wall length"],
    ["problems", ".*did you mean problem"],
    [5, "columns: got 5; give names of figures such as outside height, or default"],
  ])("a figure that is none is answered with the nearest: %s", async (name, message) => {
    expect(await refusal("SURVEY", ITEMS, [["outside height", name]])).toMatch(new RegExp(`^#VALUE! ${message}`));
  });
});

describe("what cannot be answered at all", () => {
  test.each([
    [
      [
        ["a", "b"],
        [1, 2],
      ],
      /^#VALUE! heading row: got no row with headings in the first 2; needs a row with headings/,
    ],
    [
      [
        ["Shelfmark", "Height", "Enclosure"],
        ["S 1", 300, "tray"],
      ],
      /^#VALUE! width: got no such column; give the survey with its heading row/,
    ],
    [
      [
        ["Shelfmark", "Height", "Width", "Depth", "Depth", "Enclosure"],
        ["S 1", 300, 210, 40, 41, "tray"],
      ],
      /^#VALUE! depth: got "Depth" and "Depth"/,
    ],
  ])("%#", async (items, message) => {
    expect(await refusal("SURVEY", items, "default")).toMatch(message);
  });

  test("shared settings that cannot be read", async () => {
    const items = [[...H], ["S 1", 300, 210, 40, "tray"]];
    expect(await refusal("SURVEY", items, "default", "fit=tight")).toMatch(/^#VALUE! fit: got "tight"; give snug/);
  });

  test("more than a cell carries is refused with its size, never a hang", async () => {
    const title = "t".repeat(990);
    const items = [[...H, "Title"], ...Array.from({ length: 1100 }, (_, i) => [`S ${i}`, 300, 210, 40, "tray", title])];
    // Two titles of 990 letters and 3 bytes beside each, a problem of 3: 1989 bytes a row, and the headings.
    expect(await refusal("SURVEY", items, [["title", "title", "problem"]])).toBe(
      "#VALUE! items: got 1100 rows to answer, about 2.2 MB; a cell holds at most 2 MB; give fewer rows or columns at a time, or write the list with the command line",
    );
    const table = await survey(items.slice(0, 1001), [["title", "title", "problem"]]);
    expect(table.length).toBe(1001);
  });
});
