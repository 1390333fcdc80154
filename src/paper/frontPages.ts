import { isOverLift } from "../board/cautions";
import { CAUTIONS } from "../enclosure/step";
import type { Estimate } from "../estimate/estimate";
import { leftOutByName, leftOutRows } from "../estimate/leftOutRows";
import { boardNotes } from "../survey/boardNotes";
import type { Mm } from "../measure/units";
import type { SizedSurvey } from "../survey/sizeSurvey";
import { bodyWidth, flow, gap, type Block, type Frame } from "./blocks";
import { itemIndex, type IndexEntry } from "./itemIndex";
import type { Page } from "./page";
import { runningFoot } from "./runningFoot";
import { shoppingRows, SHOPPING_HEADINGS } from "./shoppingRows";
import { fitColumns, table } from "./table";
import { heading, paragraph, TYPE } from "./textBlocks";
import { cautionLines } from "./ticketHead";
import type { Typesetter } from "./typesetter";

const TITLE = "Before the work";

const LOCAL_RULES =
  "Local rules come first: these pages are advice, never a permission. Hazardous objects are for those licensed to assess them.";

/** What stands in front of a printed job beside its cautions. */
export interface FrontMatter {
  /** What is bought for the job; undefined where nothing is planned. */
  readonly estimate: Estimate | undefined;
  /** Where each item is found in the file. */
  readonly index: readonly IndexEntry[];
}

const NOTHING_MORE: FrontMatter = { estimate: undefined, index: [] };

/**
 * Once a printed job, in front: what to beware of at every bench, what is said of its boards, what to buy, which rows
 * and pieces are left out, and on which page each item is.
 */
export function frontPages(
  survey: SizedSurvey,
  frame: Frame,
  type: Typesetter,
  { estimate, index }: FrontMatter = NOTHING_MORE,
): readonly Page[] {
  const width = bodyWidth(frame);
  const { blade, adhesive, weight } = CAUTIONS;
  const isHeavy = survey.outcomes.some((outcome) => outcome.state === "sized" && isOverLift(outcome.sized));
  const notes = boardNotes(survey);
  const plans = (estimate?.plans ?? []).flatMap((group) => group.plans);
  const leftOut = leftOutByName(leftOutRows(survey, plans)).slice(1);
  const body = { size: TYPE.body };
  const blocks = [
    ...paragraph(TITLE, width, { size: TYPE.title, bold: true, withNext: true }, type),
    ...cautionLines([LOCAL_RULES, blade, adhesive, ...(isHeavy ? [weight] : [])], width, type),
    gap(2),
    ...(notes.length === 0 ? [] : heading("Boards", width, type)),
    ...notes.flatMap((note) => paragraph(note, width, body, type)),
    ...titledTable("To buy", SHOPPING_HEADINGS, shoppingRows(estimate, survey.settings), width, type),
    ...titledTable("Left out", ["item", "why"], leftOut, width, type),
    ...itemIndex(index, width, type),
  ];
  const foot = (page: number, of: number) => runningFoot(TITLE, `${page} of ${of}`, frame, type);
  return flow(blocks, frame, foot, TITLE);
}

/** A table of words, the last column the widest, without columns that are empty; nothing where it has no rows. */
function titledTable(
  title: string,
  allHeadings: readonly string[],
  allRows: readonly (readonly string[])[],
  width: Mm,
  type: Typesetter,
): readonly Block[] {
  if (allRows.length === 0) return [];
  const filled = allHeadings.map((_, index) => allRows.some((row) => (row[index] ?? "") !== ""));
  const shown = (row: readonly string[]) => row.filter((_, index) => filled[index]);
  const [headings, rows] = [shown(allHeadings), allRows.map(shown)];
  const size = TYPE.body;
  const columns = headings.map((name, index) => ({
    heading: name,
    bold: index === 0,
    ...(index === headings.length - 1 ? { share: 1 } : {}),
    ...(index === 0 && headings.length > 2 ? { share: 1 } : {}),
  }));
  return [...heading(title, width, type), ...table(fitColumns(columns, rows, width, size, type), rows, { size }, type)];
}
