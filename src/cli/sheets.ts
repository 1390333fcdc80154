import { basename, extname } from "node:path";
import { batchingCost, type BatchingCost } from "../estimate/batching";
import { estimateOf, type Estimate } from "../estimate/estimate";
import { examplePriceNotice } from "../estimate/examplePrices";
import { groupedJobs, type PlannedGroup } from "../estimate/groupedJobs";
import { stockJobs, type Demand, type StockPlan } from "../estimate/stockPlans";
import { InputError, shown } from "../measure/errors";
import { formatLengthWithUnit } from "../measure/formatLength";
import { plainRows, type Cell } from "../item/answers";
import {
  demandGroups,
  demandsOf,
  estimateTable,
  leftOutRows,
  SHEETS_HEADINGS,
  sheetsRow,
} from "../estimate/sheetAnswers";
import { boardNotes } from "../survey/boardNotes";
import type { SizedSurvey } from "../survey/sizeSurvey";
import type { SurveyCells } from "../survey/surveyAnswers";
import { createWorkbook } from "../workbook/createWorkbook";
import { editWorkbook } from "../workbook/editWorkbook";
import { estimateSheet } from "../filling/estimateSheet";
import type { Workbook } from "../workbook/openWorkbook";
import { saveBeside, type SaveResult } from "../files/saveBeside";
import { verifyEdit } from "../workbook/verifyEdit";
import { writeCsv } from "../workbook/writeCsv";
import type { Output } from "./output";
import { planBeside, type BesideOptions } from "./planBeside";
import { textTable } from "./textTable";

/** A survey as the command line read it. */
export interface ReadSurvey {
  readonly path: string;
  readonly bytes: Uint8Array;
  /** Undefined for a .csv. */
  readonly workbook: Workbook | undefined;
  readonly sized: SizedSurvey;
  readonly cells: SurveyCells;
}

/** What to plan, and how long. */
export interface SheetsOptions extends BesideOptions {
  readonly stock: string | undefined;
  /** Plan each value of this heading by itself; left out, all together. */
  readonly by: string | undefined;
}

/** Where to write an estimate. */
export interface EstimateOut {
  readonly out: string | undefined;
  readonly inPlace: boolean;
  readonly replace: boolean;
}

interface Planned {
  readonly groups: readonly PlannedGroup[];
  /** What planning by group costs; empty where all is planned together. */
  readonly batching: readonly BatchingCost[];
}

/** `plan`: sheets of each stock with what is proved, and every sheet with its cuts in order. */
export async function planCommand({ sized, cells }: ReadSurvey, options: SheetsOptions): Promise<Output> {
  const { settings } = sized;
  const { groups, batching } = await planned(sized, cells, options.by ?? "material", options);
  const sections = groups.flatMap(({ group, plans }) => {
    const table = [SHEETS_HEADINGS, ...plans.map((plan) => sheetsRow(plan, settings))];
    return [
      ...(group === "" ? [] : ["", `${options.by}: ${group}`, ""]),
      textTable(plainRows(table)),
      ...plans.flatMap((plan) => planText(plan, settings.unit)),
    ];
  });
  return {
    text: [
      ...sections,
      ...batchingText(batching, options.by),
      ...leftOutText(leftOutRows(sized, allPlans(groups))),
      ...notesText(sized),
      "",
      "Blade: cut along a heavy steel rule, fingers behind its edge; a board shear's guard stays on.",
    ].join("\n"),
    json:
      options.by === undefined
        ? allPlans(groups)
        : { groups: groups.map(({ group, plans }) => ({ group, plans })), batching },
  };
}

function notesText(sized: SizedSurvey): readonly string[] {
  const notes = boardNotes(sized);
  return notes.length === 0 ? [] : ["", ...notes];
}

/** `estimate`: the materials budget, to the screen, to a file, or as a sheet of a copy of the survey's workbook. */
export async function estimateCommand(
  survey: ReadSurvey,
  target: EstimateOut,
  options: Omit<SheetsOptions, "stock" | "by">,
): Promise<Output> {
  const { sized, cells } = survey;
  const { settings } = sized;
  const by = settings.estimateBy;
  const { groups, batching } = await planned(sized, cells, by, { ...options, stock: undefined });
  const estimate = estimateOf(groups, settings);
  const table = plainRows(estimateTable(estimate, settings));
  const leftOut = leftOutRows(sized, allPlans(groups), estimate);
  const notice = examplePriceNotice(estimate, settings);
  const saved = saveEstimate(survey, target, [...table, ...plainRows(leftOut), ...(notice === "" ? [] : [[notice]])]);
  return {
    text: [
      ...(notice === "" ? [] : [notice, ""]),
      textTable(table),
      ...batchingText(batching, by),
      ...leftOutText(leftOut),
      "",
      ...method(estimate, sized, settings.currency),
      ...notesText(sized),
      ...saved.map((line) => `\n${line}`),
    ].join("\n"),
    json: { ...estimate, notice, batching, leftOut: plainRows(leftOut).slice(1), files: saved },
  };
}

/** Plans each group and, where there are several, all together too, to say what grouping costs. */
async function planned(
  sized: SizedSurvey,
  cells: SurveyCells,
  by: string,
  { stock, ...options }: BesideOptions & { readonly stock: string | undefined },
): Promise<Planned> {
  const { settings } = sized;
  const only = (demands: readonly Demand[]) => (stock === undefined ? demands : onlyStock(demands, stock));
  const found = demandGroups(sized, cells, by).map(({ group, demands }) => ({ group, demands: only(demands) }));
  const apart = groupedJobs(found, settings);
  const together = found.length < 2 ? [] : stockJobs(only(demandsOf(sized)), settings);
  const plans = await planBeside([...apart.jobs, ...together], options);
  const groups = apart.planned(plans);
  const batching = batchingCost(
    groups.map((group) => group.plans),
    plans.slice(apart.jobs.length),
  );
  return { groups, batching };
}

function allPlans(groups: Planned["groups"]): readonly StockPlan[] {
  return groups.flatMap(({ plans }) => plans);
}

function batchingText(batching: readonly BatchingCost[], by: string | undefined): readonly string[] {
  if (batching.length === 0) return [];
  const rows = batching.map(({ stock, unit, apart, together, more }) => [stock, unit, apart, together, more]);
  return [
    "",
    `What cutting by ${by} costs, beside cutting all together`,
    "",
    textTable([["stock", "unit", "by group", "all together", "more"], ...rows]),
  ];
}

function method({ lines }: Estimate, { settings }: SizedSurvey, currency: string): readonly string[] {
  const proved = lines.filter(
    ({ unit, provedLeast, quantity, leastPossible }) =>
      unit === "sheets" && (provedLeast || quantity === leastPossible),
  );
  const cut = lines.filter(({ unit }) => unit === "sheets");
  return [
    `Sheets are counted from cutting plans that keep the grain; ${proved.length} of ${cut.length} counts of sheets are proved least.`,
    `Contingency ${settings.contingency} % of materials${currency === "" ? "" : `; money in ${currency}`}. Totals are sums of the lines as printed.`,
  ];
}

/** @returns what was written, in words */
function saveEstimate(
  { path, bytes, workbook }: ReadSurvey,
  { out, inPlace, replace }: EstimateOut,
  rows: readonly (readonly (string | number)[])[],
): readonly string[] {
  if (out === undefined && !inPlace) return [];
  const output = out ?? path;
  const kind = extname(output).toLowerCase();
  const request = { input: path, inputBytes: bytes, output, inPlace, replace };
  if (kind === ".csv" && !inPlace) {
    const content = writeCsv(rows);
    return told(saveBeside({ ...request, bytes: content }), "estimate");
  }
  if (kind !== ".xlsx" && kind !== ".xlsm")
    throw new InputError(
      "out",
      shown(basename(output)),
      inPlace ? "only a workbook takes the estimate in" : "give a .csv or .xlsx file",
    );
  const sheet = estimateSheet(rows);
  if (workbook === undefined) {
    const content = createWorkbook([sheet]);
    return told(saveBeside({ ...request, bytes: content }), "estimate");
  }
  const edit = editWorkbook(workbook, { sheets: [sheet] });
  const verify = (written: Uint8Array) => verifyEdit(workbook, edit, written);
  const saved = saveBeside({ ...request, bytes: edit.bytes, verify });
  return told(saved, `your workbook with the sheet "${sheet.name}"`);
}

function told({ output, backup }: SaveResult, what: string): readonly string[] {
  return [`${what}: ${output}`, ...(backup === undefined ? [] : [`as it was before: ${backup}`])];
}

function onlyStock(demands: readonly Demand[], stock: string): readonly Demand[] {
  const wanted = stock.trim().toLowerCase();
  const names = [...new Set(demands.flatMap(({ parts }) => parts.map((part) => part.stock)))];
  if (!names.some((name) => name.toLowerCase() === wanted))
    throw new InputError("only", shown(stock), `give one of ${names.join(", ")}`);
  return demands.map((demand) => ({
    ...demand,
    parts: demand.parts.filter((part) => part.stock.toLowerCase() === wanted),
  }));
}

/** Every sheet as a bench worker cuts it: sheets that are cut alike together, each cut with its setting. */
function planText({ stock, form, plan }: StockPlan, unit: "mm" | "cm" | "in"): readonly string[] {
  if (plan === undefined || plan.sheets.length === 0) return [];
  const size = (mm: number) => formatLengthWithUnit(mm, unit);
  const alike = new Map<number, number[]>();
  plan.sheets.forEach(({ layout }, index) => alike.set(layout, [...(alike.get(layout) ?? []), index]));
  const lines = [...alike.values()].flatMap((indexes) => {
    const sheet = plan.sheets[indexes[0]!]!;
    const numbers = indexes.map((index) => index + 1).join(", ");
    return [
      "",
      `${stock}, ${form === "roll" ? "length" : indexes.length > 1 ? "sheets" : "sheet"} ${numbers}: ${size(sheet.length)} along the grain x ${size(sheet.width)}`,
      `  pieces: ${sheet.placements.map(({ piece, length, width }) => `${piece.item} ${piece.part} ${size(length)} x ${size(width)}`).join("; ")}`,
      `  cuts: ${sheet.cuts.map(({ way, setting }) => `${way} at ${size(setting)}`).join(", ")}`,
    ];
  });
  return [...lines, `  ${stock}: ${plan.cutCount} cuts, ${plan.settings} different settings, ${plan.setUps} set-ups`];
}

function leftOutText(rows: readonly (readonly Cell[])[]): readonly string[] {
  if (rows.length === 0) return [];
  return ["", "Left out", ...plainRows(rows.slice(1)).map(([item, reason]) => `  ${item}: ${reason}`)];
}
