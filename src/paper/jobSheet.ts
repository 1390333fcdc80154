import { isOverLift } from "../board/cautions";
import { CAUTIONS } from "../enclosure/step";
import { boardNotes } from "../survey/boardNotes";
import type { SizedSurvey } from "../survey/sizeSurvey";
import { bodyWidth, flow, gap, type Frame } from "./blocks";
import type { Page } from "./page";
import { runningFoot } from "./runningFoot";
import { heading, paragraph, TYPE } from "./textBlocks";
import { cautionLines } from "./ticketHead";
import type { Typesetter } from "./typesetter";

const TITLE = "Before the work";

const LOCAL_RULES =
  "Local rules come first: these pages are advice, never a permission. Hazardous objects are for those licensed to assess them.";

/** Once a printed job, before its tickets: what to beware of at every bench, and what is said of its boards. */
export function jobSheet(survey: SizedSurvey, frame: Frame, type: Typesetter): readonly Page[] {
  const width = bodyWidth(frame);
  const { blade, adhesive, weight } = CAUTIONS;
  const isHeavy = survey.outcomes.some((outcome) => outcome.state === "sized" && isOverLift(outcome.sized));
  const notes = boardNotes(survey);
  const blocks = [
    ...paragraph(TITLE, width, { size: TYPE.title, bold: true, withNext: true }, type),
    ...cautionLines([LOCAL_RULES, blade, adhesive, ...(isHeavy ? [weight] : [])], width, type),
    gap(2),
    ...(notes.length === 0 ? [] : heading("Boards", width, type)),
    ...notes.flatMap((note) => paragraph(note, width, { size: TYPE.body }, type)),
  ];
  const foot = (page: number, of: number) => runningFoot(TITLE, `${page} of ${of}`, frame, type);
  return flow(blocks, frame, foot, TITLE);
}
