import type { Argument } from "../runtime/marshal";
import { cell, ITEM, refusal } from "./cell";

type Cell = string | number | boolean | { readonly error: string };

const HEADINGS = [
  ...["stock", "material", "caliper", "sheet length", "sheet width", "grain", "price", "pack", "mass"],
  "modulus along",
];
const GOOD: readonly Cell[] = ["grey", "board", 2, 1000, 700, "fixed", 3, 1, 1290, 2.4];

const CALIPER = "give a length such as 2, 2 mm or 80 pt";
const LENGTH = "give a length such as 40, 40 mm or 1 9/16 in";
const NUMBER = "give a number, zero or more";
const MATERIAL = "give board, card, covering, lining, cushion or closure";
const LIMITS = "give a caliper from 0.3 to 10 mm, such as 2, 2 mm or 80 pt";

const told = (table: Argument): Promise<string> => refusal("INSIDE", ...ITEM, "tray", "all", table);

/** The third row of a table, with one cell wrong. */
describe("a row with a cell of the wrong type names the row and the heading", () => {
  test.each([
    ["stock", "", "a blank; give each stock a name without ; and ="],
    ["material", "", `a blank; ${MATERIAL}`],
    ["material", "bord", `"bord"; ${MATERIAL}; did you mean board or card?`],
    ["material", "paper", `"paper"; ${MATERIAL}`],
    ["material", 5, `"5"; ${MATERIAL}`],
    ["caliper", "thick", `"thick"; ${CALIPER}`],
    ["caliper", -2, "-2; give a length above zero such as 2, 2 mm or 80 pt"],
    ["caliper", "", `a blank; ${LIMITS}`],
    ["caliper", 0.1, `0.1 mm; ${LIMITS}`],
    ["caliper", 80, `80 mm; ${LIMITS}`],
    ["caliper", 45234, "45234; a plain number above 5 m is refused; may be a date: type '3/8 in"],
    ["caliper", true, `TRUE; ${CALIPER}`],
    ["sheet length", "long", `"long"; ${LENGTH}`],
    ["sheet length", "80 pt", `"80 pt"; ${LENGTH}; pt is read for calipers only`],
    ["sheet width", -700, "-700; give a length above zero such as 40, 40 mm or 1 9/16 in"],
    [
      "sheet width",
      1e9,
      "1000000000; a plain number above 5 m is refused; write its unit, such as 5.2 m, if it is meant",
    ],
    ["grain", "long", '"long"; give fixed or free'],
    ["grain", 3, '"3"; give fixed or free'],
    ["price", "free", `"free"; ${NUMBER}`],
    ["price", -3, `-3; ${NUMBER}`],
    ["price", "1,234", `"1,234"; ${NUMBER}`],
    ["price", "0x10", `"0x10"; ${NUMBER}`],
    ["price", { error: "#N/A" }, "the error #N/A; mend that cell, or clear it"],
    ["pack", 2.5, "2.5; give a whole number of sheets, 1 or more"],
    ["pack", "ten", `"ten"; ${NUMBER}`],
    ["mass", "1290 g", `"1290 g"; ${NUMBER}`],
    ["mass", 1e10, "10000000000; give a number of at most 1000000000"],
    ["modulus along", 2e6, "2000000; give a number of GPa from 0.001 to 1000"],
    ["modulus along", "stiff", `"stiff"; ${NUMBER}`],
    ["stock", { error: "#REF!" }, "the error #REF!; mend that cell, or clear it"],
  ] as readonly (readonly [string, Cell, string])[])("%s: %p", async (heading, wrong, message) => {
    const row = GOOD.map((value, column) => (HEADINGS[column] === heading ? wrong : value));
    const at = `#VALUE! stock table row 3, ${heading}: got ${message}`;
    expect(await told([HEADINGS, ["other", "card", 0.4, 1000, 700, "", "", "", "", ""], row])).toBe(at);
  });
});

describe("a table as a whole", () => {
  test("rows are counted as the user sees them, blank ones too", async () => {
    expect(
      await told([
        ["stock", "material", "caliper"],
        ["", "", ""],
        ["grey", "board", "thick"],
      ]),
    ).toBe(`#VALUE! stock table row 3, caliper: got "thick"; ${CALIPER}`);
  });

  test("headings alone", async () => {
    expect(await told([["stock", "material", "caliper"]])).toBe(
      "#VALUE! stock table: got headings without rows; give at least one stock row",
    );
    expect(
      await told([
        ["stock", "material", "caliper"],
        ["", 0, ""],
      ]),
    ).toBe("#VALUE! stock table: got headings without rows; give at least one stock row");
  });

  test("a heading whose unit is none", async () => {
    const heading = (caliper: string, sheet: string) =>
      told([
        ["stock", "material", caliper, sheet],
        ["a", "board", 2, 3],
      ]);
    const units = "give mm, cm, m, in or ft (pt for a caliper)";
    expect(await heading("caliper (gsm)", "sheet length")).toBe(
      `#VALUE! stock table heading caliper: got "gsm"; ${units}`,
    );
    expect(await heading("caliper", "sheet length (pt)")).toBe(
      `#VALUE! stock table heading sheet length: got "pt"; ${units}`,
    );
  });

  test("rows of one name that differ", async () => {
    expect(
      await told([
        ["stock", "material", "caliper"],
        ["grey", "board", 2],
        ["Grey", "board", 2.5],
      ]),
    ).toBe(
      "#VALUE! stock Grey: got rows that differ in material or caliper; " +
        "give rows of one name one material and one caliper (they are its sheet sizes); or give each its own name",
    );
  });

  test("without its headings it is told how to be given", async () => {
    expect(
      await told([
        ["grey", "board", 2],
        ["card", "card", 0.4],
      ]),
    ).toBe(
      "#VALUE! settings: got a range of 3 columns without headings that are known; give two columns, or columns " +
        "headed setting and value; or a stock table with its heading row, such as Stock[#All]",
    );
  });

  test("in a row's problem the same words", async () => {
    expect(
      await cell("PROBLEM", ...ITEM, "tray", [
        ["stock", "material"],
        ["grey", "bord"],
      ]),
    ).toBe(`stock table row 2, material: got "bord"; ${MATERIAL}; did you mean board or card?`);
  });
});
