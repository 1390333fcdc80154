import { kindWords } from "../enclosure/kindWords";
import type { Argument } from "../runtime/marshal";
import { cell, ITEM, refusal } from "./cell";

// By hand, height of the inside: 300 + 1 for coverings + fit (snug 1, standard 2, loose 3).
const [SNUG, STANDARD, LOOSE] = [302, 303, 304];

const insideHeight = (...settings: readonly Argument[]) => cell("INSIDE", ...ITEM, "tray", "height", ...settings);

describe("settings come as ranges and texts in any number, later over earlier", () => {
  const looseRange = [
    ["setting", "value"],
    ["fit", "loose"],
  ];
  test.each([
    ["none", [], STANDARD],
    ["one text", ["fit=snug"], SNUG],
    ["a text of several, with spaces and a closing semicolon", [" Fit = SNUG ; turn-in = 18 mm ; "], SNUG],
    ["a text over lines", ["turn-in=18\nfit=snug"], SNUG],
    ["a range with headings", [looseRange], LOOSE],
    ["a range of two columns without headings", [[["fit", "loose"]]], LOOSE],
    [
      "two columns, value first",
      [
        [
          ["value", "setting"],
          ["loose", "fit"],
        ],
      ],
      LOOSE,
    ],
    [
      "a range with other columns",
      [
        [
          ["group", "Setting", "note", "VALUE"],
          ["play", "fit", "for books", "loose"],
          ["play", "fit depth", "", "snug"],
        ],
      ],
      LOOSE,
    ],
    [
      "titles, blank rows and rows without a value among the settings",
      [
        [
          ["setting", "value"],
          ["PLAY", ""],
          ["", ""],
          ["fit", "loose"],
          ["fit height", ""],
          ["Boards", 0],
          [0, 0],
        ],
      ],
      LOOSE,
    ],
    [
      "blank rows above the headings",
      [
        [
          ["", ""],
          ["setting", "value"],
          ["fit", "loose"],
        ],
      ],
      LOOSE,
    ],
    ["a text after a range", [looseRange, "fit=snug"], SNUG],
    ["a range after a text", ["fit=snug", looseRange], LOOSE],
    ["a range after a range", [looseRange, [["fit", "snug"]]], SNUG],
    [
      "twice in one range",
      [
        [
          ["fit", "loose"],
          ["fit", "snug"],
        ],
      ],
      SNUG,
    ],
    ["twice in one text", ["fit=loose; fit=snug"], SNUG],
    ["empty places between", [undefined, looseRange, "", 0, "turn-in=20"], LOOSE],
    ["one direction over all, even when earlier", ["fit height=snug; fit=loose"], SNUG],
    ["a length for a fit", ["fit=0.5"], 301.5],
    ["a number cell for a fit", [[["fit", 0.5]]], 301.5],
  ] as const)("%s", async (_what, settings, height) => {
    expect(await insideHeight(...settings)).toBe(height);
  });

  test("ranges and texts differ only in what they say: a text of the row is stricter about foreign options", async () => {
    expect(await cell("INSIDE", ...ITEM, "slipcase", "height", [["wall layers", 2]])).toBe(302);
    expect(await refusal("INSIDE", ...ITEM, "slipcase", "height", "wall layers=2")).toBe(
      "#VALUE! wall layers: got a value for a slipcase, which has no use for it; " +
        `give it for a ${kindWords(({ options }) => options.includes("wallLayers"))}; or leave it out of this row`,
    );
  });
});

describe("zero, none and blank", () => {
  test("fit=0 and fit=none in a text are zero", async () => {
    expect(await insideHeight("fit=0")).toBe(301);
    expect(await insideHeight("fit=none")).toBe(301);
    expect(await insideHeight("fit=0 mm")).toBe(301);
  });

  test("none and 0 mm in a range are zero", async () => {
    expect(await insideHeight([["fit", "none"]])).toBe(301);
    expect(await insideHeight([["fit", "0 mm"]])).toBe(301);
  });

  test.each([
    ["fit width", "write none, or delete the row"],
    ["covering allowance", "write none, or delete the row"],
    ["cushion base", "write none, or delete the row"],
    ["turn-in", "give auto or a length above zero such as 15, 15 mm or 5/8 in; or delete the row"],
    ["unit", "give mm, cm or in; or delete the row"],
    ["end cards", "give yes or no; or delete the row"],
  ])("a bare 0 in a range is refused, since a blank cell can arrive as 0: %s", async (setting, message) => {
    expect(await refusal("INSIDE", ...ITEM, "tray", "all", [[setting, 0]])).toBe(
      `#VALUE! ${setting}: got 0 or a blank; ${message}`,
    );
  });

  test("an empty value in a text is not given", async () => {
    expect(await insideHeight("fit=; turn-in=")).toBe(STANDARD);
  });
});

describe("TRUE and FALSE read as yes and no", () => {
  test.each([
    [true, 308.8],
    ["TRUE", 308.8],
    ["yes", 308.8],
    [false, 308],
    ["no", 308],
  ])("end cards %p", async (value, height) => {
    expect(await cell("OUTSIDE", ...ITEM, "tray", "height", [["end cards", value]])).toBe(height);
  });

  test("nothing else does", async () => {
    expect(await refusal("OUTSIDE", ...ITEM, "tray", "height", [["end cards", 1]])).toBe(
      "#VALUE! end cards: got 1; give yes or no",
    );
    expect(await refusal("OUTSIDE", ...ITEM, "tray", "height", [["fit", true]])).toBe(
      "#VALUE! fit: got TRUE; give snug, standard, loose, a length such as 2 or 1/16 in, or none",
    );
  });
});

describe("an inch workbook", () => {
  // 12 in is 304.8 mm: + 3 = 307.8, up to 388 steps of 1/32 in. 8 1/4 in: 212.55, 268 steps. 1 1/2 in: 40.6, 52 steps.
  const BOOK = [12, 8.25, 1.5] as const;
  const INSIDE = [[12.125, 8.375, 1.625]];

  test("reads plain numbers as inches, rounds to 1/32 in and answers in inches", async () => {
    expect(await cell("INSIDE", ...BOOK, "tray", "all", "unit=in")).toEqual(INSIDE);
    expect(await cell("INSIDE", "12", "8 1/4", "1 1/2", "tray", "all", "unit=in")).toEqual(INSIDE);
    expect(await cell("INSIDE", "304.8 mm", "8.25 in", '1 1/2"', "tray", "all", "unit=in")).toEqual(INSIDE);
  });

  test("plain settings stay in the shop unit, mm unless said", async () => {
    // Fit 1/8 in = 3.175 mm either way: 304.8 + 1 + 3.175 = 308.975, 390 steps.
    for (const fit of ["3.175", "1/8 in"])
      expect(await cell("INSIDE", ...BOOK, "tray", "height", `unit=in; fit=${fit}`)).toBe(12.1875);
    expect(await cell("INSIDE", ...BOOK, "tray", "height", "unit=in; shop unit=in; fit=1/8")).toBe(12.1875);
    expect(
      await cell("INSIDE", ...BOOK, "tray", "height", [
        ["fit", 0.125],
        ["shop unit", "in"],
        ["unit", "in"],
      ]),
    ).toBe(12.1875);
  });

  test("the unit is resolved before any length, wherever it stands", async () => {
    for (const settings of [
      ["unit=in", "fit=snug"],
      ["fit=snug", "unit=in"],
      ["fit=snug; unit=in"],
      [[["fit", "snug"]], [["unit", "in"]]],
    ])
      expect(await cell("INSIDE", ...BOOK, "tray", "height", ...settings)).toBe(12.09375);
  });

  test("a board of 80 pt is 2.032 mm: walls lengthen by 0.16 in", async () => {
    expect(await cell("WALL.LENGTH", ...BOOK, "tray", "side", "unit=in; wall board=80 pt")).toBe(12.285);
    expect(await cell("WALL.HEIGHT", ...BOOK, "tray", "side", "unit=in; wall board=80 pt")).toBe(1.705);
  });

  test("areas are in square feet", async () => {
    // Base 12.125 x 8.375; two walls 12.285 and two of 8.375, 1.705 high; over 144.
    const area = (12.125 * 8.375 + 2 * 1.705 * (12.285 + 8.375)) / 144;
    expect(await cell("BOARD.AREA", ...BOOK, "tray", "all", "unit=in; wall board=80 pt")).toBeCloseTo(area, 9);
  });

  test("folds, how to cut it and messages are in inches", async () => {
    expect(await cell("PART", 12, 8.25, 1.5, "folded tray", "blank", "folds", "unit=in")).toBe(
      "along length 1.625 / 13.75; along width 1.625 / 10",
    );
    const table = (await cell("PARTS", ...BOOK, "tray", "unit=in")) as string[][];
    expect(table[1]?.at(-1)).toBe("inside 12 1/8 x 8 3/8");
    expect(await refusal("PARTS", ...BOOK, "lidded box", "unit=in; lid depth=3 in")).toBe(
      "#VALUE! lid depth: got 3 in; give full, or a length above 0 up to 1 47/64 in, the height of this box",
    );
  });
});

describe("a workbook in cm", () => {
  test("reads and answers in cm", async () => {
    expect(await cell("INSIDE", 30, 21, 4, "tray", "all", "unit=cm")).toEqual([[30.3, 21.3, 4.25]]);
    expect(await cell("BOARD.AREA", 30, 21, 4, "tray", "all", "unit=cm")).toBe(0.110819);
  });
});

describe("which way it lies, and cushioning", () => {
  test.each([
    ["rests on=back", [303, 213, 42.5]],
    // A standing object: its depth, width and height are the tray's height, width and depth.
    ["rests on=foot", [43, 213, 302.5]],
    ["rests on=edge", [303, 43, 212.5]],
    // 300 + 12, 210 + 12, 40 + 5 + 3, before the rest.
    ["cushion base=5; cushion sides=6; cushion top=3", [315, 225, 50.5]],
    ["rests on=edge; cushion sides=6", [315, 55, 212.5]],
  ])("%s", async (settings, size) => {
    expect(await cell("INSIDE", ...ITEM, "tray", "all", settings)).toEqual([size]);
  });

  test("the cushions are cut a millimetre smaller than their space, the sides standing on the base", async () => {
    const table = (await cell(
      "PARTS",
      ...ITEM,
      "tray",
      "cushion base=5; cushion sides=6; cushion top=3",
    )) as unknown[][];
    // Covered inside 314 x 224 x 50: base and top 313 x 223; sides 42 high, 313 and 223 - 12 long.
    expect(table.filter((row) => row[4] === "cushion").map((row) => [row[0], row[1], row[2], row[3], row[6]])).toEqual([
      ["cushion base", 1, 313, 223, 5],
      ["cushion side", 2, 313, 42, 6],
      ["cushion head", 2, 211, 42, 6],
      ["cushion top", 1, 313, 223, 3],
    ]);
  });
});

describe("a stock table", () => {
  const POINTS_AND_INCHES = [
    ["Stock", "material", "caliper (pt)", "sheet length (in)", "sheet width (in)", "price", "supplier"],
    ["bench board", "board", 80, 40, 32, 5.5, "any"],
    ["thin card", "Card", "20 pt", 40, 26, "1,25", ""],
    ["cloth", "covering", "", "", "54 in", 12, ""],
  ];

  test("in points and inches is read by the units of its headings", async () => {
    const part = (name: string, measure: string) =>
      cell("PART", ...ITEM, "tray", name, measure, POINTS_AND_INCHES, "wall board=bench board; flange card=20 pt");
    expect(await part("side wall", "caliper")).toBe(2.032);
    expect(await part("side wall", "length")).toBe(307.064);
    expect(await part("side wall", "stock")).toBe("bench board");
    expect(await part("flange card", "caliper")).toBe(0.508);
    expect(await part("flange card", "stock")).toBe("thin card");
    expect(await part("wall strip", "stock")).toBe("cloth");
    expect(await part("floor lining", "stock")).toBe("lining, not in stock");
  });

  test("replaces the starter table: a default board that it lacks is said not to be in stock", async () => {
    expect(await cell("PART", ...ITEM, "tray", "base", "stock", POINTS_AND_INCHES)).toBe("2 mm board, not in stock");
  });

  test("and a further one adds its rows, and replaces stocks of the same name", async () => {
    const other = [
      ["stock", "material", "caliper"],
      ["BENCH board", "board", 2],
      ["thick board", "board", 3],
    ];
    const caliper = (board: string) =>
      cell("PART", ...ITEM, "tray", "base", "caliper", POINTS_AND_INCHES, other, `wall board=${board}`);
    expect(await caliper("bench board")).toBe(2);
    expect(await caliper("thick board")).toBe(3);
    expect(await caliper("20 pt")).toBe(0.508);
  });

  test("without units in its headings is in the shop unit, wherever that is said", async () => {
    const table = [
      ["stock", "material", "caliper"],
      ["bench board", "board", 0.08],
    ];
    expect(await cell("PART", ...ITEM, "tray", "base", "caliper", table, "wall board=bench board; shop unit=in")).toBe(
      2.032,
    );
  });

  test("stands among settings in any order", async () => {
    const inOrder = await cell("PARTS", ...ITEM, "tray", POINTS_AND_INCHES, "wall board=bench board");
    expect(await cell("PARTS", ...ITEM, "tray", "wall board=bench board", POINTS_AND_INCHES)).toEqual(inOrder);
    expect(await cell("PARTS", ...ITEM, "tray", [["wall board", "bench board"]], POINTS_AND_INCHES)).toEqual(inOrder);
  });
});
