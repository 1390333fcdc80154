import { printedTable } from "../estimate/printedTable";
import { shelfRows, shelfSpace, shelfTotal, tooTallRows } from "../survey/shelfSpace";
import type { SizedSurvey } from "../survey/sizeSurvey";
import type { SurveyCells } from "../survey/surveyAnswers";
import type { Section } from "./section";

/** What the enclosures take in the store beside what the objects take now. */
export function storageSection(survey: SizedSurvey, cells: SurveyCells): Section {
  const { settings } = survey;
  const space = shelfSpace(survey, cells);
  const tooTall = tooTallRows(space, settings);
  const said = [true, false].flatMap((upright) => {
    const total = shelfTotal(space, upright);
    if (total === undefined) return [];
    const unit = `${settings.answerUnit === "in" ? "ft" : "m"}${upright ? "" : "2"}`;
    const { enclosures, now, boxed, more } = total;
    const change = more < 0 ? `${-more} ${unit} less` : `${more} ${unit} more`;
    const [stand, place] = upright ? ["stand upright", "of shelf"] : ["lie flat", "of shelf or drawer"];
    return [
      `${enclosures} enclosures ${stand}. They take ${boxed} ${unit} ${place}; their objects take ${now} ${unit} now: ${change}.`,
    ];
  });
  const tall = tooTall.length === 0 ? [] : [`${tooTall.length - 1} are too tall for every shelf, and are named below.`];
  return {
    heading: "Effect on storage",
    paragraphs: [...said, ...tall],
    tables: [
      ["Room in the store", printedTable(shelfRows(space, settings))],
      ...(tooTall.length === 0 ? [] : [["Too tall for every shelf", printedTable(tooTall)] as const]),
    ],
  };
}
