import { readSurvey } from "../../src/survey/sizeSurvey";
import { surveyTable } from "../../src/survey/surveyAnswers";

const table = (sizes: readonly (readonly unknown[])[], settings: readonly unknown[] = [], heading = "Height") => {
  const rows = [
    ["Identifier", heading, "Width", "Depth", "Enclosure"],
    ...sizes.map((own, index) => [`A${index + 1}`, ...own, "tray"]),
  ];
  return surveyTable(readSurvey(rows, settings), ["problem"], rows)
    .slice(1)
    .map(([problem]) => problem);
};
const MIXED = [
  ["24 cm", 180, 30],
  [25, 190, 35],
  ["30 cm", 200, 40],
  [28, 180, 30],
];
const DOUBT = "Height is read in mm, but texts of its column are in cm: write the unit in the heading or in this cell";

test("plain numbers between texts in another unit are named in the problem of their rows", () => {
  expect(table(MIXED)).toEqual(["", DOUBT, "", DOUBT]);
  expect(table(MIXED, ["unit=mm"])).toEqual(["", DOUBT, "", DOUBT]);
});

test("where the unit is plain there is no word of it", () => {
  expect(table(MIXED, ["unit=cm"])).toEqual(["", "", "", ""]);
  expect(table(MIXED, [], "Height (cm)")).toEqual(["", "", "", ""]);
  // Numbers that are as large as the others only in the workbook's unit are in that.
  expect(table(MIXED.map(([height, ...rest]) => [typeof height === "number" ? height * 10 : height, ...rest]))).toEqual(
    ["", "", "", ""],
  );
  expect(table([[240, "18 mm", 30]])).toEqual([""]);
});
