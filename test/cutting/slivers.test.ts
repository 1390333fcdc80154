import { countPlan } from "../../src/cutting/countPlan";
import { ALONG_LENGTH, ALONG_WIDTH, NONE } from "../../src/cutting/forest";
import type { Panel } from "../../src/cutting/panels";
import { planCutting } from "../../src/cutting/planCutting";
import { createRandom } from "../../src/cutting/random";
import { neededLength, shorten } from "../../src/cutting/shorten";
import { verifyPlan } from "../../src/cutting/verify";
import { board, piece, sheetStock } from "./jobs";

const cutPiece = (length: number, width: number): Panel => ({ length, width, axis: ALONG_LENGTH, parts: [], piece: 0 });
const spare = (length: number, width: number): Panel => ({ ...cutPiece(length, width), piece: NONE });

/** Two strips, one with waste at its end, and a piece beyond them. */
const row = (shorter: number): Panel => {
  const strip = {
    length: 700,
    width: 50,
    axis: ALONG_LENGTH,
    parts: [cutPiece(shorter, 50), spare(700 - shorter, 50)],
  };
  const long = { ...strip, parts: [cutPiece(600, 50), spare(100, 50)] };
  const strips = { length: 700, width: 100, axis: ALONG_WIDTH, piece: NONE };
  const parts = [
    { ...strip, piece: NONE },
    { ...long, piece: NONE },
  ];
  return {
    length: 900,
    width: 100,
    axis: ALONG_LENGTH,
    parts: [{ ...strips, parts }, cutPiece(200, 100)],
    piece: NONE,
  };
};

test.each([
  { fact: "strips that end together are cut down to them", shorter: 600, needed: 800 },
  { fact: "50 left beside the longer one is no sliver", shorter: 550, needed: 800 },
  { fact: "where 30 would be left, both keep enough: 600 + 50", shorter: 570, needed: 850 },
])("a length of roll is cut down only so far that no sliver is left: $fact", ({ shorter, needed }) => {
  const waste = { gap: 0, leastWaste: 50, edgeTrim: 0 };
  expect(neededLength(row(shorter), waste)).toBe(needed);
  const short = shorten(row(shorter), needed, createRandom(0), [], waste);
  expect([short.length, short.parts[0]!.length]).toEqual([needed, needed - 200]);
});

test("an off-cut in hand is left for other pieces where one would leave a sliver beside it", () => {
  const bench = { stages: 3, leastWaste: 5, matchAllowance: 0, spareSheets: 0, benchLength: 1500 };
  const stock = sheetStock(board(400, 300), board(200, 150, { name: "off-cut", price: 0, onHand: 1, edgeTrim: 0 }));
  const slivers = (width: number) => {
    const pieces = [piece(200, width)];
    const plan = planCutting(pieces, stock, { bench });
    expect(verifyPlan(plan, pieces, stock, { bench })).toEqual([]);
    const count = { edgeTrim: 0, pieceGap: 0, stages: 3, leastWaste: 5, absorbed: 5 };
    return [plan.sheets.map((sheet) => sheet.stock), countPlan(plan.sheets, count).slivers];
  };
  expect(slivers(145)).toEqual([["off-cut"], 0]);
  expect(slivers(147)).toEqual([["board"], 0]);
});
