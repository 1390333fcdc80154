import fc from "fast-check";
import { batchingCost } from "../../src/estimate/batching";
import { completenessOf } from "../../src/estimate/completeness";
import { demandsOf } from "../../src/estimate/demandsOf";
import { planStock, toBuy } from "../../src/estimate/stockPlans";
import { stockJobs, type StockJob } from "../../src/estimate/stockJobs";
import { sizeSurvey } from "../../src/survey/sizeSurvey";

const BOARD = { name: "conservation board 2", length: 1000, width: 700, price: 3 };

/** Halves of a sheet: one across the grain each. */
function job(
  stock: string,
  halves: number,
  source: StockJob["source"] = { kind: "sheets", sheets: [BOARD] },
): StockJob {
  const pieces = [{ id: "a", item: "A", part: "base", length: 500, width: 700, count: halves, turn: false }];
  return {
    stock,
    material: "board",
    pieces,
    source,
    sources: [],
    edgeTrim: 0,
    pieceGap: 0,
    bench: undefined,
    leastWaste: 5,
    stages: 3,
  };
}

test("three halves of a sheet in each of two batches take four sheets, three when cut together", () => {
  const [first, second, all] = [3, 3, 6].map((halves) => planStock(job("conservation board 2", halves)));
  expect(batchingCost([[first!], [second!]], [all!])).toEqual([
    { stock: "conservation board 2", unit: "sheets", apart: 4, together: 3, more: 1 },
  ]);
});

test("of a roll whole metres are counted; a stock without a size is left out", () => {
  const cloth = { kind: "roll", roll: { name: "book cloth", width: 700, pricePerM: 14 } } as const;
  const [half, whole] = [planStock(job("book cloth", 1, cloth)), planStock(job("book cloth", 2, cloth))];
  const none = planStock({ ...job("foam", 1), source: undefined });
  expect(batchingCost([[half, none], [half]], [whole, none])).toEqual([
    { stock: "book cloth", unit: "m", apart: 2, together: 1, more: 1 },
  ]);
});

test("with all plans proved, batching never saves a sheet", () => {
  const counts = fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 1, maxLength: 4 });
  fc.assert(
    fc.property(counts, (batches) => {
      const apart = batches.map((halves) => [planStock(job("conservation board 2", halves))]);
      const together = [
        planStock(
          job(
            "conservation board 2",
            batches.reduce((sum, each) => sum + each, 0),
          ),
        ),
      ];
      const [cost] = batchingCost(apart, together);
      expect(cost!.more).toBeGreaterThanOrEqual(0);
      expect(cost!.apart).toBe(apart.flat().reduce((sum, plan) => sum + toBuy(plan), 0));
    }),
  );
});

test("with a batch size items are cut in the order of batch, priority and row, so many at a time", () => {
  const survey = sizeSurvey(
    [
      ["id", "height", "width", "depth", "enclosure", "batch", "priority"],
      ["A", 200, 150, 30, "tray", 2, 1],
      ["B", 200, 150, 30, "tray", 1, 2],
      ["C", 200, 150, 30, "tray", "", ""],
      ["D", 200, 150, 30, "tray", 1, 1],
    ],
    [[["batch size", 2]]],
  );
  const [own] = stockJobs(demandsOf(survey), survey.settings);
  expect(new Map(own!.pieces.map(({ item, batch }) => [item, batch]))).toEqual(
    new Map([
      ["A", 2],
      ["B", 1],
      ["C", 2],
      ["D", 1],
    ]),
  );
});

test("a board that no sheet holds is in part with join=no, and complete with join=yes", () => {
  const completeness = (join: string) => {
    const survey = sizeSurvey(
      [
        ["id", "height", "width", "depth", "enclosure"],
        ["map", 1300, 300, 30, "tray"],
        ["book", 200, 150, 30, "tray"],
      ],
      [[["join", join]]],
    );
    const plans = stockJobs(demandsOf(survey), survey.settings)
      .filter(({ material }) => material === "board")
      .map((each) => planStock(each, { budget: { iterations: 0 } }));
    return completenessOf(survey, plans);
  };
  expect(completeness("no")).toEqual({ complete: 1, inPart: 1, notSized: 0 });
  expect(completeness("yes")).toEqual({ complete: 2, inPart: 0, notSized: 0 });
});
