import type { StockPlan } from "../estimate/stockPlans";
import type { Estimate } from "../estimate/estimate";
import { InputError, NoAnswer } from "../measure/errors";
import type { SizedSurvey } from "../survey/sizeSurvey";
import type { SurveyCells } from "../survey/surveyAnswers";
import { cuttingPages } from "./cuttingPages";
import { estimatePages } from "./estimatePages";
import { fontsNeeded, type FontLoader } from "./fonts";
import { halfFrame, onLeaves, pageFrame, twoUp } from "./frames";
import { BOX_IDENTIFIER, boxLabelsOf, labelSheets, labelsOf, USUAL_LABELS, type LabelOptions } from "./labelSheets";
import type { Page, Paper } from "./page";
import { renderPages } from "./renderPages";
import { planPlaces } from "./planPlaces";
import { shelfPages } from "./shelfPages";
import { templatePages, trueSizesOf } from "./templatePages";
import { ticketsOf } from "./ticket";
import { ticketSets } from "./ticketSets";
import { createTypesetter, type Typesetter } from "./typesetter";
import { PAPER_KINDS, type PaperKind, TITLES } from "./paperKinds";
import { withFront } from "./withFront";

/** What is printed from. Plans and estimate are worked out beforehand, so that they are the same on every page. */
export interface PaperSource {
  readonly survey: SizedSurvey;
  /** The cells that the survey was read from. */
  readonly cells: SurveyCells;
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
  readonly parts: readonly { readonly what: PaperKind | "front"; readonly pages: number }[];
  /** What to know before it is printed: tickets that half a page cannot hold, and what could be left out of very many pages. */
  readonly notes: readonly string[];
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
    ...PAGES[paperKind](source, options, type),
  }));
  if (parts.every((part) => part.pages.length === 0))
    throw new InputError(
      "what",
      what.join(", "),
      "there is nothing of that kind to print for this survey",
      "no row could be sized, or no piece has a corner to cut",
    );
  const all = withFront(parts, source, options, type);
  const pages = all.flatMap((part) => part.pages);
  const title = parts.length === 1 ? TITLES[parts[0]!.what] : "On paper at the bench";
  const { date, onProgress } = options;
  const bytes = await renderPages(pages, type, {
    title,
    ...(date === undefined ? {} : { date }),
    ...(onProgress === undefined ? {} : { onProgress }),
  });
  const counted = { pages: pages.length, parts: all.map((part) => ({ what: part.what, pages: part.pages.length })) };
  return { bytes, ...counted, notes: [...parts.flatMap(({ notes = [] }) => notes), ...tooManyPages(counted)] };
}

/** More pages than this are seldom all wanted. Common practice, no source. */
const MANY_PAGES = 200;

/** What can be left out of a file of very many pages; nothing for a shorter one. */
function tooManyPages({ pages, parts }: Pick<PaperFile, "pages" | "parts">): readonly string[] {
  if (pages <= MANY_PAGES) return [];
  const most = [...parts].sort((one, other) => other.pages - one.pages).slice(0, 2);
  const named = most.filter((part) => part.pages > 0).map((part) => `${part.what} ${part.pages}`);
  return [
    `These are ${pages} pages: ${named.join(", ")}. Fewer: print one kind or one batch at a time, tickets on half pages, or shared orders of assembly once.`,
  ];
}

interface PrintedKind {
  readonly pages: readonly Page[];
  readonly notes?: readonly string[];
}

const PAGES: Readonly<
  Record<PaperKind, (source: PaperSource, options: PaperOptions, type: Typesetter) => PrintedKind>
> = {
  estimate: ({ survey, estimate }, { paper, printed }, type) => ({
    pages: estimate === undefined ? [] : estimatePages(estimate, survey, pageFrame(paper, printed), type),
  }),
  shelf: ({ survey, cells }, { paper, printed }, type) => ({
    pages: shelfPages(survey, cells, pageFrame(paper, printed), type),
  }),
  tickets: ({ survey }, { paper, printed, once, twoUp: two }, type) => {
    const frames = { whole: pageFrame(paper, printed), ...(two ? { half: halfFrame(paper, printed) } : {}) };
    const { halves, wholes, tooLarge } = ticketSets(ticketsOf(survey), once, frames, type);
    const note =
      tooLarge.length === 0 ? [] : [`On whole pages, since half a page has no room: ${tooLarge.join(", ")}.`];
    return { pages: [...twoUp(halves), ...onLeaves(wholes)], notes: note };
  },
  plans: ({ survey, plans, estimate }, { paper, printed }, type) => ({
    pages: cuttingPages(estimate?.plans ?? [{ group: "", plans }], survey.settings, pageFrame(paper, printed), type),
  }),
  templates: ({ survey }, { paper, printed }, type) => {
    const { answerUnit: unit } = survey.settings;
    return { pages: templatePages(trueSizesOf(ticketsOf(survey)), unit, pageFrame(paper, printed), type) };
  },
  labels: ({ survey, plans }, { paper, labels }, type) => ({
    pages: labelSheets(
      labelsOf(ticketsOf(survey), labels.order, planPlaces(plans, survey.settings)),
      { paper, ...labels },
      type,
    ),
  }),
  "box-labels": ({ survey, cells }, { paper, labels }, type) => ({
    pages: labelSheets(
      boxLabelsOf(ticketsOf(survey, cells)),
      { paper, ...labels, identifierSize: BOX_IDENTIFIER },
      type,
    ),
  }),
};

/** Every text of a user's that may come to be printed. */
function* textsOf({ survey: { survey, outcomes, settings }, cells }: PaperSource): Iterable<string> {
  for (const row of cells) for (const cell of row) if (typeof cell === "string") yield cell;
  for (const { identifier } of survey.items) yield identifier;
  for (const outcome of outcomes)
    if (outcome.state === "problem" && (outcome.error instanceof InputError || outcome.error instanceof NoAnswer))
      yield outcome.error.message;
  for (const { stock } of settings.stock) yield stock;
  yield settings.currency;
  yield settings.estimateBy;
}
