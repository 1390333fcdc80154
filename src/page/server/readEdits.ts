import * as z from "zod/mini";
import { InputError } from "../../measure/errors";
import type { WorkbookEdits } from "../../workbook/edits";

/**
 * Changes to the workbook as the page sends them: what was changed in the cells, and what the pane writes after that.
 *
 * @throws InputError when the text is no such list
 */
export function readEdits(json: string): { readonly cells: WorkbookEdits; readonly write: WorkbookEdits | undefined } {
  const read = parsed(json);
  if (read === undefined)
    throw new InputError("save", "changes that cannot be read", "takes what the page sends", "reload the page");
  return { cells: plainEdits(read.cells), write: read.write && plainEdits(read.write) };
}

const place = z.int().check(z.positive());
const plain = z.union([z.string(), z.number(), z.boolean(), z.null(), z.strictObject({ error: z.string() })]);
const area = z.strictObject({ top: place, left: place, bottom: place, right: place });
const content = z.union([plain, z.strictObject({ formula: z.string(), result: plain, fills: z.exactOptional(area) })]);
const column = z.strictObject({
  heading: z.string(),
  cells: z.array(content),
  format: z.exactOptional(z.string()),
  like: z.exactOptional(place),
  width: z.exactOptional(z.number()),
  everyRow: z.exactOptional(z.string()),
});
const cell = z.strictObject({
  sheet: z.string(),
  row: place,
  column: place,
  content,
  format: z.exactOptional(z.string()),
  style: z.exactOptional(z.int().check(z.nonnegative())),
  sharedText: z.exactOptional(z.int().check(z.nonnegative())),
});
const sheet = z.strictObject({
  name: z.string(),
  rows: z.array(z.array(content)),
  headingRow: z.exactOptional(z.int()),
  // JSON has null where a list has nothing.
  formats: z.exactOptional(z.array(z.nullable(z.string()))),
  widths: z.exactOptional(z.array(z.nullable(z.number()))),
  table: z.exactOptional(z.string()),
  replaceable: z.exactOptional(z.boolean()),
});
const edits = z.strictObject({
  columns: z.exactOptional(
    z.strictObject({
      sheet: z.string(),
      table: z.exactOptional(z.string()),
      headingRow: place,
      firstRow: place,
      lastRow: place,
      lastColumn: place,
      columns: z.array(column),
    }),
  ),
  cells: z.exactOptional(z.array(cell)),
  sheets: z.exactOptional(z.array(sheet)),
  removeSheets: z.exactOptional(z.array(z.string())),
  names: z.exactOptional(z.array(z.strictObject({ name: z.string(), refersTo: z.string() }))),
  widths: z.exactOptional(z.array(z.strictObject({ sheet: z.string(), column: place, width: z.number() }))),
});
const CHANGES = z.strictObject({ cells: edits, write: z.exactOptional(edits) });

function parsed(json: string): z.infer<typeof CHANGES> | undefined {
  try {
    return CHANGES.parse(JSON.parse(json));
  } catch {
    return undefined;
  }
}

function plainEdits({ sheets, ...rest }: z.infer<typeof edits>): WorkbookEdits {
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
