import { cell, refusal } from "./cell";

// An item of 200 x 200 with neither allowance nor fit lies on a base of exactly 200 x 200. Navier's double series, summed
// apart, for E 2 and 1 GPa, nu .3, creep 2: it sags 23.85 kg / t^3 mm. 200 / 150 = 1.333 mm is allowed, so that a board
// of 1.5, 2, 2.5, 3 mm holds .189, .447, .873, 1.509 kg.
const EXACT = "covering allowance=none; fit=none";
const SQUARE = [200, 200, 40] as const;

const HEADINGS = ["stock", "material", "caliper", "sheet length", "sheet width"];
const POINTS = [
  ["stock", "material", "caliper (pt)", "sheet length (in)", "sheet width (in)"],
  ["sixty", "board", 60, 40, 30],
  ["eighty", "board", 80, 40, 30],
  ["one twenty", "board", 120, 40, 30],
] as const;

describe("BOARD.CALIPER and BOARD.STOCK: the thinnest stock board that holds", () => {
  test.each([
    [0.18, 1.5],
    [0.2, 2],
    [0.44, 2],
    [0.46, 2.5],
    [0.86, 2.5],
    [0.89, 3],
    [1.49, 3],
  ])("%d kg on a base of 200 x 200: %d mm", async (weight, caliper) => {
    expect(await cell("BOARD.CALIPER", ...SQUARE, weight, "tray", EXACT)).toBe(caliper);
    expect(await cell("BOARD.STOCK", ...SQUARE, weight, "tray", EXACT)).toBe(`grey board ${caliper}`);
  });

  test("the weight may be a text with its unit, and is lb where the unit is in", async () => {
    expect(await cell("BOARD.CALIPER", ...SQUARE, "460 g", "tray", EXACT)).toBe(2.5);
    const inches = ["200 mm", "200 mm", "40 mm"] as const;
    // 0.97 lb is .44 kg, 1.02 lb is .463 kg; plain lengths of the settings are mm still.
    expect(await cell("BOARD.CALIPER", ...inches, 0.97, "tray", `${EXACT}; unit=in; round to=none`)).toBe(2);
    expect(await cell("BOARD.CALIPER", ...inches, 1.02, "tray", `${EXACT}; unit=in; round to=none`)).toBe(2.5);
  });

  test("none stiff enough: #N/A with the sag of the thickest", async () => {
    // 23.85 x 2 / 27 = 1.767
    expect(await refusal("BOARD.CALIPER", ...SQUARE, 2, "tray", EXACT)).toBe(
      "#N/A board: no stocked board is stiff enough; the thickest, grey board 3, would sag 1.77 mm where 1.33 mm is allowed",
    );
    // Ten times the span under the same weight: a hundred times the sag; and the limit of 2 mm rules.
    expect(await refusal("BOARD.STOCK", ...SQUARE, 2, "tray", `${EXACT}; unit=cm`)).toBe(
      "#N/A board: no stocked board is stiff enough; the thickest, grey board 3, would sag 17.67 cm where 0.2 cm is allowed",
    );
  });

  test("without a weight: #N/A that says what is missing", async () => {
    for (const blank of [0, "", undefined, null] as const)
      expect(await refusal("BOARD.CALIPER", ...SQUARE, blank, "tray")).toBe(
        "#N/A weight: the board that an item needs follows from its weight; give it, or set item density",
      );
  });

  test("the setting weight stands in for a blank weight", async () => {
    expect(await cell("BOARD.CALIPER", ...SQUARE, 0, "tray", `${EXACT}; weight=0.46`)).toBe(2.5);
    expect(await cell("BOARD.CALIPER", ...SQUARE, 0.2, "tray", `${EXACT}; weight=0.46`)).toBe(2);
  });

  test.each(["folded tray", "four-flap wrapper"])("a %s has no base board to be chosen: #N/A", async (enclosure) => {
    expect(await refusal("BOARD.CALIPER", ...SQUARE, 1, enclosure)).toBe(
      `#N/A enclosure: a ${enclosure} has no base board to be chosen by weight`,
    );
  });

  test("a stock table without a board: #N/A", async () => {
    const cards = [HEADINGS, ["card", "card", 0.4, 1000, 700]];
    expect(await refusal("BOARD.CALIPER", ...SQUARE, 1, "tray", cards)).toBe(
      "#N/A stock: the stock table has no board",
    );
  });
});

describe("BOARD.CALIPER is the stock row's own number, so that a filter or SUMIFS matches it", () => {
  // 60, 80, 120 pt are 1.524, 2.032, 3.048 mm and hold .199, .471, 1.59 kg.
  test.each([
    [0.19, 60],
    [0.3, 80],
    [0.46, 80],
    [0.5, 120],
  ])("%d kg, a table in points: %d", async (weight, points) => {
    expect(await cell("BOARD.CALIPER", ...SQUARE, weight, "tray", POINTS, EXACT)).toBe(points);
  });

  test("a table in inches, points as text, and mm in an inch workbook", async () => {
    const table = (heading: string, caliper: string | number) => [
      ["stock", "material", heading, "sheet length", "sheet width"],
      ["the one", "board", caliper, 1000, 700],
    ];
    const sized = [...SQUARE, 0.3, "tray"] as const;
    expect(await cell("BOARD.CALIPER", ...sized, table("caliper (in)", 0.08), EXACT)).toBe(0.08);
    expect(await cell("BOARD.CALIPER", ...sized, table("caliper", "80 pt"), EXACT)).toBe("80 pt");
    expect(await cell("BOARD.CALIPER", ...sized, table("thickness (mm)", 2.03), EXACT)).toBe(2.03);
    expect(
      await cell(
        "BOARD.CALIPER",
        "200 mm",
        "200 mm",
        "40 mm",
        "300 g",
        "tray",
        table("caliper (mm)", 2),
        `${EXACT}; unit=in`,
      ),
    ).toBe(2);
  });

  test("a board in several sheet sizes is one board", async () => {
    const table = [...POINTS, ["eighty", "board", 80, 60, 40]] as const;
    expect(await cell("BOARD.CALIPER", ...SQUARE, 0.3, "tray", table, EXACT)).toBe(80);
    expect(await cell("BASE.SAG", ...SQUARE, 0.3, "tray", "all", table, EXACT)).toHaveLength(4);
  });
});

describe("what decides the board", () => {
  test("item density stands in for a weight that is missing", async () => {
    // .0016 m3 at 200 kg/m3 is .32 kg, at 300 is .48 kg
    expect(await cell("BOARD.CALIPER", ...SQUARE, "", "tray", `${EXACT}; item density=200`)).toBe(2);
    expect(await cell("BOARD.CALIPER", ...SQUARE, "", "tray", `${EXACT}; item density=300`)).toBe(2.5);
    expect(await cell("BOARD.CALIPER", ...SQUARE, 0.1, "tray", `${EXACT}; item density=300`)).toBe(1.5);
  });

  test("creep, sag ratio and sag limit", async () => {
    const needed = (text: string, weight: number) =>
      cell("BOARD.CALIPER", ...SQUARE, weight, "tray", `${EXACT}; ${text}`);
    // Half the creep, half the ratio: twice the weight. A limit of .667 mm: half of it.
    expect(await needed("creep=1", 0.37)).toBe(1.5);
    expect(await needed("creep=1", 0.39)).toBe(2);
    expect(await needed("sag ratio=75", 0.38)).toBe(2);
    expect(await needed("sag ratio=100", 0.28)).toBe(1.5);
    expect(await needed("sag limit=0.6666 mm", 0.2)).toBe(2);
    expect(await needed("sag limit=0.6666 mm", 0.23)).toBe(2.5);
  });

  test("moduli of the settings, and before them those of the stock row", async () => {
    expect(await cell("BOARD.CALIPER", ...SQUARE, 0.37, "tray", `${EXACT}; modulus along=4; modulus across=2`)).toBe(
      1.5,
    );
    const table = [
      [...HEADINGS, "modulus along", "modulus across"],
      ["soft", "board", 2, 1000, 700, 1, 0.5],
      ["stiff", "board", 1.5, 1000, 700, 4, 2],
      ["usual", "board", 3, 1000, 700, "", ""],
    ];
    // soft holds .2245, stiff .378, usual 1.51.
    const stock = (weight: number) => cell("BOARD.STOCK", ...SQUARE, weight, "tray", table, EXACT);
    expect(await stock(0.37)).toBe("stiff");
    expect(await stock(0.39)).toBe("usual");
  });

  test("a board's own size limit covers the item's longest side", async () => {
    const table = (limit: number) => [
      [...HEADINGS, "size limit"],
      ["thin", "board", 1.5, 1000, 700, limit],
      ["thick", "board", 2, 1000, 700, 250],
    ];
    expect(await cell("BOARD.STOCK", ...SQUARE, 0.1, "tray", table(200), EXACT)).toBe("thin");
    expect(await cell("BOARD.STOCK", ...SQUARE, 0.1, "tray", table(199), EXACT)).toBe("thick");
    expect(await cell("BOARD.STOCK", 200, 200, 230, 0.1, "tray", table(220), EXACT)).toBe("thick");
    expect(await refusal("BOARD.STOCK", 260, 200, 40, 0.1, "tray", table(199), EXACT)).toBe(
      "#N/A board: no stocked board is made for an item this large; the size limit of thick is too small",
    );
  });

  test("the lid of a box stored flat carries the stack above; an open tray has nothing on top", async () => {
    const needed = (enclosure: string, stack: string) =>
      cell(
        "BOARD.CALIPER",
        ...SQUARE,
        0.1,
        enclosure,
        [
          ["lid clearance", "none"],
          ["", ""],
        ],
        `${EXACT}; stack above=${stack}`,
      );
    // Walls of 2: the lid spans 204, may sag 1.36 and holds .0548 t^3 kg: .185, .438, .856, 1.48.
    expect(await needed("lidded box", "none")).toBe(1.5);
    expect(await needed("lidded box", "180 g")).toBe(1.5);
    expect(await needed("lidded box", "0.19")).toBe(2);
    expect(await needed("lidded box", "0.45")).toBe(2.5);
    expect(await needed("tray", "5")).toBe(1.5);
    expect(
      await refusal("BOARD.CALIPER", ...SQUARE, 0.1, "lidded box", `${EXACT}; lid clearance=none; stack above=5`),
    ).toMatch(
      /^#N\/A board: no stocked board is stiff enough; the thickest, grey board 3, would sag 4\.\d+ mm under the stack above where 1.36 mm is allowed$/,
    );
  });
});

describe("auto takes the board that the weight needs; parts, area, outside and mass follow", () => {
  // .3 kg needs 2 mm, .46 kg needs 2.5 mm.
  const auto = (text: string) => `${EXACT}; construction=around base; ${text}`;

  test("wall board=auto: base and walls", async () => {
    const settings = auto("wall board=auto; weight=0.46");
    expect(await cell("PART", ...SQUARE, "tray", "base", "stock", settings)).toBe("grey board 2.5");
    expect(await cell("PART", ...SQUARE, "tray", "side wall", "all", settings)).toEqual([
      [205, 42.5, 2, 2.5, "along length", "board", "grey board 2.5", ""],
    ]);
    expect(await cell("OUTSIDE", ...SQUARE, "tray", "all", settings)).toEqual([[205, 205, 42.5]]);
    // 200 x 200 + 2 x 205 x 42.5 + 2 x 200 x 42.5
    expect(await cell("BOARD.AREA", ...SQUARE, "tray", "all", settings)).toBe(0.074425);
    expect(await cell("BOARD.AREA", ...SQUARE, "tray", "grey board 2", settings)).toBe(0);
    // 1613 g/m2
    expect(await cell("MASS", ...SQUARE, "tray", `${settings}; covering=none; lining=none`)).toBe(0.120047525);
    expect(await cell("BOARD.CALIPER", ...SQUARE, "", "tray", settings)).toBe(2.5);
  });

  test("base board=auto under walls of 3 mm: walls stand 2.5 higher than the inside", async () => {
    const settings = auto("wall board=3; base board=auto; weight=0.46");
    expect(await cell("PART", ...SQUARE, "tray", "base", "caliper", settings)).toBe(2.5);
    expect(await cell("PART", ...SQUARE, "tray", "side wall", "all", settings)).toEqual([
      [206, 42.5, 2, 3, "along length", "board", "grey board 3", ""],
    ]);
    expect(await cell("OUTSIDE", ...SQUARE, "tray", "all", settings)).toEqual([[206, 206, 42.5]]);
    expect(await cell("BOARD.AREA", ...SQUARE, "tray", "grey board 2.5", settings)).toBe(0.04);
    // 2 x (206 + 200) x 42.5
    expect(await cell("BOARD.AREA", ...SQUARE, "tray", "grey board 3", settings)).toBe(0.03451);
  });

  test("the board answered is the board taken, in every kind with a base", async () => {
    const [settings, weight] = ["wall board=auto; weight=0.25", 0.25];
    for (const [enclosure, base] of [
      ["tray", "base"],
      ["lidded box", "box base"],
      ["three-tray box", "inner base"],
      ["slipcase", "side"],
      ["clamshell box", "small base"],
    ] as const) {
      const taken = await cell("PART", 180, 120, 30, enclosure, base, "caliper", settings);
      expect([enclosure, await cell("BOARD.CALIPER", 180, 120, 30, weight, enclosure, settings)]).toEqual([
        enclosure,
        taken,
      ]);
      expect([enclosure, await cell("CAUTIONS", 180, 120, 30, weight, enclosure, settings)]).toEqual([enclosure, ""]);
    }
  });

  test("without a weight a size is refused, and PROBLEM says why", async () => {
    const told = (board: string) =>
      `weight: got a blank; ${board}=auto needs it: give the weight; or set item density, or name a board`;
    for (const id of ["INSIDE", "OUTSIDE"])
      expect(await refusal(id, ...SQUARE, "tray", "all", "wall board=auto")).toBe(`#VALUE! ${told("wall board")}`);
    expect(await refusal("CAUTIONS", ...SQUARE, 0, "tray", "base board=auto")).toBe(`#VALUE! ${told("base board")}`);
    expect(await cell("PROBLEM", ...SQUARE, "tray", "wall board=auto")).toBe(told("wall board"));
  });

  test("none stiff enough: #N/A with the reason, and PROBLEM the same", async () => {
    const reason =
      "board: no stocked board is stiff enough; the thickest, grey board 3, would sag 1.77 mm where 1.33 mm is allowed";
    expect(await refusal("PARTS", ...SQUARE, "tray", `${EXACT}; wall board=auto; weight=2`)).toBe(`#N/A ${reason}`);
    expect(await cell("PROBLEM", ...SQUARE, "tray", `${EXACT}; wall board=auto; weight=2`)).toBe(reason);
  });

  test("a wrapper has no boards: it is sized, weight or none, under a shared auto", async () => {
    const shared = [
      ["setting", "value"],
      ["wall board", "auto"],
      ["base board", "auto"],
    ];
    expect(await cell("INSIDE", 300, 210, 40, "four-flap wrapper", "all", shared)).toEqual([[301, 211, 41]]);
    expect(await cell("MASS", 300, 210, 40, "four-flap wrapper", shared)).toBeGreaterThan(0);
  });

  test("a folded tray has no base to be chosen: base board=auto is nothing to it, wall board=auto asks for a board", async () => {
    expect(await cell("INSIDE", 300, 210, 40, "folded tray", "height", "base board=auto")).toBe(303);
    expect(await refusal("INSIDE", 300, 210, 40, "folded tray", "height", "wall board=auto; weight=1")).toBe(
      "#N/A wall board: a folded tray has no base board to be chosen by weight; name its wall board",
    );
  });
});
