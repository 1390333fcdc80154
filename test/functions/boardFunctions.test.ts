import type { Argument } from "../runtime/marshal";
import { cell, ITEM, refusal } from "./cell";

/** Functions of an item with its weight: what stands after the weight and the enclosure. */
const WEIGHED = [["BOARD.CALIPER"], ["BOARD.STOCK"], ["BASE.SAG", "conservation board 2"], ["CAUTIONS"]] as const;

const MASS = "give a mass such as 1.2, 850 g or 2 lb 3 oz";

describe("good rows", () => {
  test("BOARD.CALIPER is the stock row's own number and BOARD.STOCK its name, however the weight is written", async () => {
    for (const weight of [0.85, "850 g", "0,85 kg"]) {
      expect(await cell("BOARD.CALIPER", ...ITEM, weight, "tray")).toBe(2.5);
      expect(await cell("BOARD.STOCK", ...ITEM, weight, "tray")).toBe("conservation board 2.5");
    }
    const points = [
      ["stock", "material", "caliper (pt)"],
      ["heavy board", "board", 120],
    ];
    expect(await cell("BOARD.CALIPER", ...ITEM, 0.85, "tray", points)).toBe(120);
  });

  test("BASE.SAG grows with the weight, and is told for each board", async () => {
    const sag = async (weight: number) =>
      Number(await cell("BASE.SAG", ...ITEM, weight, "tray", "conservation board 2"));
    // It stiffens as it bends, so that twice the weight springs less than twice as far.
    expect(await sag(2)).toBeGreaterThan(1.5 * (await sag(1)));
    expect(await sag(2)).toBeLessThan(2 * (await sag(1)));
    const table = (await cell("BASE.SAG", ...ITEM, 1, "tray", "all")) as unknown[][];
    expect(table[0]).toEqual(["board", "sag"]);
    expect(table.find(([name]) => name === "conservation board 2")?.[1]).toBe(await sag(1));
  });

  test("MASS of a tray is 242.4 g: board, card, covering, lining and what stays of the adhesive", async () => {
    // m2 times g/m2: board 0.110819 x 1290; card 0.307 x 0.217 x 300; covering 1.063 x 0.120 + 0.303 x 0.213, x 240;
    // lining 0.301 x 0.211 x 120; adhesive 80 under card, covering and lining.
    const card = 0.307 * 0.217;
    const covering = 1.063 * 0.12 + 0.303 * 0.213;
    const lining = 0.301 * 0.211;
    const grams = 0.110819 * 1290 + card * 300 + covering * 240 + lining * 120 + 80 * (card + covering + lining);
    expect(await cell("MASS", ...ITEM, "tray")).toBeCloseTo(grams / 1000, 9);
    expect(await cell("MASS", "300 mm", "210 mm", "40 mm", "tray", "unit=in; round to=0.5")).toBeCloseTo(
      grams / 453.59237,
      8,
    );
  });

  test("BOARD.MODULUS of a strip that sags 3 mm under 500 g is F L3 / 48 I w = 8.17 GPa", async () => {
    const load = 0.5 * 9.80665;
    const modulus = (load * 0.2 ** 3) / (48 * ((0.05 * 0.002 ** 3) / 12) * 0.003) / 1e9;
    expect(await cell("BOARD.MODULUS", 200, 50, 2, "500 g", 3)).toBeCloseTo(modulus, 8);
    expect(await cell("BOARD.MODULUS", "20 cm", "50", "2 mm", 0.5, "3 mm")).toBeCloseTo(modulus, 8);
  });

  test("FIT.RANGE brackets the fit of 2 mm, and the likely range lies within", async () => {
    const [least, greatest, likelyLeast, likelyGreatest] = (
      (await cell("FIT.RANGE", ...ITEM, "tray", "height", "all")) as number[][]
    )[0] as [number, number, number, number];
    expect(least).toBeLessThan(likelyLeast);
    expect(likelyLeast).toBeLessThan(2);
    expect(likelyGreatest).toBeGreaterThan(2);
    expect(greatest).toBeGreaterThan(likelyGreatest);
    expect(await cell("FIT.RANGE", ...ITEM, "tray", "height", "likely least")).toBe(likelyLeast);
  });

  test("CAUTIONS is empty where there is nothing to watch", async () => {
    expect(await cell("CAUTIONS", ...ITEM, 0.1, "tray")).toBe("");
  });
});

describe.each(WEIGHED)("%s", (id, ...selectors) => {
  test.each([0, "", null, undefined] as const)("a blank row (%p) is empty text", async (blank) => {
    expect(await cell(id, blank, blank, blank, blank, "tray", ...selectors)).toBe("");
    expect(await cell(id, blank, blank, blank, "heavy", "tray", ...selectors)).toBe("");
  });

  test("enclosure none is empty text", async () => {
    expect(await cell(id, ...ITEM, 1, "none", ...selectors)).toBe("");
  });

  test.each([
    ["text", "heavy", `got "heavy"; ${MASS}`],
    ["negative", -1, "got -1; give a mass above zero such as 1.2, 850 g or 2 lb 3 oz"],
    ["1e9", 1e9, "got 1000000000; give a mass of at most 10000 kg"],
    ["a date serial", 45234, "got 45234; give a mass of at most 10000 kg; may be a date: type '3/8 kg"],
    ["a length", "12 mm", `got "12 mm"; ${MASS}`],
    ["the enclosure, in the wrong order", "tray", `got "tray"; ${MASS}`],
    ["TRUE", true, `got TRUE; ${MASS}`],
    ["an error", { error: "#N/A" }, `got "#N/A"; ${MASS}`],
    ["settings", "unit=in", `got "unit=in"; ${MASS}`],
  ] as const)("weight: %s", async (_what, weight, message) => {
    expect(await refusal(id, ...ITEM, weight, "tray", ...selectors)).toBe(`#VALUE! weight: ${message}`);
  });

  test("a bad item and an unknown enclosure in the words of every function", async () => {
    expect(await refusal(id, "tall", 210, 40, 1, "tray", ...selectors)).toBe(
      '#VALUE! height: got "tall"; give a length such as 40, 40 mm or 1 9/16 in',
    );
    expect(await refusal(id, ...ITEM, 1, "tary", ...selectors)).toMatch(
      /^#VALUE! enclosure: got "tary"; give tray, .*; did you mean tray\?$/,
    );
  });
});

test("without a weight a board is chosen by size, and there is no sag and no caution", async () => {
  expect(await cell("BOARD.STOCK", ...ITEM, undefined, "tray")).toBe("conservation board 2.5");
  expect(await refusal("BASE.SAG", ...ITEM, 0, "tray", "conservation board 2")).toBe(
    "#N/A weight: a sag follows from the weight; give it, or set item density",
  );
  expect(await cell("CAUTIONS", ...ITEM, "", "tray")).toBe("");
});

describe("BASE.SAG board", () => {
  const BOARDS =
    "give conservation board 1.5, conservation board 2, conservation board 2.5, conservation board 3, corrugated board 1.6, grey board 1.5, grey board 2, grey board 2.5, grey board 3, a caliper such as 2 mm or all";
  test.each([
    [undefined, `board: got a blank; ${BOARDS}`],
    ["", `board: got a blank; ${BOARDS}`],
    [
      "conservaton board 2",
      `board: got "conservaton board 2"; ${BOARDS}; did you mean conservation board 2, conservation board 3 or conservation board 2.5?`,
    ],
    [[["unit", "in"]], 'board: got settings; put "all" before them'],
    ["unit=in", 'board: got settings; put "all" before them'],
    [true, 'board: got TRUE; give a text such as "all"'],
    [{ error: "#N/A" }, `board: got "#N/A"; ${BOARDS}`],
  ] as readonly (readonly [Argument, string])[])("%j", async (board, message) => {
    expect(await refusal("BASE.SAG", ...ITEM, 1.2, "tray", board)).toBe(`#VALUE! ${message}`);
  });
});

describe("FIT.RANGE selectors", () => {
  const DIRECTIONS = "give height, width, depth or all";
  const WHICH = "give least, greatest, likely least, likely greatest or all";
  test.each([
    [undefined, "least", `direction: got a blank; ${DIRECTIONS}`],
    ["heigth", "least", `direction: got "heigth"; ${DIRECTIONS}; did you mean height?`],
    [[["unit", "in"]], "least", 'direction: got settings; put "height" before them'],
    ["height", "", `which: got a blank; ${WHICH}`],
    ["height", "smallest", `which: got "smallest"; ${WHICH}`],
    ["height", 5, `which: got "5"; ${WHICH}`],
    ["height", "unit=in", 'which: got settings; put "likely least" before them'],
  ] as readonly (readonly [Argument, Argument, string])[])("%j, %j", async (direction, which, message) => {
    expect(await refusal("FIT.RANGE", ...ITEM, "tray", direction, which)).toBe(`#VALUE! ${message}`);
  });

  test.each(["FIT.RANGE", "MASS"])("%s of a blank row is empty text", async (id) => {
    const selectors = id === "MASS" ? [] : ["height", "least"];
    expect(await cell(id, 0, "", null, "tray", ...selectors)).toBe("");
    expect(await refusal(id, 300, -210, 40, "tray", ...selectors)).toBe(
      "#VALUE! width: got -210; give a length above zero such as 40, 40 mm or 1 9/16 in",
    );
  });
});

describe("BOARD.MODULUS", () => {
  const GOOD = [200, 50, 2, "500 g", 3] as const;
  const LENGTH = "such as 40, 40 mm or 1 9/16 in";
  const CALIPER = "such as 2, 2 mm or 80 pt";
  const LOAD = "such as 1.2, 850 g or 2 lb 3 oz";

  test("that no board has is refused: a unit was mistaken", async () => {
    expect(await refusal("BOARD.MODULUS", 200, 50, 2, "500 g", "0.003 mm")).toBe(
      '#VALUE! sag: got "0.003 mm"; the modulus would be outside 0.001 to 1000 GPa; ' +
        "check the units of length, width, caliper, load and sag",
    );
    expect(await refusal("BOARD.MODULUS", 200, 50, 5e-324, "500 g", 3)).toMatch(/would be outside 0.001 to 1000 GPa/);
  });

  test("of a blank length is empty text", async () => {
    for (const blank of [0, "", null]) expect(await cell("BOARD.MODULUS", blank, 50, 2, "500 g", 3)).toBe("");
  });

  test.each([
    ["length", 0, "length", LENGTH],
    ["width", 1, "length", LENGTH],
    ["caliper", 2, "length", CALIPER],
    ["load", 3, "mass", LOAD],
    ["sag", 4, "length", LENGTH],
  ] as const)("%s", async (argument, place, measure, examples) => {
    const wrong = (value: Argument) =>
      refusal("BOARD.MODULUS", ...GOOD.map((good, index) => (index === place ? value : good)));
    expect(await wrong("x")).toBe(`#VALUE! ${argument}: got "x"; give a ${measure} ${examples}`);
    expect(await wrong(-1)).toBe(`#VALUE! ${argument}: got -1; give a ${measure} above zero ${examples}`);
    expect(await wrong(true)).toBe(`#VALUE! ${argument}: got TRUE; give a ${measure} ${examples}`);
    expect(await wrong({ error: "#REF!" })).toBe(`#VALUE! ${argument}: got "#REF!"; give a ${measure} ${examples}`);
    expect(await wrong(45234)).toMatch(
      new RegExp(`^#VALUE! ${argument}: got 45234; .*; may be a date: type '3/8 (in|kg)$`),
    );
    if (argument !== "length") {
      expect(await wrong(0)).toBe(`#VALUE! ${argument}: got 0; give a ${measure} above zero ${examples}`);
      expect(await wrong(undefined)).toBe(`#VALUE! ${argument}: got a blank; give a ${measure} ${examples}`);
    }
  });
});

describe("boards that the row's weight chooses", () => {
  test("auto takes the board that BOARD.STOCK names, however heavy", async () => {
    for (const weight of ["850 g", "5 kg", "500 kg"]) {
      const stock = await cell("BOARD.STOCK", ...ITEM, weight, "tray");
      const base = (measure: string) =>
        cell("PART", ...ITEM, "tray", "base", measure, `wall board=auto; weight=${weight}`);
      const plies = Number(await base("count"));
      expect(plies === 1 ? await base("stock") : `${plies} x ${String(await base("stock"))}`).toBe(stock);
    }
    expect(await cell("PROBLEM", ...ITEM, "tray", "wall board=auto; weight=500")).toBe("");
  });

  test("auto without a weight is refused, and weight=none chooses by size", async () => {
    expect(await refusal("INSIDE", ...ITEM, "tray", "all", "wall board=auto")).toBe(
      "#VALUE! weight: got a blank; the board guide needs it: give weight=1.2, or weight=none to choose by size alone; or name a wall board",
    );
    expect(await cell("PART", ...ITEM, "tray", "base", "stock", "wall board=auto; weight=none")).toBe(
      "conservation board 2.5",
    );
  });

  test("a single function without a guide stays at 2 mm, and with one goes by it", async () => {
    expect(await cell("PART", ...ITEM, "tray", "base", "stock")).toBe("conservation board 2");
    const guide = (await cell("BOARD.GUIDE")) as (string | number)[][];
    expect(await cell("PART", ...ITEM, "tray", "base", "stock", guide, "weight=5")).toBe("conservation board 3");
    expect(await cell("BOARD.CALIPER", ...ITEM, 20, "tray", guide)).toBe(6);
    expect(await cell("BOARD.STOCK", ...ITEM, 20, "tray", guide)).toBe("2 x conservation board 3");
  });

  test("plies: the caliper is the stock's number times the plies; every ply is cut, 3 mm larger, and weighs", async () => {
    const stock = [
      ["stock", "material", "caliper", "mass"],
      ["eighty", "board", "80 pt", 1300],
      ["card", "card", 0.4, 300],
    ];
    const own = "wall board=2 x eighty; covering=none; lining=none; construction=around base; adhesive=none";
    expect(await cell("BOARD.CALIPER", ...ITEM, 1, "tray", stock, own)).toBe("160 pt");
    const table = (await cell("PARTS", ...ITEM, "tray", stock, own)) as (string | number)[][];
    // Inside 303 x 213 x 42.5, t = 4.064: side walls 303 + 2t long and 42.5 + t high.
    expect(table.slice(1).map((row) => row.slice(0, 6))).toEqual([
      ["base", 2, 306, 216, "board", "eighty"],
      ["side wall", 4, 314.128, 49.564, "board", "eighty"],
      ["head wall", 4, 216, 49.564, "board", "eighty"],
    ]);
    for (const row of table.slice(1)) {
      expect(row[6]).toBe(2.032);
      expect(row[9]).toMatch(/^laminate first: 2 plies, same grain, press flat; then trim to size/);
    }
    const areaM2 = (2 * 303 * 213 + 4 * 311.128 * 46.564 + 4 * 213 * 46.564) / 1e6;
    expect(await cell("MASS", ...ITEM, "tray", stock, own)).toBeCloseTo(areaM2 * 1.3, 9);
    const glued = (await cell("MASS", ...ITEM, "tray", stock, own, "adhesive=80")) as number;
    expect(glued - areaM2 * 1.3).toBeCloseTo((areaM2 / 2) * 0.08, 9);
    // Each ring of a double wall is one ply; its base is laminated.
    const rings = (await cell("PARTS", ...ITEM, "tray", stock, own, "wall layers=2")) as (string | number)[][];
    expect(rings.slice(1).map(([part, count]) => [part, count])).toEqual([
      ["base", 2],
      ["inner side wall", 2],
      ["inner head wall", 2],
      ["outer side wall", 2],
      ["outer head wall", 2],
    ]);
  });
});
