import type { Narrative } from "../application/section";
import type { Picture } from "../drawing/picture";
import type { Estimate } from "../estimate/estimate";
import { printedTable } from "../estimate/printedTable";
import type { Cell } from "../item/answers";
import type { Mm } from "../measure/units";
import type { SizedSurvey } from "../survey/sizeSurvey";
import { bodyWidth, flow, gap, type Block, type Frame } from "./blocks";
import { anyTable } from "./anyTable";
import { drawingBlock } from "./drawingBlock";
import { estimatePages } from "./estimatePages";
import { fontsNeeded, type FontLoader } from "./fonts";
import { pageFrame } from "./frames";
import type { Page, Paper } from "./page";
import { renderPages } from "./renderPages";
import { runningFoot } from "./runningFoot";
import { heading, paragraph, TYPE } from "./textBlocks";
import { createTypesetter, type Typesetter } from "./typesetter";

export interface ApplicationSource {
  readonly narrative: Narrative;
  readonly survey: SizedSurvey;
  readonly estimate: Estimate;
  /** Every item, its headings first. */
  readonly items: readonly (readonly Cell[])[];
  /** Each kind of enclosure, drawn. */
  readonly drawings: readonly (readonly [name: string, picture: Picture])[];
}

export interface ApplicationOptions {
  readonly paper: Paper;
  /** Name of the survey and the day, for the foot of every page. */
  readonly printed: string;
  readonly date: Date;
}

const DRAWINGS = "Drawings of the kinds";
const ITEMS = "Every item";

/** The whole application in one PDF: narrative, drawings of the kinds, the budget with its settings, every item. */
export async function applicationFile(
  { narrative, survey, estimate, drawings, items }: ApplicationSource,
  { paper, printed, date }: ApplicationOptions,
  load: FontLoader,
): Promise<Uint8Array> {
  const list = printedTable(items);
  const told = narrative.sections.flatMap(({ paragraphs, tables }) => [
    ...paragraphs,
    ...tables.flatMap(([, rows]) => rows.flat()),
  ]);
  const type = await createTypesetter(load, fontsNeeded([...told, ...list.flat(), ...stocksOf(survey)]));
  const frame = pageFrame(paper, printed);
  const width = bodyWidth(frame);
  const pages = [
    ...pagesOf(narrative.title, narrativeBlocks(narrative, width, type), frame, type),
    ...pagesOf(DRAWINGS, drawingBlocks(drawings, width, type), frame, type),
    ...estimatePages(estimate, survey, frame, type),
    ...pagesOf(ITEMS, [...titled(ITEMS, width, type), ...anyTable(list, width, type)], frame, type),
  ];
  return renderPages(pages, type, { title: narrative.title, date });
}

/** Printed among the settings. */
function stocksOf({ settings }: SizedSurvey): readonly string[] {
  return settings.stock.map(({ stock }) => stock);
}

function pagesOf(name: string, blocks: readonly Block[], frame: Frame, type: Typesetter): readonly Page[] {
  return flow(blocks, frame, (page, of) => runningFoot(name, `page ${page} of ${of}`, frame, type), name);
}

function titled(text: string, width: Mm, type: Typesetter): readonly Block[] {
  return paragraph(text, width, { size: TYPE.title, bold: true, withNext: true }, type);
}

function narrativeBlocks({ title, notice, sections }: Narrative, width: Mm, type: Typesetter): readonly Block[] {
  return [
    ...titled(title, width, type),
    ...paragraph(notice, width, { size: TYPE.body, bold: true }, type),
    ...sections.flatMap((section) => [
      ...heading(section.heading, width, type),
      ...section.paragraphs.flatMap((text) => [...paragraph(text, width, { size: TYPE.body }, type), gap(1)]),
      ...section.tables.flatMap(([name, rows]) => [
        ...paragraph(name, width, { size: TYPE.body, bold: true, withNext: true }, type),
        ...anyTable(rows, width, type),
        gap(2),
      ]),
    ]),
  ];
}

const DRAWING_SHARE = 0.5;
const HIGHEST_DRAWING: Mm = 60;

function drawingBlocks(drawings: ApplicationSource["drawings"], width: Mm, type: Typesetter): readonly Block[] {
  return [
    ...titled(DRAWINGS, width, type),
    ...drawings.flatMap(([name, picture]) => [
      ...heading(name, width, type),
      drawingBlock(picture, width * DRAWING_SHARE, HIGHEST_DRAWING),
    ]),
  ];
}
