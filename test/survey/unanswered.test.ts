import { sizeSurvey } from "../../src/survey/sizeSurvey";
import { surveyTable } from "../../src/survey/surveyAnswers";
import { unanswered } from "../../src/survey/unanswered";

const HEADINGS = ["Shelfmark", "Height", "Width", "Depth", "Enclosure", "Weight (kg)"];

function told(rows: readonly (readonly (string | number)[])[], figures: readonly string[]): readonly string[] {
  const cells = [HEADINGS, ...rows];
  const sized = sizeSurvey(cells, []);
  return unanswered(sized, surveyTable(sized, figures, cells));
}

test("rows without an answer are told with their numbers and the reason that they share", () => {
  const rows = Array.from({ length: 7 }, (_, i) => [`S ${i}`, 300, 210, 40, "tray", ""]);
  const lines = told(rows, ["outside height", "caliper", "lid base length"]);
  expect(lines).toEqual([
    expect.stringMatching(
      /^no lid base length for 7 rows \(2, 3, 4, 5, 6, \.\.\.\): this tray has no part called lid base; it has base, /,
    ),
  ]);
});

test("where the reasons differ, the first is told as that of its row", () => {
  const rows = [
    ["S 1", 300, 210, 40, "slipcase", ""],
    ["S 2", 300, 210, 40, "clamshell box", ""],
    ["S 3", 300, 210, 40, "tray", ""],
  ];
  const [line] = told(rows, ["side wall length"]);
  expect(line).toMatch(/^no side wall length for 2 rows \(2, 3\): in row 2 this slipcase has no part called side wall/);
  expect(line!.length).toBeLessThan(220);
});

test("one row is named alone; a row that cannot be sized says so in its problem, and is not told again", () => {
  const rows = [
    ["S 1", 300, 210, 40, "lidded box", 0.3],
    ["S 2", "4O", 210, 40, "tray", ""],
    ["S 3", 300, 210, 40, "tray", ""],
    ["S 4", 300, 210, 40, "none", ""],
  ];
  expect(told(rows, ["caliper", "lid base length", "problem"])).toEqual([
    expect.stringMatching(/^no lid base length for row 4: this tray has no part called lid base/),
  ]);
});
