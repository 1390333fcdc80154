import { newSheets } from "../cutting/sheetLabels";
import { namedPlan } from "../drawing/namedPlan";
import type { StockPlan } from "../estimate/stockPlans";
import { nearestMark } from "../measure/benchLength";
import type { Mm, WorkbookUnit } from "../measure/units";
import type { Settings } from "../settings/schema";
import { bodyHeight, bodyWidth, flow, gap, type Block, type Frame } from "./blocks";
import type { CutTree } from "./cutTree";
import { drawingBlock } from "./drawingBlock";
import type { Page } from "./page";
import { groupTree } from "./groupTree";
import { pieceWords, planRows, planTable, sizeText } from "./planRows";
import { remembered } from "./remembered";
import { runningFoot } from "./runningFoot";
import { groupOffCuts, sheetGroups, type SheetGroup } from "./sheetGroups";
import { paragraph, TYPE } from "./textBlocks";
import type { Typesetter } from "./typesetter";

/** Units of a drawing in a millimetre of paper: words 10.8 units high come out at 9 points at least. */
const UNITS_PER_MM = 3.35;
const LEAST_DRAWING: Mm = 72;
const SMALL_DRAWING: Mm = 58;
const MOST_DRAWING: Mm = 135;
const GAP: Mm = 2;

/** A page of plans with the items that are cut from it. */
export type PlanPage = Page & { readonly items?: readonly string[] };

/**
 * Cutting plans, a page for each sheet or length: a drawing with the names of its strips and pieces, and what comes off
 * it in the order of cutting, each cut with its fence. Sheets that are alike in everything have one page.
 */
export function cuttingPages(
  planned: readonly { readonly group: string; readonly plans: readonly StockPlan[] }[],
  settings: Settings,
  frame: Frame,
  type: Typesetter,
): readonly PlanPage[] {
  return planned.flatMap(({ group: members, plans }) =>
    plans.flatMap((plan) => {
      // Tape is cut off by length, without a plan.
      const groups = plan.material === "closure" ? [] : sheetGroups(plan);
      return groups.flatMap((group) => {
        const name = nameOf(
          plan,
          group,
          { lengths: groups.length, members: groupName(members, settings) },
          settings.answerUnit,
        );
        const foot = (page: number, of: number) =>
          runningFoot(`Cutting plan: ${name}`, `sizes in ${settings.answerUnit}; page ${page} of ${of}`, frame, type);
        const items = new Set(group.sheets.flatMap(({ placements }) => placements.map(({ piece }) => piece.item)));
        return flow(groupBlocks(name, group, settings, frame, type), frame, foot, name).map((page, index) =>
          index === 0 ? { ...page, names: [`plan ${members}: ${name}`], items: [...items] } : page,
        );
      });
    }),
  );
}

/** `batch 2`, or a word that says enough by itself. */
function groupName(group: string, { estimateBy }: Settings): string {
  return /^\d/.test(group) ? `${estimateBy} ${group}` : group;
}

/** `conservation board 2, batch 1, sheet 3 of 12`. */
function nameOf(
  { stock, plan, form }: StockPlan,
  { numbers, from, before, sheets }: SheetGroup,
  { lengths, members }: { readonly lengths: number; readonly members: string },
  unit: WorkbookUnit,
): string {
  const [sheet] = sheets;
  const batches = new Set(sheets.flatMap(({ placements }) => placements.map(({ piece }) => piece.batch)));
  const [batch] = batches;
  const named = [
    sheet.stock === "" ? stock : sheet.stock,
    ...(members === "" ? [] : [members]),
    ...(batches.size === 1 && batch !== undefined ? [`batch ${batch}`] : []),
  ];
  if (form === "roll") {
    const start = before + from!;
    const [at, end] = [start, start + sheet.length].map((length) => nearestMark(length, unit));
    return [...named, `length ${numbers[0]} of ${lengths}: ${at} to ${end} ${unit} of the roll`].join(", ");
  }
  if (sheet.offCut !== undefined) return [...named, `off-cut ${numbers.join(", ")}`].join(", ");
  const of = newSheets(plan!).length;
  if (numbers.length === 1) return [...named, `sheet ${numbers[0]} of ${of}`].join(", ");
  return [...named, `${numbers.length} sheets alike: ${numbers.join(", ")} of ${of}`].join(", ");
}

function groupBlocks(
  name: string,
  group: SheetGroup,
  settings: Settings,
  frame: Frame,
  type: Typesetter,
): readonly Block[] {
  const { answerUnit: unit } = settings;
  const width = bodyWidth(frame);
  const [sheet] = group.sheets;
  const { tree, edgeTrim } = groupTree(group, settings);
  const body = { size: TYPE.body };
  const trim = edgeTrim === 0 ? "" : ` First trim ${nearestMark(edgeTrim, unit)} ${unit} off every edge.`;
  const larger = sheet.placements.some(({ piece }) => piece.later !== undefined && piece.holds !== undefined);
  const allowance = larger
    ? ` Strips and second-made boards are cut up to ${nearestMark(settings.matchAllowance, unit)} ${unit} larger than on the ticket, which says how they are trimmed.`
    : "";
  const head = [
    ...paragraph(name, width, { size: TYPE.title, bold: true, withNext: true }, type),
    ...paragraph(
      `${nearestMark(sheet.length, unit)} × ${nearestMark(sheet.width, unit)} ${unit}, grain along the first. One row a cut, in order: set the fence (${unit}), put the left or top edge of the panel, as drawn, against it.${trim}${allowance}`,
      width,
      body,
      type,
    ),
    gap(GAP),
  ];
  const offCuts = offCutLines(group, settings, width, type);
  const taken = [...head, ...offCuts, gap(GAP)].reduce((sum, { height }) => sum + height, 0);
  const room = bodyHeight(frame) - taken;
  const drawn = remembered((highest: Mm) =>
    drawingBlock(drawingOf(name, tree, group, unit, { width, highest }), width, highest),
  );
  const tables = remembered((tight: boolean) => planTable(tree, { unit, width, tight }, type));
  const rows = fewestPages(
    LAYOUTS.map(
      ({ highest, tight }) =>
        () =>
          planRows(tables(tight), room - drawn(highest).height, bodyHeight(frame)),
    ),
  );
  const [first, ...others] = rows;
  return [
    ...head,
    drawn(Math.min(MOST_DRAWING, room - (first?.height ?? 0))),
    gap(GAP),
    ...(first === undefined ? [] : [first]),
    ...offCuts,
    ...others.map((block) => ({ ...block, onNewPage: true as const })),
  ];
}

/** How full a page is set; the next is tried where the one before goes on on the back. */
const LAYOUTS = [
  { highest: LEAST_DRAWING, tight: false },
  { highest: LEAST_DRAWING, tight: true },
  { highest: SMALL_DRAWING, tight: true },
  // What goes on on the back anyway leaves the drawing its room.
  { highest: MOST_DRAWING, tight: false },
];

/** The first that is one page; else the last, if none has fewer pages. */
function fewestPages(layouts: readonly (() => readonly Block[])[]): readonly Block[] {
  let best: readonly Block[] | undefined;
  for (const layout of layouts) {
    const rows = layout();
    if (rows.length <= 1) return rows;
    if (best === undefined || rows.length <= best.length) best = rows;
  }
  return best!;
}

function drawingOf(
  name: string,
  { pieces, strips, firstWay }: CutTree,
  { sheets: [{ length, width: across }] }: SheetGroup,
  unit: WorkbookUnit,
  { width, highest }: { readonly width: Mm; readonly highest: Mm },
) {
  return namedPlan(
    {
      title: `Cutting plan: ${name}, ${pieces.length} pieces`,
      length,
      width: across,
      pieces: pieces.map(({ name: own, placement }) => ({
        ...placement!,
        name: own,
        words: [...pieceWords(placement!.piece), sizeText(placement!, unit)],
      })),
      strips,
      firstWay,
    },
    { width: Math.floor(width * UNITS_PER_MM), tallest: Math.floor(highest * UNITS_PER_MM) },
  );
}

function offCutLines(group: SheetGroup, settings: Settings, width: Mm, type: Typesetter): readonly Block[] {
  const { answerUnit: unit } = settings;
  const marked = group.cutLater.map((offCut) => sizeText(offCut, unit));
  const each = group.sheets.length > 1 ? " from each" : "";
  const sizes = groupOffCuts(group, settings)
    .map((offCut) => sizeText(offCut, unit))
    .filter((size) => {
      const at = marked.indexOf(size);
      return at < 0 || marked.splice(at, 1).length === 0;
    });
  const later = group.cutLater.map((offCut) => `${offCut.label}: ${sizeText(offCut, unit)}`);
  const lines = [
    ...(sizes.length === 0 ? [] : [`Keep as off-cuts${each}: ${sizes.join("; ")} ${unit}, grain along the first.`]),
    ...(later.length === 0 ? [] : [`Mark and keep for a later batch: ${later.join("; ")} ${unit}.`]),
  ];
  return lines.length === 0
    ? []
    : [gap(GAP), ...lines.flatMap((text) => paragraph(text, width, { size: TYPE.body }, type))];
}
