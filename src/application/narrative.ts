import { completenessOf, completenessText } from "../estimate/completeness";
import type { Estimate } from "../estimate/estimate";
import { costTable, moreTables } from "../estimate/estimateTables";
import { exampleNotice } from "../estimate/examplePrices";
import { leftOutRows } from "../estimate/leftOutRows";
import { printedTable } from "../estimate/printedTable";
import { proofRows, provedCounts } from "../estimate/provedCounts";
import type { Settings } from "../settings/schema";
import type { SizedSurvey } from "../survey/sizeSurvey";
import { areaUnitOf } from "../survey/summary";
import type { SurveyCells } from "../survey/surveyAnswers";
import { fundsNeeded, objectsIn } from "./fundsNeeded";
import { hazardText } from "./hazardText";
import { materialsTable } from "./materialsTable";
import { proposedKinds } from "./proposedKinds";
import type { Narrative } from "./section";
import { storageSection } from "./storageSection";

export interface NarrativeSource {
  readonly survey: SizedSurvey;
  readonly cells: SurveyCells;
  readonly estimate: Estimate;
  /** What the survey is called: its file without the folder. */
  readonly name: string;
}

/** What is proposed, why, how, what it costs and what it changes in the store. Every number is that of the tables. */
export function narrativeOf({ survey, cells, estimate, name }: NarrativeSource): Narrative {
  const { settings } = survey;
  const plans = estimate.plans.flatMap((group) => group.plans);
  const kinds = proposedKinds(survey, cells);
  const more = new Map(moreTables(estimate, settings).map(([title, rows]) => [title, printedTable(rows)]));
  const tables = (...titles: readonly string[]) =>
    titles.flatMap((title) => (more.has(title) ? [[title, more.get(title)!] as const] : []));
  const leftOut = leftOutRows(survey, plans, estimate);
  const counts = provedCounts(estimate);
  return {
    title: `Enclosures for ${objectsIn(survey)} objects`,
    notice: exampleNotice(estimate, settings),
    sections: [
      { heading: "Summary", paragraphs: [fundsNeeded(estimate, survey), TO_FILL_IN], tables: [] },
      {
        heading: "What is proposed, and why",
        paragraphs: [
          "Each object gets an enclosure of the kind that its size, weight and use ask for, made to its own measures. An enclosure keeps off light and dust, slows changes of damp and heat, carries the weight of the object, and lets it be moved without being touched.",
          ...kinds.paragraphs,
        ],
        tables: [["Number by kind", printedTable(kinds.table)]],
      },
      {
        heading: "Method",
        paragraphs: [
          `The sizes are those of the survey (${name}): height, width and depth of each object at its largest points. Every enclosure is put together by a program, as a model in space; its boards, cards, coverings and linings are read off that model, so that each piece of the cut list fits the others. Board is chosen for each object by the workshop's own guide, by kind, size and weight.`,
          "At the bench the pieces are cut by matching them to each other, with the grain as the cut list says. Knives and board shears are used with their guards; heavy boxes are lifted by two people; local rules come first.",
          ...hazardText(survey),
        ],
        tables: [["Materials, as the stock table describes them", printedTable(materialsTable(estimate, settings))]],
      },
      {
        heading: "Proof of the counts",
        paragraphs: [
          `Sheets are counted from cutting plans, not by area: each plan lays every piece on a sheet with its grain kept, and is checked by a second part of the program. ${counts.proved} of ${counts.all} counts of sheets are proved: no plan cuts these parts, at finished size, from fewer sheets.`,
          ...(settings.spoilage === 0
            ? []
            : [
                `The budget buys ${settings.spoilage} % more for spoilt pieces, in whole sheets; the plans do not use them.`,
              ]),
        ],
        tables: [["What the plans take", printedTable(proofRows(estimate, settings))]],
      },
      { heading: "Hours", paragraphs: hoursText(estimate, settings), tables: tables("Hours") },
      {
        heading: "Budget",
        paragraphs: [
          `Money is in ${settings.currency}, areas are in ${areaUnitOf(settings.answerUnit)}. Totals are sums of the lines as printed. Contingency is ${settings.contingency} % of materials.`,
          "Whether a cost is allowed (tax, indirect cost, contingency, labour in kind) is the funder's rule: check it against the call before this is sent.",
        ],
        tables: [
          ["Budget", printedTable(costTable(estimate, settings))],
          ...tables("Who pays", "What each enclosure costs, by kind", "What each enclosure costs, by batch"),
        ],
      },
      {
        heading: "Suppliers",
        paragraphs: [suppliersText(estimate)],
        tables: tables("Where it is bought"),
      },
      storageSection(survey, cells),
      {
        heading: "What this budget does not hold",
        paragraphs: [
          `Rows of the survey that ask for an enclosure: ${completenessText(completenessOf(survey, plans))}`,
          leftOut.length === 0
            ? "Every row was sized, every piece fits a sheet, and every line has a price."
            : "Mend these before the application is sent, or say in it why they are left out.",
        ],
        tables: leftOut.length === 0 ? [] : [["Left out", printedTable(leftOut)]],
      },
    ],
  };
}

const TO_FILL_IN =
  "To be filled in by the applicant: [who applies]; [who makes the enclosures, and their training]; [from when to when]; [where the objects are kept].";

function hoursText({ lines, hours }: Estimate, { currency, labourRate, labourPaid, hoursBySize }: Settings): string[] {
  const labour = lines.filter(({ material }) => material === "labour");
  if (labour.length === 0) return ["No hours are in this budget."];
  const all = Number(labour.reduce((sum, { quantity }) => sum + quantity, 0).toFixed(2));
  const rate =
    labourRate === 0
      ? "no rate is set, so that they are not in the cost"
      : `${currency} ${labourRate.toFixed(2)} an hour`;
  const size = hoursBySize
    ? " Hours of a kind are given for an object of 300 x 210 x 40 mm, and larger or smaller ones take more or less by the area of their board."
    : "";
  const examples = hours.some(({ standing }) => standing === "example")
    ? " Values marked example are from memory, to be replaced by the workshop's own."
    : "";
  const paid = labourPaid ? "they are requested" : "they are given in kind";
  return [`The work takes ${all} hours: ${rate}${labourRate === 0 ? "" : `; ${paid}`}.${size}${examples}`];
}

function suppliersText({ lines }: Estimate): string {
  const names = [...new Set(lines.map(({ supplier }) => supplier).filter((name) => name !== ""))];
  const without = lines.filter(({ pack, supplier }) => pack !== undefined && supplier === "");
  const missing = without.length === 0 ? "" : " Where no supplier stands, none is named in the stock table yet.";
  return names.length === 0
    ? "No supplier is named yet: the stock table and the settings have columns for supplier, item number and quote date."
    : `Materials are bought from ${names.join(", ")}.${missing}`;
}
