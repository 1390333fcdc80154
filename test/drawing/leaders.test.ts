import fc from "fast-check";
import { labelPlaces } from "../../src/drawing/labelPlaces";
import { bandsOf, covers, passesThrough, project, type Point } from "../../src/drawing/projection";
import { cuboid } from "../../src/enclosure/space";

const size = fc.integer({ min: -50, max: 50 });
const length = fc.integer({ min: 1, max: 60 });
const STEPS = 400;

test("a line passes through the drawing of a board where some point of it is covered", () => {
  fc.assert(
    fc.property(
      fc.tuple(size, size, size),
      fc.tuple(length, length, length),
      fc.tuple(size, size, size, size),
      (at, of, ends) => {
        const [x, y, z] = at;
        const bands = bandsOf(cuboid(x, x + of[0], y, y + of[1], z, z + of[2]));
        const [from, to]: [Point, Point] = [
          [ends[0], ends[1]],
          [ends[2], ends[3]],
        ];
        const points = Array.from({ length: STEPS + 1 }, (_, step): Point => [
          from[0] + ((to[0] - from[0]) * step) / STEPS,
          from[1] + ((to[1] - from[1]) * step) / STEPS,
        ]);
        const met = points.some((point) => covers(bands, point));
        // Between two points a corner may be cut off: what is met is never missed, and the middle of a board is never far.
        if (met && from.join() !== to.join()) expect(passesThrough(bands, from, to)).toBe(true);
        const middle = project([x + of[0] / 2, y + of[1] / 2, z + of[2] / 2]);
        expect(passesThrough(bands, [middle[0] - 300, middle[1]], [middle[0] + 300, middle[1]])).toBe(true);
        expect(passesThrough(bands, [middle[0] - 300, middle[1] + 300], [middle[0] + 300, middle[1] + 300])).toBe(
          false,
        );
      },
    ),
    { numRuns: 200, seed: 2 },
  );
});

test("a leader goes to the side where it passes over no board", () => {
  const room = { left: 0, right: 100, top: 0, bottom: 100, step: 20 };
  const anchors: readonly Point[] = [
    [40, 30],
    [60, 70],
  ];
  const sides = (boards?: Parameters<typeof labelPlaces>[2]) =>
    labelPlaces(anchors, room, boards).map(({ side }) => side);
  expect(sides()).toEqual(["left", "right"]);
  // A board at the left of the first: both leaders are longer, and free.
  expect(sides((index, _, [x]) => (index === 0 && x === 0 ? 1 : 0))).toEqual(["right", "left"]);
});
