import { zipSync } from "fflate";
import { fundsNeeded } from "../application/fundsNeeded";
import { itemList } from "../application/itemList";
import { narrativeOf } from "../application/narrative";
import type { Narrative } from "../application/section";
import { assembledView } from "../drawing/assembledView";
import { ON_WHITE } from "../drawing/look";
import type { Picture } from "../drawing/picture";
import { svgOf } from "../drawing/svgOf";
import { belowEstimate } from "../estimate/budget";
import type { Estimate } from "../estimate/estimate";
import { estimateTable } from "../estimate/estimateTables";
import { exampleNotice } from "../estimate/examplePrices";
import { estimateSheet } from "../filling/estimateSheet";
import { plainRows } from "../item/answers";
import { InputError } from "../measure/errors";
import { applicationFile, type ApplicationOptions } from "../paper/applicationFile";
import type { FontLoader } from "../paper/fonts";
import { shelfTable } from "../survey/shelfSpace";
import type { SizedSurvey } from "../survey/sizeSurvey";
import type { SurveyCells } from "../survey/surveyAnswers";
import { createWorkbook } from "../workbook/createWorkbook";
import { writeCsv } from "../workbook/writeCsv";
import { narrativeDocx } from "./narrativeDocx";
import { narrativeText } from "./narrativeText";

export interface PackSource {
  readonly survey: SizedSurvey;
  readonly cells: SurveyCells;
  readonly estimate: Estimate;
  /** What the survey is called. */
  readonly name: string;
}

export interface ApplicationPack {
  /** Names with a slash where a file is in a folder of its own. */
  readonly files: readonly (readonly [name: string, bytes: Uint8Array])[];
  /** That prices are examples; empty where none is. */
  readonly notice: string;
  /** What the funder is asked for. */
  readonly funds: string;
  readonly narrative: Narrative;
}

export const PACK_PDF = "application.pdf";
export const PACK_DOCUMENT = "narrative.docx";
export const PACK_BUDGET = "budget.xlsx";
export const PACK_DRAWINGS = "drawings";

/**
 * An application for funds: one PDF, and its parts to edit; every number the same in all.
 *
 * @throws InputError when the settings name no currency
 */
export async function applicationPack(
  { survey, cells, estimate, name }: PackSource,
  options: ApplicationOptions,
  load: FontLoader,
): Promise<ApplicationPack> {
  const { settings } = survey;
  refuseNoCurrency(settings.currency);
  const notice = exampleNotice(estimate, settings);
  const narrative = narrativeOf({ survey, cells, estimate, name });
  const [items, shelf] = [itemList(survey, cells), shelfTable(survey, cells)];
  const drawings = drawingsOf(survey);
  const [lines, below] = [plainRows(estimateTable(estimate, settings)), plainRows(belowEstimate(survey, estimate))];
  const files: ApplicationPack["files"] = [
    [PACK_PDF, await applicationFile({ narrative, survey, estimate, items, drawings }, options, load)],
    [PACK_DOCUMENT, await narrativeDocx(narrative)],
    ["narrative.txt", utf8(narrativeText(narrative))],
    [
      PACK_BUDGET,
      createWorkbook([
        estimateSheet(lines, below, notice),
        { name: "Items", rows: plainRows(items) },
        { name: "Shelf", rows: plainRows(shelf) },
      ]),
    ],
    ["budget.csv", writeCsv([...(notice === "" ? [] : [[notice]]), ...lines, ...below])],
    ["items.csv", writeCsv(plainRows(items))],
    ["shelf.csv", writeCsv(plainRows(shelf))],
    ...drawings.map(([kind, picture]) => [drawingFile(kind), utf8(`${svgOf(picture, ON_WHITE)}\n`)] as const),
  ];
  return { files, notice, funds: fundsNeeded(estimate, survey), narrative };
}

/** All files in one, for a program that can hand over a single file. */
export function zippedPack({ files }: Pick<ApplicationPack, "files">): Uint8Array {
  return zipSync(Object.fromEntries(files));
}

/** What stays for the user to do with it. */
export const PACK_ADVICE =
  "Fill in what is in square brackets. Whether a cost is allowed is the funder's rule: read the call first.";

/** Money without a currency is no budget for a funder. */
export function refuseNoCurrency(currency: string): void {
  if (currency !== "") return;
  const cure = "such as --set currency=EUR, or a row currency on the settings sheet";
  throw new InputError("currency", "nothing", "an application names the currency of its money", cure);
}

function drawingFile(kind: string): string {
  return `${PACK_DRAWINGS}/${kind.replaceAll(" ", "-")}.svg`;
}

/** The first enclosure of each kind, put together. */
function drawingsOf({ outcomes }: SizedSurvey): readonly (readonly [name: string, picture: Picture])[] {
  const drawn = new Map<string, Picture>();
  for (const outcome of outcomes) {
    if (outcome.state !== "sized" || drawn.has(outcome.sized.kind.name)) continue;
    drawn.set(outcome.sized.kind.name, assembledView(outcome.sized.assembly));
  }
  return [...drawn];
}

function utf8(text: string): Uint8Array {
  return new TextEncoder().encode(text);
}
