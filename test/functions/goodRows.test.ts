import { cell, ITEM } from "./cell";

// By hand. Item 300 x 210 x 40 (height x width x depth), boards 2, card 0.4, covering allowance 1, steps of 0.5.
// Standard fit 2: inside of a tray 300 + 1 + 2 = 303, 210 + 1 + 2 = 213, 40 + 0.5 + 2 = 42.5.

describe("INSIDE is board to board of the tray that holds the item: height, width, depth", () => {
  test.each([
    ["tray", [303, 213, 42.5]],
    ["folded tray", [303, 213, 42.5]],
    ["lidded box", [303, 213, 42.5]],
    ["three-tray box", [303, 213, 42.5]],
    ["clamshell box", [303, 213, 42.5]],
    // Snug 1; its width has no play and is covered at the back alone: 210 + 0.5; 300 + 1 + 1; 40 + 1 + 1.
    ["slipcase", [302, 210.5, 42]],
    // Bare card, snug.
    ["four-flap wrapper", [301, 211, 41]],
  ])("%s: %j", async (enclosure, size) => {
    expect(await cell("INSIDE", ...ITEM, enclosure, "all")).toEqual([size]);
    expect(await cell("INSIDE", ...ITEM, enclosure, "height")).toBe(size[0]);
    expect(await cell("INSIDE", ...ITEM, enclosure, "width")).toBe(size[1]);
    expect(await cell("INSIDE", ...ITEM, enclosure, "depth")).toBe(size[2]);
  });
});

describe("OUTSIDE is closed and covered: what the shelf must take", () => {
  test.each([
    // 303 + 4, 213 + 4, 42.5 + 2 + 0.4; covered 1 more each way.
    ["tray", "", [308, 218, 45.9]],
    ["tray", "construction=on base", [308, 218, 45.5]],
    ["tray", "wall layers=2", [312, 222, 45.9]],
    ["tray", "end cards=yes", [308.8, 218, 45.9]],
    ["folded tray", "", [308, 218, 45.5]],
    // Lid inside 310 x 220 (307 + 2 + 1, 217 + 2 + 1), 2 mm walls, covered; closed 44.9 + 2 + 4 x 0.5.
    ["lidded box", "", [315, 225, 48.9]],
    // Bottom 36 and lid 11 inside, two bases of 2, a card, four coverings of 0.5.
    ["three-tray box", "", [315, 225, 52.4]],
    ["slipcase", "", [307, 213.5, 47]],
    // 301 + 0.8, 211 + 0.8, 41 + 6 x 0.4.
    ["four-flap wrapper", "", [301.8, 211.8, 43.4]],
    // Case board 222.5, standing off the spine by sqrt(5 x 5 - 2 x 2), covered on both sides.
    ["clamshell box", "construction=flanged base; through=side", [322, 228.082575695, 56.4]],
  ])("%s %s", async (enclosure, settings, size) => {
    expect(await cell("OUTSIDE", ...ITEM, enclosure, "all", settings)).toEqual([size]);
    expect(await cell("OUTSIDE", ...ITEM, enclosure, "thickness", settings)).toBe(size[2]);
  });
});

describe("BASE.SIZE is a base board as it lies", () => {
  test.each([
    ["tray", "base", "", [303, 213]],
    ["tray", "base", "construction=on base", [307, 217]],
    ["tray", "base", "wall layers=2; construction=on base", [311, 221]],
    ["lidded box", "lid base", "", [314, 224]],
    ["lidded box", "base", "", [303, 213]],
    ["three-tray box", "bottom base", "", [310, 220]],
    ["slipcase", "side", "", [306, 212.5]],
    ["clamshell box", "large base", "", [310, 217]],
  ])("%s, %s %s", async (enclosure, base, settings, [height, width]) => {
    expect(await cell("BASE.SIZE", ...ITEM, enclosure, base, "all", settings)).toEqual([[height, width]]);
    expect(await cell("BASE.SIZE", ...ITEM, enclosure, base, "height", settings)).toBe(height);
    expect(await cell("BASE.SIZE", ...ITEM, enclosure, base, "width", settings)).toBe(width);
  });

  test("a wide item's base is still told as height and width", async () => {
    expect(await cell("BASE.SIZE", 210, 300, 40, "tray", "base", "all")).toEqual([[213, 303]]);
  });

  test("every base of an enclosure, a row each", async () => {
    const table = [
      ["part", "height", "width"],
      ["box base", 303, 213],
      ["lid base", 314, 224],
    ];
    expect(await cell("BASE.SIZE", ...ITEM, "lidded box", "all", "all")).toEqual(table);
    expect(await cell("BASE.SIZE", ...ITEM, "lidded box", "ALL", " All ")).toEqual(table);
    expect(await cell("BASE.SIZE", ...ITEM, "lidded box", "all", "width")).toEqual(
      table.map(([part, , width]) => [part, width]),
    );
  });
});

describe("WALL.LENGTH is the run of a wall and WALL.HEIGHT its cut height", () => {
  test.each([
    ["tray", "side wall", "", 307, 44.5],
    ["tray", "side", "", 307, 44.5],
    ["tray", "Head", "", 213, 44.5],
    ["tray", "tail wall", "", 213, 44.5],
    ["tray", "side wall", "through=head", 303, 44.5],
    ["tray", "head wall", "through=head", 217, 44.5],
    ["tray", "side wall", "construction=on base", 307, 42.5],
    ["tray", "outer head", "wall layers=2", 221, 44.5],
    ["lidded box", "lid side", "", 314, 42.5],
    ["lidded box", "side wall", "", 307, 44.5],
    ["three-tray box", "bottom side wall", "", 314, 37],
    ["slipcase", "back", "", 306, 42],
    ["slipcase", "back wall", "construction=flanged base", 306, 46],
    ["clamshell box", "fore-edge", "", 303, 44.5],
    ["clamshell box", "large fore edge wall", "", 310, 48.5],
  ])("%s, %s %s", async (enclosure, wall, settings, length, height) => {
    expect(await cell("WALL.LENGTH", ...ITEM, enclosure, wall, settings)).toBe(length);
    expect(await cell("WALL.HEIGHT", ...ITEM, enclosure, wall, settings)).toBe(height);
  });

  test("a tray deeper than it is long keeps the run as length", async () => {
    expect(await cell("WALL.LENGTH", 40, 30, 300, "tray", "side")).toBe(47);
    expect(await cell("WALL.HEIGHT", 40, 30, 300, "tray", "side")).toBe(304.5);
  });

  test("every wall, a row each", async () => {
    expect(await cell("WALL.LENGTH", ...ITEM, "slipcase", "all")).toEqual([
      ["wall", "length"],
      ["back wall", 306],
      ["head wall", 210.5],
    ]);
  });
});

describe("COVER.BLANK is along and across the grain, turn-ins included", () => {
  test.each([
    // 2 x (307 + 217) + 15; 15 + 44.9 + 2 + 42.5 + 15 = 119.4, up.
    ["tray", "wall strip", "", [1063, 120]],
    ["tray", "base panel", "", [303, 213]],
    ["tray", "floor lining", "", [301, 211]],
    // e = 44.9 + 2 + 57.5 = 104.4: 307 + 208.8, 217 + 208.8, up.
    ["tray", "one-piece blank", "cover style=one piece", [516, 426]],
    ["slipcase", "wrap", "", [336, 501]],
    // Grain of a case runs parallel to its spine: 321 + 30; 445 + 10 + 50.5 + 30 = 535.5, up.
    ["clamshell box", "case covering", "", [351, 536]],
    ["lidded box", "lid wall strip", "turn-in=20", [1096, 129]],
  ])("%s, %s %s", async (enclosure, piece, settings, [along, across]) => {
    expect(await cell("COVER.BLANK", ...ITEM, enclosure, piece, "all", settings)).toEqual([[along, across]]);
    expect(await cell("COVER.BLANK", ...ITEM, enclosure, piece, "along", settings)).toBe(along);
    expect(await cell("COVER.BLANK", ...ITEM, enclosure, piece, "across", settings)).toBe(across);
  });

  test("every piece, a row each", async () => {
    expect(await cell("COVER.BLANK", ...ITEM, "tray", "all", "all")).toEqual([
      ["piece", "along", "across"],
      ["wall strip", 1063, 120],
      ["base panel", 303, 213],
      ["floor lining", 301, 211],
    ]);
  });
});

describe("PART is any figure of any part", () => {
  test.each([
    ["side wall", "length", 307],
    ["side wall", "width", 44.5],
    ["side wall", "count", 2],
    ["side wall", "caliper", 2],
    ["side wall", "grain", "along length"],
    ["side wall", "material", "board"],
    ["side wall", "stock", "conservation board 2"],
    ["side wall", "folds", ""],
    ["flange card", "length", 327],
    ["flange card", "caliper", 0.4],
    ["flange card", "material", "card"],
    ["wall strip", "material", "covering"],
    ["wall strip", "stock", "book cloth"],
    ["floor lining", "stock", "lining paper"],
  ])("%s of a tray: %s is %p", async (part, measure, figure) => {
    expect(await cell("PART", ...ITEM, "tray", part, measure)).toBe(figure);
  });

  test("folds are positions from one end, of a blank folded both ways along each side", async () => {
    expect(await cell("PART", ...ITEM, "folded tray", "blank", "folds")).toBe(
      "along length 42.5 / 345.5; along width 42.5 / 255.5",
    );
    expect(await cell("PART", ...ITEM, "four-flap wrapper", "inner piece", "folds")).toBe(
      "149 / 190.4 / 491.8 / 533.6",
    );
  });

  test("every figure of one part, side by side, and one figure of every part, a row each", async () => {
    expect(await cell("PART", ...ITEM, "tray", "base", "all")).toEqual([
      [303, 213, 1, 2, "along length", "board", "conservation board 2", ""],
    ]);
    expect(await cell("PART", ...ITEM, "slipcase", "all", "count", "covering=none; lining=none")).toEqual([
      ["part", "count"],
      ["side", 2],
      ["back wall", 1],
      ["head wall", 2],
    ]);
  });
});

test("PARTS is every part to cut, a row each, with how to cut it", async () => {
  expect(await cell("PARTS", ...ITEM, "tray", "cushion base=3")).toEqual([
    ["part", "count", "length", "width", "material", "stock", "caliper", "grain", "folds", "how to cut it"],
    ["base", 1, 303, 213, "board", "conservation board 2", 2, "along length", "", "inside 303 x 213"],
    [
      "side wall",
      2,
      307,
      47.5,
      "board",
      "conservation board 2",
      2,
      "along length",
      "",
      "match the base; add 2 boards; height: inside depth 45.5; add 1 board",
    ],
    [
      "head wall",
      2,
      213,
      47.5,
      "board",
      "conservation board 2",
      2,
      "along length",
      "",
      "match the base; height: match the side wall",
    ],
    [
      "flange card",
      1,
      327,
      237,
      "card",
      "folding card 0.4",
      0.4,
      "along length",
      "",
      "length: match the side wall; width: match the base; add 2 boards; " +
        "cut over on every edge, glue on, trim flush to 307 x 217",
    ],
    // 15 + 47.9 + 2 + 45.5 + 15 = 125.4
    [
      "wall strip",
      1,
      1063,
      126,
      "covering",
      "book cloth",
      0.3,
      "along length",
      "",
      "round the walls; turn in 15 under the base, 60.5 down inside",
    ],
    ["base panel", 1, 303, 213, "covering", "book cloth", 0.3, "along length", "", "under the base, over the turn-ins"],
    [
      "floor lining",
      1,
      301,
      211,
      "lining",
      "lining paper",
      0.15,
      "along length",
      "",
      "on the floor, over the turn-ins",
    ],
    ["cushion base", 1, 301, 211, "cushion", "cushion, not in stock", 3, "either", "", ""],
  ]);
});

describe("BOARD.AREA is net, in m2", () => {
  test("of a tray 303 x 213 + 2 x 307 x 44.5 + 2 x 213 x 44.5 = 110,819 mm2; the card is no board", async () => {
    expect(await cell("BOARD.AREA", ...ITEM, "tray", "all")).toBe(0.110819);
    expect(await cell("BOARD.AREA", ...ITEM, "tray", "Conservation  Board 2")).toBe(0.110819);
  });

  test("of a stock board that this enclosure does not take it is 0", async () => {
    expect(await cell("BOARD.AREA", ...ITEM, "tray", "conservation board 3")).toBe(0);
  });

  test("of each board where base and walls differ: base 303 x 213, walls 3 higher for a base of 3", async () => {
    const settings = "base board=conservation board 3";
    expect(await cell("BOARD.AREA", ...ITEM, "tray", "conservation board 3", settings)).toBe(0.064539);
    // 2 x (307 + 213) x 45.5
    expect(await cell("BOARD.AREA", ...ITEM, "tray", "conservation board 2", settings)).toBe(0.04732);
  });

  test("a caliper that is not in stock is a board of its own", async () => {
    expect(
      await cell("BOARD.AREA", ...ITEM, "slipcase", "2.2 mm board, not in stock", "wall board=2.2"),
    ).toBeGreaterThan(0);
  });
});

test("PROBLEM is empty for a row that can be sized", async () => {
  expect(await cell("PROBLEM", ...ITEM, "tray")).toBe("");
});

describe("names and words are read as people type them", () => {
  test.each([
    ["Tray", "tray"],
    ["  open   tray ", "tray"],
    ["drop-spine box", "clamshell box"],
    ["Drop spine box", "clamshell box"],
    ["slip case", "slipcase"],
    ["two-tray box", "lidded box"],
    ["phase wrapper", "four-flap wrapper"],
    ["scored tray", "folded tray"],
  ])("%s is the %s", async (typed, name) => {
    expect(await cell("PARTS", ...ITEM, typed)).toEqual(await cell("PARTS", ...ITEM, name));
  });

  test("text with its own unit counts as that, whatever the workbook's unit", async () => {
    expect(await cell("INSIDE", "30 cm", '8 1/4"', "40mm", "tray", "all")).toEqual([[303, 213, 42.5]]);
    expect(await cell("INSIDE", "300", "0.21 m", "4,0 cm", "tray", "all")).toEqual([[303, 213, 42.5]]);
  });
});
