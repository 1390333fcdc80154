import * as z from "zod/mini";
import { InputError } from "../../measure/errors";
import { MOST_COLUMNS, MOST_ROWS } from "../../workbook/cellRef";
import type {
  CellEdit,
  ColumnsEdit,
  FrozenEdit,
  NewColumn,
  NewName,
  NewSheet,
  RowEdit,
  TableGrowth,
  WidthEdit,
  WorkbookEdits,
} from "../../workbook/edits";
import type { Shift } from "../../workbook/shift/shift";

/** Changes that no page of ours sends. */
export class MalformedEdits extends InputError {}

/**
 * Changes to the workbook as the page sends them: what was changed in the cells, and what the pane writes after that or
 * whether they are unsaved.
 *
 * @throws MalformedEdits when the text is no such list, or names what no sheet has
 */
export function readEdits(json: string): {
  readonly cells: WorkbookEdits;
  readonly write: WorkbookEdits | undefined;
  readonly unsaved: boolean;
} {
  const read = parsed(json);
  if (read === undefined)
    throw new MalformedEdits("save", "changes that cannot be read", "takes what the page sends", "reload the page");
  const { cells, write, unsaved = false } = read;
  return { cells: plainEdits(cells), write: write && plainEdits(write), unsaved };
}

/** A field of the edits that the page cannot send would make the server refuse all of them. */
type EveryField<Edit> = Readonly<Record<keyof Edit, unknown>>;

/** Limits of a sheet and its styles in Excel. */
const MOST_STYLES = 65_490;
const WIDEST_COLUMN = 255;
/** In points. */
const HIGHEST_ROW = 409.5;
const LONGEST_FORMAT = 255;

const row = z.int().check(z.positive(), z.lte(MOST_ROWS));
const columnPlace = z.int().check(z.positive(), z.lte(MOST_COLUMNS));
const height = z.number().check(z.nonnegative(), z.lte(HIGHEST_ROW));
const width = z.number().check(z.nonnegative(), z.lte(WIDEST_COLUMN));
const format = z.string().check(z.maxLength(LONGEST_FORMAT));
const plain = z.union([z.string(), z.number(), z.boolean(), z.null(), z.strictObject({ error: z.string() })]);
const area = z.strictObject({ top: row, left: columnPlace, bottom: row, right: columnPlace });
const content = z.union([plain, z.strictObject({ formula: z.string(), result: plain, fills: z.exactOptional(area) })]);
const column = z.strictObject({
  heading: z.string(),
  formerHeading: z.exactOptional(z.string()),
  headingsElsewhere: z.exactOptional(z.array(z.string())),
  cells: z.array(content),
  format: z.exactOptional(format),
  like: z.exactOptional(columnPlace),
  ofUser: z.exactOptional(z.boolean()),
  choices: z.exactOptional(z.string()),
  width: z.exactOptional(width),
  everyRow: z.exactOptional(z.string()),
} satisfies EveryField<NewColumn>);
const cell = z.strictObject({
  sheet: z.string(),
  row,
  column: columnPlace,
  content,
  format: z.exactOptional(format),
  style: z.exactOptional(z.int().check(z.nonnegative(), z.lt(MOST_STYLES))),
  sharedText: z.exactOptional(z.int().check(z.nonnegative())),
  typed: z.exactOptional(z.literal(true)),
} satisfies EveryField<CellEdit>);
const sheet = z.strictObject({
  name: z.string(),
  rows: z.array(z.array(content).check(z.maxLength(MOST_COLUMNS))).check(z.maxLength(MOST_ROWS)),
  headingRow: z.exactOptional(z.int().check(z.nonnegative(), z.lte(MOST_ROWS))),
  // JSON has null where a list has nothing.
  formats: z.exactOptional(z.array(z.nullable(format))),
  widths: z.exactOptional(z.array(z.nullable(width))),
  table: z.exactOptional(z.string()),
  replaceable: z.exactOptional(z.boolean()),
} satisfies EveryField<NewSheet>);
const shift = z.strictObject({
  sheet: z.string(),
  axis: z.enum(["row", "column"]),
  at: row,
  count: row,
  goes: z.boolean(),
} satisfies EveryField<Shift>);
/** All that can be changed in a workbook. */
export const EDITS = z.strictObject({
  columns: z.exactOptional(
    z.strictObject({
      sheet: z.string(),
      table: z.exactOptional(z.string()),
      headingRow: row,
      firstRow: row,
      lastRow: row,
      lastColumn: columnPlace,
      columns: z.array(column),
      holds: z.exactOptional(z.enum(["formulas", "one formula", "values"])),
      keepsInSight: z.exactOptional(columnPlace),
    } satisfies EveryField<ColumnsEdit>),
  ),
  cells: z.exactOptional(z.array(cell)),
  sheets: z.exactOptional(z.array(sheet)),
  removeSheets: z.exactOptional(z.array(z.string())),
  names: z.exactOptional(
    z.array(
      z.strictObject({
        name: z.string(),
        refersTo: z.string(),
        grownFrom: z.exactOptional(z.string()),
      } satisfies EveryField<NewName>),
    ),
  ),
  widths: z.exactOptional(
    z.array(
      z.strictObject({
        sheet: z.string(),
        column: columnPlace,
        width,
        hidden: z.exactOptional(z.boolean()),
      } satisfies EveryField<WidthEdit>),
    ),
  ),
  rows: z.exactOptional(
    z.array(
      z.strictObject({
        sheet: z.string(),
        row,
        height: z.exactOptional(z.union([height, z.literal("auto")])),
        hidden: z.exactOptional(z.boolean()),
      } satisfies EveryField<RowEdit>),
    ),
  ),
  frozen: z.exactOptional(
    z.array(
      z.strictObject({
        sheet: z.string(),
        rows: z.int().check(z.nonnegative(), z.lt(MOST_ROWS)),
        columns: z.int().check(z.nonnegative(), z.lt(MOST_COLUMNS)),
        firstRow: row,
        firstColumn: columnPlace,
      } satisfies EveryField<FrozenEdit>),
    ),
  ),
  tables: z.exactOptional(
    z.array(z.strictObject({ sheet: z.string(), table: z.string(), bottom: row } satisfies EveryField<TableGrowth>)),
  ),
  shift: z.exactOptional(shift),
} satisfies EveryField<WorkbookEdits>);
const CHANGES = z.strictObject({
  cells: EDITS,
  write: z.exactOptional(EDITS),
  unsaved: z.exactOptional(z.boolean()),
});

function parsed(json: string): z.infer<typeof CHANGES> | undefined {
  try {
    return CHANGES.parse(JSON.parse(json));
  } catch {
    return undefined;
  }
}

/** The same without what JSON has in place of nothing. */
export function plainEdits({ sheets, ...rest }: z.infer<typeof EDITS>): WorkbookEdits {
  if (sheets === undefined) return rest;
  return {
    ...rest,
    sheets: sheets.map(({ formats, widths, ...each }) => ({
      ...each,
      ...(formats === undefined ? {} : { formats: formats.map((format) => format ?? undefined) }),
      ...(widths === undefined ? {} : { widths: widths.map((width) => width ?? undefined) }),
    })),
  };
}
