import { causesOf } from "../../src/pane/causes";
import { ODD_SIZES, type Word } from "../../src/headings/questions";
import { checkedSurvey } from "../../src/survey/checkedSurvey";

const ROWS = [
  ["Shelfmark", "Height (cm)", "Width (cm)", "Depth (cm)", "Weight (kg)", "Unit", "Enclosure"],
  ["A 1", 30, 21, 4, 1.2, "cm", "tray"],
  ["A 2", 620, 21, 4, 1.2, null, "tray"],
  ["A 3", 710, 21, 4, 1.2, null, "tray"],
  ["A 4", "3O", 21, 4, 1.2, null, "tray"],
  ["A 5", 12, 8, 2, 1.2, "tommer", "tray"],
  ["A 6", 11, 8, 2, 1.2, "Tommer", "tray"],
  ["A 7", 30, 21, 4, 90_000, "cm", "tray"],
  ["A 8", 30, 21, 4, 1.2, null, "thing"],
];
const KEEP: Word = { word: ODD_SIZES, meaning: "keep" };

const sized = (words: readonly Word[]) => checkedSurvey(ROWS, [], { words: [KEEP, ...words] });
const problems = (words: readonly Word[]) =>
  sized(words).outcomes.flatMap(({ state }, i) => (state === "problem" ? [`A ${i + 1}`] : []));

test("what rows have in common is one choice that sets all of them right", () => {
  const causes = causesOf(sized([]));
  expect(causes.map(({ text }) => text)).toEqual([
    "One row says “thing”. In all of them it means",
    "2 rows say “tommer”. In all of them it means",
    "2 numbers of column B “Height (cm)” cannot be a height in cm. Plain numbers of that column are in",
    "One number of column E “Weight (kg)” cannot be a weight in kg. Plain numbers of that column are in",
  ]);
  expect(causes[3]!.choices.map(({ label }) => label)).toEqual(["g", "lb", "oz"]);
  const chosen = (at: number, label: string): readonly Word[] =>
    causes[at]!.choices.find((choice) => choice.label === label)!.effect.words!;
  expect(problems([])).toEqual(["A 2", "A 3", "A 4", "A 5", "A 6", "A 7", "A 8"]);
  expect(problems(chosen(0, "tray"))).not.toContain("A 8");
  expect(problems(chosen(1, "in"))).toEqual(["A 2", "A 3", "A 4", "A 7", "A 8"]);
  expect(problems(chosen(2, "mm"))).not.toEqual(expect.arrayContaining(["A 2"]));
  expect(problems(chosen(3, "g"))).not.toContain("A 7");
});
