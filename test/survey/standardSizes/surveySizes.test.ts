import fc from "fast-check";
import { extent, X, Y, Z } from "../../../src/enclosure/space";
import { sizeItem } from "../../../src/item/sizeItem";
import { MADE_TO_MEASURE } from "../../../src/settings/definitions/shelfSettings";
import { settingsOf } from "../../../src/settings/settingsOf";
import { sizeSurvey } from "../../../src/survey/sizeSurvey";
import { sizeNamed, sizesAnswer, sizesTable } from "../../../src/survey/standardSizes/sizesTable";
import { enlarged, insideOf } from "../../../src/item/standardSize";
import { surveySizes } from "../../../src/survey/standardSizes/surveySizes";
import { EVERY_STRUCTURE } from "../../enclosure/everyEnclosure";

const LOOKS = { looks: 200_000 };
const SET = ["wall board=2 mm"];

const CELLS = [
  ["id", "height", "width", "depth", "enclosure", "quantity"],
  ["A 1", 300, 210, 40, "slipcase", 2],
  ["A 2", 298, 208, 39, "slipcase", 1],
  ["A 3", 200, 150, 20, "slipcase", 1],
  ["A 4", 300, 210, 40, "tray", 1],
];

test("items that are nearly alike share a size; kinds never do", () => {
  const survey = sizeSurvey(CELLS, SET);
  const found = surveySizes(survey, 3, LOOKS);
  expect([...found.sizeOf.values()].filter((name) => /^[ABC]$/.test(name))).toHaveLength(4);
  const [one, two, three, four] = [...found.sizeOf.values()];
  expect([one === two, one === three, three === four]).toEqual([true, false, false]);
  expect(found.sizes.map(({ enclosures }) => enclosures).sort()).toEqual([1, 1, 3]);
  expect(found.leastM2).toBeLessThanOrEqual(found.totalM2);
  expect(found.totalM2).toBeGreaterThan(found.ownM2);
});

test("sums of the table add up, and each item finds its size by name", () => {
  const survey = sizeSurvey(CELLS, SET);
  const table = sizesTable(survey, surveySizes(survey, 3, LOOKS));
  const sizes = table.slice(1, 4);
  const total = table.find(([name]) => name === "total")!;
  const sum = (column: number) => sizes.reduce((all, row) => all + (row[column] as number), 0);
  expect([sum(5), sum(8)]).toEqual([total[5], total[8]]);
  expect(sum(7)).toBeCloseTo(total[7] as number, 9);
  const settings = settingsOf(SET);
  const named = (height: number, width: number, depth: number, kind: string) =>
    sizeNamed(sizeItem({ height, width, depth }, kind, undefined, settings), table);
  expect(named(300, 210, 40, "slipcase")).toBe(named(298, 208, 39, "slipcase"));
  expect(named(310, 210, 40, "slipcase")).toBe(MADE_TO_MEASURE);
  expect(named(300, 210, 40, "lidded box")).toBe(MADE_TO_MEASURE);
});

const READY_MADE = [
  ["size", "enclosure", "height", "width", "depth", "price"],
  ["R 3", "slipcase", 400, 300, 60, 9],
  // As large as the first item and its fit: its own covering is not in the way.
  ["R 1", "slipcase", 301.5, 211.5, 41.5, 5],
  ["R 0", "slipcase", 301.5, 211.5, 41.5, 5],
  ["R 2", "slipcase", 210, 160, 30, 4],
];

test("of a list with prices the cheapest boxes are taken, by hand, and what goes into none is named", () => {
  const survey = sizeSurvey(CELLS, [...SET, "fit=1.5 mm; fit width=1.5 mm", READY_MADE]);
  // Three in R 0 (of equals the first by name) at 5 and one in R 2 at 4; no tray is in the list.
  expect(sizesAnswer(survey, 2, LOOKS)).toEqual([
    ["size", "enclosure", "height", "width", "depth", "items", "price", "total", "fillers", "least possible"],
    ["R 2", "slipcase", 210, 160, 30, 1, 4, 4, 3, ""],
    ["R 0", "slipcase", 301.5, 211.5, 41.5, 3, 5, 15, 0, ""],
    ["made to measure", "", "", "", "", 1, "", "", "", ""],
    ["total", "", "", "", "", 5, "", 19, 3, expect.closeTo(19, 4)],
  ]);
  // One size alone: all but the tray go into R 0, since fewest into none comes first.
  expect(sizesAnswer(survey, 1, LOOKS)[1]!.slice(0, 8)).toEqual(["R 0", "slipcase", 301.5, 211.5, 41.5, 4, 5, 20]);
  const settings = settingsOf([...SET, "fit=1.5 mm; fit width=1.5 mm"]);
  const first = sizeItem({ height: 300, width: 210, depth: 40 }, "slipcase", undefined, settings);
  expect(sizeNamed(first, READY_MADE)).toBe("R 0");
});

test("a list in which a price is missing says which", () => {
  const gap = READY_MADE.map((row) => (row[0] === "R 2" ? [...row.slice(0, 5), ""] : row));
  expect(() => sizesAnswer(sizeSurvey(CELLS, [...SET, gap]), 2, LOOKS)).toThrow(
    "sizes: got no price for R 2; give a price for every size, or for none; a table with prices is a list of boxes to buy",
  );
});

test("a survey of which no row can be sized has no size, and ends", () => {
  const cells = [CELLS[0]!, ["A 1", "3OO", 210, 40, "slipcase", 1]];
  const survey = sizeSurvey(cells, SET);
  const found = surveySizes(survey, 3, LOOKS);
  expect([found.sizes, found.totalM2, found.leastM2]).toEqual([[], 0, 0]);
  expect(sizesTable(survey, found).at(-1)).toEqual(["A 1", expect.stringMatching(/^height: got "3OO"/)]);
});

test("a table without a heading, and a count that is none, are refused in words", () => {
  const sized = sizeItem({ height: 300, width: 210, depth: 40 }, "tray", undefined, settingsOf(SET));
  expect(() => sizeNamed(sized, [["size", "height"]])).toThrow(
    "sizes: got a range without enclosure, width and depth; give a table with the headings size, enclosure, height, " +
      "width and depth; such as the answer of ENC.SIZES, its headings included",
  );
});

test("any kind and construction, enlarged, has exactly the larger inside", () => {
  const structure = fc.constantFrom(...EVERY_STRUCTURE);
  const side = (least: number, most: number) => fc.integer({ min: least, max: most });
  fc.assert(
    fc.property(
      structure,
      fc.tuple(side(150, 400), side(120, 300), side(15, 80)),
      fc.tuple(side(0, 80), side(0, 80), side(0, 80)),
      ({ kind, text }, [height, width, depth], more) => {
        const sized = sizeItem(
          { height, width, depth },
          kind.name,
          undefined,
          settingsOf([[["setting", "value"]], `${text}; wall board=2 mm`]),
        );
        const from = insideOf(sized.assembly);
        const size = { group: 0, x: from.x + more[0] / 2, y: from.y + more[1] / 2, z: from.z + more[2] / 2 };
        const { inside } = enlarged(sized, size).holder;
        expect(extent(inside, X)).toBeCloseTo(size.x, 6);
        expect(extent(inside, Y)).toBeCloseTo(size.y, 6);
        expect(extent(inside, Z)).toBeCloseTo(size.z, 6);
      },
    ),
    { numRuns: 150 },
  );
});
