import { boardReason } from "../../src/pane/boardReason";
import { sizeSurvey } from "../../src/survey/sizeSurvey";

const HEADINGS = ["Height", "Width", "Depth", "Weight", "Enclosure", "preferred board"];

function reasonOf(row: readonly unknown[], ...settings: readonly unknown[]): string {
  const [outcome] = sizeSurvey([HEADINGS, row], settings).outcomes;
  return outcome?.state === "sized" ? boardReason(outcome.sized) : JSON.stringify(outcome);
}

test.each<[readonly unknown[], readonly unknown[], string]>([
  [
    [300, 210, 40, 2, "tray", ""],
    [],
    "by the board guide: short side up to 300 mm, long side up to 420 mm, up to 3.5 kg",
  ],
  [[2000, 900, 40, 30, "tray", ""], [], "by the board guide: its row without limits"],
  [
    [300, 210, 40, "", "tray", ""],
    [],
    "by the board guide: short side up to 300 mm, long side up to 420 mm, up to 3.5 kg; by size alone, since no weight is known",
  ],
  [[300, 210, 5, 0.1, "four-flap wrapper", ""], [], "by the board guide: thickness up to 6 mm, up to 150 g"],
  [[300, 210, 40, 2, "tray", "grey board 3"], [], "as this row asks"],
  [[300, 210, 40, 2, "tray", ""], ["wall board=grey board 2"], "as the settings name it"],
  [
    [300, 210, 40, 2, "tray", ""],
    [
      [
        ["kind", "short side up to (mm)", "board"],
        ["board kinds", "", "2.2 mm"],
      ],
    ],
    "by the board guide: its row without limits; the guide asks for 2.2 mm, which is not in stock",
  ],
])("%j with %j: %s", (row, settings, reason) => {
  expect(reasonOf(row, ...settings)).toBe(reason);
});
