import { shown } from "../measure/errors";
import { columnLetters } from "../workbook/cellRef";
import { columnQuestions, doubtText } from "./columnQuestions";
import { isEmpty } from "../measure/blank";
import { findHeadings, type Headings } from "./findHeadings";
import { groupsAbove, unitsBelow, unitsOfTitle } from "./unitHeadings";
import { kindOfHeading, yesOrNo } from "./kindWords";
import { MASS_UNITS } from "./lexicon";
import { namedColumns, NO_COLUMN, settingColumns } from "./namedColumns";
import { TICKS } from "./questions";
import type { Recognition, RecognisedColumn, RecogniseOptions, TickColumn } from "./recognition";
import { settleColumns } from "./settleColumns";
import { candidatesOf, DIRECTIONS } from "./candidates";
import type { Field } from "./vocabulary/vocabulary";

/**
 * Finds the heading row under titles and blank rows, and what each column is.
 *
 * @throws InputError when no row looks like headings, or an option names a heading that is not there
 */
export function recogniseColumns(rows: readonly (readonly unknown[])[], options: RecogniseOptions = {}): Recognition {
  const { headingRow, headings } = findHeadings(rows, options);
  const { units, firstRow } = unitsBelow(rows, headingRow, headings);
  const width = options.region?.lastColumn ?? widthOf(rows, firstRow);
  const named = namedColumns(headings, width, options);
  const { chosen, declined } = named;
  const sample = rows.slice(firstRow - 1, firstRow - 1 + SAMPLE);
  const cellsOf = (column: number) => sample.map((row) => row[column - 1]);
  const settings = settingColumns(headings, options, named, cellsOf);
  const claimed = new Set([...chosen.values(), ...declined, ...settings.found.map(({ column }) => column)]);
  const settled = settleColumns(candidatesOf(headings, cellsOf, claimed), chosen, cellsOf);
  const unitsSaid: UnitsSaid = {
    units,
    named: named.units,
    groups: options.region ? [] : groupsAbove(rows, headingRow, headings),
    formats: options.formatUnits ?? new Map(),
    title: options.region ? new Set() : unitsOfTitle(rows, headingRow),
  };
  const columns: Partial<Record<Field, RecognisedColumn>> = {};
  for (const [field, column] of settled.columns) columns[field] = described(field, column, headings, unitsSaid);
  const recognised = new Set([...settled.columns.values(), ...claimed].filter((column) => !declined.has(column)));
  const kinds = columns.enclosure === undefined ? tickColumns(headings, cellsOf, recognised, declined) : [];
  const byTicks = options.words?.some(({ word }) => word === TICKS) === true;
  const extent = extentOf(rows, headings, columns, recognised, firstRow, options.region);
  const others = [...headings]
    .filter(([column]) => !recognised.has(column))
    .map(([column, { text }]) => ({ column, heading: text }));
  const ask = [
    ...settled.ask,
    ...settings.ask,
    ...(kinds.length > 0 && !byTicks ? [{ field: "enclosure", candidates: kinds, reason: TICKED, needed: true }] : []),
  ];
  const result = {
    headingRow,
    firstRow,
    ...extent,
    columns,
    settings: settings.found,
    ticks: byTicks ? kinds : [],
    ask,
    questions: columnQuestions(ask, headings, declined, cellsOf),
    declined: [...declined],
    others,
  };
  return { ...result, said: [...sentences(result), ...settings.left, ...named.said] };
}

/** One row of the survey as its cells stand: a value for each recognised field and setting. */
export interface SurveyRow {
  readonly row: number;
  readonly values: Readonly<Partial<Record<Field, unknown>>>;
  readonly settings: Readonly<Record<string, unknown>>;
}

/** The rows of the survey in order, blank ones too: one row in, one row out. Units are those of the recognised columns. */
export function surveyRows(rows: readonly (readonly unknown[])[], recognition: Recognition): readonly SurveyRow[] {
  const { firstRow, lastRow, columns, settings } = recognition;
  const fields = Object.entries(columns).map(([field, { column }]) => [field, column - 1] as const);
  const own = settings.map(({ setting, column }) => [setting, column - 1] as const);
  const found: SurveyRow[] = [];
  for (let row = firstRow; row <= lastRow; row++) {
    const cells = rows[row - 1] ?? [];
    found.push({ row, values: cellsAt(cells, fields), settings: cellsAt(cells, own) });
  }
  return found;
}

/** Written as a loop: it runs for every cell of a survey. */
function cellsAt(
  cells: readonly unknown[],
  places: readonly (readonly [name: string, index: number])[],
): Record<string, unknown> {
  const found: Record<string, unknown> = {};
  for (const [name, index] of places) found[name] = cells[index] ?? null;
  return found;
}

/** Rows by which a column is judged. */
const SAMPLE = 200;
const TICKED = "each of these columns is headed with a kind and holds ticks";
/** One column of ticks may be about anything. */
const FEWEST_TICKED = 2;

interface UnitsSaid {
  readonly units: ReadonlyMap<number, string>;
  readonly named: ReadonlyMap<number | string, string>;
  readonly groups: ReturnType<typeof groupsAbove>;
  readonly formats: ReadonlyMap<number, string>;
  readonly title: ReadonlySet<string>;
}

function described(field: Field, column: number, headings: Headings, said: UnitsSaid): RecognisedColumn {
  const heading = headings.get(column);
  const fits = (unit: string) => (field === "weight" ? MASS_UNITS.has(unit) : !MASS_UNITS.has(unit));
  const measured = field === "weight" || field === "dimensions" || DIRECTIONS.includes(field);
  const group = said.groups.find(({ from, to }) => from <= column && column <= to)?.unit;
  const title = [...said.title].filter(fits);
  const unit = measured
    ? [
        said.named.get(column) ?? said.named.get(field),
        ...(heading?.units ?? []),
        said.units.get(column),
        group,
        said.formats.get(column),
        title.length === 1 ? title[0] : undefined,
      ].find((u) => u !== undefined && fits(u))
    : undefined;
  return {
    column,
    heading: heading?.text ?? `column ${columnLetters(column)}`,
    ...(unit === undefined ? {} : { unit }),
    ...(field === "dimensions" && heading?.order !== undefined ? { order: wholeOrder(heading.order) } : {}),
  };
}

/** `HW` leaves the depth to another column. */
function wholeOrder(order: string): string {
  return order.length === TWO && !order.includes("D") ? `${order}D` : order;
}

const TWO = 2;

function tickColumns(
  headings: Headings,
  cellsOf: (column: number) => readonly unknown[],
  recognised: ReadonlySet<number>,
  declined: ReadonlySet<number>,
): readonly TickColumn[] {
  const found = [...headings].flatMap(([column, { words, text }]) => {
    const kind = kindOfHeading(words);
    if (kind === undefined || recognised.has(column) || declined.has(column)) return [];
    const filled = cellsOf(column).filter((cell) => !isEmpty(cell));
    return filled.every((cell) => yesOrNo(cell) !== undefined) ? [{ column, heading: text, kind }] : [];
  });
  return found.length >= FEWEST_TICKED ? found : [];
}

function widthOf(rows: readonly (readonly unknown[])[], firstRow: number): number {
  let widest = 0;
  for (const row of rows.slice(0, firstRow + SAMPLE)) widest = Math.max(widest, row.length);
  return widest;
}

function extentOf(
  rows: readonly (readonly unknown[])[],
  headings: Headings,
  columns: Partial<Record<Field, RecognisedColumn>>,
  recognised: ReadonlySet<number>,
  firstRow: number,
  region: RecogniseOptions["region"],
) {
  if (region)
    return {
      lastRow: Math.max(region.lastRow, firstRow - 1),
      firstColumn: region.firstColumn,
      lastColumn: region.lastColumn,
    };
  const known = [...recognised].filter((column) => column !== NO_COLUMN);
  let firstColumn = Math.min(...known, ...(known.length === 0 ? headings.keys() : []));
  let lastColumn = Math.max(...known, ...(known.length === 0 ? headings.keys() : []));
  while (headings.has(firstColumn - 1)) firstColumn--;
  while (headings.has(lastColumn + 1)) lastColumn++;
  const filled = (row: number, fields: readonly Field[]) =>
    fields.some((field) => columns[field] && !isEmpty(rows[row - 1]?.[columns[field].column - 1]));
  const any = (row: number) => (rows[row - 1] ?? []).slice(firstColumn - 1, lastColumn).some((cell) => !isEmpty(cell));
  let lastRow = rows.length;
  while (lastRow >= firstRow && !filled(lastRow, [...DIRECTIONS, "dimensions", "weight", "enclosure"])) lastRow--;
  // Items without measures yet follow without a gap; a note below a blank row does not belong.
  while (lastRow < rows.length && filled(lastRow + 1, ["identifier", "title"]) && any(lastRow + 1)) lastRow++;
  return { lastRow, firstColumn, lastColumn };
}

function sentences(result: Omit<Recognition, "said">): string[] {
  const { columns, settings, ticks, ask, headingRow, firstRow, lastRow } = result;
  const place = ({ column, heading, unit, order }: RecognisedColumn) =>
    `column ${columnLetters(column)} ${shown(heading)}${unit === undefined ? "" : `, in ${unit}`}${order === undefined ? "" : `, order ${order}`}`;
  const rowsSaid = lastRow < firstRow ? "no rows below" : `rows ${firstRow} to ${lastRow}`;
  return [
    headingRow === 0 ? `no headings, ${rowsSaid}` : `headings in row ${headingRow}, ${rowsSaid}`,
    ...Object.entries(columns).map(
      ([field, column]) =>
        `${field}: ${place(column)}${field === "box" ? " (rows with the same value share one enclosure)" : ""}`,
    ),
    ...settings.map((column) => `setting ${column.setting}: ${place(column)}`),
    ...(ticks.length === 0
      ? []
      : [`enclosure: ticks in ${ticks.map(({ heading, kind }) => `${shown(heading)} (${kind})`).join(", ")}`]),
    ...ask.map(doubtText),
  ];
}
