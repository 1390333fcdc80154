import { existsSync, mkdirSync } from "node:fs";
import { basename, join } from "node:path";
import { fundsNeeded } from "../application/fundsNeeded";
import { itemList } from "../application/itemList";
import { narrativeOf } from "../application/narrative";
import { assembledView } from "../drawing/assembledView";
import { ON_WHITE } from "../drawing/look";
import type { Picture } from "../drawing/picture";
import { svgOf } from "../drawing/svgOf";
import { belowEstimate } from "../estimate/budget";
import { completenessOf, completenessText } from "../estimate/completeness";
import { estimateTable } from "../estimate/estimateTables";
import { exampleNotice } from "../estimate/examplePrices";
import { saveBeside } from "../files/saveBeside";
import { explained } from "../files/systemErrors";
import { estimateSheet } from "../filling/estimateSheet";
import { plainRows } from "../item/answers";
import { InputError } from "../measure/errors";
import { applicationFile } from "../paper/applicationFile";
import { shelfTable } from "../survey/shelfSpace";
import type { SizedSurvey } from "../survey/sizeSurvey";
import { createWorkbook } from "../workbook/createWorkbook";
import { writeCsv } from "../workbook/writeCsv";
import { narrativeDocx } from "./narrativeDocx";
import { narrativeText } from "./narrativeText";
import type { Output } from "./output";
import { besideProgram, dateOf, DAY, paperOf, plannedEstimate } from "./paper";
import type { BesideOptions } from "./planBeside";
import { savedLines, type ReadSurvey } from "./sheets";

/** As they were typed. */
export interface ApplyCommand {
  readonly out: string | undefined;
  readonly paper: string | undefined;
  readonly date: string | undefined;
  readonly replace: boolean;
  /** How long to search for plans. */
  readonly search: BesideOptions;
}

/** `apply`: an application for funds in a folder, as one PDF and as parts to edit; every number the same in all. */
export async function applyCommand(read: ReadSurvey, command: ApplyCommand): Promise<Output> {
  const { sized: survey, cells } = read;
  const { settings } = survey;
  const folder = folderOf(command);
  refuseNoCurrency(settings.currency);
  refuseOld(folder, command.replace);
  const [paper, date] = [paperOf(command.paper), dateOf(command.date)];
  const name = basename(read.path);
  const estimate = await plannedEstimate(read, command.search);
  const notice = exampleNotice(estimate, settings);
  const narrative = narrativeOf({ survey, cells, estimate, name });
  const [items, shelf] = [itemList(survey, cells), shelfTable(survey, cells)];
  const drawings = drawingsOf(survey);
  const [lines, below] = [plainRows(estimateTable(estimate, settings)), plainRows(belowEstimate(survey, estimate))];
  const printed = `${name}, ${DAY.format(date)}`;
  const files: readonly (readonly [name: string, bytes: Uint8Array])[] = [
    [
      PDF,
      await applicationFile({ narrative, survey, estimate, items, drawings }, { paper, printed, date }, besideProgram),
    ],
    [DOCUMENT, await narrativeDocx(narrative)],
    ["narrative.txt", utf8(narrativeText(narrative))],
    [
      BUDGET,
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
  const saved = saveAll(read, folder, files, command.replace);
  const counts = completenessOf(
    survey,
    estimate.plans.flatMap(({ plans }) => plans),
  );
  const { cost, contingency, total, match, inKind, requested } = estimate;
  return {
    text: [
      ...(notice === "" ? [] : [notice, ""]),
      fundsNeeded(estimate, survey),
      completenessText(counts),
      "",
      ...saved,
      "",
      "Fill in what is in square brackets. Whether a cost is allowed is the funder's rule: read the call before you send this.",
    ].join("\n"),
    json: { notice, cost, contingency, total, match, inKind, requested, completeness: counts, narrative, files: saved },
  };
}

const PDF = "application.pdf";
const DOCUMENT = "narrative.docx";
const BUDGET = "budget.xlsx";
const DRAWINGS = "drawings";

function drawingFile(kind: string): string {
  return join(DRAWINGS, `${kind.replaceAll(" ", "-")}.svg`);
}

function folderOf({ out }: ApplyCommand): string {
  if (out !== undefined && out.trim() !== "") return out;
  throw new InputError("out", "nothing", "give the folder for the application", "such as --out application");
}

/** Money without a currency is no budget for a funder. */
function refuseNoCurrency(currency: string): void {
  if (currency !== "") return;
  const cure = "such as --set currency=EUR, or a row currency on the settings sheet";
  throw new InputError("currency", "nothing", "an application names the currency of its money", cure);
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

/** Before a search that may take minutes. */
function refuseOld(folder: string, replace: boolean): void {
  const there = [PDF, DOCUMENT, BUDGET].map((name) => join(folder, name)).find((path) => existsSync(path));
  if (there === undefined || replace) return;
  throw new InputError("out", `"${there}", which is there already`, "give another folder", "or say --replace");
}

function saveAll(
  { path, bytes: inputBytes }: ReadSurvey,
  folder: string,
  files: readonly (readonly [name: string, bytes: Uint8Array])[],
  replace: boolean,
): readonly string[] {
  try {
    mkdirSync(join(folder, DRAWINGS), { recursive: true });
  } catch (error) {
    throw explained(error, "out", folder);
  }
  return files.flatMap(([name, bytes]) =>
    savedLines(saveBeside({ input: path, inputBytes, output: join(folder, name), bytes, replace }), "written"),
  );
}

function utf8(text: string): Uint8Array {
  return new TextEncoder().encode(text);
}
