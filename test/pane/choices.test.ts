import { figureOf } from "../../src/item/figureCatalogue";
import { sizeSurvey } from "../../src/survey/sizeSurvey";
import { cautionsOfRow } from "../../src/survey/outcome";
import { surveyTable } from "../../src/survey/surveyAnswers";
import { figureChoices } from "../../src/pane/figureChoices";
import { comparedKinds, itemAt, itemFacts, partsToCut } from "../../src/pane/itemFacts";
import { kindCells } from "../../src/pane/kindCells";
import { roundsOf } from "../../src/pane/searchPlans";
import { materialCost } from "../../src/estimate/materialCost";
import type { Part } from "../../src/enclosure/part";
import { settingsOf } from "../../src/settings/settingsOf";
import { KINDS } from "../../src/enclosure/registry";

const survey = (...rows: (string | number | boolean | null)[][]) =>
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

/** The cautions of a row by its hazard: what the pane lists, and what a column of the survey holds. */
const cautionsBeside = (hazard: string | number | boolean | null) => {
  const sized = survey(["A", "", 300, 210, 40, "tray", "", hazard]);
  const inPane = itemFacts(sized, 0).cautions;
  expect(cautionsOfRow(sized.outcomes[0]!)).toEqual(inPane);
  expect(surveyTable(sized, ["cautions"], [])[1]![0]).toBe(inPane.join("; "));
  return inPane;
};

test.each<[string | number | boolean | null, string]>([
  ["arsenic", "arsenic"],
  [" red  rot\n", "red rot"],
  [1, "1"],
  [true, "TRUE"],
  ["yes", "yes"],
  ["not known", "not known"],
  ["?", "?"],
])("a hazard of %j is the first caution, in the pane and in a column alike", (cell, said) => {
  expect(cautionsBeside(cell)).toEqual([
    `hazard (${said}): assess before handling; local rules`,
    ...cautionsBeside(null),
  ]);
});

test.each([null, "", " ", 0, "0", false, "no", "No", "NONE", "n", "nil", "n/a", "-", " \u2013 ", "\u2014"])(
  "a hazard column that holds %j names no hazard",
  (cell) => {
    expect(cautionsBeside(cell).filter((caution) => caution.includes("hazard"))).toEqual([]);
    expect(cautionsBeside(cell)).toEqual(cautionsBeside(null));
  },
);

test("a box is as hazardous as what lies in it", () => {
  const sized = survey(
    ["A", "", 300, 210, 40, "tray", "B1", "no"],
    ["B", "", 300, 210, 40, "tray", "B1", "mould"],
    ["C", "", 300, 210, 40, "tray", "B1", "lead"],
  );
  expect(itemFacts(sized, 0).cautions[0]).toBe("hazard (mould, lead): assess before handling; local rules");
});

test("a title is told as it is typed, its spaces in order", () => {
  const title = (cell: string | number) => itemFacts(survey(["A", cell, 300, 210, 40, "tray", "", ""]), 0).title;
  expect([title(" Log  of a\nship "), title(1848), title("")]).toEqual(["Log of a ship", "1848", ""]);
});

test("the same object stands in every kind, the chosen one marked, its parts as the cut list has them", () => {
  const sized = survey(["A", "", 300, 210, 40, "slipcase", "", ""]);
  const outcome = sized.outcomes[0]!;
  if (outcome.state !== "sized") throw new Error("not sized");
  const kinds = comparedKinds(outcome.sized);
  expect(kinds.map(({ kind }) => kind)).toEqual(KINDS.map(({ name }) => name));
  expect(kinds.filter(({ chosen }) => chosen).map(({ kind }) => kind)).toEqual(["slipcase"]);
  for (const { outside, why } of kinds)
    expect(why ?? outside).toMatch(/^[\d.]+(?: [+−])? × [\d.]+(?: [+−])? × [\d.]+(?: [+−])?$/);
  expect(partsToCut(outcome.sized).map(({ part }) => part)).toEqual(expect.arrayContaining(["side", "back wall"]));
});

test("kinds are compared by board, material, hours, shelf width and cautions too", () => {
  const sized = survey(["A", "", 300, 210, 40, "slipcase", "", ""]);
  const outcome = sized.outcomes[0]!;
  if (outcome.state !== "sized") throw new Error("not sized");
  const requested = { ...outcome.sized.requested, labourHours: [["tray", 1.5]] as const };
  const kinds = comparedKinds({ ...outcome.sized, requested }, { hazard: "mould", heightAsTyped: "" });
  const tray = kinds.find(({ kind }) => kind === "tray")!;
  expect(tray.board).toMatch(/^conservation board/);
  expect(tray.shelfWidth).toBe(tray.outside.split(" × ")[2]);
  expect([tray.hours, kinds.find(({ kind }) => kind === "slipcase")!.hours]).toEqual([1.5, ""]);
  expect(tray.cautions[0]).toMatch(/^hazard \(mould\)/);
  // Every kind has a price for all of its stock in the starter table.
  for (const { cost, why } of kinds) if (why === undefined) expect(cost).toBeGreaterThan(0);
});

test("material costs by area: half a sheet of 0.7 m2 at 5.40, and a metre of a roll 1 m wide at 14", () => {
  const settings = settingsOf([]);
  const part = (stock: string, length: number, width: number, count = 1) =>
    ({ stock, length, width, count }) as unknown as Part;
  expect(materialCost([part("conservation board 2", 500, 350, 2)], settings)).toBeCloseTo(2.7, 9);
  expect(materialCost([part("book cloth", 1000, 1000)], settings)).toBeCloseTo(14, 9);
  expect(materialCost([part("unknown", 100, 100)], settings)).toBeUndefined();
});

test("a kind is written into the row's cell, and into those of its box that name one", () => {
  const sized = survey(
    ["A", "", 300, 210, 40, "tray", "B7", ""],
    ["B", "", 300, 210, 40, "", "B7", ""],
    ["C", "", 300, 210, 40, "tray", "", ""],
    ["D", "", 300, 210, 40, "tray", "B7", ""],
  );
  const column = sized.survey.recognition.columns.enclosure!.column;
  const cell = (row: number) => ({ sheet: "Survey", row, column, content: "slipcase" });
  expect(kindCells(sized, 0, "slipcase", "Survey")).toEqual([cell(2), cell(5)]);
  expect(kindCells(sized, 2, "slipcase", "Survey")).toEqual([cell(4)]);
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
