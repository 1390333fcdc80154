import type { Estimate } from "../estimate/estimate";
import { stockPlans, type PlanOptions, type StockPlan } from "../estimate/stockPlans";
import { basename, extname } from "node:path";
import { InputError, NoAnswer, shown } from "../measure/errors";
import { formatLengthWithUnit } from "../measure/formatLength";
import type { Cell } from "../survey/answers";
import { demandsOf, estimateFor, estimateTable, leftOutRows, SHEETS_HEADINGS, sheetsRow } from "../survey/sheetAnswers";
import type { SizedSurvey } from "../survey/sizeSurvey";
import type { SurveyCells } from "../survey/surveyAnswers";
import { createWorkbook } from "../workbook/createWorkbook";
import { saveBeside } from "../workbook/saveBeside";
import { writeCsv } from "../workbook/writeCsv";
import type { Output } from "./output";
import { textTable } from "./textTable";

/** A survey as the command line read it. */
export interface ReadSurvey {
  readonly path: string;
  readonly bytes: Uint8Array;
  readonly sized: SizedSurvey;
  readonly cells: SurveyCells;
}

/** `plan`: sheets of each stock with what is proved, and every sheet with its cuts in order. */
export function planCommand({ sized }: ReadSurvey, stock: string | undefined, options: PlanOptions): Output {
  const demands = demandsOf(sized);
  const used = stock === undefined ? demands : onlyStock(demands, stock);
  const plans = stockPlans(used, sized.settings, options);
  const table = [SHEETS_HEADINGS, ...plans.map((plan) => sheetsRow(plan, sized.settings))];
  return {
    text: [
      textTable(plainRows(table)),
      ...leftOutText(leftOutRows(sized, plans)),
      ...plans.flatMap((plan) => planText(plan, sized.settings.unit)),
      "",
      "Blade: cut along a heavy steel rule, fingers behind its edge; a board shear's guard stays on.",
    ].join("\n"),
    json: plans,
  };
}

/** `estimate`: the materials budget, to the screen or to a file. */
export function estimateCommand(
  survey: ReadSurvey,
  out: string | undefined,
  replace: boolean,
  options: PlanOptions,
): Output {
  const { sized, cells } = survey;
  const estimate = estimateFor(sized, cells, options);
  const table = plainRows(estimateTable(estimate, sized.settings));
  const leftOut = leftOutRows(
    sized,
    estimate.plans.flatMap(({ plans }) => plans),
  );
  const saved = out === undefined ? undefined : save(survey, out, replace, [...table, ...plainRows(leftOut)]);
  const currency = sized.settings.currency;
  return {
    text: [
      textTable(table),
      ...leftOutText(leftOut),
      "",
      ...method(estimate, sized, currency),
      ...(saved === undefined ? [] : ["", `written: ${saved}`]),
    ].join("\n"),
    json: { ...estimate, leftOut: plainRows(leftOut).slice(1), ...(saved === undefined ? {} : { file: saved }) },
  };
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

function save(
  { path, bytes }: ReadSurvey,
  out: string,
  replace: boolean,
  rows: readonly (readonly (string | number)[])[],
): string {
  const kind = extname(out).toLowerCase();
  if (kind !== ".csv" && kind !== ".xlsx")
    throw new InputError("out", shown(basename(out)), "give a .csv or .xlsx file");
  const content = kind === ".csv" ? writeCsv(rows) : createWorkbook([{ name: "Estimate", rows }]);
  const verify = (written: Uint8Array) => {
    if (Buffer.compare(content, written) !== 0) throw new Error("the file as written differs from what it should hold");
  };
  return saveBeside({ input: path, inputBytes: bytes, output: out, bytes: content, verify, replace }).output;
}

function onlyStock(demands: ReturnType<typeof demandsOf>, stock: string): ReturnType<typeof demandsOf> {
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

function plainRows(rows: readonly (readonly Cell[])[]): readonly (readonly (string | number)[])[] {
  return rows.map((row) =>
    row.map((cell) => (cell instanceof InputError || cell instanceof NoAnswer ? cell.message : cell)),
  );
}
