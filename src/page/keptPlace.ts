import type { FWorkbook } from "@univerjs/sheets/facade";

/**
 * Where the user is in a workbook: its sheet, the selected cell and how far it is scrolled.
 *
 * @returns goes to the same place of the workbook in a newer state, unless its sheet is gone
 */
export function keptPlace(workbook: FWorkbook): (newer: FWorkbook) => void {
  const sheet = workbook.getActiveSheet();
  const [name, cell] = [sheet.getSheetName(), sheet.getSelection()?.getActiveRange()?.getA1Notation()];
  const { sheetViewStartRow, sheetViewStartColumn } = sheet.getScrollState();
  return (newer) => {
    const same = newer.getSheetByName(name);
    if (!same) return;
    newer.setActiveSheet(same);
    if (cell !== undefined) same.getRange(cell).activate();
    same.scrollToCell(sheetViewStartRow, sheetViewStartColumn);
  };
}
