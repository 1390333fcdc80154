import type { StockPlan } from "../estimate/stockPlans";
import type { Estimate } from "../estimate/estimate";
import { InputError, NoAnswer } from "../measure/errors";
import type { SizedSurvey } from "../survey/sizeSurvey";
import { cornerTemplates } from "./cornerTemplates";
import { cuttingPages } from "./cuttingPages";
import { jobSheet } from "./jobSheet";
import { estimatePages } from "./estimatePages";
import { fontsNeeded, type FontLoader } from "./fonts";
import { halfFrame, onLeaves, pageFrame, twoUp } from "./frames";
import { BOX_IDENTIFIER, boxLabelsOf, labelSheets, labelsOf, USUAL_LABELS, type LabelOptions } from "./labelSheets";
import type { Page, Paper } from "./page";
import { renderPages } from "./renderPages";
import { templatePages } from "./templatePages";
import { ticketsOf } from "./ticket";
import { ticketSets } from "./ticketSets";
import { createTypesetter, type Typesetter } from "./typesetter";

export const PAPER_KINDS = ["estimate", "tickets", "plans", "templates", "labels", "box-labels"] as const;

/** What can be printed. */
export type PaperKind = (typeof PAPER_KINDS)[number];

/** What is printed from. Plans and estimate are worked out beforehand, so that they are the same on every page. */
export interface PaperSource {
  readonly survey: SizedSurvey;
  readonly plans: readonly StockPlan[];
  readonly estimate: Estimate | undefined;
}

export interface PaperOptions {
  readonly paper: Paper;
  /** Bench tickets on half pages, two to a page. */
  readonly twoUp: boolean;
  /** Orders of assembly that tickets share are printed once, after the tickets. */
  readonly once: boolean;
  /** Name of the survey and the day, for the foot of every page. */
  readonly printed: string;
  /** Of the file; always the same where it is undefined, so that equal pages are equal bytes. */
  readonly date?: Date;
  readonly labels: Omit<LabelOptions, "paper">;
  readonly onProgress?: (fraction: number) => void | Promise<void>;
}

export const USUAL_PAPER: PaperOptions = {
  paper: "A4",
  twoUp: false,
  once: false,
  printed: "",
  labels: USUAL_LABELS,
};

/** A finished file. */
export interface PaperFile {
  readonly bytes: Uint8Array;
  readonly pages: number;
  /** How many pages each part takes, in order. */
  readonly parts: readonly { readonly what: PaperKind; readonly pages: number }[];
}

/**
 * Everything asked for in one PDF: in the browser and on the command line the same.
 *
 * @param load gives the bytes of a font; only those that the survey's writing needs are asked for
 * @throws InputError when there is nothing to print
 */
export async function paperFile(
  what: readonly PaperKind[],
  source: PaperSource,
  options: PaperOptions,
  load: FontLoader,
): Promise<PaperFile> {
  const type = await createTypesetter(load, fontsNeeded(textsOf(source)));
  const parts = PAPER_KINDS.filter((paperKind) => what.includes(paperKind)).map((paperKind) => ({
    what: paperKind,
    pages: PAGES[paperKind](source, options, type),
  }));
  const pages = parts.flatMap((part) => part.pages);
  if (pages.length === 0)
    throw new InputError(
      "what",
      what.join(", "),
      "there is nothing of that kind to print for this survey",
      "no row could be sized, or no piece has a corner to cut",
    );
  const title = parts.length === 1 ? TITLES[parts[0]!.what] : "On paper at the bench";
  const { date, onProgress } = options;
  const bytes = await renderPages(pages, type, {
    title,
    ...(date === undefined ? {} : { date }),
    ...(onProgress === undefined ? {} : { onProgress }),
  });
  return { bytes, pages: pages.length, parts: parts.map((part) => ({ what: part.what, pages: part.pages.length })) };
}

const TITLES: Readonly<Record<PaperKind, string>> = {
  estimate: "Materials budget",
  tickets: "Bench tickets",
  plans: "Cutting plans",
  templates: "True-size templates",
  labels: "Labels of pieces",
  "box-labels": "Labels of boxes",
};

const PAGES: Readonly<
  Record<PaperKind, (source: PaperSource, options: PaperOptions, type: Typesetter) => readonly Page[]>
> = {
  estimate: ({ survey, estimate }, { paper, printed }, type) =>
    estimate === undefined ? [] : estimatePages(estimate, survey, pageFrame(paper, printed), type),
  tickets: ({ survey }, { paper, printed, once, twoUp: two }, type) => {
    const frame = two ? halfFrame(paper, printed) : pageFrame(paper, printed);
    const tickets = ticketSets(ticketsOf(survey), once, frame, type);
    const sets = tickets.length === 0 ? [] : [jobSheet(survey, frame, type), ...tickets];
    return two ? twoUp(sets) : onLeaves(sets);
  },
  plans: ({ survey, plans }, { paper, printed }, type) =>
    cuttingPages(plans, survey.settings, pageFrame(paper, printed), type),
  templates: ({ survey }, { paper, printed }, type) =>
    templatePages(cornerTemplates(ticketsOf(survey)), survey.settings.unit, pageFrame(paper, printed), type),
  labels: ({ survey }, { paper, labels }, type) =>
    labelSheets(labelsOf(ticketsOf(survey), labels.order), { paper, ...labels }, type),
  "box-labels": ({ survey }, { paper, labels }, type) =>
    labelSheets(boxLabelsOf(ticketsOf(survey)), { paper, ...labels, identifierSize: BOX_IDENTIFIER }, type),
};

/** Every text of a user's that may come to be printed. */
function* textsOf({ survey: { survey, outcomes, settings } }: PaperSource): Iterable<string> {
  for (const { identifier, cells } of survey.items) {
    yield identifier;
    for (const cell of Object.values(cells)) if (typeof cell === "string") yield cell;
  }
  for (const outcome of outcomes)
    if (outcome.state === "problem" && (outcome.error instanceof InputError || outcome.error instanceof NoAnswer))
      yield outcome.error.message;
  for (const { stock } of settings.stock) yield stock;
  yield settings.currency;
  yield settings.estimateBy;
}
