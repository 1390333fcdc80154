import { shown } from "../measure/errors";
import { findHeadings, groupsAbove, isBlank, unitsBelow, type Group, type Headings } from "./findHeadings";
import { MASS_UNITS, type Field } from "./headings";
import { columnLetters, NO_COLUMN, overrides, settingColumns } from "./namedColumns";
import type { Recognition, RecognisedColumn, RecogniseOptions } from "./recognition";
import { candidatesOf, DIRECTIONS, settle } from "./settleColumns";

/**
 * Finds the heading row under titles and blank rows, and what each column is.
 *
 * @throws InputError when no row looks like headings, or an option names a heading that is not there
 */
export function recogniseColumns(rows: readonly (readonly unknown[])[], options: RecogniseOptions = {}): Recognition {
  const { headingRow, headings } = findHeadings(rows, options);
  const { units, firstRow } = unitsBelow(rows, headingRow, headings);
  const groups = options.region ? [] : groupsAbove(rows, headingRow, headings);
  const chosen = overrides(headings, options);
  const cellsOf = (column: number) => rows.slice(firstRow - 1, firstRow - 1 + SAMPLE).map((row) => row[column - 1]);
  const settings = settingColumns(headings, options, chosen);
  const claimed = new Set([...chosen.values(), ...settings.found.map(({ column }) => column)]);
  const candidates = candidatesOf(headings, cellsOf, claimed);
  const settled = settle(candidates, chosen);
  const columns: Partial<Record<Field, RecognisedColumn>> = {};
  for (const [field, column] of settled.columns) columns[field] = described(field, column, headings, groups, units);
  const recognised = new Set([...settled.columns.values(), ...claimed]);
  const extent = extentOf(rows, headings, columns, recognised, firstRow, options.region);
  const others = [...headings]
    .filter(([column]) => !recognised.has(column))
    .map(([column, { text }]) => ({ column, heading: text }));
  const result = {
    headingRow,
    firstRow,
    ...extent,
    columns,
    settings: settings.found,
    ask: [...settled.ask, ...settings.ask],
    others,
  };
  return { ...result, said: sentences(result) };
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

function described(
  field: Field,
  column: number,
  headings: Headings,
  groups: readonly Group[],
  units: ReadonlyMap<number, string>,
): RecognisedColumn {
  const heading = headings.get(column)!;
  const fits = (unit: string) => (field === "weight" ? MASS_UNITS.has(unit) : !MASS_UNITS.has(unit));
  const measured = field === "weight" || field === "dimensions" || DIRECTIONS.includes(field);
  const group = groups.find(({ from, to }) => from <= column && column <= to)?.unit;
  const unit = measured
    ? [...heading.units, units.get(column), group].find((u) => u !== undefined && fits(u))
    : undefined;
  return {
    column,
    heading: heading.text,
    ...(unit === undefined ? {} : { unit }),
    ...(field === "dimensions" && heading.order !== undefined ? { order: heading.order } : {}),
  };
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
    fields.some((field) => columns[field] && !isBlank(rows[row - 1]?.[columns[field].column - 1]));
  const any = (row: number) => (rows[row - 1] ?? []).slice(firstColumn - 1, lastColumn).some((cell) => !isBlank(cell));
  let lastRow = rows.length;
  while (lastRow >= firstRow && !filled(lastRow, [...DIRECTIONS, "dimensions", "weight", "enclosure"])) lastRow--;
  // Items without measures yet follow without a gap; a note below a blank row does not belong.
  while (lastRow < rows.length && filled(lastRow + 1, ["identifier", "title"]) && any(lastRow + 1)) lastRow++;
  return { lastRow, firstColumn, lastColumn };
}

function sentences(result: Omit<Recognition, "said">): string[] {
  const { columns, settings, ask, headingRow, firstRow, lastRow } = result;
  const place = ({ column, heading, unit, order }: RecognisedColumn) =>
    `column ${columnLetters(column)} ${shown(heading)}${unit === undefined ? "" : `, in ${unit}`}${order === undefined ? "" : `, order ${order}`}`;
  const rowsSaid = lastRow < firstRow ? "no rows below" : `rows ${firstRow} to ${lastRow}`;
  return [
    `headings in row ${headingRow}, ${rowsSaid}`,
    ...Object.entries(columns).map(
      ([field, column]) =>
        `${field}: ${place(column)}${field === "box" ? " (rows with the same value share one enclosure)" : ""}`,
    ),
    ...settings.map((column) => `setting ${column.setting}: ${place(column)}`),
    ...ask.map(({ field, candidates, reason }) => {
      const which = candidates
        .map(({ column, heading }) => `column ${columnLetters(column)} ${shown(heading)}`)
        .join(" or ");
      return `${field}? ${which}: ${reason}`;
    }),
  ];
}
