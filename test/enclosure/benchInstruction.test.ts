import { benchInstruction } from "../../src/enclosure/benchInstruction";
import { boardParts } from "../../src/enclosure/part";
import { benchInstructionsLead } from "../suites/benchInstructionsLead";
import { EVERY_STRUCTURE } from "./everyEnclosure";
import { book, enclosed } from "./sizing";

const instructionsFor = (kind: string, text: string): Readonly<Record<string, string>> => {
  const assembly = enclosed(book(300, 210, 40), kind, text);
  return Object.fromEntries(
    boardParts(assembly).map((part) => [part.fullName, benchInstruction(part, assembly, "mm")]),
  );
};

describe("how to cut each part of the worked example", () => {
  test.each([
    [
      "tray",
      "construction=on base",
      {
        base: "inside 303 x 213; add 2 boards each way",
        "side wall": "match the base; height: inside depth 42.5",
        "head wall": "inside width 213; height: match the side wall",
      },
    ],
    [
      "tray",
      "construction=around base; through=head",
      {
        base: "inside 303 x 213",
        "side wall": "match the base; height: inside depth 42.5; add 1 board",
        "head wall": "match the base; add 2 boards; height: match the side wall",
      },
    ],
    [
      "tray",
      "base board=3; end cards=yes",
      {
        base: "inside 303 x 213",
        "side wall": "match the base; add 2 boards; height: inside depth 42.5; add 1 base board",
        "head wall": "match the base; height: match the side wall",
        "flange card":
          "length: match the side wall; width: match the base; add 2 boards; " +
          "cut over on every edge, glue on, trim flush to 307 x 217",
        "end card":
          "length: match the flange card; width: match the side wall; add 1 card; " +
          "cut over on every edge, glue on, trim flush to 217 x 46",
      },
    ],
    [
      "tray",
      "construction=around base; wall layers=2",
      {
        base: "inside 303 x 213; add 2 boards each way",
        "inner side wall": "match the base; height: inside depth 42.5",
        "inner head wall": "inside width 213; height: match the inner side wall",
        "outer side wall": "match the base; height: match the inner side wall; add 1 board",
        "outer head wall": "match the base; add 2 boards; height: match the outer side wall",
      },
    ],
    [
      "slipcase",
      "",
      {
        // Open at the spine: a board is added at the back alone.
        side: "length: inside height 302; add 2 boards; width: inside width 210.5; add 1 board",
        "back wall": "match the side; height: inside depth 42",
        "head wall": "inside width 210.5; height: match the back wall",
      },
    ],
    [
      "clamshell box",
      "",
      {
        "small base": "inside 303 x 213",
        "small fore-edge wall": "match the base; height: inside depth 42.5; add 1 board",
        "small head wall": "match the base; add 1 board; height: match the fore-edge wall",
        "large base": "inside 310 x 217",
        "large fore-edge wall": "match the base; height: inside depth 46.5; add 1 board",
        "large head wall": "match the base; add 1 board; height: match the fore-edge wall",
        "case board": "cut to size",
        "case spine": "length: match the case board; width: cut to size",
      },
    ],
    [
      "folded tray",
      "",
      {
        blank: "cut part-way through at the folds, on the outside; cut away the corners, 40.5 along the length by 42.5",
        "joint strip": "",
      },
    ],
    [
      "folded tray",
      "fold=crease",
      // Inside width 217: creased 217 - 2 apart; tabs a turn-in long.
      { blank: "crease at the folds; leave tabs 15 long and 42.5 high on the head walls, creased 215 apart" },
    ],
    ["four-flap wrapper", "", { "inner piece": "crease at the folds", "outer piece": "crease at the folds" }],
  ])("%s, %s", (kind, text, wanted) => {
    expect(instructionsFor(kind, text)).toEqual(wanted);
  });

  test("in inches, in fractions of the rule", () => {
    const assembly = enclosed({ height: 304.8, width: 209.55, depth: 38.1 }, "tray", "unit=in; wall board=80 pt");
    const [base, side] = boardParts(assembly);
    expect(benchInstruction(base!, assembly, "in")).toBe("inside 12 1/8 x 8 3/8");
    expect(benchInstruction(side!, assembly, "in")).toBe(
      "match the base; add 2 boards; height: inside depth 1 5/8; add 1 board",
    );
  });
});

benchInstructionsLead(EVERY_STRUCTURE);
