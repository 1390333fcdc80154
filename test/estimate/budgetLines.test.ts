import fc from "fast-check";
import { estimateFor } from "../../src/estimate/budget";
import { sharedOut } from "../../src/estimate/costShares";
import type { Estimate, Sums } from "../../src/estimate/estimate";
import { sizeSurvey } from "../../src/survey/sizeSurvey";

const HEADINGS = ["id", "height", "width", "depth", "enclosure", "quantity", "batch"];
const STOCK = [
  [
    "stock",
    "material",
    "caliper",
    "sheet length",
    "sheet width",
    "price",
    "pack",
    "supplier",
    "item number",
    "quote date",
  ],
  ["shop board", "board", 2, 1000, 700, 3, 1, "Quay Board", "QB-2", 46173],
  ["shop card", "card", 0.4, 1000, 700, 1, 5, "", "", ""],
];
const PLAIN = "wall board=shop board; flange card=shop card; covering=none; lining=none; adhesive price=none";

function budget(rows: readonly (readonly unknown[])[], ...settings: readonly unknown[]): Estimate {
  const cells = [HEADINGS, ...rows];
  return estimateFor(sizeSurvey(cells, [STOCK, PLAIN, ...settings]), cells, { budget: { iterations: 0 } });
}

const TRAYS = [["A", 300, 210, 40, "tray", 2, "May"]];

/*
 * By hand. Two trays of the usual size: 2 x 1 h and half an hour to set up, 2.5 h at 20 = 50. Board: one sheet of 3.00 holds
 * both, and 5 % for spoilt pieces is one whole sheet more: 6.00, contingency 0.60. Card comes in packs of five: 5.00 and
 * 0.50, and the spare sheet is in the pack. Materials 12.10, shipping 4: tax 20 % of 16.10 = 3.22. All that is paid: 12.10 +
 * 50 + 4 + 3.22 = 69.32, of which 10 % is 6.93. Of 76.25 the applicant pays a quarter, line by line.
 */
test("hours, spoilage, shipping, tax, indirect cost and the match are those worked by hand", () => {
  const found = budget(
    TRAYS,
    "labour rate=20; spoilage=5; shipping=4; tax=20; indirect=10; match share=25; adhesive price=none",
  );
  const of = (stock: string) => found.lines.find((line) => line.stock === stock)!;
  expect(of("shop board")).toMatchObject({ quantity: 2, spoilage: 1, leastPossible: 1, cost: 6, total: 6.6 });
  expect(of("shop board")).toMatchObject({ supplier: "Quay Board", itemNumber: "QB-2", quoteDate: "2026-05-31" });
  expect(of("shop card")).toMatchObject({ quantity: 5, spoilage: 1, pack: 5, cost: 5, total: 5.5, supplier: "" });
  expect(of("labour")).toMatchObject({ quantity: 2.5, unit: "hours", cost: 50, contingency: 0, total: 50 });
  expect(of("tax")).toMatchObject({ quantity: 20, unit: "%", total: 3.22 });
  expect(of("indirect").total).toBe(6.93);
  expect(found.total).toBe(76.25);
  expect(of("shop board")).toMatchObject({ match: 1.65, inKind: 0, requested: 4.95 });
  expect(found.hours).toEqual([
    { work: "tray", number: 2, each: 1, hours: 2, standing: "example" },
    { work: "setting up", number: 1, each: 0.5, hours: 0.5, standing: "example" },
  ]);
  expect(found.byKind).toEqual([
    { of: "tray", enclosures: 2, hours: 2.5, materials: 12.1, labour: 50, other: 14.15, total: 76.25, each: 38.13 },
  ]);
  expect(found.byBatch.map(({ of: batch, total }) => [batch, total])).toEqual([["May", 76.25]]);
});

test("labour that is not paid is in kind: no indirect cost is on it, and the match is of the rest", () => {
  const found = budget(TRAYS, "labour rate=20; labour paid=no; indirect=10; match share=50");
  const labour = found.lines.find(({ material }) => material === "labour")!;
  expect(labour).toMatchObject({ total: 50, inKind: 50, match: 0, requested: 0 });
  // Board 3.30 and card 5.50 with contingency.
  expect(found.lines.find(({ material }) => material === "indirect")!.total).toBe(0.88);
  expect([found.inKind, found.match, found.requested]).toEqual([50, 4.84, 4.84]);
});

test("an enclosure with half the board of the usual one takes half its hours, unless sizes are alike", () => {
  const small = [["A", 150, 105, 40, "tray", 1, ""]];
  const [scaled, alike] = ["", "; hours by size=no"].map((more) => budget(small, `set-up hours=none${more}`).hours[0]!);
  expect(alike!.hours).toBe(1);
  expect(scaled!.hours).toBeGreaterThan(0.25);
  expect(scaled!.hours).toBeLessThan(0.6);
  expect(budget(small, "labour hours=tray 3").hours[0]!.standing).toBe("given");
  expect(budget(small, "labour hours=none").lines.some(({ material }) => material === "labour")).toBe(false);
});

test("each kind in each batch is set up once", () => {
  const rows = [
    ["A", 300, 210, 40, "tray", 1, "May"],
    ["B", 300, 210, 40, "tray", 3, "May"],
    ["C", 300, 210, 40, "tray", 1, "June"],
    ["D", 300, 210, 40, "slipcase", 1, "June"],
  ];
  expect(budget(rows).hours.at(-1)).toEqual({
    work: "setting up",
    number: 3,
    each: 0.5,
    hours: 1.5,
    standing: "example",
  });
});

test("whoever pays, lines, shares by kind and shares by batch add up to the same budget", () => {
  const kinds = fc.constantFrom("tray", "slipcase", "lidded box", "clamshell box");
  const row = fc.tuple(
    fc.integer({ min: 80, max: 300 }),
    kinds,
    fc.integer({ min: 1, max: 3 }),
    fc.constantFrom("1", "2", ""),
  );
  const percent = fc.integer({ min: 0, max: 60 });
  fc.assert(
    fc.property(
      fc.array(row, { minLength: 1, maxLength: 4 }),
      fc.record({
        tax: percent,
        indirect: percent,
        match: percent,
        spoilage: percent,
        rate: percent,
        shipping: percent,
      }),
      fc.boolean(),
      fc.constantFrom("material", "kind", "batch"),
      (rows, { tax, indirect, match, spoilage, rate, shipping }, paid, by) => {
        const found = budget(
          rows.map(([size, kind, quantity, batch], at) => [`A ${at}`, size, size, 30, kind, quantity, batch]),
          `tax=${tax}; indirect=${indirect}; match share=${match}; spoilage=${spoilage}; labour rate=${rate || "none"}`,
          `shipping=${shipping || "none"}; labour paid=${paid ? "yes" : "no"}; estimate by=${by}`,
        );
        const sum = (all: readonly number[]) => all.reduce((total, each) => total + each, 0);
        for (const key of ["cost", "contingency", "total", "match", "inKind", "requested"] satisfies (keyof Sums)[])
          expect(sum(found.lines.map((line) => line[key]))).toBeCloseTo(found[key], 6);
        for (const line of found.lines) expect(line.match + line.inKind + line.requested).toBeCloseTo(line.total, 6);
        expect(found.match + found.inKind + found.requested).toBeCloseTo(found.total, 6);
        for (const shares of [found.byKind, found.byBatch]) {
          if (shares.length === 0) continue;
          expect(sum(shares.map(({ total }) => total))).toBeCloseTo(found.total, 6);
          expect(sum(shares.map(({ enclosures }) => enclosures))).toBe(sum(rows.map(([, , quantity]) => quantity)));
        }
        const labour = found.lines.filter(({ material }) => material === "labour");
        expect(sum(found.hours.map(({ hours }) => hours))).toBeCloseTo(sum(labour.map(({ quantity }) => quantity)), 6);
      },
    ),
    { numRuns: 12 },
  );
});

test("an amount shared out by weight is shared out whole", () => {
  expect(sharedOut(10, [1, 1, 1])).toEqual([3.34, 3.33, 3.33]);
  expect(sharedOut(0.01, [1, 2])).toEqual([0, 0.01]);
  expect(sharedOut(5, [0, 0])).toEqual([0, 0]);
});
