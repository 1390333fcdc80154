import { blanksOf } from "../../src/cutting/blanks";
import type { BenchStyle, Piece } from "../../src/cutting/types";
import { board, piece } from "./jobs";

const BENCH: BenchStyle = { stages: 3, leastWaste: 5, matchAllowance: 3, spareSheets: 0.04, benchLength: 1500 };

const wall = (length: number, height: number, more: Partial<Piece> = {}) =>
  piece(length, height, { strip: "lid", part: `wall ${length}`, ...more });

function blanks(pieces: readonly Piece[], sheet = board(1000, 700), bench = BENCH) {
  return blanksOf(pieces, [sheet], { bench, edgeTrim: 5 }).map(({ part, length, width, count = 1, holds }) => ({
    part,
    length,
    width,
    count,
    holds: holds?.map((held) => `${held.piece.part} x ${held.count}`),
  }));
}

test("walls of one ring are one strip, as long as its walls and 3 mm for each", () => {
  expect(blanks([wall(250, 40, { count: 2 }), wall(200, 40, { count: 2 })])).toEqual([
    { part: "lid strip", length: 912, width: 40, count: 1, holds: ["wall 250 x 2", "wall 200 x 2"] },
  ]);
});

test("a strip too long for the sheet is parted between walls, longest first", () => {
  expect(blanks([wall(200, 40, { count: 2 }), wall(300, 40, { count: 2 })])).toEqual([
    { part: "lid strip 1", length: 809, width: 40, count: 1, holds: ["wall 300 x 2", "wall 200 x 1"] },
    { part: "lid strip 2", length: 203, width: 40, count: 1, holds: ["wall 200 x 1"] },
  ]);
});

test("a single wall is a strip too; walls of another height, ring or item are not in it", () => {
  const pieces = [wall(300, 40), wall(200, 41), wall(200, 40, { strip: "box" }), wall(200, 40, { item: "item 2" })];
  expect(blanks(pieces).map(({ length, width }) => [length, width])).toEqual([
    [303, 40],
    [203, 41],
    [203, 40],
    [203, 40],
  ]);
});

test("a part made to a finished tray is larger both ways; what else is cut keeps its size", () => {
  const later = { length: true, width: true };
  expect(
    blanks([piece(300, 200, { later, count: 2 }), piece(300, 200)]).map(({ length, width }) => [length, width]),
  ).toEqual([
    [303, 203],
    [300, 200],
  ]);
});

test("a strip is wider only where its height follows a measure", () => {
  const given = { length: true, width: false };
  const measured = { length: true, width: true };
  expect(blanks([wall(300, 40, { later: given })])[0]!.width).toBe(40);
  expect(blanks([wall(300, 40, { later: measured })])[0]!.width).toBe(43);
});

test("an allowance shrinks to what the sheet holds", () => {
  const later = { length: true, width: true };
  expect(blanks([piece(989, 690, { later })]).map(({ length, width }) => [length, width])).toEqual([[990, 690]]);
  expect(blanks([wall(989, 40)])[0]!.length).toBe(990);
});

test("a laminated strip is cut once for each ply, and of the two allowances the greater counts", () => {
  const plies = { plies: 2, pressed: 3 };
  expect(blanks([wall(303, 43, { count: 4, ...plies })])).toEqual([
    { part: "lid strip", length: 606, width: 43, count: 2, holds: ["wall 303 x 2"] },
  ]);
});

test("without a match allowance everything is cut to size", () => {
  const pieces = [wall(300, 40, { count: 2 }), piece(300, 200, { later: { length: true, width: true } })];
  expect(blanksOf(pieces, [board(1000, 700)], { bench: { ...BENCH, matchAllowance: 0 } })).toBe(pieces);
});

test("an allowance keeps to the sheets that can be bought, whatever larger ones are in hand", () => {
  const lid = piece(98, 60, { later: { length: true, width: true } });
  const [blank] = blanksOf([lid], [board(400, 300, { onHand: 1 }), board(100, 80)], { bench: BENCH });
  expect([blank!.length, blank!.width]).toEqual([100, 63]);
});

test("a second-made part that fits only turned takes as much of its allowance as the sheet has room for that way", () => {
  const later = { length: true, width: true };
  const asked = piece(45, 53, { turn: true, later });
  const bench = { ...BENCH, matchAllowance: 3 };
  // 53 + 3 lies along the sheet's length, 45 + 0.4 along its width.
  const [blank] = blanksOf([asked], [{ length: 87.4, width: 45.4 }], { bench });
  expect([blank!.length, blank!.width]).toEqual([45.4, 56]);
});
