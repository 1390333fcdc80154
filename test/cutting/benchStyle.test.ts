import { countPlan } from "../../src/cutting/countPlan";
import { planCutting } from "../../src/cutting/planCutting";
import type { BenchStyle, Piece } from "../../src/cutting/types";
import { verifyPlan } from "../../src/cutting/verify";
import { createRandom } from "../../src/cutting/random";
import { board, faultsOf, piece, randomBenchJob, sheetStock } from "./jobs";

/** 100,000 are tried by soakPlans.ts. */
const RANDOM_JOBS = 60;

const BENCH: BenchStyle = { stages: 3, leastWaste: 5, matchAllowance: 3, spareSheets: 0.04, benchLength: 150 };

test("pressed walls of a strip are parted by a gap as other pieces are, so that no plan passes the bound", () => {
  // Three of these filled a sheet to its last millimetre, with no gap between them.
  expect(faultsOf(randomBenchJob(312_254))).toEqual([]);
});

test("random jobs of the bench style pass the verifier, which counts their stages", () => {
  for (let seed = 1; seed <= RANDOM_JOBS; seed++) {
    const faults = faultsOf(randomBenchJob(seed));
    if (faults.length > 0) throw new Error(`job ${seed}: ${faults.join("; ")}`);
  }
});

test("a piece that no allowed cut frees is left out with its reason, and a plan of nothing proves nothing", () => {
  const long = piece(5420, 517);
  const short = piece(140, 90);
  const roll = { kind: "roll", roll: { name: "book cloth", width: 1000, pricePerM: 14 } } as const;
  const planned = (cutLength: number, ...pieces: readonly Piece[]) => {
    const options = { bench: { ...BENCH, benchLength: 1500, cutLength } };
    return [roll, sheetStock(board(6000, 1000))].map((stock) => {
      const plan = planCutting(pieces, stock, options);
      expect(verifyPlan(plan, pieces, stock, options)).toEqual([]);
      return [plan.sheets.length, plan.provedLeast, plan.uncuttable.map(({ reason, count }) => `${count} ${reason}`)];
    });
  };
  const REASON = "1 longer than the longest cut";
  expect(planned(0.3, long)).toEqual([
    [0, false, [REASON]],
    [0, false, [REASON]],
  ]);
  // The roll is 1000 wide: a cut across it can be made, one along the wall strip cannot.
  expect(planned(1000, long, short)).toEqual([
    [1, expect.any(Boolean), [REASON]],
    [1, expect.any(Boolean), [REASON]],
  ]);
});

test("a sheet from which no allowed cut frees a piece is not taken up for it", () => {
  const pieces = [piece(20, 30, { count: 8 })];
  // A cut right across the large sheet is too long; the off-cut in hand holds three.
  const stock = sheetStock(board(189, 106), board(26, 99, { price: 0, onHand: 1 }));
  const options = { bench: { ...BENCH, cutLength: 75 }, budget: { iterations: 60 } };
  const plan = planCutting(pieces, stock, options);
  expect(verifyPlan(plan, pieces, stock, options)).toEqual([]);
  expect(plan.sheets.map(({ placements }) => placements.length)).toEqual([3]);
  expect(plan.uncuttable.map(({ reason, count }) => `${count} ${reason}`)).toEqual(["5 no sheet left"]);
  expect(plan.provedLeast).toBe(false);
});

test("the verifier refuses more stages than are allowed, and a strip too short for its walls", () => {
  const pieces = Array.from({ length: 14 }, (_, index) => piece(60 + 17 * index, 40 + 13 * ((index * 5) % 14)));
  const stock = sheetStock(board(420, 300));
  const plan = planCutting(pieces, stock, { budget: { iterations: 300 } });
  const one = { bench: { ...BENCH, stages: 1 } };
  expect(verifyPlan(plan, pieces, stock, one).join()).toContain("stages where 1 are allowed");
  const walls = [piece(100, 20, { strip: "box" })];
  const strips = planCutting(walls, stock, { bench: BENCH });
  const short = strips.sheets.map((sheet) => ({
    ...sheet,
    placements: sheet.placements.map((place) => ({
      ...place,
      piece: { ...place.piece, holds: [{ piece: walls[0]!, count: 2 }] },
    })),
  }));
  expect(verifyPlan({ ...strips, sheets: short }, walls, stock, { bench: BENCH }).join()).toContain(
    "too small for what is made",
  );
});

test("figures are those that a person counts: two strips, three pieces, one trim", () => {
  const placed = (x: number, y: number, length: number, width: number) => ({
    piece: piece(length, width, { item: `${x} ${y}` }),
    copy: 1,
    ...{ x, y, length, width, turned: false },
  });
  const sheet = {
    ...{ stock: "board", length: 100, width: 60, layout: 1 },
    placements: [placed(0, 0, 70, 40), placed(70, 0, 30, 30), placed(0, 40, 100, 18)],
    cuts: [
      { way: "along", at: 40, from: 0, to: 100, setting: 40 },
      { way: "across", at: 70, from: 0, to: 40, setting: 70 },
      { way: "along", at: 30, from: 70, to: 100, setting: 30 },
      { way: "along", at: 58, from: 0, to: 100, setting: 18 },
    ] as const,
  };
  expect(countPlan([sheet], { edgeTrim: 0, pieceGap: 0, stages: 2, leastWaste: 5, absorbed: 5 })).toEqual({
    ...{ cuts: 4, setUps: 4, stages: 2, trims: 1, slivers: 1, loosePanels: 2 },
    ...{ openItems: 3, meanSpread: 1, mostSpread: 1 },
  });
});

test("a roll is cut into lengths no longer than the bench holds, and a longer piece sets its own", () => {
  const roll = { kind: "roll", roll: { name: "cloth", width: 100, pricePerM: 10 } } as const;
  const pieces = [piece(60, 50, { count: 9 }), piece(320, 30)];
  const plan = planCutting(pieces, roll, { bench: BENCH });
  expect(verifyPlan(plan, pieces, roll, { bench: BENCH })).toEqual([]);
  const lengths = plan.sheets.map(({ length }) => length).sort((one, other) => other - one);
  expect(lengths[0]).toBeGreaterThanOrEqual(320);
  expect(lengths.slice(1).every((length) => length <= 150)).toBe(true);
});

test("the cloth of a box is on few lengths of the roll, and little more of it is used than in one length", () => {
  const random = createRandom(7);
  const pieces = Array.from({ length: 80 }, (_, index) => {
    const height = 170 + random.below(210);
    const width = Math.round(height * 0.7);
    const cut = (name: string, long: number, across: number, count = 1) =>
      piece(long, across, { id: `${index} ${name}`, item: `item ${index}`, count });
    return [
      cut("case", 2 * width + 90, height + 30),
      cut("strip", 2 * (height + width) + 20, 62),
      cut("joint", height - 4, 72, 2),
    ];
  }).flat();
  const roll = { kind: "roll", roll: { name: "cloth", width: 1400, pricePerM: 10 } } as const;
  const options = { bench: { ...BENCH, benchLength: 1500 }, budget: { iterations: 300 } };
  const plan = planCutting(pieces, roll, options);
  expect(verifyPlan(plan, pieces, roll, options)).toEqual([]);
  const { meanSpread } = countPlan(plan.sheets, { edgeTrim: 0, pieceGap: 0, stages: 3, leastWaste: 5, absorbed: 5 });
  expect(meanSpread).toBeLessThanOrEqual(2.5);
  expect(plan.rollLength / plan.rollBound).toBeLessThan(1.2);
});

test("with a limit of open items, items are cut in groups where that takes no more sheets", () => {
  const stock = sheetStock(board(400, 300));
  const pieces = Array.from({ length: 24 }, (_, index) =>
    piece(200, 150, { id: String(index), item: `item ${index % 8}` }),
  );
  const openItems = (limit: number) => {
    const options = { bench: { ...BENCH, openItems: limit }, budget: { iterations: 2000 } };
    const plan = planCutting(pieces, stock, options);
    expect(verifyPlan(plan, pieces, stock, options)).toEqual([]);
    const count = { edgeTrim: 0, pieceGap: 0, stages: 3, leastWaste: 5, absorbed: 5 };
    return [plan.sheets.length, countPlan(plan.sheets, count).openItems];
  };
  // Three items of six quarters at a time fill sheets, four items in twos.
  expect(openItems(4)).toEqual([6, expect.any(Number)]);
  expect(openItems(4)[1]).toBeLessThanOrEqual(4);
  expect(openItems(2)[1]).toBeLessThanOrEqual(2);
});

test("a roll parted between its lengths loses no gap there, and its bound knows", () => {
  const roll = { kind: "roll", roll: { name: "cloth", width: 100, pricePerM: 10 } } as const;
  const pieces = [piece(100, 100, { count: 3 })];
  const options = { bench: BENCH, pieceGap: 3 };
  const plan = planCutting(pieces, roll, options);
  expect([plan.rollLength, plan.rollBound]).toEqual([300, 300]);
  expect(verifyPlan(plan, pieces, roll, options)).toEqual([]);
});
