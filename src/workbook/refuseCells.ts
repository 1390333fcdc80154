import { InputError } from "../measure/errors";
import { cellName } from "./cellRef";
import { formulaStands, type CellEdit } from "./edits";
import { NotEditable } from "./notEditable";
import type { Workbook } from "./openWorkbook";
import { readSheet } from "./readSheet";
import { sharedTextsOf } from "./sharedTexts";

/** @throws InputError for a signed or Strict workbook */
export function refuseUneditable(workbook: Workbook): void {
  if (workbook.signed) {
    throw new NotEditable(
      "workbook",
      "a digitally signed workbook",
      "cannot be changed without breaking the signature",
      "save an unsigned copy",
    );
  }
  if (workbook.strict) {
    throw new NotEditable(
      "workbook",
      "a Strict Open XML workbook",
      "is read, but not changed",
      "save it in Excel as Excel Workbook (.xlsx)",
    );
  }
}

/**
 * @param styleCount how many styles the file has
 * @throws InputError when a cell is not as it was read: another shared text, an unknown style, a formula in place of a value
 */
export function refuseCells(workbook: Workbook, cells: readonly CellEdit[], styleCount: number): void {
  refuseOtherTexts(workbook, cells);
  refuseOtherStyles(cells, styleCount);
  refuseFormulas(workbook, cells);
}

/** A number of a shared text that says something else than the cell would be a text of some other cell. */
function refuseOtherTexts(workbook: Workbook, cells: readonly CellEdit[]): void {
  const other = cells.find(
    ({ content, sharedText }) => sharedText !== undefined && sharedTextsOf(workbook)[sharedText] !== content,
  );
  if (!other) return;
  throw new InputError(
    `cell ${cellName(other.row, other.column)} of "${other.sheet}"`,
    `the shared text ${other.sharedText}, which reads otherwise`,
    "takes the text that the file has under that number",
    "open the file again",
  );
}

function refuseOtherStyles(cells: readonly CellEdit[], count: number): void {
  const other = cells.find(({ style }) => style !== undefined && style >= count);
  if (!other) return;
  throw new InputError(
    `cell ${cellName(other.row, other.column)} of "${other.sheet}"`,
    `the style ${other.style}`,
    `takes one of the ${count} styles of the file`,
    "open the file again",
  );
}

/** @throws InputError when a cell that was read as typed holds a formula */
function refuseFormulas(workbook: Workbook, cells: readonly CellEdit[]): void {
  const typed = cells.filter((cell) => cell.typed);
  for (const sheet of new Set(typed.map((cell) => cell.sheet))) {
    const { formulas } = readSheet(workbook, sheet, { formulas: true });
    const own = typed.filter((cell) => cell.sheet === sheet).map(({ row, column }) => cellName(row, column));
    const live = own.filter((name) => formulas.has(name));
    if (live.length > 0) throw formulaStands(live);
  }
}
