import { curvePicture } from "../../src/drawing/curvePicture";
import { svgOf } from "../../src/drawing/svgOf";
import { curvePoint, ownPoint } from "../../src/estimate/sizesCurve";
import { sizeSurvey } from "../../src/survey/sizeSurvey";

const SURVEY = sizeSurvey(
  [
    ["id", "height", "width", "depth", "enclosure", "quantity"],
    ["A 1", 300, 210, 40, "slipcase", 2],
    ["A 2", 298, 208, 38, "slipcase", 1],
    ["A 3", 200, 150, 20, "slipcase", 1],
  ],
  ["wall board=2 mm", "covering=none; lining=none; covering allowance=none; fit=2; round to=none"],
);
const LOOKS = { looks: 60_000 };

/*
 * By hand, board 2 mm and fit 2, upright: 40 + 2 + 4 = 46 mm along the shelf, twice; 38 + 6 = 44; 20 + 6 = 26. In one size
 * all are as the thickest: 4 x 46.
 */
test("shelf, board and cost of one size, of as many sizes as objects, and of each made to measure", () => {
  const own = ownPoint(SURVEY);
  expect(own.shelf).toBeCloseTo(162, 6);
  expect(curvePoint(SURVEY, 1, LOOKS).shelf).toBeCloseTo(184, 6);
  const all = curvePoint(SURVEY, 3, LOOKS);
  expect([all.sizes, all.shelf]).toEqual([3, expect.closeTo(162, 6)]);
  expect(all.boardM2).toBeCloseTo(own.boardM2, 9);
  expect(all.cost).toBeCloseTo(own.cost!, 9);
});

test("more sizes never take more board", () => {
  const boards = [1, 2, 3].map((count) => curvePoint(SURVEY, count, LOOKS).boardM2);
  expect(boards).toEqual([...boards].sort((one, other) => other - one));
});

test("the curves have names that lie apart, and the picture holds every count", () => {
  const flat = [1.4, 1.1, 1];
  const svg = svgOf(
    curvePicture(
      "Curves",
      [1, 5, 30],
      ["board", "cost", "shelf"].map((name) => ({ name, shares: flat })),
    ),
  );
  for (const text of ["board", "cost", "shelf", "30", "+40 %", "+0 %"]) expect(svg).toContain(`>${text}<`);
  const { shapes } = curvePicture(
    "Curves",
    [1, 5, 30],
    ["board", "cost"].map((name) => ({ name, shares: flat })),
  );
  const heights = shapes.flatMap((shape) =>
    shape.kind === "text" && ["board", "cost"].includes(shape.text) ? [shape.at[1]] : [],
  );
  expect(Math.abs(heights[0]! - heights[1]!)).toBeGreaterThanOrEqual(11);
});
