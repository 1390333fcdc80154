import type { Cut, Placement, SheetPlan } from "../../src/cutting/types";
import { planCutting } from "../../src/cutting/planCutting";
import { namedPlan } from "../../src/drawing/namedPlan";
import { cutTree } from "../../src/paper/cutTree";
import { randomJob } from "../cutting/jobs";
import { outside, overlapping, readDrawing } from "../drawing/readDrawing";

const across = (at: number, from: number, to: number, setting: number): Cut => ({
  way: "across",
  at,
  from,
  to,
  setting,
});
const along = (at: number, from: number, to: number, setting: number): Cut => ({ way: "along", at, from, to, setting });
const piece = (item: string, x: number, y: number, length: number, width: number): Placement => ({
  piece: { id: item, item, part: "base", length, width, turn: false },
  copy: 1,
  x,
  y,
  length,
  width,
  turned: false,
});

test("strips are letters, what comes off them is numbered, and so on; what is left over has no name", () => {
  // By hand: two strips of 100 and 60 off the long edge; the first gives 400 and 300, the second 250 and a half of it.
  const sheet: SheetPlan = {
    stock: "board",
    length: 1000,
    width: 300,
    layout: 1,
    placements: [
      piece("P", 0, 0, 400, 100),
      piece("Q", 400, 0, 300, 100),
      piece("R", 0, 100, 250, 60),
      piece("S", 250, 100, 200, 30),
    ],
    cuts: [
      along(100, 0, 1000, 100),
      along(160, 0, 1000, 60),
      across(400, 0, 100, 400),
      across(700, 0, 100, 300),
      across(250, 100, 160, 250),
      across(450, 100, 160, 200),
      along(130, 250, 450, 30),
    ],
  };
  const { cuts, pieces, firstWay } = cutTree(sheet, { edgeTrim: 0, pieceGap: 0 });
  expect(firstWay).toBe("along");
  expect(cuts.map(({ off, rest }) => [off.name, off.strip, rest?.name])).toEqual([
    ["A", true, undefined],
    ["B", true, ""],
    ["A1", false, undefined],
    ["A2", false, ""],
    ["B1", false, undefined],
    ["B2", true, ""],
    ["B2a", false, ""],
  ]);
  expect(pieces.map(({ name, placement }) => [name, placement!.piece.item])).toEqual([
    ["A1", "P"],
    ["A2", "Q"],
    ["B1", "R"],
    ["B2a", "S"],
  ]);
});

test("in any plan every piece has a name of its own, every cut frees something, and no words of its drawing overlap", () => {
  for (let seed = 1; seed <= 12; seed++) {
    const { pieces, stock, options } = randomJob(seed);
    const plan = planCutting(pieces, stock, { ...options, budget: { iterations: 5 } });
    for (const sheet of plan.sheets.slice(0, 3)) {
      if (sheet.length === 0) continue;
      const { edgeTrim = 0, pieceGap = 0 } = options;
      const tree = cutTree(sheet, { edgeTrim, pieceGap });
      expect(tree.cuts).toHaveLength(sheet.cuts.length);
      expect(tree.pieces).toHaveLength(sheet.placements.length);
      const names = tree.pieces.map(({ name }) => name);
      expect(new Set(names).size).toBe(names.length);
      const freed = tree.cuts.flatMap(({ off, rest }) => [off.name, rest?.name ?? ""]);
      if (tree.cuts.length > 0) expect(names.filter((name) => !freed.includes(name))).toEqual([]);
      const drawn = namedPlan(
        {
          title: "plan",
          length: sheet.length,
          width: sheet.width,
          pieces: tree.pieces.map((each) => ({
            ...each.placement!,
            name: each.name,
            words: [each.placement!.piece.item],
          })),
          strips: tree.strips,
          firstWay: tree.firstWay,
        },
        { width: 630, tallest: 400 },
      );
      const read = readDrawing(drawn);
      expect(outside(read)).toEqual([]);
      expect(overlapping(read.texts)).toEqual([]);
      const sizes = drawn.shapes.flatMap((shape) => (shape.kind === "text" ? [shape.size] : []));
      expect(Math.min(...sizes)).toBeGreaterThanOrEqual(10.8);
    }
  }
});

test("an identifier on a plan is whole or left out", () => {
  const [name, item] = ["B1b1", "LK 0123"];
  for (let length = 20; length <= 300; length += 4)
    for (const width of [30, 60, 90]) {
      const words = [item, "small fore-edge wall lining", `${length} × ${width}`];
      const drawn = namedPlan(
        {
          title: "plan",
          length: 1000,
          width: 700,
          pieces: [{ name, x: 0, y: 0, length, width, words }],
          strips: [],
          firstWay: undefined,
        },
        { width: 630, tallest: 500 },
      );
      const cut = drawn.shapes.flatMap((shape) =>
        shape.kind === "text" && shape.text.endsWith("…") ? [shape.text] : [],
      );
      for (const text of cut)
        if (text.startsWith(name)) expect(text).toMatch(new RegExp(`^${name} ${item} .{4,}…$`, "u"));
    }
});
