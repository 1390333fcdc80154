import { basename, extname } from "node:path";
import { belowEstimate } from "../estimate/budget";
import { boardTotalRows, boardTotals, type BoardTotal } from "../estimate/boardTotals";
import { completenessOf, completenessText } from "../estimate/completeness";
import { estimateOf, type Estimate } from "../estimate/estimate";
import { costTable, estimateTable, moreTables } from "../estimate/estimateTables";
import { exampleNotice } from "../estimate/examplePrices";
import { provedCounts } from "../estimate/provedCounts";
import { leftOutRows } from "../estimate/leftOutRows";
import { saveBeside } from "../files/saveBeside";
import { estimateSheet } from "../filling/estimateSheet";
import { plainRows, type Cell } from "../item/answers";
import { InputError, shown } from "../measure/errors";
import type { SizedSurvey } from "../survey/sizeSurvey";
import { createWorkbook } from "../workbook/createWorkbook";
import { editWorkbook } from "../workbook/editWorkbook";
import { verifyEdit } from "../workbook/verifyEdit";
import { writeCsv } from "../workbook/writeCsv";
import type { Output } from "./output";
import { allPlans, batchingText, notesText, planned, savedLines, type ReadSurvey, type SheetsOptions } from "./sheets";
import { textTable } from "../pack/textTable";

/** Where to write an estimate. */
export interface EstimateOut {
  readonly out: string | undefined;
  readonly inPlace: boolean;
  readonly replace: boolean;
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
  const leftOut = leftOutRows(sized, allPlans(groups), estimate);
  const boards = boardTotals(sized, allPlans(groups));
  const completeness = completenessOf(sized, allPlans(groups));
  const notice = exampleNotice(estimate, settings);
  const saved = saveEstimate(survey, target, notice, estimate);
  return {
    text: [
      ...(notice === "" ? [] : [notice, ""]),
      textTable(plainRows(costTable(estimate, settings))),
      ...moreTables(estimate, settings).flatMap(([title, rows]) => ["", title, "", textTable(plainRows(rows))]),
      ...boardsText(boards, sized),
      ...batchingText(batching, by),
      ...leftOutText(leftOut),
      "",
      completenessText(completeness),
      ...method(estimate, sized, settings.currency),
      ...notesText(sized),
      ...saved.map((line) => `\n${line}`),
    ].join("\n"),
    json: {
      ...estimate,
      notice,
      completeness,
      boards,
      batching,
      leftOut: plainRows(leftOut).slice(1),
      notes: sized.survey.notes,
      files: saved,
    },
  };
}

function boardsText(boards: readonly BoardTotal[], { settings }: SizedSurvey): readonly string[] {
  return boards.length === 0 ? [] : ["", textTable(plainRows(boardTotalRows(boards, settings)))];
}

function method(estimate: Estimate, { settings }: SizedSurvey, currency: string): readonly string[] {
  const { proved, all } = provedCounts(estimate);
  return [
    `Sheets are counted from cutting plans that keep the grain; ${proved} of ${all} counts are proved: no plan cuts these parts, at finished size, from fewer sheets.`,
    `Contingency ${settings.contingency} % of materials${currency === "" ? "; no currency is set" : `; money in ${currency}`}. Totals are sums of the lines as printed.`,
    "Whether a line is allowed (tax, indirect cost, labour, contingency) is the funder's rule: read it before you send this.",
  ];
}

/** @returns what was written, in words */
function saveEstimate(
  { path, bytes, workbook, sized }: ReadSurvey,
  { out, inPlace, replace }: EstimateOut,
  notice: string,
  estimate: Estimate,
): readonly string[] {
  if (out === undefined && !inPlace) return [];
  const output = out ?? path;
  const kind = extname(output).toLowerCase();
  const request = { input: path, inputBytes: bytes, output, inPlace, replace };
  const table = plainRows(estimateTable(estimate, sized.settings));
  const below = plainRows(belowEstimate(sized, estimate));
  if (kind === ".csv" && !inPlace) {
    const content = writeCsv([...(notice === "" ? [] : [[notice]]), ...table, ...below]);
    return savedLines(saveBeside({ ...request, bytes: content }), "estimate");
  }
  if (kind !== ".xlsx" && kind !== ".xlsm")
    throw new InputError(
      "out",
      shown(basename(output)),
      inPlace ? "only a workbook takes the estimate in" : "give a .csv or .xlsx file",
    );
  const sheet = estimateSheet(table, below, notice);
  if (workbook === undefined) {
    const content = createWorkbook([sheet]);
    return savedLines(saveBeside({ ...request, bytes: content }), "estimate");
  }
  const edit = editWorkbook(workbook, { sheets: [sheet] });
  const verify = (written: Uint8Array) => verifyEdit(workbook, edit, written);
  const saved = saveBeside({ ...request, bytes: edit.bytes, verify });
  return savedLines(saved, `your workbook with the sheet "${sheet.name}"`);
}

function leftOutText(rows: readonly (readonly Cell[])[]): readonly string[] {
  if (rows.length === 0) return [];
  return ["", "Left out", ...plainRows(rows.slice(1)).map(([item, reason]) => `  ${item}: ${reason}`)];
}
