import fc from "fast-check";
import ExcelJS from "exceljs";
import { columnLetters } from "../../src/workbook/cellRef";
import { NOT_USED, Unanswered, type Question, type Word } from "../../src/headings/questions";
import { readBookSurvey } from "../../src/filling/readBookSurvey";
import { checkedSurvey } from "../../src/survey/checkedSurvey";
import { bookOf } from "../../src/workbook/book";
import { openWorkbook } from "../../src/workbook/openWorkbook";

type Cells = readonly (readonly (string | number | null)[])[];

/** The questions about a survey; none where it is read. */
function questionsOn(cells: Cells, words: readonly Word[]): readonly Question[] {
  try {
    checkedSurvey(cells, [], { words });
    return [];
  } catch (error) {
    if (error instanceof Unanswered) return error.questions;
    throw error;
  }
}

/** Headings of which many could be two things, with cells that fit them more or less. */
const COLUMNS: readonly (readonly [heading: string, cells: readonly (string | number | null)[]])[] = [
  ["Height", [30, 31, 32]],
  ["Height (cm)", [30, 31, 32]],
  ["H", [300, 310, "n/a"]],
  ["Width", [20, 21, 22]],
  ["W", [20, 21, 22]],
  ["Depth", [4, 5, 6]],
  ["Thickness mm", [40, 50, 60]],
  ["Length", [30, 31, 32]],
  ["Ø", [30, 31, 32]],
  ["Dimensions", ["30 x 20 x 4 cm", "31 x 21 x 5", "32 x 22 x 6"]],
  ["Format", ["30 x 20 x 4 cm", "folio", null]],
  ["Weight", [900, 1200, 700]],
  ["Enclosure", ["box", "tray", "slipcase"]],
  ["Enclosure needed?", ["yes", "no", "yes"]],
  ["Old box", ["box", "none", "box"]],
  ["Box", ["A", "A", "B"]],
  ["Box no.", [1, 2, 3]],
  ["Construction", ["around base", "sewn", "glued"]],
  ["Joint", [5, "weak", "split"]],
  ["Covering", ["cloth", "leather", "none"]],
  ["Shelfmark", ["A 1", "A 2", "A 3"]],
  ["No.", [1, 2, 3]],
  ["", [7, 8, 9]],
];

test("a declined column is never asked about again", () => {
  const survey = fc
    .shuffledSubarray([...COLUMNS], { minLength: 4, maxLength: 12 })
    .map((columns): Cells =>
      [0, 1, 2, 3].map((row) => columns.map(([name, cells]) => (row === 0 ? name : cells[row - 1]!))),
    );
  fc.assert(
    fc.property(survey, fc.nat(), (cells, which) => {
      const column = which % cells[0]!.length;
      const heading = String(cells[0]![column]);
      const declined = `column ${columnLetters(column + 1)}`;
      const asked = questionsOn(cells, [{ word: declined, meaning: NOT_USED, given: true }]);
      for (const { text, choices } of asked) {
        expect(text).not.toContain(`${declined} `);
        const words = choices.flatMap(({ effect }) => effect.words ?? []).map(({ word }) => word);
        expect(words).not.toContain(heading === "" ? columnLetters(column + 1) : heading);
      }
    }),
    { numRuns: 100 },
  );
});

test("each way to decline that a question offers ends the question about those columns", () => {
  const survey = fc
    .shuffledSubarray([...COLUMNS], { minLength: 4, maxLength: 12 })
    .map((columns): Cells =>
      [0, 1, 2, 3].map((row) => columns.map(([name, cells]) => (row === 0 ? name : cells[row - 1]!))),
    );
  fc.assert(
    fc.property(survey, (cells) => {
      for (const question of questionsOn(cells, [])) {
        const decline = question.choices.find(({ effect: { words = [] } }) => {
          return words.length > 0 && words.every(({ meaning }) => meaning === NOT_USED);
        });
        if (decline === undefined) continue;
        const words = decline.effect.words!.map((word) => ({ ...word, given: true }));
        expect(questionsOn(cells, words).map(({ text }) => text)).not.toContain(question.text);
      }
    }),
    { numRuns: 60 },
  );
});

test.each([
  ["1900", false],
  ["1904", true],
])("a date where a measure is expected is a problem with its cure, counted from %s", async (_, date1904) => {
  const book = new ExcelJS.Workbook();
  book.properties.date1904 = date1904;
  const sheet = book.addWorksheet("Survey");
  sheet.addRow(["Shelfmark", "Height (in)", "Width (in)", "Depth (in)", "Weight (lb)", "Enclosure"]);
  for (let i = 1; i <= 10; i++) sheet.addRow([`A ${i}`, 12, 8, 1 + i / 8, 2.5, "tray"]);
  const dates = ["2024-03-08", "2000-01-01", "2031-01-02"];
  dates.forEach((date, i) => {
    const cell = sheet.getCell(i + 2, i === 2 ? 2 : 4);
    cell.value = new Date(`${date}T00:00:00Z`);
    cell.numFmt = "d/m/yyyy";
  });
  const { sized } = readBookSurvey(bookOf(openWorkbook(new Uint8Array(await book.xlsx.writeBuffer()))), {
    recognise: {},
    settings: [],
  });
  const problems = sized.outcomes.flatMap((outcome) => (outcome.state === "problem" ? [outcome.error.message] : []));
  expect(problems).toEqual([
    expect.stringMatching(/^depth: got \d+; .*date/),
    expect.stringMatching(/^depth: got \d+; .*date/),
    expect.stringMatching(/^height: got \d+; .*date/),
  ]);
});

test("a column whose texts tell the unit of its numbers is read so, too, once the settings of the workbook name a unit", () => {
  const cells = [
    ["Shelfmark", "H (cm)", "W", "D (cm)", "Enclosure"],
    ["B.001", 19, 12, 3, "tray"],
    ["B.002", 25, 18, 2, "slipcase"],
    ["B.003", 22, "24 cm", 2.5, "tray"],
  ];
  const insides = (settings: readonly unknown[]) =>
    checkedSurvey(cells, settings).outcomes.map((outcome) => {
      if (outcome.state !== "sized") return outcome.state;
      const { min, max } = outcome.sized.assembly.holder.inside;
      return max.map((far, axis) => far - min[axis]!);
    });
  const unnamed = insides([]);
  expect(unnamed[0]).toContain(123);
  expect(unnamed[2]).toContain(243);
  expect(insides([[["unit", "mm"]]])).toEqual(unnamed);
});
