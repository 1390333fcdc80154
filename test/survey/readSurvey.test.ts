import { settingsOf } from "../../src/settings/settingsOf";
import { settingsTable } from "../../src/settings/settingsTable";
import { STARTER_STOCK, stockCells } from "../../src/settings/starterStock";
import { readSurvey } from "../../src/survey/sizeSurvey";
import { surveyTable } from "../../src/survey/surveyAnswers";
import { lettersLookedAt } from "../measure/steps";

const SHARED = [settingsTable(settingsOf([])), stockCells(STARTER_STOCK)];
const FITS = ["snug", "loose", "2.5"];
const FIGURES = ["board", "outside height"];

function surveyOf(rows: number, fitOf: (row: number) => string): readonly (readonly unknown[])[] {
  const items = Array.from({ length: rows }, (_, row) => [210, 148, 30, "lidded box", fitOf(row)]);
  return [["height", "width", "depth", "enclosure", "fit"], ...items];
}

function lettersOf(rows: number, fitOf: (row: number) => string): number {
  const cells = surveyOf(rows, fitOf);
  return lettersLookedAt(() => surveyTable(readSurvey(cells, SHARED), FIGURES, cells));
}

/** Letters of a row in a long survey, what all rows share left out. */
function lettersOfRow(fitOf: (row: number) => string): number {
  return (lettersOf(300, fitOf) - lettersOf(100, fitOf)) / 200;
}

/** The stock table and settings alone have a hundred thousand. */
const LETTERS_OF_A_ROW = 200;

test("settings and stock are read once for a survey, not once a row", () => {
  expect(lettersOfRow((row) => FITS[row % FITS.length]!)).toBeLessThan(LETTERS_OF_A_ROW);
  // Where each row has another value, that value alone is read.
  expect(lettersOfRow((row) => `${1 + row / 1000} mm`)).toBeLessThan(LETTERS_OF_A_ROW);
});
