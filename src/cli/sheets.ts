import { basename, extname } from "node:path";
import { batchingCost, type BatchingCost } from "../estimate/batching";
import { groupedJobs, type PlannedGroup } from "../estimate/groupedJobs";
import type { StockPlan } from "../estimate/stockPlans";
import { stockJobs, type Demand } from "../estimate/stockJobs";
import { InputError, shown } from "../measure/errors";
import { demandsOf } from "../estimate/demandsOf";
import { demandGroups } from "../estimate/budget";
import { boardNotes } from "../survey/boardNotes";
import type { SizedSurvey } from "../survey/sizeSurvey";
import { visibleLine } from "./print";
import type { SurveyCells } from "../survey/surveyAnswers";
import type { Workbook } from "../workbook/openWorkbook";
import { saveBeside, type SaveResult } from "../files/saveBeside";
import type { Output } from "./output";
import { planBeside, type BesideOptions } from "./planBeside";
import { fewerSheetsText, readText, sheetTables, stocksText } from "./planText";
import { textTable } from "../pack/textTable";

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

/** What of a plan to print, and where to write its sheets. */
export interface PlanCommand extends SheetsOptions {
  readonly sheets: boolean;
  readonly out: string | undefined;
  readonly replace: boolean;
}

export interface Planned {
  readonly groups: readonly PlannedGroup[];
  /** What planning by group costs; empty where all is planned together. */
  readonly batching: readonly BatchingCost[];
  /** Plans of the fewest sheets found, beside plans of the bench style; empty where none were looked for. */
  readonly least: readonly StockPlan[];
}

/** Beyond so many pieces the time goes to the plan itself, not to one to compare it with. */
const COMPARED_UP_TO = 3000;

/** `plan`: sheets of each stock with what is proved and what the plan asks of the bench; every sheet where that is asked. */
export async function planCommand(survey: ReadSurvey, options: PlanCommand): Promise<Output> {
  const { sized, cells } = survey;
  const { settings } = sized;
  const { groups, batching, least } = await planned(sized, cells, options.by ?? "material", {
    ...options,
    compare: options.by === undefined,
  });
  const plans = allPlans(groups);
  const heading = (group: string) => (group === "" ? [] : ["", `${options.by}: ${group}`, ""]);
  const sections = groups.flatMap(({ group, plans: own }) => [...heading(group), ...stocksText(own, settings)]);
  const tables = groups.flatMap(({ group, plans: own }) => [
    ...heading(group),
    ...own.flatMap((plan) => sheetTables(plan, settings.answerUnit)),
  ]);
  const saved = savePlan(survey, options, tables);
  return {
    text: [
      ...readText(sized, plans),
      "",
      ...sections,
      ...fewerSheetsText(plans, least),
      ...batchingText(batching, options.by),
      ...(options.sheets ? tables : []),
      ...(options.sheets || saved.length > 0 ? saved : ["", "Every sheet with its cuts: --sheets, or --out FILE."]),
      ...notesText(sized),
      "",
      "Blade: cut along a heavy steel rule, fingers behind its edge; a board shear's guard stays on.",
    ].join("\n"),
    json:
      options.by === undefined
        ? plans
        : { groups: groups.map(({ group, plans: own }) => ({ group, plans: own })), batching },
  };
}

export function notesText(sized: SizedSurvey): readonly string[] {
  const notes = [...sized.survey.notes, ...boardNotes(sized)].map(visibleLine);
  return notes.length === 0 ? [] : ["", ...notes];
}

/** @returns what was written, in words */
function savePlan(
  { path, bytes }: ReadSurvey,
  { out, replace }: PlanCommand,
  tables: readonly string[],
): readonly string[] {
  if (out === undefined) return [];
  if (extname(out).toLowerCase() !== ".txt")
    throw new InputError("out", shown(basename(out)), "give a .txt file for the sheets with their cuts");
  const content = new TextEncoder().encode(`${tables.join("\n").trim()}\n`);
  return savedLines(
    saveBeside({ input: path, inputBytes: bytes, output: out, bytes: content, inPlace: false, replace }),
    "plan",
  );
}

/** Plans each group and, where there are several, all together too, to say what grouping costs. */
export async function planned(
  sized: SizedSurvey,
  cells: SurveyCells,
  by: string,
  {
    stock,
    compare = false,
    ...options
  }: BesideOptions & { readonly stock: string | undefined; readonly compare?: boolean },
): Promise<Planned> {
  const { settings } = sized;
  const only = (demands: readonly Demand[]) => (stock === undefined ? demands : onlyStock(demands, stock));
  const found = demandGroups(sized, cells, by).map(({ group, demands }) => ({ group, demands: only(demands) }));
  const apart = groupedJobs(found, settings);
  const together = found.length < 2 ? [] : stockJobs(only(demandsOf(sized)), settings);
  const compared = apart.jobs.filter(
    ({ source, bench, pieces }) =>
      compare && bench !== undefined && source?.kind === "sheets" && pieces.length <= COMPARED_UP_TO,
  );
  const least = compared.map((job) => ({ ...job, bench: undefined }));
  const plans = await planBeside([...apart.jobs, ...together, ...least], options);
  const groups = apart.planned(plans);
  const batching = batchingCost(
    groups.map((group) => group.plans),
    plans.slice(apart.jobs.length, apart.jobs.length + together.length),
  );
  return { groups, batching, least: plans.slice(apart.jobs.length + together.length) };
}

export function allPlans(groups: Planned["groups"]): readonly StockPlan[] {
  return groups.flatMap(({ plans }) => plans);
}

export function batchingText(batching: readonly BatchingCost[], by: string | undefined): readonly string[] {
  if (batching.length === 0) return [];
  const rows = batching.map(({ stock, unit, apart, together, more }) => [stock, unit, apart, together, more]);
  return [
    "",
    `What cutting by ${by} costs, beside cutting all together`,
    "",
    textTable([["stock", "unit", "by group", "all together", "more"], ...rows]),
  ];
}

export function savedLines({ output, backup }: SaveResult, what: string): readonly string[] {
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
