import { estimateAnswer } from "../src/estimate/budget";
import { layoutAnswer, sheetsAnswer } from "../src/estimate/sheetAnswers";
import { surveyPlans } from "../src/estimate/surveyPlans";
import { isAll, type Answer, type Cell } from "../src/item/answers";
import { InputError } from "../src/measure/errors";
import { shelfTable } from "../src/survey/shelfSpace";
import { readSurvey, sizeSurvey, type SurveyReading } from "../src/survey/sizeSurvey";
import { sizedLately } from "../src/survey/sizedLately";
import { sizeCount } from "../src/survey/standardSizes/sizeCount";
import { sizesAnswer } from "../src/survey/standardSizes/sizesTable";
import { cutListTable, figureNames, surveyTable, type SurveyCells } from "../src/survey/surveyAnswers";
import { cellsOf, faultOf, isTable, type Reply, selector } from "./cells";

/** The arguments of a function of a whole survey: plain data, so that another thread can answer. */
interface Asked {
  readonly items: SurveyCells;
  readonly settings: readonly unknown[];
  /** The argument between the survey and the settings, where there is one. */
  readonly choice?: unknown;
}

export interface SurveyAsk extends Asked {
  readonly name: keyof typeof ANSWERS;
}

/** A short search, the same on any machine. The command line searches for as long as the user says. */
const CELL_BUDGET = { budget: { iterations: 300 } } as const;

/** Looks at one item under one size: about a second, and the same answer on any machine. */
const CELL_LOOKS = { looks: 20_000_000 } as const;

const ANSWERS = {
  survey: ({ items, settings, choice }: Asked) => figuresAnswer(readSurvey(items, settings), choice, items),
  cutlist: ({ items, settings }: Asked) => cutListTable(readSurvey(items, settings)),
  sheets: ({ items, settings, choice }: Asked) =>
    sheetsAnswer(sizedLately(items, settings), selector(choice, "board", "all"), CELL_BUDGET),
  layout: ({ items, settings, choice }: Asked) =>
    layoutAnswer(sizedLately(items, settings), selector(choice, "board", "all"), CELL_BUDGET),
  estimate: ({ items, settings }: Asked) => estimateAnswer(sizedLately(items, settings), items, CELL_BUDGET),
  shelf: ({ items, settings }: Asked) => shelfTable(sizeSurvey(items, settings), items),
  sizes: ({ items, settings, choice }: Asked) =>
    sizesAnswer(sizeSurvey(items, settings), sizeCount(selector(choice, "count", "12")), CELL_LOOKS),
} satisfies Readonly<Record<string, (ask: Asked) => Answer>>;

/** Answers a function of a whole survey, on whatever thread. */
export function replyTo(ask: SurveyAsk): Reply {
  try {
    const answer: Answer = ANSWERS[ask.name](ask);
    refuseTooLarge(answer);
    return { table: cellsOf(answer, faultOf) };
  } catch (error) {
    return { fault: faultOf(error) };
  }
}

let before: Promise<unknown> = Promise.resolve();

/**
 * The same on the page's own thread, one ask after the other; the thread is given back for a moment after each step
 * of a stock that is planned.
 */
export function replyInTurns(ask: SurveyAsk): Promise<Reply> {
  const reply = before.then(() => planInTurns(ask)).then(() => replyTo(ask));
  before = reply;
  return reply;
}

/** Makes the plans that an ask needs of all stocks together. What is wrong with the ask is in its reply. */
async function planInTurns({ name, items, settings, choice }: SurveyAsk): Promise<void> {
  if (!PLANNED.has(name)) return;
  try {
    if (name !== "estimate" && !isAll(selector(choice, "board", "all"))) return;
    const survey = sizedLately(items, settings);
    if (name === "estimate" && survey.settings.estimateBy !== "material") return;
    const plans = surveyPlans(survey, CELL_BUDGET);
    for (const stock of plans.stocks) {
      const steps = plans.inSteps(stock);
      do await aMoment();
      while (steps.next().done !== true);
    }
    await aMoment();
  } catch {
    return;
  }
}

/** Functions that read plans. */
const PLANNED: ReadonlySet<SurveyAsk["name"]> = new Set(["sheets", "layout", "estimate"]);

function aMoment(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve));
}

function figuresAnswer(reading: SurveyReading, columns: unknown, cells: SurveyCells): Answer {
  const [headings = [], ...rows] = surveyTable(reading, figureNames(columns as readonly (readonly unknown[])[]), cells);
  // A row of units below the headings has a blank beside it, so that every answer stands beside its own row.
  const { headingRow, firstRow } = reading.survey.recognition;
  const below = Array.from({ length: firstRow - headingRow - 1 }, () => headings.map(() => ""));
  return [headings, ...below, ...rows];
}

/**
 * Excel carries an answer in pieces of 2,000,000 bytes of UTF-8, and drops one that takes longer than a minute: past one
 * piece the cell may show nothing but an error without a reason.
 */
const LARGEST_ANSWER_BYTES = 2_000_000;
/** What a number, a text and an error take at most besides their own figures and letters. */
const BYTES_BESIDE_NUMBER = 1;
const BYTES_BESIDE_TEXT = 3;
const BYTES_BESIDE_ERROR = 80;

function refuseTooLarge(table: Answer): void {
  if (!isTable(table)) return;
  let bytes = 0;
  for (const row of table) for (const cell of row) bytes += bytesOf(cell);
  if (bytes <= LARGEST_ANSWER_BYTES) return;
  const megabytes = (bytes / 1e6).toFixed(1);
  throw new InputError(
    "items",
    `${table.length - 1} rows to answer, about ${megabytes} MB`,
    "a cell holds at most 2 MB",
    "give fewer rows or columns at a time, or write the list with the command line",
  );
}

function bytesOf(cell: Cell): number {
  if (typeof cell === "number") return String(cell).length + BYTES_BESIDE_NUMBER;
  return typeof cell === "string" ? utf8Bytes(cell) + BYTES_BESIDE_TEXT : utf8Bytes(cell.message) + BYTES_BESIDE_ERROR;
}

/** At most, as JSON in UTF-8. */
function utf8Bytes(text: string): number {
  let bytes = text.length;
  for (const [sign] of text.matchAll(/["\\\n\r\t\u0080-\uffff]/g)) bytes += sign > "\u07ff" ? 2 : 1;
  return bytes;
}
