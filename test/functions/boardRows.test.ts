import { kindWords } from "../enclosure/kindWords";
import { cell, ITEM, refusal } from "./cell";

/** Every function of this chapter that takes an item: whether a weight follows the sizes, and its selectors. */
const FUNCTIONS = [
  ["BOARD.CALIPER", true, []],
  ["BOARD.STOCK", true, []],
  ["BASE.SAG", true, ["all"]],
  ["FIT.RANGE", false, ["height", "least"]],
  ["MASS", false, []],
  ["CAUTIONS", true, []],
] as const;

describe.each(FUNCTIONS)("%s", (id, weighed, selectors) => {
  const weight = (value: string | number | undefined) => (weighed ? [value] : []);
  const BLANKS = [0, "", null, undefined, "   "] as const;

  test.each(BLANKS)("height, width and depth all %p: empty text", async (blank) => {
    expect(await cell(id, blank, blank, blank, ...weight(undefined), "tray", ...selectors)).toBe("");
    expect(await cell(id, blank, blank, blank, ...weight("heavy"), "", ...selectors, "fit=lose")).toBe("");
  });

  test("enclosure none: empty text", async () => {
    expect(await cell(id, ...ITEM, ...weight(1), "none", ...selectors)).toBe("");
  });

  const LENGTH = "give a length such as 40, 40 mm or 1 9/16 in";
  test("a bad row is refused in the words of every other function", async () => {
    expect(await refusal(id, "tall", 210, 40, ...weight(1), "tray", ...selectors)).toBe(
      `#VALUE! height: got "tall"; ${LENGTH}`,
    );
    expect(await refusal(id, 300, "", 40, ...weight(1), "tray", ...selectors)).toBe(
      `#VALUE! width: got a blank; ${LENGTH}`,
    );
    expect(await refusal(id, 300, 210, { error: "#REF!" }, ...weight(1), "tray", ...selectors)).toBe(
      `#VALUE! depth: got "#REF!"; ${LENGTH}`,
    );
    expect(await refusal(id, ...ITEM, ...weight(1), "tary", ...selectors)).toBe(
      `#VALUE! enclosure: got "tary"; give ${kindWords()}; did you mean tray?`,
    );
    expect(await refusal(id, ...ITEM, ...weight(1), "tray", ...selectors, "modulus along=0")).toBe(
      '#VALUE! modulus along: got "0"; give a number of GPa from 0.001 to 1000, such as 2',
    );
  });

  if (weighed) {
    const MASS = "such as 1.2, 850 g or 2 lb 3 oz";
    test.each([
      ["heavy", `got "heavy"; give a mass ${MASS}`],
      [-1, `got -1; give a mass above zero ${MASS}`],
      ["0 kg", `got "0 kg"; give a mass above zero ${MASS}`],
      ["40 mm", `got "40 mm"; give a mass ${MASS}`],
      ["1,234", 'got "1,234"; a comma before three figures may mean thousands or decimals; write 1234 or 1.234'],
      [45234, "got 45234; give a mass of at most 10000 kg; may be a date: type '3/8 kg"],
      [true, `got TRUE; give a mass ${MASS}`],
      [{ error: "#N/A" }, `got "#N/A"; give a mass ${MASS}`],
    ])("weight %p is refused", async (wrong, message) => {
      expect(await refusal(id, ...ITEM, wrong, "tray", ...selectors)).toBe(`#VALUE! weight: ${message}`);
    });
  }
});

describe("FIT.RANGE", () => {
  // By hand, tray of 300 x 210 x 40, %RH 35 to 65 about 50. Height: base 303 along its grain (.04), cut to .3; item
  // growing .1, measured to .5; coverings 1. Least: base (303 - .3) x .9994, item (300 + .5) x 1.0015.
  test.each([
    ["least", 0.56763],
    // 303.3 x 1.0006 - 299.5 x .9985 - 1
    ["greatest", 3.43123],
    // In the damp 303.1818 - 300.45 - 1 = 1.7318, less the root of .30018^2 + .50075^2 = .583831
    ["likely least", 1.147969],
    // In the dry 302.8182 - 299.55 - 1 = 2.2682, and the root of .29982^2 + .49925^2 = .582351
    ["likely greatest", 2.850551],
  ])("height, %s: %d", async (which, play) => {
    expect(await cell("FIT.RANGE", ...ITEM, "tray", "height", which)).toBeCloseTo(play, 4);
    expect(
      await cell("FIT.RANGE", "300 mm", "210 mm", "40 mm", "tray", "height", which, "unit=in; round to=0.5"),
    ).toBeCloseTo(play / 25.4, 5);
  });

  test("tables of all, with headings where there are several directions", async () => {
    const all = (await cell("FIT.RANGE", ...ITEM, "tray", "all", "all")) as unknown[][];
    expect(all.map(([first]) => first)).toEqual(["direction", "height", "width", "depth"]);
    expect(all[0]).toEqual(["direction", "least", "greatest", "likely least", "likely greatest"]);
    expect(await cell("FIT.RANGE", ...ITEM, "tray", "height", "all")).toEqual([all[1]!.slice(1)]);
    expect(await cell("FIT.RANGE", ...ITEM, "tray", "all", "least")).toEqual(all.map(([way, least]) => [way, least]));
    expect(await cell("FIT.RANGE", ...ITEM, "tray", "Thickness", " Likely  Least ")).toBe(all[3]![3]);
  });

  test("in still air, cut and measured exactly, every answer is the play of the fit", async () => {
    const still =
      "expansion along=none; expansion across=none; item expansion=none; measuring error=none; cutting error=none; caliper tolerance=none";
    expect(await cell("FIT.RANGE", ...ITEM, "tray", "all", "all", still)).toEqual([
      ["direction", "least", "greatest", "likely least", "likely greatest"],
      ["height", 2, 2, 2, 2],
      ["width", 2, 2, 2, 2],
      ["depth", 2, 2, 2, 2],
    ]);
  });

  const WHICH = "give least, greatest, likely least, likely greatest or all";
  test.each([
    ["up", "least", 'direction: got "up"; give height, width, depth or all'],
    ["", "least", "direction: got a blank; give height, width, depth or all"],
    ["height", "most", `which: got "most"; ${WHICH}`],
    ["height", "", `which: got a blank; ${WHICH}`],
    ["height", "fit=loose", 'which: got settings; put "likely least" before them'],
    ["fit=loose", "least", 'direction: got settings; put "height" before them'],
  ])("%p, %p: %s", async (direction, which, message) => {
    expect(await refusal("FIT.RANGE", ...ITEM, "tray", direction, which)).toBe(`#VALUE! ${message}`);
  });

  test("humidity out of order is refused", async () => {
    expect(
      await refusal("FIT.RANGE", ...ITEM, "tray", "height", "least", "humidity least=60; humidity greatest=55%"),
    ).toBe("#VALUE! humidity: got 60, 50 and 55 %RH; give humidity least, when made and greatest in rising order");
  });
});

describe("MASS", () => {
  // By hand: board 1290 g/m2, .110819 m2; card 300 + 80, 307 x 217; cloth 240 + 80, 1063 x 120 + 303 x 213; paper
  // 120 + 80, 301 x 211: .14295651 + .02531522 + .06147168 + .0127022
  test("in kg, and in lb where the unit is in", async () => {
    expect(await cell("MASS", ...ITEM, "tray")).toBe(0.24244561);
    expect(await cell("MASS", "300 mm", "210 mm", "40 mm", "tray", "unit=in; round to=0.5")).toBeCloseTo(
      0.24244561 / 0.45359237,
      8,
    );
  });
});
