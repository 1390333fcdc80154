import { printedTable } from "../estimate/printedTable";
import type { Cell } from "../item/answers";
import { HEAVY_BOXES, OTHER_KINDS, otherKinds } from "../survey/otherKinds";
import { problemRows } from "../survey/problemRows";
import { shelfRows, shelfSpace, tooTallRows } from "../survey/shelfSpace";
import type { SizedSurvey } from "../survey/sizeSurvey";
import type { SurveyCells } from "../survey/surveyAnswers";
import { anyTable } from "./anyTable";
import { bodyWidth, flow, gap, type Frame } from "./blocks";
import type { Page } from "./page";
import { runningFoot } from "./runningFoot";
import { heading, paragraph, TYPE } from "./textBlocks";
import type { Typesetter } from "./typesetter";

const TITLE = "Room in the store";

/** The room in the store, now and when boxed; what is too tall, what is left out, and what other kinds would take. */
export function shelfPages(survey: SizedSurvey, cells: SurveyCells, frame: Frame, type: Typesetter): readonly Page[] {
  const { settings } = survey;
  const width = bodyWidth(frame);
  const space = shelfSpace(survey, cells);
  if (space.groups.length === 0) return [];
  const tables: readonly (readonly [name: string, rows: readonly (readonly Cell[])[]])[] = [
    ["By shelf, way and height", shelfRows(space, settings)],
    ["Too tall for every shelf", tooTallRows(space, settings)],
    ["Left out", problemRows(survey)],
    [OTHER_KINDS, otherKinds(survey)],
  ];
  const blocks = [
    ...paragraph(TITLE, width, { size: TYPE.title, bold: true, withNext: true }, type),
    ...paragraph(meaning(settings.answerUnit === "in" ? "feet" : "metres"), width, { size: TYPE.body }, type),
    ...tables.flatMap(([name, rows]) =>
      rows.length < 2 ? [] : [...heading(name, width, type), ...anyTable(printedTable(rows), width, type), gap(1)],
    ),
    ...paragraph(HEAVY_BOXES, width, { size: TYPE.small }, type),
  ];
  const foot = (page: number, of: number) => runningFoot(TITLE, `page ${page} of ${of}`, frame, type);
  return flow(blocks, frame, foot, TITLE);
}

function meaning(lengths: string): string {
  return `Upright: ${lengths} along the shelf. Flat: square ${lengths} of shelf or drawer. Now: the objects as they are, without enclosures. Boxed: the closed enclosures. More: what the enclosures add.`;
}
