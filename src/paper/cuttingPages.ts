import { newSheets } from "../cutting/sheetLabels";
import type { SheetPlan } from "../cutting/types";
import { sheetPlan } from "../drawing/sheetPlan";
import { CAUTIONS } from "../enclosure/step";
import type { StockPlan } from "../estimate/stockPlans";
import { formatLength } from "../measure/formatLength";
import type { Mm, WorkbookUnit } from "../measure/units";
import type { Settings } from "../settings/schema";
import { bodyHeight, bodyWidth, flow, gap, type Block, type Frame } from "./blocks";
import { drawingBlock } from "./drawingBlock";
import type { Page } from "./page";
import { runningFoot } from "./runningFoot";
import { groupOffCuts, sheetGroups, type SheetGroup } from "./sheetGroups";
import { fitColumns, table } from "./table";
import { heading, paragraph, tickBox, lineHeight, TYPE } from "./textBlocks";
import type { Typesetter } from "./typesetter";

const UNITS_PER_MM = 4.2;
const DRAWING_SHARE = 0.6;

/** Cutting plans: one drawing for each way of cutting a sheet, its cuts in order with their settings, its off-cuts. */
export function cuttingPages(
  plans: readonly StockPlan[],
  settings: Settings,
  frame: Frame,
  type: Typesetter,
): readonly Page[] {
  return plans.flatMap((plan) =>
    sheetGroups(plan).flatMap((group) => {
      const name = nameOf(plan, group, settings.unit);
      const foot = (page: number, of: number) =>
        runningFoot(`Cutting plan: ${name}`, `sizes in ${settings.unit}, page ${page} of ${of}`, frame, type);
      return flow(groupBlocks(name, group, settings, frame, type), frame, foot, name);
    }),
  );
}

function nameOf(
  { stock, plan, form }: StockPlan,
  { numbers, from, before, sheets }: SheetGroup,
  unit: WorkbookUnit,
): string {
  const shown = (size: Mm) => formatLength(size, unit);
  if (form === "roll") {
    const start = before + from!;
    return `${stock}, ${shown(start)} to ${shown(start + sheets[0].length)} ${unit} of the roll`;
  }
  const of = newSheets(plan!).length;
  if (sheets[0].offCut !== undefined) return `${stock}, off-cut ${numbers.join(", ")}`;
  if (numbers.length === 1) return `${stock}, sheet ${numbers[0]} of ${of}`;
  return `${stock}, ${numbers.length} sheets cut alike: ${numbers.join(", ")} of ${of}`;
}

function groupBlocks(
  name: string,
  group: SheetGroup,
  settings: Settings,
  frame: Frame,
  type: Typesetter,
): readonly Block[] {
  const { unit, edgeTrim } = settings;
  const width = bodyWidth(frame);
  const [sheet] = group.sheets;
  const alike = group.sheets.every((each) => samePieces(each, sheet));
  const placements = sheet.placements.map((placement, index) =>
    alike ? placement : { ...placement, piece: { item: `piece ${index + 1}`, part: "" } },
  );
  const drawn = sheetPlan({ ...sheet, placements }, { unit, width: Math.round(width * UNITS_PER_MM) });
  const trim =
    edgeTrim === 0 || sheet.offCut !== undefined
      ? ""
      : ` First trim ${formatLength(edgeTrim, unit)} ${unit} off every edge.`;
  return [
    ...paragraph(name, width, { size: TYPE.title, bold: true, withNext: true }, type),
    ...paragraph(
      `Cut edge to edge in the order of the numbers; the setting is the distance from the fence.${trim} ${CAUTIONS.blade}`,
      width,
      { size: TYPE.body },
      type,
    ),
    gap(2),
    drawingBlock(drawn, width, bodyHeight(frame) * DRAWING_SHARE),
    ...cutTable(sheet, width, unit, type),
    ...offCutLines(group, settings, width, type),
    ...(alike ? [] : pieceTable(group, width, unit, type)),
  ];
}

function samePieces(one: SheetPlan, other: SheetPlan): boolean {
  return one.placements.every(({ piece }, index) => {
    const with_ = other.placements[index]?.piece;
    return with_?.item === piece.item && with_.part === piece.part;
  });
}

function cutTable(sheet: SheetPlan, width: Mm, unit: WorkbookUnit, type: Typesetter): readonly Block[] {
  const shown = (size: Mm) => formatLength(size, unit);
  const size = TYPE.small;
  const columns = [
    { heading: "", least: TICK_COLUMN },
    { heading: "cut", align: "end" as const },
    { heading: `setting, ${unit}`, align: "end" as const, bold: true },
    { heading: "way", share: 1 },
    { heading: `at, ${unit}`, align: "end" as const },
    { heading: `from, ${unit}`, align: "end" as const },
    { heading: `to, ${unit}`, align: "end" as const },
  ];
  const rows = sheet.cuts.map(({ way, at, from, to, setting }, index) => [
    { height: lineHeight(size), draw: (x: Mm, y: Mm) => [tickBox(x, y, size)] },
    String(index + 1),
    shown(setting),
    way === "across" ? "across the grain of the sheet" : "along the grain of the sheet",
    shown(at),
    shown(from),
    shown(to),
  ]);
  if (rows.length === 0) return [];
  return [
    ...heading("Cuts", width, type),
    ...table(fitColumns(columns, rows, width, size, type), rows, { size }, type),
  ];
}

const TICK_COLUMN: Mm = 5.5;

function offCutLines(group: SheetGroup, settings: Settings, width: Mm, type: Typesetter): readonly Block[] {
  const { unit } = settings;
  const kept = groupOffCuts(group, settings);
  const each = group.sheets.length > 1 ? " from each" : "";
  const sizes = kept.map(
    ({ length, width: across }) => `${formatLength(length, unit)} × ${formatLength(across, unit)}`,
  );
  const text = kept.length === 0 ? "None." : `${sizes.join("; ")} ${unit}${each}, length along the grain.`;
  const later = group.cutLater.map(
    ({ label, length, width: across }) => `${label}: ${formatLength(length, unit)} × ${formatLength(across, unit)}`,
  );
  const marked = later.length === 0 ? "" : ` Mark and keep for a later batch: ${later.join("; ")} ${unit}.`;
  return [
    ...heading("Off-cuts worth keeping", width, type),
    ...paragraph(`${text}${marked}`, width, { size: TYPE.body }, type),
  ];
}

/** Whose piece lies where, sheet by sheet, where sheets cut alike hold pieces of different items. */
function pieceTable(group: SheetGroup, width: Mm, unit: WorkbookUnit, type: Typesetter): readonly Block[] {
  const size = TYPE.small;
  const columns = [
    { heading: "sheet", align: "end" as const },
    { heading: "piece", align: "end" as const },
    { heading: "item", bold: true, share: 1 },
    { heading: "part", share: 1 },
    { heading: `size, ${unit}`, share: 0.7 },
  ];
  const rows = group.sheets.flatMap((sheet, at) =>
    sheet.placements.map(({ piece, length, width: across }, index) => [
      group.numbers[at]!,
      String(index + 1),
      piece.item,
      piece.part,
      `${formatLength(length, unit)} × ${formatLength(across, unit)}`,
    ]),
  );
  return [
    ...heading("Pieces, sheet by sheet", width, type),
    ...table(fitColumns(columns, rows, width, size, type), rows, { size }, type),
  ];
}
