import fc from "fast-check";
import { cautionsOf } from "../../src/board/cautions";
import { KINDS } from "../../src/enclosure/registry";
import { settingsOf } from "../../src/settings/settingsOf";
import { sizeRow } from "../../src/item/sizeItem";
import { EVERY_STRUCTURE } from "../enclosure/everyEnclosure";
import { sized } from "./itemLoads";

interface Row {
  readonly kind?: string;
  readonly hwd?: readonly [number | string, number, number];
  readonly kg?: number | string;
  readonly text?: string;
  readonly stock?: readonly (readonly (string | number)[])[];
  readonly hazard?: string;
}

/** What is said of a small book of 300 g in a tray, changed by what a row gives. */
function said({
  kind = "tray",
  hwd = [150, 100, 30],
  kg = 0.3,
  text = "",
  stock,
  hazard = "",
}: Row = {}): readonly string[] {
  const settings = settingsOf([...(stock === undefined ? [] : [stock]), ...(text === "" ? [] : [text])]);
  const [height, width, depth] = hwd;
  const row = sizeRow({ height, width, depth, weight: kg, enclosure: kind }, settings)!;
  return cautionsOf({ ...row, hazard, heightAsTyped: typeof height === "string" ? height : "" }, row.settings);
}

test("nothing is said of an ordinary small book, in any kind whose base has no bare free edge", () => {
  for (const { name } of KINDS) {
    const { base } = sized([150, 100, 30], name).assembly;
    if (base?.freeSpine !== true || base.gluedTo !== undefined)
      expect([name, said({ kind: name })]).toEqual([name, []]);
  }
  for (const kind of ["slipcase", "tray"]) expect(said({ kind, kg: "" })).toEqual([]);
});

const TWO = "two people or a trolley; local rules first";
const STOCK = ["stock", "material", "caliper", "sheet length", "sheet width"] as const;

describe("one caution each, in these words", () => {
  test.each<[string, Row, string]>([
    ["a hazard", { hazard: "arsenic green" }, "hazard (arsenic green): assess before handling; local rules"],
    // A folded tray of 27 g around it.
    ["boxed weight", { kind: "folded tray", kg: 30 }, `boxed weight 30.1 kg is over 23 kg: ${TWO}`],
    [
      "boxed weight over the shop's own limit",
      { kind: "folded tray", kg: 30, text: "lift limit=15" },
      `boxed weight 30.1 kg is over 15 kg: ${TWO}`,
    ],
    // VM at 140 cm: 1 - .003 x 65 = .805; 23 x .805 = 18.515.
    [
      "boxed weight above the shoulder",
      { kind: "folded tray", kg: 18.6, text: "above shoulder=yes" },
      `boxed weight 18.7 kg is over 18.5 kg above the shoulder: ${TWO}`,
    ],
    [
      "boxed weight in pounds",
      { kind: "folded tray", hwd: ["6 in", 4, 1], kg: 60, text: "unit=in" },
      `boxed weight 60.2 lb is over 50.7 lb: ${TWO}`,
    ],
    // 22.99 + .06: not over "23 kg" by its rounding alone.
    ["boxed weight over by little", { kind: "folded tray", kg: 22.99 }, `boxed weight 23.1 kg is over 23 kg: ${TWO}`],
    // Base 151 x 101, item 150 x 100, coverings 1, no play; in the damp base + .0906, item - .225; root of
    // .30018^2 + .50075^2 = .5838.
    [
      "a fit that closes",
      { text: "fit width=standard; fit depth=standard; fit height=none" },
      "fit may close over the year: height by up to 1 mm; loosen the fit",
    ],
    [
      "fits that close, in inches",
      { hwd: ["150 mm", 4, 1], kg: "300 g", text: "unit=in; fit=none; round to=none" },
      "fit may close over the year: height by up to 1/32 in, width by up to 1/32 in, depth by up to 1/32 in; loosen the fit",
    ],
    [
      "a base that springs",
      { hwd: [300, 210, 40], kg: 3, text: "wall board=1.5" },
      "the base springs about 3 mm when lifted: next board, or double it",
    ],
    [
      "a lid under a stack",
      { kind: "lidded box", text: "wall board=1.5; stack above=8" },
      "the top springs about 3 mm under the stack above: next board, or double it",
    ],
    [
      "a board not made for this size",
      {
        stock: [
          [...STOCK, "size limit"],
          ["thin", "board", 2, 1000, 700, 140],
          ["thick", "board", 3, 1000, 700, ""],
        ],
      },
      "thin is for items up to 140 mm",
    ],
    [
      "a piece longer than any sheet",
      { kind: "folded tray", hwd: [1100, 300, 30] },
      "longer than any sheet of conservation board 2 (join it: join=yes; or add a larger size to the stock table): blank",
    ],
    [
      "a piece that fits only against the grain",
      { kind: "four-flap wrapper", hwd: [300, 210, 40] },
      "fits folding card 0.4 only against the grain (turn it: grain free in the stock table; join it: join=yes; or add another sheet size): inner piece",
    ],
    [
      "a covering from a roll that is too narrow for laps",
      {
        text: "lining=none; covering=cloth",
        stock: [
          [...STOCK],
          ["board", "board", 2, 1000, 700],
          ["card", "card", 0.4, 1000, 700],
          ["cloth", "covering", 0.3, "", 20],
        ],
      },
      "wider than the roll of cloth (add a larger size to the stock table): wall strip, base panel",
    ],
    [
      "a covering thicker than its allowance",
      {
        text: "lining=none; covering=leather",
        stock: [
          [...STOCK],
          ["board", "board", 2, 1000, 700],
          ["card", "card", 0.4, 1000, 700],
          ["leather", "covering", 0.9, "", 1000],
        ],
      },
      "leather of 0.9 mm is thicker than the 0.5 mm that covering allowance gives a face: give covering allowance=auto",
    ],
    [
      "a joint that binds",
      { kind: "clamshell box", text: "joint=4" },
      "joint of 4 mm leaves the trays hardly clear of the spine: it may bind",
    ],
    // q + t + square + 2c + g = 2 + 2 + 3 + 1 + 1
    [
      "a turn-in that leaves board bare",
      { kind: "clamshell box", text: "turn-in=8" },
      "turn-in of 8 mm leaves board bare beside the small tray: give 9 mm or more",
    ],
    ["an estimated weight", { kg: "", text: "item density=600" }, "weight estimated from item density, not weighed"],
    [
      "a catalogue's height",
      { hwd: ["24 cm", 100, 30] },
      "height 24 cm looks like a catalogue's, rounded up to whole cm: measure it",
    ],
  ])("%s", (_, row, caution) => {
    expect(said(row)).toEqual([caution]);
  });
});

describe("what is no caution", () => {
  test.each<[string, Row]>([
    ["a weight at the limit", { kind: "four-flap wrapper", kg: 22.9 }],
    [
      "a piece against the grain that the shop lets lie either way",
      {
        kind: "four-flap wrapper",
        hwd: [300, 210, 40],
        stock: [
          [...STOCK, "grain"],
          ["board", "board", 2, 1000, 700, ""],
          ["card", "card", 0.4, 1000, 700, "free"],
        ],
      },
    ],
    [
      "a piece that only the larger of two sheets holds",
      {
        kind: "folded tray",
        hwd: [1100, 300, 30],
        text: "covering=none; lining=none",
        stock: [
          [...STOCK],
          ["board", "board", 2, 1000, 700],
          ["board", "board", 2, 1400, 1000],
          ["card", "card", 0.4, 1000, 700],
        ],
      },
    ],
    ["a base thick enough though no stock holds", { kg: 3, text: "wall board=5" }],
    [
      "bare board beside the small tray of an uncovered clamshell",
      { kind: "clamshell box", text: "turn-in=8; covering=none" },
    ],
    ["the width of a slipcase, where the book stands at the mouth", { kind: "slipcase", kg: "" }],
    ["a weight that was given beside a density", { text: "item density=600" }],
    ["a measured height, in cm or not", { hwd: ["24.0 cm", 100, 30] }],
    ["a height in whole mm", { hwd: ["240 mm", 100, 30] }],
    ["no weight at all", { kg: "" }],
  ])("%s", (_, row) => {
    expect(said(row)).toEqual([]);
  });
});

test("gravest first: hazard, weight, fit, sag, sheets, joint, turn-in, estimate, catalogue", () => {
  const all = said({
    kind: "clamshell box",
    hwd: ["96 cm", 720, 90],
    kg: "",
    text: "item density=600; fit=none; joint=4; turn-in=8",
    hazard: "mould",
  });
  const starts = [
    "hazard (mould)",
    "boxed weight",
    "fit may close over the year: height",
    "the base springs",
    "longer than any sheet of conservation board 2 (",
    "joint of 4 mm",
    "turn-in of 8 mm",
    "weight estimated",
    "height 96 cm looks like a catalogue's",
  ];
  const at = starts.map((start) => all.findIndex((caution) => caution.startsWith(start)));
  expect(at).not.toContain(-1);
  expect(at).toEqual([...at].sort((a, b) => a - b));
});

test("the limit is NIOSH's load constant where the shop has none of its own", () => {
  // NIOSH, Applications Manual for the Revised Lifting Equation, Pub. 94-110.
  expect(settingsOf([]).liftLimit).toBe(23);
});

test("in every kind, construction and option cautions are answered, each once, none empty", () => {
  const weight = fc.constantFrom(undefined, 0.02, 2, 40);
  for (const { kind, text } of EVERY_STRUCTURE)
    fc.assert(
      fc.property(
        fc.integer({ min: 90, max: 900 }),
        fc.integer({ min: 90, max: 900 }),
        fc.integer({ min: 20, max: 90 }),
        weight,
        (h, w, d, kg) => {
          const row = sized([h, w, d], kind.name, kg, text);
          const cautions = cautionsOf({ ...row, hazard: "", heightAsTyped: "" }, row.settings);
          expect(new Set(cautions).size).toBe(cautions.length);
          for (const caution of cautions) expect(caution).toMatch(/^[a-z].*[a-z0-9]$/i);
          expect(cautions.some((caution) => caution.startsWith("boxed weight"))).toBe(kg === 40);
        },
      ),
      { numRuns: Math.ceil(600 / EVERY_STRUCTURE.length) },
    );
});
