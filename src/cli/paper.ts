import { readFile } from "node:fs/promises";
import { basename, dirname, extname, join } from "node:path";
import { estimateOf, type Estimate } from "../estimate/estimate";
import { groupedJobs } from "../estimate/groupedJobs";
import { InputError, shown } from "../measure/errors";
import { fontFileName } from "../paper/fontFileName";
import type { FontLoader } from "../paper/fonts";
import { PAPERS, type Paper } from "../paper/page";
import { paperFile, type PaperFile, type PaperOptions } from "../paper/paperFile";
import { ON_LABEL_SHEETS, PAPER_KINDS, type PaperKind } from "../paper/paperKinds";
import { withoutTicket } from "../paper/ticket";
import { didYouMean } from "../settings/names";
import { demandGroups } from "../estimate/budget";
import { refuseTaken, saveBeside } from "../files/saveBeside";
import type { SizedSurvey } from "../survey/sizeSurvey";
import { besideProgram } from "./besideProgram";
import { labelOptions, type LabelCommand } from "./labelOptions";
import type { Output } from "./output";
import { visibleLine } from "./print";
import { planBeside, type BesideOptions } from "./planBeside";
import type { ReadSurvey } from "./sheets";

/** As they were typed. */
export interface PaperCommand {
  readonly what: string | undefined;
  readonly paper: string | undefined;
  /** Heading by whose values plans and budget are apart; undefined where the settings say. */
  readonly by: string | undefined;
  readonly twoUp: boolean;
  readonly once: boolean;
  readonly date: string | undefined;
  readonly labels: LabelCommand;
  readonly out: string | undefined;
  readonly replace: boolean;
  /** How long to search for plans. */
  readonly search: BesideOptions;
  readonly onProgress?: (fraction: number) => void;
}

/** `paper`: bench tickets, cutting plans, templates and the budget as a PDF beside the survey; labels as another. */
export async function paperCommand(survey: ReadSurvey, command: PaperCommand): Promise<Output> {
  const what = paperKindsOf(command.what);
  const paper = paperOf(command.paper);
  const date = dateOf(command.date);
  const options: PaperOptions = {
    paper,
    twoUp: command.twoUp,
    once: command.once,
    printed: `${basename(survey.path)}, ${DAY.format(date)}`,
    date,
    labels: labelOptions(command.labels, paper),
    ...(command.onProgress === undefined ? {} : { onProgress: command.onProgress }),
  };
  const outputs = outputsOf(survey.path, what, command);
  for (const { path } of outputs) refuseTaken({ input: survey.path, output: path, replace: command.replace });
  const { by } = command;
  const sized =
    by === undefined ? survey.sized : { ...survey.sized, settings: { ...survey.sized.settings, estimateBy: by } };
  const planned = what.includes("plans") || what.includes("estimate");
  const estimate = planned ? await plannedEstimate({ ...survey, sized }, command.search) : undefined;
  const plans = estimate?.plans.flatMap((group) => group.plans) ?? [];
  const files: SavedPaper[] = [];
  for (const output of outputs) {
    const file = await paperFile(
      output.what,
      { survey: sized, cells: survey.cells, plans, estimate },
      options,
      loadFont,
    );
    const saved = saveBeside({
      input: survey.path,
      inputBytes: survey.bytes,
      output: output.path,
      bytes: file.bytes,
      replace: command.replace,
    });
    files.push({ ...file, ...saved });
  }
  return saidOf(files, sized, paper);
}

interface SavedPaper extends PaperFile {
  readonly output: string;
  readonly backup?: string;
}

function saidOf(files: readonly SavedPaper[], sized: SizedSurvey, paper: Paper): Output {
  const leftOut = withoutTicket(sized);
  const { notes } = sized.survey;
  const has = (kind: PaperKind) => files.some(({ parts }) => parts.some(({ what }) => what === kind));
  return {
    text: [
      ...files.flatMap(({ parts, output, backup }) => [
        ...parts.map((part) => `${part.what}: ${part.pages} pages`),
        `written: ${output}`,
        ...(backup === undefined ? [] : [`as it was before: ${backup}`]),
      ]),
      ...(leftOut.length === 0 ? [] : ["", "Without a ticket", ...leftOut.map(([item, why]) => `  ${item}: ${why}`)]),
      ...(notes.length === 0 ? [] : ["", ...notes.map(visibleLine)]),
      "",
      ...files.flatMap((file) => file.notes),
      `Print at 100 %, ${paper}, not "fit to page"${has("tickets") ? "; tickets on both sides" : ""}.${has("templates") ? " Check the bars on the templates." : ""}`,
    ].join("\n"),
    json: {
      files: files.flatMap(({ output, backup }) => (backup === undefined ? [output] : [output, backup])),
      pages: files.reduce((sum, { pages }) => sum + pages, 0),
      parts: files.flatMap(({ parts }) => parts),
      leftOut: leftOut.map(([identifier, reason]) => ({ identifier, reason })),
      notes: [...notes, ...files.flatMap((file) => file.notes)],
    },
  };
}

export const DAY = new Intl.DateTimeFormat("en-GB", { dateStyle: "long", timeZone: "UTC" });

/** Noon of the day that is given, or of today, so that no time zone moves it. */
export function dateOf(text: string | undefined): Date {
  const now = new Date();
  const [, year, month, day] = (/^(\d{4})-(\d{2})-(\d{2})$/.exec(text ?? "") ?? []).map(Number);
  const date =
    text === undefined
      ? new Date(Date.UTC(now.getFullYear(), now.getMonth(), now.getDate(), NOON))
      : new Date(Date.UTC(year ?? NaN, (month ?? NaN) - 1, day ?? NaN, NOON));
  if (date.getUTCDate() === day || text === undefined) return date;
  throw new InputError("date", shown(text), "give a day such as 2026-05-31");
}

const NOON = 12;

/** The budget and its plans, searched for as `estimate` does, so that both tell the same figures. */
export async function plannedEstimate({ sized, cells }: ReadSurvey, search: BesideOptions): Promise<Estimate> {
  const { settings } = sized;
  const { jobs, planned } = groupedJobs(demandGroups(sized, cells, settings.estimateBy), settings);
  return estimateOf(planned(await planBeside(jobs, search)), settings);
}

export const loadFont: FontLoader = async (name) =>
  new Uint8Array(await readFile(besideProgram("fonts", fontFileName(name))));

function paperKindsOf(text = "tickets"): readonly PaperKind[] {
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

export function paperOf(text = "A4"): Paper {
  const names = Object.keys(PAPERS) as readonly Paper[];
  const paper = names.find((name) => name.toLowerCase() === text.toLowerCase());
  if (paper !== undefined) return paper;
  throw new InputError("paper", shown(text), `give ${names.join(" or ")}`);
}

/** Labels need other paper, so that they are a file of their own. */
function outputsOf(
  survey: string,
  what: readonly PaperKind[],
  { out, what: typed = "tickets" }: PaperCommand,
): readonly { readonly what: readonly PaperKind[]; readonly path: string }[] {
  const ending = typed.toLowerCase().replace(/[^a-z]+/g, "-");
  const path = out ?? join(dirname(survey), `${basename(survey, extname(survey))}-${ending}.pdf`);
  if (extname(path).toLowerCase() !== ".pdf") throw new InputError("out", shown(basename(path)), "give a .pdf file");
  const others = what.filter((each) => !ON_LABEL_SHEETS.includes(each));
  if (others.length === what.length || others.length === 0) return [{ what, path }];
  const labels =
    out === undefined
      ? join(dirname(survey), `${basename(survey, extname(survey))}-labels.pdf`)
      : path.replace(/\.pdf$/i, "-labels.pdf");
  return [
    { what: others, path },
    { what: what.filter((each) => ON_LABEL_SHEETS.includes(each)), path: labels },
  ];
}
