import fc from "fast-check";
import { boardCautions } from "../../src/board/boardCautions";
import { settledBoards } from "../../src/board/boardInForce";
import { guideAnswer } from "../../src/board/guideAnswer";
import type { ItemLoad } from "../../src/board/itemWeight";
import { KINDS } from "../../src/enclosure/registry";
import { restingItem } from "../../src/enclosure/restingItem";
import { boardName } from "../../src/settings/boards";
import { settingsForRows } from "../../src/settings/settingsForRows";
import { itemLoad, ordinaryItem } from "./itemLoads";

/** As a whole survey sizes its rows: by the starter guide. */
const rows = settingsForRows([]).withOwn;
const settings = rows([]);

const size = fc.integer({ min: 5, max: 1300 });
const growth = fc.integer({ min: 0, max: 400 });

test("a larger or heavier item never gets a thinner board by the starter guide, whatever its kind", () => {
  let thicker = 0;
  fc.assert(
    fc.property(
      fc.constantFrom(...KINDS),
      fc.tuple(size, size, size, fc.integer({ min: 1, max: 20000 })),
      fc.tuple(growth, growth, growth, fc.integer({ min: 0, max: 9000 })),
      fc.boolean(),
      (kind, [height, width, depth, grams], [taller, wider, deeper, heavier], weighed) => {
        const board = (hwd: readonly [number, number, number], kg: number) =>
          settledBoards(itemLoad(hwd, kind.name, weighed ? kg : undefined), settings).board;
        const small = board([height, width, depth], grams / 1000);
        const large = board([height + taller, width + wider, depth + deeper], (grams + heavier) / 1000);
        expect(large.caliper).toBeGreaterThanOrEqual(small.caliper);
        if (large.caliper > small.caliper) thicker++;
      },
    ),
    { numRuns: 3000 },
  );
  expect(thicker).toBeGreaterThan(300);
});

test("of 10,000 ordinary items every one has a board, and fewer than 2 % a caution about it", () => {
  const items = fc.sample(ordinaryItem, 10_000);
  const boards = new Set<string>();
  let cautioned = 0;
  for (const item of items) {
    const { board } = settledBoards(item, settings);
    expect(board.listed).toBeDefined();
    boards.add(boardName(board));
    if (cautionsOf(item).length > 0) cautioned++;
  }
  expect(boards.size).toBeGreaterThanOrEqual(7);
  expect(cautioned / items.length).toBeLessThan(0.02);
});

test("the springing stays silent for what the starter guide covers by its rows with limits", () => {
  const boxed = fc.record({
    height: fc.integer({ min: 20, max: 1200 }),
    width: fc.integer({ min: 20, max: 1200 }),
    depth: fc.integer({ min: 2, max: 200 }),
    grams: fc.integer({ min: 5, max: 12_000 }),
    kind: fc.constantFrom(...KINDS.filter((kind) => kind.body(settings) === "walls")),
  });
  let covered = 0;
  let beyond = 0;
  fc.assert(
    fc.property(boxed, ({ height, width, depth, grams, kind }) => {
      const item = itemLoad([height, width, depth], kind.name, grams / 1000);
      const springs = cautionsOf(item).filter((caution) => caution.includes("springs"));
      if (guideAnswer(item, "walls", settings).beyondLimits) return void beyond++;
      covered++;
      expect(springs).toEqual([]);
    }),
    { numRuns: 2000 },
  );
  expect(covered).toBeGreaterThan(1000);
  expect(beyond).toBeGreaterThan(0);
});

test("the springing speaks when a shop names a thinner board itself", () => {
  const item = itemLoad([455, 300, 96], "tray", 9.8);
  expect(cautionsOf(item, rows([{ key: "wallBoard", value: "1.5 mm", origin: "its row" }]))).toEqual([
    "the base springs about 7 mm when lifted: next board, or double it",
  ]);
  expect(cautionsOf(item)).toEqual([]);
});

function cautionsOf(item: ItemLoad, asked = settings): readonly string[] {
  const { settings: settled, board } = settledBoards(item, asked);
  const assembly = item.kind.assemble(restingItem(item.item, settled), settled);
  return boardCautions({ ...item, board, assembly }, settled);
}
