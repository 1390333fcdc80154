import { kindWords } from "../enclosure/kindWords";
import { cell, ITEM, ITEM_FUNCTIONS, refusal } from "./cell";

const LENGTH = "give a length such as 40, 40 mm or 1 9/16 in";
const ABOVE_ZERO = "give a length above zero such as 40, 40 mm or 1 9/16 in";
const TOO_GREAT = "a plain number above 5 m is refused; write its unit, such as 5.2 m, if it is meant";
const DATE = "a plain number above 5 m is refused; may be a date: type '3/8 in";

/** What is wrong, the cell, and what its message says after the argument's name. */
const WRONG_MEASURES = [
  ["missing", undefined, `got a blank; ${LENGTH}`],
  ["empty text", "", `got a blank; ${LENGTH}`],
  ["zero", 0, `got 0; ${ABOVE_ZERO}`],
  ["zero as text", "0 mm", `got "0 mm"; ${ABOVE_ZERO}`],
  ["none, which a measure cannot be", "none", `got "none"; ${LENGTH}`],
  ["text", "tall", `got "tall"; ${LENGTH}`],
  ["the letter O for a zero", "4O mm", `got "4O mm"; ${LENGTH}`],
  ["not a number, as text", "NaN", `got "NaN"; ${LENGTH}`],
  ["scientific text", "1e2", `got "1e2"; ${LENGTH}`],
  ["hexadecimal text", "0x20", `got "0x20"; ${LENGTH}`],
  ["negative", -3, `got -3; ${ABOVE_ZERO}`],
  ["negative text", "-3 mm", `got "-3 mm"; ${ABOVE_ZERO}`],
  ["1e9", 1e9, `got 1000000000; ${TOO_GREAT}`],
  ["just above 5 m", 5000.5, `got 5000.5; ${TOO_GREAT}`],
  ["above 20 m, said with its unit", "21 m", `got "21 m"; give a length of at most 20 m`],
  ["a date that Excel made of 3/8", 45234, `got 45234; ${DATE}`],
  ["the same as text", "45234", `got "45234"; ${DATE}`],
  ["a weight", "2 kg", `got "2 kg"; ${LENGTH}`],
  ["a unit that lengths lack", "3 m2", `got "3 m2"; ${LENGTH}`],
  ["points, for calipers only", "80 pt", `got "80 pt"; ${LENGTH}; pt is read for calipers only`],
  [
    "a comma before three figures",
    "1,234",
    `got "1,234"; a comma before three figures may mean thousands or decimals; write 1234 or 1.234`,
  ],
  [
    "eighths of a millimetre",
    "10 3/8 mm",
    `got "10 3/8 mm"; ${LENGTH}; fractions other than halves and quarters are read in inches only`,
  ],
  ["all three measures in one cell", "300 x 210 x 40", `got "300 x 210 x 40"; ${LENGTH}`],
  ["the enclosure, in the wrong order", "slipcase", `got "slipcase"; ${LENGTH}`],
  ["settings in its place", "unit=in", `got "unit=in"; ${LENGTH}`],
  ["TRUE", true, `got TRUE; ${LENGTH}`],
  ["FALSE", false, `got FALSE; ${LENGTH}`],
  ["an error", { error: "#N/A" }, `got "#N/A"; ${LENGTH}`],
  ["another error", { error: "#REF!" }, `got "#REF!"; ${LENGTH}`],
  [
    "a long note, of which the beginning is shown",
    "see the box file of 1987, second shelf, left",
    `got "see the box file of 1987, second shelf,…"; ${LENGTH}`,
  ],
] as const;

describe.each(["height", "width", "depth"] as const)("%s", (argument) => {
  test.each(WRONG_MEASURES)("%s", async (_what, wrong, message) => {
    const [height, width, depth] = ["height", "width", "depth"].map((each, index) =>
      each === argument ? wrong : ITEM[index],
    );
    const told = `${argument}: ${message}`;
    expect(await refusal("INSIDE", height, width, depth, "tray", "all")).toBe(`#VALUE! ${told}`);
    expect(await cell("PROBLEM", height, width, depth, "tray")).toBe(told);
  });
});

test("in an inch workbook the examples are inches", async () => {
  expect(await refusal("INSIDE", "tall", 8, 2, "tray", "all", "unit=in")).toBe(
    '#VALUE! height: got "tall"; give a length such as 10 3/8, 10 3/8 in or 264 mm',
  );
  expect(await refusal("INSIDE", 200, 8, 2, "tray", "all", "unit=in")).toBe(`#VALUE! height: got 200; ${TOO_GREAT}`);
});

test("in a workbook in cm they are cm", async () => {
  expect(await refusal("INSIDE", 30, 21, -4, "tray", "all", "unit=cm")).toBe(
    "#VALUE! depth: got -4; give a length above zero such as 4, 40 mm or 1 9/16 in",
  );
});

const KINDS = `give ${kindWords()}`;

const WRONG_ENCLOSURES = [
  ["blank", "", `enclosure: got a blank; ${KINDS}`],
  ["missing", undefined, `enclosure: got a blank; ${KINDS}`],
  ["a blank cell that arrives as 0", 0, `enclosure: got a blank; ${KINDS}`],
  ["unknown", "coffin", `enclosure: got "coffin"; ${KINDS}`],
  ["misspelt", "clamshel box", `enclosure: got "clamshel box"; ${KINDS}; did you mean clamshell box?`],
  ["misspelt, short", "tary", `enclosure: got "tary"; ${KINDS}; did you mean tray?`],
  [
    "a word that several kinds share",
    "box",
    `enclosure: got "box"; ${KINDS}; did you mean lidded box, two-tray box or box and lid?`,
  ],
  ["a number", 5, `enclosure: got 5; ${KINDS}`],
  ["a measure, in the wrong order", "40 mm", `enclosure: got "40 mm"; ${KINDS}`],
  ["TRUE", true, `enclosure: got TRUE; ${KINDS}`],
  ["settings", "enclosure=tray", `enclosure: got "enclosure=tray"; ${KINDS}`],
  ["an error", { error: "#VALUE!" }, `enclosure: got "#VALUE!"; ${KINDS}`],
] as const;

describe("enclosure", () => {
  test.each(WRONG_ENCLOSURES)("%s", async (what, wrong, message) => {
    expect(await refusal("INSIDE", ...ITEM, wrong, "all")).toBe(`#VALUE! ${message}`);
    const isBlank = ["blank", "missing", "a blank cell that arrives as 0"].includes(what);
    expect(await cell("PROBLEM", ...ITEM, wrong)).toBe(isBlank ? "enclosure not chosen" : message);
  });
});

describe("every function refuses a bad row in the same words", () => {
  test.each(ITEM_FUNCTIONS)("%s", async (id, ...selectors) => {
    expect(await refusal(id, "tall", 210, 40, "tray", ...selectors)).toBe(`#VALUE! height: got "tall"; ${LENGTH}`);
    expect(await refusal(id, 300, -210, 40, "tray", ...selectors)).toBe(`#VALUE! width: got -210; ${ABOVE_ZERO}`);
    expect(await refusal(id, 300, 210, 45234, "tray", ...selectors)).toBe(`#VALUE! depth: got 45234; ${DATE}`);
    expect(await refusal(id, ...ITEM, "tary", ...selectors)).toBe(
      `#VALUE! enclosure: got "tary"; ${KINDS}; did you mean tray?`,
    );
    expect(await refusal(id, ...ITEM, "tray", ...selectors, "fit=lose")).toMatch(/^#VALUE! fit: got "lose"; give /);
  });
});

describe("an item that leaves no room for a part names the setting", () => {
  test.each([
    [
      [300, 210, 1],
      "folded tray",
      "fit=none; wall board=3",
      "depth: got 1 mm; give an item whose walls are at least one board high (3 mm); or set fold=crease",
    ],
    [ITEM, "lidded box", "lid reveal=50", "lid reveal: got 50 mm; give less than 45.4 mm, the height of this box"],
    [
      ITEM,
      "lidded box",
      "lid depth=50",
      "lid depth: got 50 mm; give full, or a length above 0 up to 45.4 mm, the height of this box",
    ],
    [ITEM, "three-tray box", "neck=46", "neck: got 46 mm; give auto, or a length above 0 and less than 44.9 mm"],
    [
      ITEM,
      "clamshell box",
      "joint=2",
      "joint: got 2 mm; give auto, or 3.61 mm or more; a narrower joint lets the trays strike the spine",
    ],
    [
      [300, 3, 2],
      "four-flap wrapper",
      "fit=none",
      "flap relief: got 3 mm; give none, or less than 3 mm, the shorter side of the panel",
    ],
    [
      [300, 3, 2],
      "four-flap wrapper",
      "fit=none; wrapper card=2; flap relief=none",
      "flaps: got 1 / 0.5; give fractions whose flaps are longer than 3 mm; " +
        "or choose another enclosure for an item so narrow",
    ],
  ] as const)("%j, %s, %s", async ([height, width, depth], enclosure, settings, message) => {
    expect(await refusal("OUTSIDE", height, width, depth, enclosure, "all", settings)).toBe(`#VALUE! ${message}`);
    expect(await cell("PROBLEM", height, width, depth, enclosure, settings)).toBe(message);
  });
});
