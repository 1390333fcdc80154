import fc from "fast-check";
import { NO_LIMITS } from "../../src/cutting/limits";
import { createForest, type Forest, NONE } from "../../src/cutting/forest";
import { begin, commit, rollback } from "../../src/cutting/history";
import { cutPiece, exportPanel, layOut } from "../../src/cutting/panels";
import { discard, takeOut } from "../../src/cutting/takeOut";
import { createRandom, type Random } from "../../src/cutting/random";

const SIDE = 60;
const PIECES = 40;

/** Cuts pieces and takes panels out at random, as a search does. */
function shake(forest: Forest, sheet: number, random: Random, out: Int32Array): void {
  for (let turn = 0; turn < 12; turn++) {
    const leftover = forest.openCount === 0 ? NONE : forest.open[random.below(forest.openCount)]!;
    if (leftover !== NONE && random.below(3) > 0) {
      const length = 1 + random.below(forest.length[leftover]!);
      const width = 1 + random.below(forest.width[leftover]!);
      cutPiece(forest, leftover, random.below(PIECES), length, width, random.below(2));
    } else {
      let panel = sheet;
      while (forest.first[panel] !== NONE && random.below(3) > 0) panel = forest.first[panel]!;
      if (panel !== sheet && forest.slot[panel] === NONE) takeOut(forest, panel, out, 0);
    }
  }
}

function areaOf(panel: ReturnType<typeof exportPanel>): number {
  if (panel.parts.length === 0) return panel.length * panel.width;
  return panel.parts.reduce((sum, part) => sum + areaOf(part), 0);
}

function stateOf(forest: Forest, sheet: number): unknown {
  return [exportPanel(forest, sheet), [...forest.open.subarray(0, forest.openCount)], forest.totalWorth];
}

it("taking a step back restores every panel, leftover and worth", () => {
  fc.assert(
    fc.property(fc.nat(), (seed) => {
      const random = createRandom(seed);
      const forest = createForest(200, 1, 1, NO_LIMITS);
      const out = new Int32Array(200);
      const sheet = layOut(forest, { length: SIDE, width: SIDE });
      for (let round = 0; round < 4; round++) {
        begin(forest);
        shake(forest, sheet, random, out);
        commit(forest);
        const before = stateOf(forest, sheet);
        begin(forest);
        shake(forest, sheet, random, out);
        rollback(forest);
        expect(stateOf(forest, sheet)).toEqual(before);
        expect(areaOf(exportPanel(forest, sheet))).toBe(SIDE * SIDE);
      }
    }),
  );
});

it("a sheet emptied piece by piece is one leftover again", () => {
  const forest = createForest(10, 1, 1, NO_LIMITS);
  const sheet = layOut(forest, { length: 10, width: 10 });
  cutPiece(forest, sheet, 0, 4, 5, 0);
  const out = new Int32Array(10);
  const own = Array.from({ length: 60 }, (_, panel) => panel).find(
    (panel) => forest.length[panel] === 4 && forest.width[panel] === 5,
  )!;
  expect(takeOut(forest, own, out, 0)).toBe(1);
  expect([forest.first[sheet], forest.openCount, forest.open[0]]).toEqual([NONE, 1, sheet]);
  expect(discard(forest, sheet, out, 1)).toBe(1);
  expect([forest.openCount, forest.totalWorth]).toEqual([0, 0]);
});
