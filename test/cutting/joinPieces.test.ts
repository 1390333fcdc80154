import fc from "fast-check";
import { joinPieces } from "../../src/cutting/joinPieces";
import { planCutting } from "../../src/cutting/planCutting";
import { verifyPlan } from "../../src/cutting/verify";
import { board, piece, sheetStock } from "./jobs";

const SHEET = board(1000, 700);

test.each([
  { fact: "1500 in two halves", asked: piece(1500, 400), cut: [[750, 400, 2]] },
  { fact: "2500 x 900 in three by two", asked: piece(2500, 900), cut: [[834, 450, 6]] },
  {
    fact: "two plies of 1500: 900 and 600 in each, turned end for end",
    asked: piece(1500, 400, { plies: 2, count: 2 }),
    cut: [
      [900, 400, 2],
      [600, 400, 2],
    ],
  },
  {
    fact: "two plies of 1900: two pieces have no room for joints apart, three have",
    asked: piece(1900, 400, { plies: 2, count: 2 }),
    cut: [
      [713, 400, 4],
      [474, 400, 2],
    ],
  },
  { fact: "what a sheet holds stays whole", asked: piece(1000, 700), cut: [[1000, 700, 1]] },
])("a board that no sheet holds is joined: $fact", ({ asked, cut }) => {
  const joined = joinPieces([asked], [SHEET], 0);
  expect(joined.map(({ length, width, count = 1 }) => [length, width, count])).toEqual(cut);
});

test("joined pieces cover the whole, fit a sheet, and the plan leaves none out", () => {
  const side = fc.integer({ min: 200, max: 2500 });
  fc.assert(
    fc.property(side, side, fc.integer({ min: 1, max: 3 }), (length, width, plies) => {
      const asked = piece(length, width, { plies, count: plies });
      const joined = joinPieces([asked], [SHEET], 10);
      const area = joined.reduce((sum, own) => sum + own.length * own.width * (own.count ?? 1), 0);
      expect(area).toBeGreaterThanOrEqual(length * width * plies);
      const options = { edgeTrim: 10, budget: { iterations: 0 } };
      const plan = planCutting(joined, sheetStock(SHEET), options);
      expect(plan.uncuttable).toEqual([]);
      expect(verifyPlan(plan, joined, sheetStock(SHEET), options)).toEqual([]);
    }),
    { numRuns: 25 },
  );
});
