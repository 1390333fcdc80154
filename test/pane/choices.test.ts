import { figureOf } from "../../src/item/figureCatalogue";
import { sizeSurvey } from "../../src/survey/sizeSurvey";
import { figureChoices } from "../../src/pane/figureChoices";
import { cautionsAt, comparedKinds, itemAt, itemFacts, partsToCut } from "../../src/pane/itemFacts";
import { roundsOf } from "../../src/pane/searchPlans";
import { KINDS } from "../../src/enclosure/registry";

const survey = (...rows: (string | number)[][]) =>
  sizeSurvey([["Identifier", "Title", "Height", "Width", "Depth", "Enclosure", "Box", "Hazard"], ...rows], []);

test("every figure on offer is one that a column can hold, and each stands once", () => {
  const sized = survey(...KINDS.map(({ name }, i) => [`A${i}`, "", 300, 210, 40, name, "", ""]));
  const names = figureChoices(sized).flatMap(({ choices }) => choices.map(({ name }) => name));
  for (const name of names) expect({ name, known: figureOf(name) !== undefined }).toEqual({ name, known: true });
  expect(new Set(names).size).toBe(names.length);
  expect(names).toEqual(
    expect.arrayContaining(["side wall height", "wall strip length", "case board width", "caliper"]),
  );
});

test("parts on offer are those of the survey's own enclosures", () => {
  const names = figureChoices(survey(["A", "", 300, 210, 40, "tray", "", ""])).flatMap(({ choices }) =>
    choices.map(({ name }) => name),
  );
  expect(names).toContain("head wall length");
  expect(names.filter((name) => name.startsWith("case"))).toEqual([]);
});

test("a row in the box of another shows the first of that box", () => {
  const sized = survey(
    ["A", "first", 300, 210, 40, "tray", "B1", ""],
    ["B", "second", 280, 200, 30, "tray", "B1", ""],
    ["C", "", 300, 210, "", "tray", "", ""],
  );
  expect([itemAt(sized, 2), itemAt(sized, 3), itemAt(sized, 4), itemAt(sized, 9)]).toEqual([0, 0, 2, undefined]);
  expect(itemFacts(sized, 0)).toMatchObject({ identifier: "A", title: "first", instead: undefined, quantity: 1 });
  expect(itemFacts(sized, 2).instead).toContain("depth: got a blank");
});

test("a hazard is the first caution", () => {
  const sized = survey(["A", "", 300, 210, 40, "tray", "", "arsenic"]);
  expect(cautionsAt(sized.survey.items[0]!, sized.outcomes[0]!)[0]).toContain("arsenic");
});

test("the same object stands in every kind, the chosen one marked, its parts as the cut list has them", () => {
  const sized = survey(["A", "", 300, 210, 40, "slipcase", "", ""]);
  const outcome = sized.outcomes[0]!;
  if (outcome.state !== "sized") throw new Error("not sized");
  const kinds = comparedKinds(outcome.sized);
  expect(kinds.map(({ kind }) => kind)).toEqual(KINDS.map(({ name }) => name));
  expect(kinds.filter(({ chosen }) => chosen).map(({ kind }) => kind)).toEqual(["slipcase"]);
  for (const { outside, why } of kinds) expect(why ?? outside).toMatch(/^[\d.]+ × [\d.]+ × [\d.]+$/);
  expect(partsToCut(outcome.sized).map(({ part }) => part)).toEqual(expect.arrayContaining(["side", "back wall"]));
});

test.each([
  [0, []],
  [1, [1000]],
  [10, [1000, 2000, 7000]],
  [60, [1000, 2000, 4000, 8000, 16_000, 29_000]],
])("%i seconds are searched in rounds that grow and fill the time", (seconds, rounds) => {
  expect(roundsOf(seconds)).toEqual(rounds);
  expect(rounds.reduce((sum, each) => sum + each, 0)).toBe(seconds * 1000);
});
