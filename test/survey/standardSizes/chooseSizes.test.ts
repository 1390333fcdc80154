import fc from "fast-check";
import { chooseSizes } from "../../../src/survey/standardSizes/chooseSizes";
import { fits, type InsideSize, type NeededInside } from "../../../src/survey/standardSizes/sizesProblem";

/** Board of an open tray, bilinear in its plan for each depth, and never less for a larger one. */
const trayBoard = ({ x, y, z }: InsideSize): number => x * y + 2 * (x + y + 4) * (z + 2);

const LOOKS = { looks: 150_000 };

/** Items whose every sharing is tried, and the looks that find the best of them. */
const [MOST_ITEMS, SMALL_LOOKS] = process.env.SOAK === undefined ? [8, LOOKS] : [12, { looks: 3_000_000 }];

const side = (most: number) => fc.integer({ min: 1, max: most }).map((step) => 40 + 5 * step);
const needs = (most: number) =>
  fc.array(
    fc.record({
      group: fc.integer({ min: 0, max: 1 }),
      x: side(40),
      y: side(60),
      z: side(12),
      quantity: fc.integer({ min: 1, max: 3 }),
    }),
    { minLength: 1, maxLength: most },
  );

test("one size for all is as large as the largest in each direction", () => {
  const found = chooseSizes(
    {
      needs: [
        { group: 0, x: 100, y: 200, z: 30, quantity: 2 },
        { group: 0, x: 150, y: 120, z: 40, quantity: 1 },
      ],
      count: 1,
      slack: undefined,
      cost: trayBoard,
    },
    LOOKS,
    1,
  );
  expect(found.sizes).toEqual([{ group: 0, x: 150, y: 200, z: 40 }]);
  expect(found.sizeOf).toEqual([0, 0]);
  expect(found.total).toBe(3 * trayBoard({ group: 0, x: 150, y: 200, z: 40 }));
  expect(found.leastTotal / found.total).toBeCloseTo(1, 5);
});

test("as few as possible are made to measure, before any board is saved", () => {
  const found = chooseSizes(
    {
      needs: [
        { group: 0, x: 500, y: 500, z: 100, quantity: 1 },
        { group: 0, x: 100, y: 100, z: 20, quantity: 1 },
        { group: 0, x: 105, y: 100, z: 20, quantity: 1 },
      ],
      count: 1,
      slack: 10,
      cost: trayBoard,
    },
    LOOKS,
    1,
  );
  expect(found.sizes).toEqual([{ group: 0, x: 105, y: 100, z: 20 }]);
  expect(found.sizeOf).toEqual([-1, 0, 0]);
  expect([found.toMeasure, found.leastToMeasure]).toEqual([1, 1]);
});

test("of a list of ready-made sizes the cheapest that fit are taken", () => {
  const offered = [
    { group: 0, x: 120, y: 220, z: 40 },
    { group: 0, x: 200, y: 300, z: 60 },
    { group: 0, x: 400, y: 500, z: 90 },
  ];
  const found = chooseSizes(
    {
      needs: [
        { group: 0, x: 100, y: 200, z: 30, quantity: 4 },
        { group: 0, x: 190, y: 290, z: 50, quantity: 1 },
      ],
      count: 2,
      slack: undefined,
      cost: ({ x }) => ({ 120: 3, 200: 5, 400: 9 })[x] ?? 100,
      offered,
    },
    LOOKS,
    1,
  );
  expect(found.sizeOf.map((at) => found.sizes[at]?.x)).toEqual([120, 200]);
  expect(found.total).toBe(17);
  expect(found.leastTotal).toBeLessThanOrEqual(17);
});

test("small surveys are solved to the best that trying every way of sharing finds, and the bound is never above it", () => {
  fc.assert(
    fc.property(needs(MOST_ITEMS), fc.integer({ min: 2, max: 4 }), (items, count) => {
      const found = chooseSizes({ needs: items, count, slack: undefined, cost: trayBoard }, SMALL_LOOKS, 1);
      const best = leastByEverySharing(items, count);
      expect(found.toMeasure).toBe(0);
      expect(found.total).toBeCloseTo(best, 6);
      expect(found.leastTotal).toBeLessThanOrEqual(best * (1 + 1e-9));
    }),
    { numRuns: 25 },
  );
});

test("an item goes only into a size that holds it, within the slack, at most so many sizes, and the bounds hold", () => {
  const runs = Number(process.env.SOAK_RUNS ?? 25);
  fc.assert(
    fc.property(
      needs(40),
      fc.integer({ min: 1, max: 6 }),
      fc.option(fc.integer({ min: 1, max: 80 }), { nil: undefined }),
      (items, count, slack) => {
        const found = chooseSizes({ needs: items, count, slack, cost: trayBoard }, { looks: 100_000 }, 2);
        expect(found.sizes.length).toBeLessThanOrEqual(count);
        let total = 0;
        let toMeasure = 0;
        items.forEach((need, place) => {
          const at = found.sizeOf[place]!;
          if (at < 0) toMeasure += need.quantity;
          else expect(fits(need, found.sizes[at]!, slack)).toBe(true);
          total += need.quantity * trayBoard(at < 0 ? need : found.sizes[at]!);
        });
        expect(found.toMeasure).toBe(toMeasure);
        expect(found.total / total).toBeCloseTo(1, 6);
        expect(found.leastTotal).toBeLessThanOrEqual(found.total);
        expect(found.leastToMeasure).toBeLessThanOrEqual(found.toMeasure);
      },
    ),
    { numRuns: runs },
  );
});

/** Every way of sharing the items among at most so many sizes, each as large as its items need. */
function leastByEverySharing(items: readonly NeededInside[], count: number): number {
  let best = Number.POSITIVE_INFINITY;
  const shares: NeededInside[][] = [];
  const place = (at: number): void => {
    // One item more never makes a share cost less.
    const soFar = shares.reduce((sum, share) => sum + costOfShare(share), 0);
    if (soFar >= best) return;
    if (at === items.length) {
      best = soFar;
      return;
    }
    const item = items[at]!;
    for (const share of shares) {
      if (share[0]!.group !== item.group) continue;
      share.push(item);
      place(at + 1);
      share.pop();
    }
    if (shares.length >= count) return;
    shares.push([item]);
    place(at + 1);
    shares.pop();
  };
  place(0);
  return best;
}

function costOfShare(share: readonly NeededInside[]): number {
  const largest = (sizes: readonly number[]) => Math.max(...sizes);
  const size = {
    group: share[0]!.group,
    x: largest(share.map(({ x }) => x)),
    y: largest(share.map(({ y }) => y)),
    z: largest(share.map(({ z }) => z)),
  };
  return share.reduce((sum, { quantity }) => sum + quantity, 0) * trayBoard(size);
}
