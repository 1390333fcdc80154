import { cutListToRead } from "../../src/filling/cutListToRead";
import { sizeSurvey } from "../../src/survey/sizeSurvey";

const rows = [
  ["id", "height", "width", "depth", "enclosure"],
  ["A", "300 mm", "210 mm", "40 mm", "tray"],
];

test("in inches a cut list has numbers to add up, then what is read off a rule", () => {
  const [headings = [], ...list] = cutListToRead(sizeSurvey(rows, ["unit=in"]));
  expect(headings.slice(-2)).toEqual(["length, on a rule", "width, on a rule"]);
  const base = list.find((row) => row.includes("base"))!;
  const length = base[headings.indexOf("length")] as number;
  // By hand: inside 300 + 3 mm of fit, up to a step of 1/32 in: 303.2125 mm = 11 15/16 in.
  expect(length).toBeCloseTo(11.9375, 6);
  expect(base.at(-2)).toBe("11 15/16 in");
  for (const row of list) expect(row.at(-1)).toMatch(/^(\d+ )?(\d+\/\d+|\d+)( [+−])? in$/);
});

test("in millimetres it is the table of the cell function", () => {
  expect(cutListToRead(sizeSurvey(rows, []))[0]).not.toContain("length, on a rule");
});
