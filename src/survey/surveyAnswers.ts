import { joinParts } from "../covering/joinParts";
import { isBlank } from "../measure/blank";
import { InputError, NoAnswer, shown } from "../measure/errors";
import { plainName } from "../settings/names";
import type { Cell } from "../item/answers";
import { PARTS_HEADINGS, partsRow } from "../item/partsAnswer";
import { sizedRow, type Figure, type SizedRow } from "../item/figure";
import { DEFAULT_FIGURES, figureNamed, figureOf } from "../item/figureCatalogue";
import { columnNamed } from "./columnNamed";
import type { SurveyReading } from "./sizeSurvey";
import type { Outcome } from "./outcome";
import { problemText } from "../item/sizeItem";
import { unitDoubts } from "./unitDoubts";
import type { SurveyItem } from "./surveyItems";

/** A table for a whole survey. */
export type SurveyTable = readonly (readonly Cell[])[];

/**
 * A row of figures for each row of a survey, under a row of their names. Rows stay in step with the survey: what cannot
 * be sized shows its error, rows of a shared box after the first say `in box B7`, blank rows and rows of totals are
 * blank (`problem` says of the latter that they were left out). `problem` says too where sizes may be read in the wrong
 * unit.
 *
 * @param columns names of figures, or of columns of the survey, which pass through; `default` for the usual ones
 */
export function surveyTable(reading: SurveyReading, columns: readonly string[], cells: SurveyCells): SurveyTable {
  const { survey, outcomeAt } = reading;
  const wanted = columns.flatMap((name) => (plainName(name) === "default" ? DEFAULT_FIGURES : [name]));
  const figures = wanted.map((name) => figureOf(name) ?? passThrough(name, reading, cells) ?? figureNamed(name));
  const saysWhy = figures.some((column) => !("passes" in column) && column.saysWhy);
  const doubts = survey.asks || !saysWhy ? undefined : unitDoubts(reading);
  const rows = survey.items.map((item, index) => rowOf(item, outcomeAt(index), figures, doubts?.get(item.row)));
  return [figures.map(({ name }) => name), ...rows];
}

/**
 * Every part of every item, a row each, with the item's identifier; counts are those of all copies.
 * A row that cannot be sized has one line with its error.
 */
export function cutListTable({ survey, outcomeAt }: SurveyReading): SurveyTable {
  const rows = survey.items.flatMap((item, index) => cutListRows(item, outcomeAt(index)));
  return [CUTLIST_HEADINGS, ...rows];
}

export const CUTLIST_HEADINGS = ["identifier", "enclosure", ...PARTS_HEADINGS] as const;

/** The table as the user gave it, for columns that pass through. */
export type SurveyCells = readonly (readonly unknown[])[];

/** A figure of one row, or a value of its own that passes through. */
type Column = Figure | PassedColumn;

interface PassedColumn {
  readonly name: string;
  readonly passes: (item: SurveyItem) => Cell;
}

function passThrough(name: string, { survey }: SurveyReading, cells: SurveyCells): PassedColumn | undefined {
  const index = columnNamed(name, survey, cells);
  return index === undefined ? undefined : { name, passes: ({ row }) => passed(cells[row - 1]?.[index]) };
}

function passed(cell: unknown): Cell {
  if (typeof cell === "number" || typeof cell === "string") return cell;
  return isBlank(cell) ? "" : String(cell);
}

function rowOf(item: SurveyItem, outcome: Outcome, columns: readonly Column[], doubt = ""): readonly Cell[] {
  const row = outcome.state === "sized" ? sizedRow(outcome.sized, outcome.quantity, outcome.said) : undefined;
  return columns.map((column) => {
    if ("passes" in column) return column.passes(item);
    if (column.saysWhy) return problemCell(outcome, doubt);
    if (row !== undefined) return answered(column, row);
    if (outcome.state === "problem") return outcome.unmeasured === true ? "" : outcome.error;
    return outcome.state === "in box" ? inBox(outcome) : "";
  });
}

/** @param doubt how its sizes may be read in the wrong unit */
function problemCell(outcome: Outcome, doubt: string): string {
  if (outcome.state === "problem") return problemText(outcome.error);
  if (outcome.state === "left out") return outcome.why;
  return outcome.state === "nothing" ? "" : doubt;
}

function inBox({ box }: { readonly box: string }): string {
  return `in box ${box}`;
}

/** A part that this row's kind lacks is an error of its cell, not of the table. */
function answered(figure: Figure, row: SizedRow): Cell {
  try {
    return figure.of(row);
  } catch (error) {
    if (error instanceof NoAnswer || error instanceof InputError) return error;
    throw error;
  }
}

function cutListRows(item: SurveyItem, outcome: Outcome): SurveyTable {
  const blank = PARTS_HEADINGS.slice(1).map(() => "");
  const enclosure = isBlank(item.cells.enclosure) ? "" : String(item.cells.enclosure);
  if (outcome.state === "problem") return [[item.identifier, enclosure, outcome.error, ...blank]];
  if (outcome.state === "in box") return [[item.identifier, enclosure, inBox(outcome), ...blank]];
  if (outcome.state !== "sized") return [];
  const { sized, quantity } = outcome;
  return joinParts(sizedRow(sized, quantity).parts(), sized.settings).map((part) => [
    item.identifier,
    sized.kind.name,
    ...partsRow(part, sized, quantity),
  ]);
}

/** Names of figures as a range of cells gives them. */
export function figureNames(cells: readonly (readonly unknown[])[]): readonly string[] {
  const names = cells.flat().filter((cell) => !isBlank(cell));
  if (names.length === 0) return ["default"];
  return names.map((cell) => {
    if (typeof cell === "string") return cell.trim();
    throw new InputError("columns", shown(cell), "give names of figures such as outside height, or default");
  });
}
