import fc from "fast-check";
import type { Assembly } from "../../src/enclosure/assembly";
import { restingItem } from "../../src/enclosure/restingItem";
import { panelsOf } from "../../src/enclosure/placedPart";
import { KINDS } from "../../src/enclosure/registry";
import { cuboid, X, Y, Z, type Axis, type Cuboid } from "../../src/enclosure/space";
import type { SettledSettings } from "../../src/settings/schema";
import { together } from "../../src/item/together";
import { freePlay } from "../../src/enclosure/build/allowances";
import { settledOf } from "../settings/settledOf";
import { anyShop, assemblyOf, RUNS } from "./everyEnclosure";
import { book, enclosed, expectLengths, insideOf, partNamed, partsOf } from "./sizing";

const AXES: readonly Axis[] = [X, Y, Z];
const NOISE = 1e-6;

test("two books of 300 x 210 x 40 side by side, by hand: 2 x 212 + 1 + 3 = 428 wide; a divider 301 x 41.5", () => {
  const two = book(300, 420, 40);
  expectLengths(insideOf(enclosed(two, "tray", "arrangement=2 x 1"), ""), [303, 428, 42.5]);
  const parts = partsOf(two, "tray", "arrangement=2 x 1");
  const size = (name: string) => {
    const { length, width, count } = partNamed(parts, name);
    return [length, width, count];
  };
  expectLengths(size("divider"), [301, 41.5, 1]);
  // Over the edge of a board of 2 and down both faces, less than a millimetre rounded off.
  expectLengths(size("divider covering"), [301, 85, 1]);
  expectLengths(insideOf(enclosed(two, "tray", "arrangement=2 x 1; dividers=no"), ""), [303, 425, 42.5]);
});

test("six in two rows of three: two dividers and one cross divider, 2 x 302 + 1 + 3 = 608 high", () => {
  const text = "arrangement=3 x 2; divider height=30";
  const six = book(600, 630, 40);
  expectLengths(insideOf(enclosed(six, "lidded box", text), "box"), [608, 643, 42.5]);
  const parts = partsOf(six, "lidded box", text);
  expectLengths(
    ["box divider", "box cross divider"].flatMap((name) => {
      const { length, width, count } = partNamed(parts, name);
      return [length, width, count];
    }),
    [606, 30, 2, 641, 30, 1],
  );
});

test.each([
  ["divider height=50", "divider height: got 50 mm; give auto, or a length up to 41.5 mm"],
  ["well=yes; cushion sides=10", "well: got yes; give no: a well holds one item; or leave out the arrangement"],
])("%s is refused", (text, message) => {
  expect(() => enclosed(book(300, 420, 40), "tray", `arrangement=2 x 1; ${text}`)).toThrow(message);
});

test("in rows of two each column is as wide as its widest, each row as high as its highest, each item as it rests", () => {
  const items = [book(100, 60, 20), book(90, 80, 30), book(120, 70, 10)];
  expect(together(items, settledOf("arrangement=rows of 2"))).toEqual({
    height: 100 + 120,
    width: 70 + 80,
    depth: 30,
    arrangement: { by: "grid", columns: [70, 80], rows: [100, 120] },
  });
  // On their edges depth is width: 10 + 20 + 30 and no row more; as measured again its depth is the width.
  expect(together(items, settledOf("arrangement=side by side; rests on=edge"))).toEqual({
    height: 120,
    width: 80,
    depth: 60,
    arrangement: { by: "grid", columns: [20, 30, 10], rows: [120] },
  });
});

const ARRANGED = KINDS.filter(({ options }) => options.includes("arrangement"));
const sizes = fc.array(fc.integer({ min: 300, max: 3000 }), { minLength: 1, maxLength: 4 });

test.each(ARRANGED.map((kind) => [kind.name, kind] as const))(
  "every item of a %s has its own space with its play, clear of covered walls and dividers",
  (_, kind) => {
    let tried = 0;
    fc.assert(
      fc.property(
        sizes,
        sizes,
        fc.integer({ min: 30, max: 2000 }),
        fc.boolean(),
        anyShop,
        (across, down, deep, dividers, shop) => {
          const [columns, rows] = [across, down].map((list) => list.map((size) => size / 10)) as [number[], number[]];
          const settings: SettledSettings = {
            ...settledOf(),
            ...shop,
            restsOn: "back",
            dividers,
            arrangement: { by: "grid", columns, rows },
          };
          const [width, height] = [sum(columns), sum(rows)];
          const assembly = assemblyOf(kind, { width, height, depth: deep / 10 }, settings);
          if (assembly === undefined) return;
          tried += 1;
          everyItemHasRoom(assembly, columns, rows, deep / 10, settings);
        },
      ),
      { numRuns: RUNS, seed: 5 },
    );
    expect(tried).toBeGreaterThan(20);
  },
);

test("an item too wide for its compartment meets its divider: the check can fail", () => {
  const settings = settledOf("arrangement=2 x 1; fit=none");
  const assembly = ARRANGED[0]!.assemble(restingItem(book(300, 420, 40), settings), settings);
  expect(() => everyItemHasRoom(assembly, [214, 206], [300], 40, settings)).toThrow("meets");
});

/** Each item with its play stands clear of every other, and of the covered dividers and walls. */
function everyItemHasRoom(
  { parts, holder, trays }: Assembly,
  columns: readonly number[],
  rows: readonly number[],
  depth: number,
  settings: SettledSettings,
): void {
  const c = holder.covering;
  const fit = freePlay(settings, "standard");
  const gap = settings.dividers ? settings.wallBoard.caliper + 2 * c : 0;
  const { min } = holder.inside;
  const { cushionSides: sides, cushionBase: base } = settings;
  const starts = (list: readonly number[], from: number, play: number) =>
    list.map((_, index) => from + c + sides + sum(list.slice(0, index)) + index * (play + gap));
  const [xs, ys] = [starts(columns, min[X], fit.x), starts(rows, min[Y], fit.y)];
  const floor = min[Z] + c + base;
  const items = columns.flatMap((wide, i) =>
    rows.map((tall, j) => cuboid(xs[i]!, xs[i]! + wide + fit.x, ys[j]!, ys[j]! + tall + fit.y, floor, floor + depth)),
  );
  const own = parts.filter(({ tray, role }) => tray === holder.name && role !== "case");
  expect(trays).toContain(holder);
  const boards = panelsOf(own).map(({ min: low, max: high }) =>
    cuboid(low[0] - c, high[0] + c, low[1] - c, high[1] + c, low[2] - c, high[2] + c),
  );
  for (const [index, item] of items.entries()) {
    for (const board of boards) if (overlap(item, board)) throw new Error(`item ${index} meets a board`);
    for (const other of items.slice(0, index)) if (overlap(item, other)) throw new Error(`item ${index} meets another`);
  }
}

function sum(list: readonly number[]): number {
  return list.reduce((total, each) => total + each, 0);
}

function overlap(one: Cuboid, other: Cuboid): boolean {
  return AXES.every(
    (axis) => Math.min(one.max[axis], other.max[axis]) - Math.max(one.min[axis], other.min[axis]) > NOISE,
  );
}
