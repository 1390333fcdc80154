import type { Cut, Placement } from "../../src/cutting/types";
import { offCuts } from "../../src/cutting/offCuts";

const across = (at: number, from: number, to: number): Cut => ({ way: "across", at, from, to, setting: at });
const along = (at: number, from: number, to: number): Cut => ({ way: "along", at, from, to, setting: at });
const piece = (x: number, y: number, length: number, width: number): Placement => ({
  piece: { id: "1", item: "LK 1", part: "base", length, width, turn: false },
  copy: 1,
  x,
  y,
  length,
  width,
  turned: false,
});

// A sheet of 1000 x 700 throughout.
test.each([
  {
    fact: "a cut across leaves what lies behind it: 1000 - 600 by 700",
    cuts: [across(600, 0, 700)],
    pieces: [piece(0, 0, 600, 700)],
    trim: 0,
    gap: 0,
    left: [[600, 0, 400, 700]],
  },
  {
    fact: "trim and gap are taken away first: 990 - (600 + 3) by 700 - 2 x 10",
    cuts: [across(600, 10, 690)],
    pieces: [piece(10, 10, 590, 680)],
    trim: 10,
    gap: 3,
    left: [[603, 10, 387, 680]],
  },
  {
    fact: "a second cut parts only the panel that it lies in: 600 by 700 - 500, and 400 by 700",
    cuts: [across(600, 0, 700), along(500, 0, 600)],
    pieces: [piece(0, 0, 600, 500)],
    trim: 0,
    gap: 0,
    left: [
      [0, 500, 600, 200],
      [600, 0, 400, 700],
    ],
  },
  {
    fact: "39.9 mm is not kept, 40 mm is",
    cuts: [across(960.1, 0, 700), along(660, 0, 960.1)],
    pieces: [piece(0, 0, 960.1, 660)],
    trim: 0,
    gap: 0,
    left: [[0, 660, 960.1, 40]],
  },
  {
    fact: "149.9 mm by 149.9 mm is not kept",
    cuts: [across(850.1, 0, 700), along(550.1, 850.1, 1000)],
    pieces: [piece(0, 0, 850.1, 700), piece(850.1, 0, 149.9, 550.1)],
    trim: 0,
    gap: 0,
    left: [],
  },
  {
    fact: "two pieces side by side leave nothing between them",
    cuts: [across(500, 0, 700)],
    pieces: [piece(0, 0, 500, 700), piece(500, 0, 500, 700)],
    trim: 0,
    gap: 0,
    left: [],
  },
])("$fact", ({ cuts, pieces, trim, gap, left }) => {
  const kept = offCuts({ length: 1000, width: 700, cuts, placements: pieces }, { edgeTrim: trim, pieceGap: gap });
  expect(kept.map(({ x, y, length, width }) => [x, y, length, width])).toEqual(left);
});
