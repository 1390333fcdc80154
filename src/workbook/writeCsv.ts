import { encodeText } from "./csvEncoding";
import { FORMULA_SIGN } from "./formulaText";
import { quotedIfNeeded, type Csv } from "./readCsv";

/** A cell to write: a text, a number, or nothing. A text of `like` that is unchanged in its place goes out as it came in. */
export type CsvValue = string | number | null;

/**
 * A text table in the form of `like` (delimiter, line breaks, encoding, decimal comma), or comma separated UTF-8 with a
 * byte order mark, which Excel reads rightly.
 *
 * A new text that a spreadsheet would run as a formula (a sign of `FORMULA_SIGN` in front) gets an
 * apostrophe in front; numbers, also negative ones, do not. Cells that came from the user's own file pass through
 * unchanged, whatever they hold: nothing of theirs is altered.
 */
export function writeCsv(rows: readonly (readonly CsvValue[])[], like?: Csv): Uint8Array {
  const form = like ?? PLAIN;
  const lines = rows.map((row, r) => row.map((value, c) => field(value, r, c, form)).join(form.delimiter));
  const end = lines.length > 0 && form.lastNewline ? form.newline : "";
  return encodeText(form.notice + lines.join(form.newline) + end, form.encoding, form.bom);
}

const PLAIN: Csv = {
  rows: [],
  raw: [],
  delimiter: ",",
  newline: "\r\n",
  lastNewline: true,
  encoding: "utf-8",
  bom: true,
  notice: "",
  decimalComma: false,
};

function field(value: CsvValue, row: number, column: number, form: Csv): string {
  if (value === null) return "";
  if (typeof value === "number")
    return quotedIfNeeded(form.decimalComma ? String(value).replace(".", ",") : String(value), form.delimiter);
  if (form.rows[row]?.[column] === value) return form.raw[row]![column]!;
  return quotedIfNeeded(runsAsFormula(value) ? `'${value}` : value, form.delimiter);
}

/** A spreadsheet takes it for a formula; `-3.5` and `+4` are numbers. */
function runsAsFormula(text: string): boolean {
  return FORMULA_SIGN.test(text) && !/^[+-]?\d+([.,]\d+)?$/.test(text);
}
