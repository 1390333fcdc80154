import { strFromU8 } from "fflate";
import { editWorkbook } from "../../src/workbook/editWorkbook";
import type { CellContent, ColumnsEdit, EditResult, NewColumn, WorkbookEdits } from "../../src/workbook/edits";
import { openWorkbook, type Workbook } from "../../src/workbook/openWorkbook";
import { verifyEdit } from "../../src/workbook/verifyEdit";
import { MAIN, partsOf, R } from "./made/package";

/** Edits, proves the bytes, opens the result. */
export function edited(
  bytes: Uint8Array,
  edits: WorkbookEdits,
): { result: EditResult; after: Workbook; xml: (part: string) => string } {
  const before = openWorkbook(bytes);
  const result = editWorkbook(before, edits);
  verifyEdit(before, result, result.bytes);
  const parts = partsOf(result.bytes);
  return { result, after: openWorkbook(result.bytes), xml: (part) => strFromU8(parts[part]!) };
}

export const outside = (values: readonly CellContent[], more: Partial<NewColumn> = {}): NewColumn => ({
  heading: "outside height",
  cells: values,
  ...more,
});

export const inTable = (...columns: NewColumn[]): ColumnsEdit => ({
  sheet: "Survey",
  table: "Items",
  headingRow: 4,
  firstRow: 5,
  lastRow: 7,
  lastColumn: 6,
  columns,
});

export const formula = (r: number, result: number): CellContent => ({
  formula: `_xldudf_ENC_OUTSIDE(C${r},D${r},E${r},"tray","height")`,
  result,
});

export const three = [formula(5, 304.5), formula(6, 255), formula(7, 124.5)];

export const PLAIN = (rows: string, after = "") =>
  `<worksheet xmlns="${MAIN}" xmlns:r="${R}"><sheetData>${rows}</sheetData>${after}</worksheet>`;

export const plainRows = (extra = "") =>
  `<row r="1"><c r="A1" t="str"><v>ID</v></c><c r="B1" t="str"><v>H</v></c></row>` +
  `<row r="2"><c r="A2" t="str"><v>a</v></c><c r="B2"><v>1</v></c>${extra}</row><row r="3"><c r="A3" t="str"><v>b</v></c><c r="B3"><v>2</v></c></row>`;

export const beside = (...columns: NewColumn[]): ColumnsEdit => ({
  sheet: "Survey",
  headingRow: 1,
  firstRow: 2,
  lastRow: 3,
  lastColumn: 2,
  columns,
});
