import { planCutting } from "../../src/cutting/planCutting";
import { sheetLabels } from "../../src/cutting/sheetLabels";
import type { Plan } from "../../src/cutting/types";
import { verifyPlan } from "../../src/cutting/verify";
import { board, piece, sheetStock } from "./jobs";

const BENCH = { stages: 3, leastWaste: 5, matchAllowance: 0, spareSheets: 0, benchLength: 1500, batchSize: 1 };

// Sheets of 400 x 300. The first item takes half of one, the second what is left, the third a corner of that.
const PIECES = [
  piece(200, 300, { item: "A", batch: 1 }),
  piece(200, 90, { item: "B", batch: 2 }),
  piece(150, 200, { item: "C", batch: 3 }),
];
const STOCK = sheetStock(board(400, 300));

test("what a batch leaves is stock for the next: one sheet is bought, and its off-cuts are named after it", () => {
  const options = { bench: { ...BENCH, keepOffCuts: true } };
  const plan = planCutting(PIECES, STOCK, options);
  expect(verifyPlan(plan, PIECES, STOCK, options)).toEqual([]);
  expect(plan.counts).toEqual([{ stock: "board", sheets: 1, packs: 1, cost: 1 }]);
  expect(sheetLabels(plan)).toEqual(["1", "1a", "1b"]);
  expect(plan).toMatchObject({ cost: 1, sheetBound: 1, provedLeast: true });
  expect(plan.sheetAreaM2).toBeCloseTo(0.12, 9);
});

test("without off-cuts each batch begins a sheet of its own", () => {
  const options = { bench: { ...BENCH, keepOffCuts: false } };
  const plan = planCutting(PIECES, STOCK, options);
  expect(verifyPlan(plan, PIECES, STOCK, options)).toEqual([]);
  expect(plan.counts[0]!.sheets).toBe(3);
});

test("sheets in hand are in hand once, for all batches together", () => {
  const stock = sheetStock(board(400, 300, { name: "in hand", price: 0, onHand: 1 }), board(400, 300, { price: 5 }));
  const options = { bench: { ...BENCH, keepOffCuts: false } };
  const plan = planCutting(PIECES, stock, options);
  expect(verifyPlan(plan, PIECES, stock, options)).toEqual([]);
  expect(plan.counts.map(({ sheets }) => sheets)).toEqual([1, 2]);
});

describe("the verifier refuses", () => {
  const options = { bench: { ...BENCH, keepOffCuts: true } };
  const faults = (change: (plan: Plan) => Plan, given = options) =>
    verifyPlan(change(planCutting(PIECES, STOCK, options)), PIECES, STOCK, given).join("; ");
  const moved = (plan: Plan, x: number, sheet = 0) => ({
    ...plan,
    sheets: plan.sheets.map((each, at) => (at === 1 ? { ...each, offCut: { sheet, x, y: 0 } } : each)),
  });

  test.each<[string, (plan: Plan) => Plan]>([
    ["does not leave", (plan) => moved(plan, 100)],
    ["of no earlier sheet", (plan) => moved(plan, 200, 2)],
    ["of an earlier batch", (plan) => ({ ...plan, sheets: [...plan.sheets].reverse() })],
    ["used twice", (plan) => ({ ...plan, sheets: [...plan.sheets, plan.sheets[1]!] })],
  ])("an off-cut or a turn that cannot be: %s", (words, change) => {
    expect(faults(change)).toContain(words);
  });

  test("a batch of more items than are allowed, and an item in two", () => {
    const all = (batch: (index: number) => number, item: (index: number) => string) => (plan: Plan) => ({
      ...plan,
      sheets: plan.sheets.map((sheet, at) => ({
        ...sheet,
        placements: sheet.placements.map((place) => ({
          ...place,
          piece: { ...place.piece, batch: batch(at), item: item(at) },
        })),
      })),
    });
    expect(faults(all(() => 1, String))).toContain("3 items where 1 are allowed");
    expect(
      faults(
        all(
          (at) => at,
          () => "A",
        ),
      ),
    ).toContain("in more than one batch");
  });
});

test("a batch for which earlier ones left no sheet says so: its pieces are not too large, and the bound knows nothing of it", () => {
  const stock = sheetStock(board(400, 300, { onHand: 1, price: 0 }));
  const pieces = [piece(300, 300, { item: "A", batch: 1 }), piece(390, 290, { item: "B", batch: 2 })];
  const options = { bench: { ...BENCH, keepOffCuts: false } };
  const plan = planCutting(pieces, stock, options);
  expect(verifyPlan(plan, pieces, stock, options)).toEqual([]);
  expect(plan.uncuttable).toEqual([{ piece: pieces[1], count: 1, reason: "no sheet left" }]);
  expect(plan).toMatchObject({ sheetBound: 0, provedLeast: false });
});
