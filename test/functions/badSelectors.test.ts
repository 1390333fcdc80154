import type { Argument } from "../runtime/marshal";
import { cell, ITEM, refusal } from "./cell";

const SETTINGS_RANGE = [
  ["setting", "value"],
  ["unit", "in"],
];
const STOCK_TABLE = [
  ["stock", "material", "caliper"],
  ["board of ours", "board", 2],
];
const FIRST_PARTS = "base, side wall, head wall or flange card";
const MEASURES = "give length, width, count, caliper, grain, material, stock, folds or all";
const BOARDS =
  "give all, conservation board 1.5, conservation board 2, conservation board 2.5, conservation board 3, corrugated board 1.6, conservation card 10 pt, conservation card 20 pt, conservation card 40 pt, conservation card 60 pt, folding card 0.4, unbuffered card 0.5, grey board 1.5, grey board 2, grey board 2.5 or grey board 3";

/** Each selector of each function: where it stands among the selectors, what it is put before, what it accepts. */
const SELECTORS = [
  ["INSIDE", [], "direction", [], "all", "give height, width, depth or all", ""],
  ["OUTSIDE", [], "direction", [], "all", "give height, width, depth or all", ""],
  ["BASE.SIZE", [], "base", ["all"], "base", "give the name of a base", "; such as base"],
  ["BASE.SIZE", ["base"], "direction", [], "all", "give height, width or all", ""],
  ["WALL.LENGTH", [], "wall", [], "side wall", "give the name of a wall", "; such as side wall or head wall"],
  ["WALL.HEIGHT", [], "wall", [], "side wall", "give the name of a wall", "; such as side wall or head wall"],
  [
    "COVER.BLANK",
    [],
    "piece",
    ["all"],
    "wall strip",
    "give the name of a piece",
    "; such as wall strip, base panel or floor lining",
  ],
  ["COVER.BLANK", ["wall strip"], "direction", [], "all", "give along, across or all", ""],
  ["PART", [], "part", ["length"], "base", "give the name of a part", `; such as ${FIRST_PARTS}`],
  ["PART", ["base"], "measure", [], "length", MEASURES, ""],
  ["BOARD.AREA", [], "board", [], "all", BOARDS, ""],
] as const;

describe.each(SELECTORS)("%s after %j: %s", (id, before, argument, after, example, accepts, cure) => {
  const call = (wrong: Argument, ...settings: readonly Argument[]): Promise<string> =>
    refusal(id, ...ITEM, "tray", ...before, wrong, ...after, ...settings);

  test.each([
    ["missing", undefined],
    ["blank", ""],
    ["a blank cell that arrives as 0", 0],
    ["spaces", "  "],
  ])("%s", async (_what, blank) => {
    expect(await call(blank)).toBe(`#VALUE! ${argument}: got a blank; ${accepts}${cure}`);
  });

  test("a text that is none of them", async () => {
    expect(await call("xyzzy")).toBe(`#VALUE! ${argument}: got "xyzzy"; ${accepts}${cure}`);
  });

  test.each([
    ["a number", 7, '"7"'],
    ["a date serial", 45234, '"45234"'],
    ["a negative number", -1, '"-1"'],
    ["1e9", 1e9, '"1000000000"'],
    ["an error", { error: "#REF!" }, '"#REF!"'],
  ])("%s", async (_what, wrong, got) => {
    expect(await call(wrong)).toBe(`#VALUE! ${argument}: got ${got}; ${accepts}${cure}`);
  });

  test("TRUE", async () => {
    expect(await call(true)).toBe(`#VALUE! ${argument}: got TRUE; give a text such as "${example}"`);
  });

  test.each([
    ["a settings range", SETTINGS_RANGE],
    ["a settings range without headings", [["unit", "in"]]],
    ["a stock table", STOCK_TABLE],
    ["a settings text", "unit=in"],
  ])("%s in its place", async (_what, wrong) => {
    const message = `#VALUE! ${argument}: got settings; put "${example}" before them`;
    expect(await call(wrong)).toBe(message);
    expect(await call(wrong, "fit=snug")).toBe(message);
  });

  test("several cells in its place", async () => {
    expect(await call([["all"], ["all"]])).toBe(
      `#VALUE! ${argument}: got a range of 2 cells; give one cell, or a text such as "${example}"`,
    );
  });

  test("all is understood in any case, in a cell of its own", async () => {
    const all = await cell(id, ...ITEM, "tray", ...before, "all", ...after);
    expect(await cell(id, ...ITEM, "tray", ...before, [["  ALL "]], ...after)).toEqual(all);
  });
});

describe("a misspelt word is answered with the nearest", () => {
  test.each([
    ["INSIDE", ["heigth"], 'direction: got "heigth"; give height, width, depth or all; did you mean height?'],
    ["OUTSIDE", ["dept"], 'direction: got "dept"; give height, width, depth or all; did you mean depth?'],
    ["BASE.SIZE", ["bse", "all"], 'base: got "bse"; give the name of a base; did you mean base?'],
    ["BASE.SIZE", ["base", "hight"], 'direction: got "hight"; give height, width or all; did you mean height?'],
    ["BASE.SIZE", ["base", "depth"], 'direction: got "depth"; give height, width or all'],
    ["WALL.LENGTH", ["sdie"], 'wall: got "sdie"; give the name of a wall; did you mean side wall?'],
    [
      "WALL.HEIGHT",
      ["hed wall"],
      'wall: got "hed wall"; give the name of a wall; did you mean head wall or side wall?',
    ],
    [
      "COVER.BLANK",
      ["wal strip", "along"],
      'piece: got "wal strip"; give the name of a piece; did you mean wall strip?',
    ],
    ["COVER.BLANK", ["base panel", "alongside"], 'direction: got "alongside"; give along, across or all'],
    ["PART", ["flang card", "length"], 'part: got "flang card"; give the name of a part; did you mean flange card?'],
    ["PART", ["base", "lenght"], `measure: got "lenght"; ${MEASURES}; did you mean length?`],
    [
      "BOARD.AREA",
      ["conservaton board 2"],
      `board: got "conservaton board 2"; ${BOARDS}; did you mean conservation board 2, conservation board 3 or conservation board 2.5?`,
    ],
    // A part that this tray may lack, misspelt.
    ["PART", ["flange crd", "length"], 'part: got "flange crd"; give the name of a part; did you mean flange card?'],
  ] as const)("%s %j", async (id, selectors, message) => {
    expect(await refusal(id, ...ITEM, "tray", ...selectors)).toBe(`#VALUE! ${message}`);
  });
});

describe("a part that this kind lacks is #N/A with the reason, so that IFNA works", () => {
  test.each([
    [
      "PART",
      "tray",
      ["lid base", "length"],
      "part: this tray has no part called lid base; it has base, side wall, head wall, flange card, wall strip, base panel and floor lining",
    ],
    [
      "PART",
      "slipcase",
      ["side wall", "length"],
      "part: this slipcase has no part called side wall; it has side, back wall, head wall, wrap, head panel, side lining, back wall lining and head wall lining",
    ],
    ["BASE.SIZE", "folded tray", ["base", "all"], "base: this folded tray has no base called base; it has none"],
    ["BASE.SIZE", "tray", ["side wall", "all"], "base: this tray has no base called side wall; it has base"],
    [
      "WALL.LENGTH",
      "tray",
      ["lid side"],
      "wall: this tray has no wall called lid side wall; it has side wall and head wall",
    ],
    [
      "WALL.HEIGHT",
      "slipcase",
      ["side"],
      "wall: this slipcase has no wall called side wall; it has back wall and head wall",
    ],
    [
      "COVER.BLANK",
      "tray",
      ["wrap", "all"],
      "piece: this tray has no piece called wrap; it has wall strip, base panel and floor lining",
    ],
    [
      "COVER.BLANK",
      "four-flap wrapper",
      ["wall strip", "all"],
      "piece: this four-flap wrapper has no piece called wall strip; it has none",
    ],
  ] as const)("%s of a %s: %j", async (id, enclosure, selectors, message) => {
    expect(await refusal(id, ...ITEM, enclosure, ...selectors)).toBe(`#N/A ${message}`);
  });

  test("a flange card that this construction lacks", async () => {
    expect(await refusal("PART", ...ITEM, "tray", "flange card", "length", "construction=on base")).toBe(
      "#N/A part: this tray has no part called flange card; " +
        "it has base, side wall, head wall, wall strip, base panel and floor lining",
    );
  });
});

describe("a name that means several parts is refused with all of them", () => {
  test.each([
    ["PART", "tray", ["wall", "length"], "", "part", "wall", "side wall or head wall"],
    ["WALL.LENGTH", "tray", ["wall"], "", "wall", "wall", "side wall or head wall"],
    ["WALL.LENGTH", "tray", ["side"], "wall layers=2", "wall", "side", "inner side wall or outer side wall"],
    [
      "WALL.HEIGHT",
      "lidded box",
      ["box head"],
      "wall layers=2",
      "wall",
      "box head",
      "box inner head wall or box outer head wall",
    ],
    ["PART", "slipcase", ["wall lining", "count"], "", "part", "wall lining", "back wall lining or head wall lining"],
  ] as const)("%s of a %s: %j %s", async (id, enclosure, selectors, settings, argument, typed, names) => {
    expect(await refusal(id, ...ITEM, enclosure, ...selectors, settings)).toBe(
      `#VALUE! ${argument}: got "${typed}"; give ${names}`,
    );
  });

  test("without its tray a part is that of the tray that holds the item", async () => {
    expect(await cell("PART", ...ITEM, "three-tray box", "side wall", "length")).toBe(307);
    expect(await cell("PART", ...ITEM, "three-tray box", "bottom side wall", "length")).toBe(314);
  });

  test("bottom is a tray of the three-tray box, never the inner base", async () => {
    expect(await refusal("BASE.SIZE", ...ITEM, "three-tray box", "bottom", "all")).toBe(
      '#VALUE! base: got "bottom"; give the name of a base; did you mean bottom base?',
    );
  });
});

test("settings that are given but wrong are told before a wrong selector, an item before either", async () => {
  expect(await refusal("INSIDE", ...ITEM, "tray", "heigth", "turn-in=0")).toBe(
    '#VALUE! turn-in: got "0"; give auto or a length above zero such as 15, 15 mm or 5/8 in',
  );
});
