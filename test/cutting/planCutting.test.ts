import { planCutting } from "../../src/cutting/planCutting";
import type { Piece, Plan, Progress } from "../../src/cutting/types";
import { verifyPlan } from "../../src/cutting/verify";
import { InputError } from "../../src/measure/errors";
import { boardJob, cutUpSheets, publishedClasses } from "../bench/cuttingClasses";
import { board, faultsOf, piece, randomJob, sheetStock } from "./jobs";

/** 100,000 are tried by soakPlans.ts. */
const RANDOM_JOBS = 120;

describe("a plan for sheets", () => {
  const cases: readonly (readonly [string, readonly Piece[], number, number])[] = [
    ["two halves go on one sheet", [piece(50, 100, { count: 2 })], 1, 1],
    ["four quarters go on one sheet", [piece(50, 50, { count: 4 })], 1, 1],
    ["three pieces longer than half the sheet take three", [piece(51, 51, { count: 3 })], 3, 3],
    ["a piece as large as the sheet takes it whole", [piece(100, 100)], 1, 1],
    ["nine thirds go on one sheet, a tenth takes another", [piece(33.3, 33.3, { count: 10 })], 2, 2],
    ["no pieces take no sheet", [], 0, 0],
    ["a piece asked for no times takes no sheet", [piece(10, 10, { count: 0 })], 0, 0],
  ];
  it.each(cases)("%s", (_, pieces, sheets, bound) => {
    const stock = sheetStock(board(100, 100));
    const plan = planCutting(pieces, stock);
    expect(plan.sheets).toHaveLength(sheets);
    expect(plan.sheetBound).toBe(bound);
    expect(plan.provedLeast).toBe(true);
    expect(verifyPlan(plan, pieces, stock)).toEqual([]);
  });

  it("keeps the grain unless the piece may turn", () => {
    const stock = sheetStock(board(100, 40));
    const fixed = planCutting([piece(40, 100)], stock);
    expect(fixed.uncuttable).toEqual([{ piece: piece(40, 100), count: 1, reason: "fits only against the grain" }]);
    const free = planCutting([piece(40, 100, { turn: true })], stock);
    expect(free.sheets[0]?.placements[0]).toMatchObject({ x: 0, y: 0, length: 100, width: 40, turned: true });
  });

  it("leaves the trim all round and the gap between pieces", () => {
    const options = { edgeTrim: 5, pieceGap: 2 };
    const four = [piece(44, 44, { count: 4 })];
    const stock = sheetStock(board(100, 100));
    const plan = planCutting(four, stock, options);
    expect(plan.sheets).toHaveLength(1);
    expect(plan.sheets[0]?.placements.map(({ x, y }) => [x, y]).sort()).toEqual([
      [5, 5],
      [5, 51],
      [51, 5],
      [51, 51],
    ]);
    expect(planCutting([piece(44.1, 44, { count: 4 })], stock, options).sheets).toHaveLength(2);
  });

  it("takes off-cuts in hand before it buys", () => {
    const stock = sheetStock(board(100, 100), board(60, 60, { name: "off-cut", price: 0, onHand: 2 }));
    const pieces = [piece(55, 55, { count: 3 })];
    const plan = planCutting(pieces, stock);
    expect(plan.counts.map(({ stock: name, sheets, cost }) => [name, sheets, cost])).toEqual([
      ["board", 1, 1],
      ["off-cut", 2, 0],
    ]);
    expect(plan.provedLeast).toBe(true);
    expect(verifyPlan(plan, pieces, stock)).toEqual([]);
  });

  it("chooses the cheapest mix of sizes", () => {
    const stock = sheetStock(
      board(100, 100, { name: "large", price: 10 }),
      board(50, 100, { name: "small", price: 6 }),
    );
    const plan = planCutting([piece(50, 100, { count: 5 })], stock);
    expect(plan.counts.map(({ sheets }) => sheets)).toEqual([2, 1]);
    expect(plan.cost).toBe(26);
  });

  it("lists by item and part what no sheet is left for", () => {
    const stock = sheetStock(board(100, 100, { onHand: 1 }));
    const pieces = [piece(60, 60, { item: "album 7", part: "lid", count: 3 })];
    const plan = planCutting(pieces, stock);
    expect(plan.uncuttable).toEqual([{ piece: pieces[0], count: 2, reason: "no sheet left" }]);
    expect(plan.provedLeast).toBe(false);
    expect(verifyPlan(plan, pieces, stock)).toEqual([]);
  });

  it("looks for the fewest sheets when they are free", () => {
    const plan = planCutting([piece(50, 50, { count: 8 })], sheetStock(board(100, 100, { price: 0 })));
    expect([plan.sheets.length, plan.cost, plan.provedLeast]).toEqual([2, 0, true]);
  });

  it("cuts 5,000 equal pieces from as few sheets as rows and columns allow", () => {
    const plan = planCutting([piece(150, 130, { count: 5000 })], sheetStock(board(1400, 1000)));
    // 9 along, 7 across: 63 a sheet.
    expect([plan.sheets.length, plan.provedLeast]).toEqual([Math.ceil(5000 / 63), true]);
    expect(new Set(plan.sheets.map(({ layout }) => layout)).size).toBeLessThanOrEqual(2);
  });

  it("fills sheets one by one when there are many pieces, to within 8 % of the bound", () => {
    const { pieces: many, sheet } = boardJob(400, 2);
    const own = many.map(({ length, width }, index) => piece(length, width, { turn: index % 5 === 0 }));
    const stock = sheetStock(board(sheet.length, sheet.width));
    const plan = planCutting(own, stock, { budget: { iterations: 100 } });
    expect(verifyPlan(plan, own, stock)).toEqual([]);
    expect(plan.sheets.length / plan.sheetBound).toBeLessThan(1.08);
  });

  it("counts packs", () => {
    const plan = planCutting([piece(100, 100, { count: 11 })], sheetStock(board(100, 100, { pack: 5 })));
    expect(plan.counts).toEqual([{ stock: "board", sheets: 11, packs: 3, cost: 11 }]);
  });

  it("takes a size in tenths that binary fractions miss as what it is", () => {
    const plan = planCutting([piece(0.1 + 0.2, 10, { count: 10 })], sheetStock(board(3, 10)));
    expect(plan.sheets).toHaveLength(1);
  });
});

describe("a plan for a roll", () => {
  it("lays pieces side by side and takes the least length", () => {
    const roll = { name: "cloth", width: 1000, pricePerM: 20 };
    const pieces = [piece(300, 500, { count: 4 })];
    const plan = planCutting(pieces, { kind: "roll", roll });
    expect([plan.rollLength, plan.rollBound, plan.cost, plan.provedLeast]).toEqual([600, 600, 12, true]);
    expect(verifyPlan(plan, pieces, { kind: "roll", roll })).toEqual([]);
  });

  it("lists what is wider than the roll", () => {
    const plan = planCutting([piece(10, 20)], { kind: "roll", roll: { name: "cloth", width: 15, pricePerM: 1 } });
    expect(plan.uncuttable).toHaveLength(1);
    expect([plan.sheets.length, plan.rollLength]).toEqual([0, 0]);
  });

  it("comes within 8 % of the bound for sixty mixed pieces", () => {
    const { pieces } = boardJob(60, 3);
    const roll = { name: "cloth", width: 1000, pricePerM: 1 };
    const asked = pieces.map(({ length, width }) => piece(length, width));
    const plan = planCutting(asked, { kind: "roll", roll }, { budget: { iterations: 6000 } });
    expect(plan.rollLength / plan.rollBound).toBeLessThan(1.08);
  });
});

describe("the search", () => {
  const { sheet, pieces } = boardJob(60, 5);
  const asked = pieces.map(({ length, width }) => piece(length, width));
  const stock = sheetStock(board(sheet.length, sheet.width));

  it("gives the same plan for the same seed and iterations", () => {
    const options = { seed: 9, budget: { iterations: 1500 } };
    expect(planCutting(asked, stock, options)).toEqual(planCutting(asked, stock, options));
  });

  it("reports progress that never gets worse, and stops when told to", () => {
    const reports: Progress[] = [];
    const onProgress = (progress: Progress) => reports.push(progress);
    const plan = planCutting(asked, stock, { budget: { milliseconds: 60_000 }, onProgress, shouldStop: () => true });
    expect(reports.length).toBeGreaterThan(0);
    expect(reports.every(({ cost }, index) => index === 0 || cost < reports[index - 1]!.cost)).toBe(true);
    expect(plan.sheets).toHaveLength(reports[reports.length - 1]!.sheets);
    expect(plan.iterations).toBeLessThan(20);
  });

  it("finds the plan again of up to 20 sheets cut up at random, and proves none falsely", () => {
    const missed = Array.from({ length: 20 }, (_, index) => index + 1).filter((sheets) => {
      const instance = cutUpSheets(sheets, 1400, 3 + (sheets % 6), 40 + sheets);
      const own = instance.pieces.map(({ length, width }) => piece(length, width));
      const sheet = sheetStock(board(1400, 1400));
      const plan = planCutting(own, sheet, { budget: { iterations: 500 } });
      expect(verifyPlan(plan, own, sheet)).toEqual([]);
      expect(plan.sheetBound).toBeLessThanOrEqual(sheets);
      expect(plan.sheets.length).toBeGreaterThanOrEqual(sheets);
      return !plan.provedLeast;
    });
    expect(missed.length).toBeLessThanOrEqual(1);
  });

  it("stays within 2 % of the bound over the published classes", () => {
    const everyOther = publishedClasses(1, 7).filter(({ pieces: own }, index) => index % 2 === 0 && own.length <= 60);
    const plans = everyOther.map((instance) => {
      const own = instance.pieces.map(({ length, width }) => piece(length, width));
      const sheet = sheetStock(board(instance.sheet.length, instance.sheet.width));
      return planCutting(own, sheet, { budget: { iterations: 10_000 } });
    });
    const total = (value: (plan: Plan) => number) => plans.reduce((sum, plan) => sum + value(plan), 0);
    expect(total((plan) => plan.sheets.length) / total((plan) => plan.sheetBound)).toBeLessThan(1.02);
  });

  it("makes plans of random jobs that all pass the verifier", () => {
    for (let seed = 1; seed <= RANDOM_JOBS; seed++) {
      const faults = faultsOf(randomJob(seed));
      if (faults.length > 0) throw new Error(`job ${seed}: ${faults.join("; ")}`);
    }
  });
});

describe("what cannot be used", () => {
  it.each([
    ["a length of 0", [piece(0, 10)], sheetStock(board(100, 100)), {}, /length of item 1 wall: got 0/],
    ["a width that is no number", [piece(10, NaN)], sheetStock(board(100, 100)), {}, /width of item 1 wall: got NaN/],
    ["half a piece", [piece(10, 10, { count: 0.5 })], sheetStock(board(100, 100)), {}, /count of item 1 wall: got 0.5/],
    ["a negative price", [piece(10, 10)], sheetStock(board(100, 100, { price: -1 })), {}, /price of board: got -1/],
    ["no sheets", [piece(10, 10)], sheetStock(), {}, /sheets: got none/],
    ["a negative trim", [piece(10, 10)], sheetStock(board(100, 100)), { edgeTrim: -1 }, /edge trim: got -1/],
  ] as const)("%s is refused by name", (_, pieces, stock, options, message) => {
    expect(() => planCutting(pieces, stock, options)).toThrow(InputError);
    expect(() => planCutting(pieces, stock, options)).toThrow(message);
  });

  it("a trim wider than the sheet leaves everything uncuttable", () => {
    expect(planCutting([piece(1, 1)], sheetStock(board(100, 100)), { edgeTrim: 50 }).uncuttable).toHaveLength(1);
  });
});
