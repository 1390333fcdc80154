import { readFileSync, realpathSync } from "node:fs";
import { basename, dirname, extname, join } from "node:path";
import { estimateOf, type Estimate } from "../estimate/estimate";
import { groupedJobs } from "../estimate/groupedJobs";
import { InputError, shown } from "../measure/errors";
import { fontFileName } from "../paper/fontFileName";
import type { FontLoader } from "../paper/fonts";
import { LEAST_LABEL, USUAL_LABELS, type LabelOptions } from "../paper/labelSheets";
import { PAPERS, type Paper } from "../paper/page";
import { paperFile, PAPER_KINDS, type PaperKind } from "../paper/paperFile";
import { withoutTicket } from "../paper/ticket";
import { didYouMean } from "../settings/names";
import { demandGroups } from "../estimate/sheetAnswers";
import { saveBeside } from "../files/saveBeside";
import type { Output } from "./output";
import { planBeside, type BesideOptions } from "./planBeside";
import type { ReadSurvey } from "./sheets";

/** As they were typed. */
export interface PaperCommand {
  readonly what: string | undefined;
  readonly paper: string | undefined;
  readonly twoUp: boolean;
  readonly labels: string | undefined;
  readonly labelMargin: string | undefined;
  readonly labelOrder: string | undefined;
  readonly out: string | undefined;
  readonly replace: boolean;
  /** How long to search for plans. */
  readonly search: BesideOptions;
  readonly onProgress?: (fraction: number) => void;
}

/** `paper`: bench tickets, cutting plans, labels, templates and the budget as a PDF beside the survey. */
export async function paperCommand(survey: ReadSurvey, command: PaperCommand): Promise<Output> {
  const what = sheavesOf(command.what);
  const paper = paperOf(command.paper);
  const labels = labelsOf(command, paper);
  const output = outputOf(survey.path, command);
  const { sized } = survey;
  const planned = what.includes("plans") || what.includes("estimate");
  const estimate = planned ? await plannedEstimate(survey, command.search) : undefined;
  const plans = estimate?.plans.flatMap((group) => group.plans) ?? [];
  const file = await paperFile(
    what,
    { survey: sized, plans, estimate },
    {
      paper,
      twoUp: command.twoUp,
      labels,
      ...(command.onProgress === undefined ? {} : { onProgress: command.onProgress }),
    },
    besideProgram,
  );
  const saved = saveBeside({
    input: survey.path,
    inputBytes: survey.bytes,
    output,
    bytes: file.bytes,
    replace: command.replace,
  });
  const leftOut = withoutTicket(sized);
  const files = [saved.output, ...(saved.backup === undefined ? [] : [saved.backup])];
  return {
    text: [
      ...file.parts.map((part) => `${part.what}: ${part.pages} pages`),
      `written: ${saved.output}`,
      ...(saved.backup === undefined ? [] : [`as it was before: ${saved.backup}`]),
      ...(leftOut.length === 0 ? [] : ["", "Without a ticket", ...leftOut.map(([item, why]) => `  ${item}: ${why}`)]),
      "",
      `Print at 100 %, ${paper}, not "fit to page"; check the bar on the templates.`,
    ].join("\n"),
    json: {
      files,
      pages: file.pages,
      parts: file.parts,
      leftOut: leftOut.map(([identifier, reason]) => ({ identifier, reason })),
    },
  };
}

/** The budget and its plans, searched for as `estimate` does, so that both tell the same figures. */
async function plannedEstimate({ sized, cells }: ReadSurvey, search: BesideOptions): Promise<Estimate> {
  const { settings } = sized;
  const { jobs, planned } = groupedJobs(demandGroups(sized, cells, settings.estimateBy), settings);
  return estimateOf(planned(await planBeside(jobs, search)), settings);
}

/** The build puts the fonts into a folder beside the program. */
const besideProgram: FontLoader = async (name) =>
  new Uint8Array(readFileSync(join(dirname(realpathSync(process.argv[1]!)), "fonts", fontFileName(name))));

function sheavesOf(text = "tickets"): readonly PaperKind[] {
  const names = text
    .toLowerCase()
    .split(/[\s,;]+/)
    .filter((name) => name !== "");
  if (names.includes("all")) return PAPER_KINDS;
  return names.map((name) => {
    const paperKind = PAPER_KINDS.find((each) => each === name);
    if (paperKind !== undefined) return paperKind;
    throw new InputError(
      "what",
      shown(name),
      `give ${PAPER_KINDS.join(", ")} or all`,
      didYouMean(name, [...PAPER_KINDS]),
    );
  });
}

function paperOf(text = "A4"): Paper {
  const names = Object.keys(PAPERS) as readonly Paper[];
  const paper = names.find((name) => name.toLowerCase() === text.toLowerCase());
  if (paper !== undefined) return paper;
  throw new InputError("paper", shown(text), `give ${names.join(" or ")}`);
}

/** `3x8`: columns and rows; the margin and the order apart. */
function labelsOf({ labels, labelMargin, labelOrder }: PaperCommand, paper: Paper): Omit<LabelOptions, "paper"> {
  const margin = labelMargin === undefined ? USUAL_LABELS.margin : Number(labelMargin);
  const expected = "give millimetres, 0 to 40";
  if (!(margin >= 0 && margin <= WIDEST_MARGIN)) throw new InputError("label-margin", shown(labelMargin), expected);
  const order = labelOrder ?? USUAL_LABELS.order;
  if (order !== "item" && order !== "stock") throw new InputError("label-order", shown(order), "give item or stock");
  const [, columns, rows] = /^\s*(\d{1,2})\s*[x×]\s*(\d{1,2})\s*$/i.exec(labels ?? "3x8") ?? [];
  const grid = { columns: Number(columns), rows: Number(rows) };
  const { width, height } = PAPERS[paper];
  const small =
    (width - 2 * margin) / grid.columns < LEAST_LABEL.width || (height - 2 * margin) / grid.rows < LEAST_LABEL.height;
  if (columns === undefined || grid.columns === 0 || grid.rows === 0 || small)
    throw new InputError(
      "labels",
      shown(labels),
      `give columns x rows of a sheet, such as 3x8, a label at least ${LEAST_LABEL.width} x ${LEAST_LABEL.height} mm`,
    );
  return { ...grid, margin, order };
}

const WIDEST_MARGIN = 40;

function outputOf(survey: string, { out, what = "tickets" }: PaperCommand): string {
  const ending = what.toLowerCase().replace(/[^a-z]+/g, "-");
  const output = out ?? join(dirname(survey), `${basename(survey, extname(survey))}-${ending}.pdf`);
  if (extname(output).toLowerCase() === ".pdf") return output;
  throw new InputError("out", shown(basename(output)), "give a .pdf file");
}
