import { cell, refusal } from "./cell";

const LENGTH = "give a length such as 40, 40 mm or 1 9/16 in";

describe("MEASURE", () => {
  test.each([
    [412, [], 412],
    ["412", [], 412],
    ["10 3/8 in", [], 263.525],
    ['10⅜"', [], 263.525],
    ["25,4 cm", [], 254],
    ["1' 2 1/2\"", [], 368.3],
    ["263.525 mm", ["unit=in"], 10.375],
    ["10 3/8", ["unit=in"], 10.375],
    [4.5, ["unit=cm"], 4.5],
    ["4.5 mm", ["unit=cm"], 0.45],
    ["31.5 cm", [[["unit", "in"]], "unit=mm"], 315],
    ["2 ft", ["units=IN"], 24],
  ])("of %p with %j is %p", async (measure, settings, length) => {
    expect(await cell("MEASURE", measure, ...settings)).toBe(length);
  });

  test.each([
    ["tall", `measure: got "tall"; ${LENGTH}`],
    [-1, "measure: got -1; give a length above zero such as 40, 40 mm or 1 9/16 in"],
    ["0", 'measure: got "0"; give a length above zero such as 40, 40 mm or 1 9/16 in'],
    [
      1e9,
      "measure: got 1000000000; a plain number above 5 m is refused; write its unit, such as 5.2 m, if it is meant",
    ],
    [45234, "measure: got 45234; a plain number above 5 m is refused; may be a date: type '3/8 in"],
    ["2 kg", `measure: got "2 kg"; ${LENGTH}`],
    ["NaN", `measure: got "NaN"; ${LENGTH}`],
    [true, `measure: got TRUE; ${LENGTH}`],
    [{ error: "#DIV/0!" }, `measure: got "#DIV/0!"; ${LENGTH}`],
    ["unit=in", `measure: got "unit=in"; ${LENGTH}`],
  ])("of %p is refused", async (measure, message) => {
    expect(await refusal("MEASURE", measure)).toBe(`#VALUE! ${message}`);
  });
});

describe("DIMENSIONS", () => {
  const TEXT = "31.5 x 24 x 4.2 cm, 1.2 kg";

  test.each([
    ["all", [], [[315, 240, 42]]],
    ["height", [], 315],
    ["width", [], 240],
    ["depth", [], 42],
    ["thickness", [], 42],
    ["weight", [], 1.2],
    ["all", ["order=WHD"], [[240, 315, 42]]],
    ["all", ["unit=cm"], [[31.5, 24, 4.2]]],
    ["height", ["unit=in"], 12.401574803],
    // 1.2 / 0.45359237
    ["weight", ["unit=in"], 2.645547146],
  ])("which %p with %j: %j", async (which, settings, figure) => {
    expect(await cell("DIMENSIONS", TEXT, which, ...settings)).toEqual(figure);
  });

  test("a text without a unit is in the workbook's unit, or the text unit", async () => {
    expect(await cell("DIMENSIONS", "12 x 8 x 1 1/2", "all", "unit=in")).toEqual([[12, 8, 1.5]]);
    expect(await cell("DIMENSIONS", "31 x 24 x 4", "all", "text unit=cm")).toEqual([[310, 240, 40]]);
  });

  test("a depth that the text lacks is #N/A in its own cell, height and width stand", async () => {
    const missing = { error: "#N/A", message: 'text: "31.5 x 24 cm" has no depth' };
    expect(await cell("DIMENSIONS", "31.5 x 24 cm", "all")).toEqual([[315, 240, missing]]);
    expect(await refusal("DIMENSIONS", "31.5 x 24 cm", "depth")).toBe(`#N/A ${missing.message}`);
    expect(await refusal("DIMENSIONS", "31.5 x 24 cm", "weight")).toBe('#N/A text: "31.5 x 24 cm" has no weight');
  });

  const EXAMPLE = "give a dimension text such as 31.5 x 24 x 4.2 cm";
  const CURE = "give height x width x depth, such as 31.5 x 24 x 4.2 cm";

  test.each([
    [5, `text: got 5; ${EXAMPLE}`],
    [45234, `text: got 45234; ${EXAMPLE}`],
    [true, `text: got TRUE; ${EXAMPLE}`],
    ["about a hand wide", `text: got "about a hand wide"; there is no measure in it; ${CURE}`],
    [
      "24 cm",
      `text: got "24 cm"; a single measure lacks the width and the thickness, and a catalogue height is rounded up to whole cm; ${CURE}`,
    ],
    [
      "30 x 20 x 4 x 2 cm",
      `text: got "30 x 20 x 4 x 2 cm"; 4 measures in a row are not height, width and depth; ${CURE}`,
    ],
    [{ error: "#N/A" }, `text: got "#N/A"; there is no measure in it; ${CURE}`],
  ])("of %p is refused", async (text, message) => {
    expect(await refusal("DIMENSIONS", text, "all")).toBe(`#VALUE! ${message}`);
  });

  const WHICH = "give height, width, depth, weight or all";

  test.each([
    [undefined, `which: got a blank; ${WHICH}`],
    ["", `which: got a blank; ${WHICH}`],
    [0, `which: got a blank; ${WHICH}`],
    ["heigth", `which: got "heigth"; ${WHICH}; did you mean height?`],
    [3, `which: got "3"; ${WHICH}`],
    [true, 'which: got TRUE; give a text such as "all"'],
    ["order=LWD", 'which: got settings; put "all" before them'],
    [[["order", "LWD"]], 'which: got settings; put "all" before them'],
    [{ error: "#NAME?" }, `which: got "#NAME?"; ${WHICH}`],
  ])("which %j is refused", async (which, message) => {
    expect(await refusal("DIMENSIONS", TEXT, which)).toBe(`#VALUE! ${message}`);
  });

  test("an order must name height (or length), width and depth once each", async () => {
    expect(await refusal("DIMENSIONS", TEXT, "all", "order=HWW")).toBe(
      '#VALUE! order: got "HWW"; give the letters H (or L), W and D once each, such as HWD or LWD',
    );
  });
});

describe("FRACTION", () => {
  test.each([
    [263.525, 16, [], "10 3/8"],
    ["26.4 cm", 8, [], "10 3/8"],
    [10.4, 16, ["unit=in"], "10 3/8"],
    [25.4, 64, [], "1"],
    [3, 2, [], "0"],
    [412, "32", [], "16 7/32"],
  ])("of %p in parts of %p with %j is %p", async (length, denominator, settings, text) => {
    expect(await cell("FRACTION", length, denominator, ...settings)).toBe(text);
  });

  const WHOLE = "give a whole number from 2 to 64";

  test.each([
    [undefined, `denominator: got a blank; ${WHOLE}, such as 16`],
    ["", `denominator: got a blank; ${WHOLE}, such as 16`],
    ["sixteenths", `denominator: got "sixteenths"; ${WHOLE}, such as 16`],
    ["1/16", `denominator: got "1/16"; ${WHOLE}, such as 16`],
    [true, `denominator: got TRUE; ${WHOLE}, such as 16`],
    [{ error: "#N/A" }, `denominator: got "#N/A"; ${WHOLE}, such as 16`],
    ["unit=in", `denominator: got "unit=in"; ${WHOLE}, such as 16`],
    [0, `denominator: got 0; ${WHOLE}`],
    [1, `denominator: got 1; ${WHOLE}`],
    [-16, `denominator: got -16; ${WHOLE}`],
    [16.5, `denominator: got 16.5; ${WHOLE}`],
    [65, `denominator: got 65; ${WHOLE}`],
    [1e9, `denominator: got 1000000000; ${WHOLE}`],
  ])("denominator %p is refused", async (denominator, message) => {
    expect(await refusal("FRACTION", 263.525, denominator)).toBe(`#VALUE! ${message}`);
  });

  test("a length that cannot be read is told as length", async () => {
    expect(await refusal("FRACTION", "tall", 16)).toBe(`#VALUE! length: got "tall"; ${LENGTH}`);
    expect(await refusal("FRACTION", -3, 16)).toBe(
      "#VALUE! length: got -3; give a length above zero such as 40, 40 mm or 1 9/16 in",
    );
  });
});
