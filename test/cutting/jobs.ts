import { countPlan } from "../../src/cutting/countPlan";
import { planCutting } from "../../src/cutting/planCutting";
import { createRandom } from "../../src/cutting/random";
import type { BenchStyle, CuttingOptions, Piece, Sheet, Stock } from "../../src/cutting/types";
import { verifyPlan } from "../../src/cutting/verify";

/** A piece with its grain fixed. */
export function piece(length: number, width: number, more: Partial<Piece> = {}): Piece {
  return { id: `${length}x${width}`, item: "item 1", part: "wall", length, width, turn: false, ...more };
}

/** One size of sheet, as many as wanted, 1 each. */
export function board(length: number, width: number, more: Partial<Sheet> = {}): Sheet {
  return { name: "board", length, width, price: 1, ...more };
}

export function sheetStock(...sheets: readonly Sheet[]): Stock {
  return { kind: "sheets", sheets };
}

export interface RandomJob {
  readonly pieces: readonly Piece[];
  readonly stock: Stock;
  readonly options: CuttingOptions;
}

/**
 * A job of any shape from a seed: none to some eighty pieces, most often a few, grain fixed or free, one to four sizes, or
 * a roll; the search is most often short.
 */
export function randomJob(seed: number): RandomJob {
  const random = createRandom(seed);
  const between = (low: number, high: number) => low + random.below(high - low + 1);
  const oneIn = (parts: number) => random.below(parts) === 0;
  const [length, width] = [between(20, 200), between(20, 200)];
  const side = (longest: number) => {
    const mm = between(1, Math.max(1, Math.floor(longest * (oneIn(10) ? 1.1 : 0.6))));
    return oneIn(4) ? mm - 0.3 : mm;
  };
  const free = random.below(3);
  const count = oneIn(8) ? between(0, 1) : oneIn(7) ? between(5, 40) : between(2, 8);
  const pieces = Array.from({ length: count }, (_, index) => ({
    id: `piece ${index}`,
    item: `item ${index}`,
    part: "wall",
    length: side(length),
    width: side(width),
    turn: free === 2 || (free === 1 && oneIn(2)),
    ...(oneIn(3) ? { count: between(0, 6) } : {}),
  }));
  const gap = oneIn(3) ? between(0, 30) / 10 : 0;
  const options = {
    edgeTrim: oneIn(3) ? between(0, 30) / 10 : 0,
    pieceGap: gap,
    seed,
    budget: { iterations: between(0, oneIn(8) ? 200 : 40) },
  };
  if (oneIn(4))
    return { pieces, stock: { kind: "roll", roll: { name: "cloth", width, pricePerM: between(0, 5) } }, options };
  const kinds = oneIn(3) ? between(2, 4) : 1;
  const sheets = Array.from({ length: kinds }, (_, index) => ({
    name: `size ${index}`,
    length: index === 0 ? length : between(10, length),
    width: index === 0 ? width : between(10, width),
    price: oneIn(4) ? 0 : between(1, 40) / 4,
    ...(oneIn(index === 0 ? 8 : 2) ? { onHand: between(0, 5) } : {}),
  }));
  return { pieces, stock: { kind: "sheets", sheets }, options };
}

/** A random job in the bench style: walls in rings, parts made to finished ones, plies, joined boards, limits of its own. */
export function randomBenchJob(seed: number): RandomJob {
  const { pieces: plain, stock, options } = randomJob(seed);
  const random = createRandom(seed);
  const oneIn = (parts: number) => random.below(parts) === 0;
  const batchSize = oneIn(3) ? 1 + random.below(4) : undefined;
  const perItem = 1 + random.below(6);
  const laminated = oneIn(4);
  const pieces = plain.map((own, index): Piece => {
    const item = Math.floor(index / perItem);
    const plies = laminated && oneIn(2) ? 2 + random.below(2) : 1;
    return {
      ...own,
      item: `item ${item}`,
      ...(batchSize === undefined ? {} : { batch: 1 + Math.floor(item / batchSize) }),
      ...(oneIn(3) ? { strip: oneIn(4) ? "lid" : "box", width: oneIn(4) ? own.width : 20 } : {}),
      ...(oneIn(4) ? { later: { length: true, width: oneIn(2) } } : {}),
      ...(plies === 1 ? {} : { plies, pressed: random.below(5), count: plies * (own.count ?? 1) }),
      ...(oneIn(12) ? { joinedFrom: 2 } : {}),
    };
  });
  const bench: BenchStyle = {
    stages: 2 + random.below(3),
    leastWaste: random.below(3) * 3,
    matchAllowance: oneIn(4) ? 0 : 1 + random.below(6),
    spareSheets: [0, 0.04, 0.5][random.below(3)]!,
    loosePanels: oneIn(4) ? undefined : 2 + random.below(11),
    openItems: oneIn(3) ? 1 + random.below(4) : undefined,
    batchSize,
    keepOffCuts: !oneIn(4),
    benchLength: oneIn(2) ? 150 : 20 + random.below(300),
    cutLength: oneIn(4) ? 0.3 + random.below(400) : undefined,
  };
  return { pieces, stock, options: { ...options, bench } };
}

/** What the verifier finds wrong with the plan of a job, by its own count of the figures and with those given to it. */
export function faultsOf({ pieces, stock, options }: RandomJob): readonly string[] {
  const plan = planCutting(pieces, stock, options);
  const { edgeTrim = 0, pieceGap = 0, bench } = options;
  const leastWaste = bench?.leastWaste ?? 5;
  const figures = countPlan(plan.sheets, {
    ...{ edgeTrim, pieceGap, leastWaste },
    ...{ stages: bench?.stages ?? 3, absorbed: leastWaste },
  });
  const cuts = plan.sheets.reduce((sum, sheet) => sum + sheet.cuts.length, 0);
  return [
    ...verifyPlan(plan, pieces, stock, options),
    ...(figures.cuts === plan.cutCount && figures.cuts === cuts ? [] : ["the cuts are counted differently"]),
    ...(figures.setUps === plan.setUps ? [] : ["the settings of the fence are counted differently"]),
  ];
}
