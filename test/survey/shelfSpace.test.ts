import { shelfSpace, shelfTable } from "../../src/survey/shelfSpace";
import { sizeSurvey } from "../../src/survey/sizeSurvey";

const CELLS = [
  ["Shelfmark", "Height", "Width", "Depth", "Enclosure", "Quantity", "Shelf"],
  ["A 1", 300, 210, 40, "slipcase", 2, "B 3"],
  ["A 2", 250, 180, 30, "slipcase", 1, "B 3"],
  ["A 3", 400, 300, 20, "tray", 1, "Plan chest"],
  ["A 4", 500, 300, 50, "clamshell box", 1, ""],
  ["A 5", "3OO", 300, 50, "clamshell box", 1, "B 3"],
];
const PLAIN = ["wall board=2 mm", "covering=none; lining=none; covering allowance=none; fit=2; round to=none"];

/*
 * By hand, board 2 mm, no covering, fit 2 in each direction. Slipcase: boards on both faces, 40 + 2 + 4 = 46 mm thick and
 * 300 + 2 + 4 = 306 high; 30 + 2 + 4 = 36 and 256. Clamshell: 50 + 2, two bases and
 * two case boards, 60. Tray: 400 + 2 + 4 = 406 by 300 + 2 + 4 = 306.
 */
test("metres of shelf now and boxed, by shelf, by how it is kept and by height", () => {
  const survey = sizeSurvey(CELLS, PLAIN);
  const { groups } = shelfSpace(survey, CELLS);
  const of = (shelf: string, height: number) =>
    groups.find((group) => group.shelf === shelf && group.height === height)!;
  expect(of("B 3", 400)).toMatchObject({ upright: true, enclosures: 2, now: 0.08, boxed: 0.09 });
  expect(of("B 3", 300)).toMatchObject({ upright: true, enclosures: 1, now: 0.03, boxed: 0.04 });
  expect(of("Plan chest", 100)).toMatchObject({ upright: false, enclosures: 1, now: 0.12, boxed: 0.12 });
  expect(groups.map(({ shelf }) => shelf)).toContain("not given");
  const table = shelfTable(survey, CELLS);
  expect(table.filter(([first]) => first === "total")).toEqual([
    ["total", "upright", "", 4, 0.16, 0.19, 0.03, "m"],
    ["total", "flat", "", 1, 0.12, 0.12, 0, "m2"],
  ]);
  expect(table.at(-1)).toEqual(["A 5", expect.stringMatching(/^height: got "3OO"/)]);
});

test("a box stands on the lowest shelf that takes it, and one too tall for all is named with its height", () => {
  const survey = sizeSurvey(CELLS, [...PLAIN, "shelf height=430 / 310"]);
  const { groups, tooTall } = shelfSpace(survey, CELLS);
  expect(groups.filter(({ upright }) => upright).map(({ shelf, height }) => [shelf, height])).toEqual([
    ["B 3", 310],
    ["not given", undefined],
  ]);
  expect(tooTall.map(({ identifier }) => identifier)).toEqual(["A 4"]);
  const table = shelfTable(survey, CELLS);
  const at = table.findIndex(([first, reason]) => first === "too tall" && reason === "reason");
  expect(table[at + 1]).toEqual(["A 4", expect.stringMatching(/^51\d(\.\d)? mm high; the highest shelf is 430 mm$/)]);
});

test("a column headed orientation says how its row is kept", () => {
  const cells = [
    ["Shelfmark", "Height", "Width", "Depth", "Enclosure", "Orientation"],
    ["A 1", 300, 210, 40, "slipcase", "flat"],
    ["A 2", 300, 210, 40, "slipcase", ""],
  ];
  expect(shelfSpace(sizeSurvey(cells, PLAIN), cells).groups.map(({ upright }) => upright)).toEqual([true, false]);
});

/** Source: National Archives of Scotland, box specification: 394 x 279 x 114 mm in board of 1.9 mm, 7 boxes to a metre. */
test("seven archive boxes of the published size go on a metre of shelf", () => {
  const cells = [
    ["id", "height", "width", "depth", "enclosure", "quantity"],
    ["A 1", 394, 279, 114, "lidded box", 7],
  ];
  const survey = sizeSurvey(cells, [
    "wall board=1.9 mm; fit=none; covering=none; lining=none; covering allowance=none",
  ]);
  const { boxed } = shelfSpace(survey, cells).groups[0]!;
  expect(boxed).toBeLessThanOrEqual(1);
  expect((boxed * 1000) / 7).toBeLessThanOrEqual(142.9);
});
