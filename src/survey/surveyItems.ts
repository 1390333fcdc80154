import { InputError, shown } from "../measure/errors";
import type { LengthUnit } from "../measure/units";
import { PREFERRED_BOARD } from "../settings/definitions/materialSettings";
import { isNotGiven, SETTING_NAMES, settingKey, type GivenValue } from "../settings/given";
import type { Field } from "../headings/headings";
import type { Recognition, RecogniseOptions } from "../headings/recognition";
import { recogniseColumns, surveyRows } from "../headings/recognise";
import { hazardIn } from "../board/hazard";
import { typedHeight, type SaidOfRow } from "../item/saidOfRow";
import { cellText, isBlank } from "../measure/blank";

/** A row of a survey, its cells sorted out but not yet read. */
export interface SurveyItem {
  /** Where it stands in the table, counted from 1. */
  readonly row: number;
  /** What the row is called: its identifier, else `row 7`. */
  readonly identifier: string;
  /** Empty where the survey gives none. */
  readonly title: string;
  /** What cautions go by beside the sizes. */
  readonly said: SaidOfRow;
  readonly cells: Readonly<Partial<Record<Field, unknown>>>;
  readonly quantity: number | InputError;
  /** Rows that share it are one enclosure; empty when the row has its own. */
  readonly box: string;
  readonly own: readonly GivenValue[];
  /** A last row of totals: left out, and said so. */
  readonly totals: boolean;
}

export interface Survey {
  readonly recognition: Recognition;
  readonly items: readonly SurveyItem[];
  /** Units that headings give, by field. */
  readonly units: Readonly<Partial<Record<Field, string>>>;
}

/**
 * Sorts out a table of cells: its heading row, its columns, and a row for each item, none dropped.
 *
 * @throws InputError when a column that sizes depend on is missing or in doubt
 */
export function surveyItems(cells: readonly (readonly unknown[])[], options: RecogniseOptions = {}): Survey {
  // A setting that is a measure of the item itself has its own column.
  const settings = [...SETTING_NAMES.filter((name) => !OWN_COLUMNS.has(name)), PREFERRED_BOARD];
  const recognition = recogniseColumns(cells, { ...options, settings });
  refuseDoubt(recognition);
  const { columns } = recognition;
  refuseTooLong(recognition);
  const rows = surveyRows(cells, recognition);
  const last = rows.findLast(({ values }) => Object.values(values).some((cell) => !isBlank(cell)));
  const items = rows.map(({ row, values, settings: own }): SurveyItem => {
    const identifier = isBlank(values.identifier) ? `row ${row}` : String(values.identifier).trim();
    return {
      row,
      identifier,
      title: cellText(values.title),
      said: { hazard: hazardIn(values.hazard), heightAsTyped: typedHeight(values.height) },
      cells: values,
      quantity: readQuantity(values.quantity),
      box: isBlank(values.box) ? "" : String(values.box).trim(),
      own: ownValues(own),
      totals: row === last?.row && columns.identifier !== undefined && isTotals(values),
    };
  });
  const units = Object.fromEntries(
    Object.entries(columns).flatMap(([field, { unit }]) => (unit === undefined ? [] : [[field, unit]])),
  );
  return { recognition, items, units };
}

/** Twice as many rows as the benches have. */
const MOST_ROWS = 200_000;

function refuseTooLong({ firstRow, lastRow }: Recognition): void {
  const rows = lastRow - firstRow + 1;
  if (rows <= MOST_ROWS) return;
  throw new InputError(
    "survey",
    `${rows} rows`,
    `one survey has up to ${MOST_ROWS}`,
    "divide it, or delete stray cells far below its last item",
  );
}

const OWN_COLUMNS = new Set(["weight", "unit"]);

/** The unit of a row's sizes: of its unit column, else of the heading; undefined where neither says. */
export function unitOf(item: SurveyItem, field: Field, { units }: Survey): LengthUnit | undefined {
  const own = item.cells.unit;
  const unit = isBlank(own) ? units[field] : String(own).trim().toLowerCase();
  if (unit === undefined) return undefined;
  const known = LENGTH_UNITS.get(unit.replace(/\.$/, ""));
  if (known !== undefined) return known;
  throw new InputError("unit", shown(own), "give mm, cm, m, in or ft");
}

const LENGTH_UNITS: ReadonlyMap<string, LengthUnit> = new Map([
  ["mm", "mm"],
  ["cm", "cm"],
  ["m", "m"],
  ["in", "in"],
  ["inch", "in"],
  ["inches", "in"],
  ["ft", "ft"],
]);

function refuseDoubt({ ask, columns }: Recognition): void {
  const doubt = ask.find(({ needed }) => needed);
  if (doubt !== undefined)
    throw new InputError(
      doubt.field,
      doubt.candidates.map(({ heading }) => shown(heading)).join(" and "),
      `${doubt.reason}: say which column it is`,
      `or head one column ${doubt.field} and nothing else`,
    );
  if (columns.dimensions !== undefined) return;
  const missing = (["height", "width", "depth"] as const).filter((field) => columns[field] === undefined);
  if (missing.length === 0) return;
  throw new InputError(
    missing[0]!,
    "no such column",
    "give the survey with its heading row and columns height, width and depth (or dimensions)",
    "or say which column it is",
  );
}

function readQuantity(cell: unknown): number | InputError {
  if (isBlank(cell)) return 1;
  const value = typeof cell === "string" ? Number(cell) : cell;
  if (typeof value === "number" && Number.isInteger(value) && value > 0 && value <= MOST_COPIES) return value;
  return new InputError("quantity", shown(cell), "give a whole number of 1 or more, or leave it blank for 1");
}

const MOST_COPIES = 10_000;

function ownValues(own: Readonly<Record<string, unknown>>): readonly GivenValue[] {
  const values: GivenValue[] = [];
  for (const [name, cell] of Object.entries(own)) {
    const key = settingKey(name);
    if (key === undefined || isBlank(cell) || isNotGiven(cell)) continue;
    values.push({ key, value: cell, origin: "its row" });
  }
  return values;
}

/** Its identifier is blank or says total, and no enclosure is chosen. */
function isTotals({ identifier, enclosure }: SurveyItem["cells"]): boolean {
  if (!isBlank(enclosure)) return false;
  return isBlank(identifier) || /^(grand )?totals?:?$/i.test(String(identifier).trim());
}
