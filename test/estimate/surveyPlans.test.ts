import { demandsOf } from "../../src/estimate/demandsOf";
import { surveyPlans } from "../../src/estimate/surveyPlans";
import { sizedLately } from "../../src/survey/sizedLately";
import { sizeSurvey } from "../../src/survey/sizeSurvey";

const CELLS = [
  ["id", "height", "width", "depth", "enclosure"],
  ["A", 200, 150, 30, "clamshell box"],
];
const OPTIONS = { budget: { iterations: 20 } };
const copy = () => CELLS.map((row) => [...row]);

test("functions that ask for the same cells and settings share one sizing and one plan", () => {
  const survey = sizedLately(copy(), [[["edge trim", 5]]]);
  expect(sizedLately(copy(), [[["edge trim", 5]]])).toBe(survey);
  const [first, ...others] = surveyPlans(survey, OPTIONS).all();
  expect(surveyPlans(survey, OPTIONS).planOf(first!.stock)).toBe(first);
  expect(others.length).toBeGreaterThan(0);
  expect(demandsOf(survey)).toBe(demandsOf(survey));
});

test.each<[string, readonly (readonly unknown[])[], readonly unknown[]]>([
  ["a cell", copy().map((row, at) => (at === 1 ? row.with(1, 201) : row)), [[["edge trim", 5]]]],
  ["a setting", copy(), [[["edge trim", 6]]]],
  ["a text for a number", copy().map((row, at) => (at === 1 ? row.with(1, "200") : row)), [[["edge trim", 5]]]],
  ["no settings", copy(), []],
])("what differs in %s is sized again, as by itself", (_, cells, settings) => {
  const before = sizedLately(copy(), [[["edge trim", 5]]]);
  const other = sizedLately(cells, settings);
  expect(other).not.toBe(before);
  expect(JSON.stringify(other)).toBe(JSON.stringify(sizeSurvey(cells, settings)));
});

test("tape is planned for all batches together, and passes its check", () => {
  const cells = [
    ["id", "height", "width", "depth", "enclosure", "closure"],
    ...["A", "B", "C"].map((id) => [id, 200, 150, 30, "portfolio", "ties"]),
  ];
  const plans = surveyPlans(sizeSurvey(cells, ["batch size=1"]), OPTIONS);
  const tape = plans.stocks.filter((stock) => stock.includes("tape")).map(plans.planOf);
  expect(tape.map(({ plan }) => new Set(plan?.sheets[0]?.placements.map(({ piece }) => piece.item)).size)).toEqual([3]);
});
