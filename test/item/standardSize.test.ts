import { boardAreaAnswer } from "../../src/item/answers";
import { sizeItem } from "../../src/item/sizeItem";
import { insideOf } from "../../src/item/standardSize";
import { settingsOf } from "../../src/settings/settingsOf";
import { sizeSurvey } from "../../src/survey/sizeSurvey";
import { sizesTable } from "../../src/survey/standardSizes/sizesTable";
import { surveySizes } from "../../src/survey/standardSizes/surveySizes";

const SIZES = [
  ["size", "enclosure", "height", "width", "depth"],
  ["A", "tray", 310, 220, 50],
  ["B", "tray", 200, 150, 30],
  ["A", "slipcase", 320, 230, 60],
];
const ITEM = { height: 300, width: 210, depth: 40 };
const sized = (size: string, kind = "tray", ...more: readonly unknown[]) =>
  sizeItem(ITEM, kind, undefined, settingsOf([SIZES, `wall board=2 mm; size=${size}`, ...more]));

test("an enclosure of a standard size has that inside, of the size of its own kind", () => {
  expect(insideOf(sized("a").assembly)).toEqual({ x: 220, y: 310, z: 50 });
  expect(insideOf(sized("A", "slipcase").assembly)).toEqual({ x: 230, y: 320, z: 60 });
  // By hand, walls around the base: base 220 x 310, two walls 314 x 52 and two 220 x 52, in m2.
  const area = boardAreaAnswer(sized("A", "tray", "construction=around base; flange card=0.4 mm"), "all");
  expect(area).toBeCloseTo((220 * 310 + 2 * 314 * 52 + 2 * 220 * 52) / 1e6, 9);
});

test("made to measure, and a blank, are made to measure", () => {
  const own = insideOf(sized("made to measure").assembly);
  expect(own).toEqual(insideOf(sizeItem(ITEM, "tray", undefined, settingsOf(["wall board=2 mm"])).assembly));
});

test.each([
  ["B", "tray", /^size: got "B", 200 mm x 150 mm x 30 mm inside; the object needs 303 mm x 213 mm x 42\.5 mm; choose/],
  ["C", "tray", /^size: got "C"; give A or B; leave it blank to make it to measure$/],
  ["A", "lidded box", /^size: got "A"; the table of sizes has none for a lidded box; leave it blank/],
  ["310 x 220 x 50", "tray", /^size: got "310 x 220 x 50"; give the name of a standard size such as A$/],
])("size %s of a %s is refused with the cure", (size, kind, message) => {
  expect(() => sized(size, kind)).toThrow(message);
});

test("without a table a size says which table is missing", () => {
  expect(() => sizeItem(ITEM, "tray", undefined, settingsOf(["wall board=2 mm; size=A"]))).toThrow(
    /^size: got "A"; give the table of sizes among the settings; with the headings size, enclosure, height, width/,
  );
});

const ROWS = [
  ["id", "height", "width", "depth", "enclosure"],
  ["A 1", 300, 210, 40, "tray"],
  ["A 2", 290, 200, 35, "tray"],
  ["A 3", 120, 90, 20, "tray"],
];

test("a survey with a column of its sizes is sized by them, and its sizes can be chosen again", () => {
  const survey = sizeSurvey(ROWS, ["wall board=2 mm"]);
  const table = sizesTable(survey, surveySizes(survey, 2, { looks: 100_000 }));
  const found = surveySizes(survey, 2, { looks: 100_000 });
  const cells = ROWS.map((row, at) => [...row, at === 0 ? "Size" : found.sizeOf.get(at - 1)!]);
  const again = sizeSurvey(cells, ["wall board=2 mm", table]);
  expect(again.survey.recognition.settings.map(({ setting }) => setting)).toEqual(["size"]);
  const insides = again.outcomes.map((outcome) => outcome.state === "sized" && insideOf(outcome.sized.assembly));
  expect(insides[0]).toEqual(insides[1]);
  expect(insides[0]).not.toEqual(insides[2]);
  expect(sizesTable(again, surveySizes(again, 2, { looks: 100_000 }))).toEqual(table);
});

test("a column headed Size with measures stays a column of measures", () => {
  const { survey, outcomes } = sizeSurvey(
    [
      ["id", "Size", "enclosure"],
      ["A 1", "30 x 21 x 4 cm", "tray"],
      ["A 2", "H 20 cm, W 15 cm, D 3 cm", "tray"],
    ],
    [],
  );
  expect(survey.recognition.columns.dimensions?.column).toBe(2);
  expect(outcomes.map(({ state }) => state)).toEqual(["sized", "sized"]);
});
