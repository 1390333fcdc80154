import { InputError } from "../measure/errors";
import { overlap } from "./cellRef";
import type { WorkbookEdits } from "./edits";
import type { Workbook } from "./openWorkbook";
import { sheetNamed } from "./sheetNamed";

/** Tables that take more rows. @throws InputError when one cannot */
export function grownTables(workbook: Workbook, { tables = [], columns }: WorkbookEdits) {
  return tables.map(({ sheet, table, bottom }) => {
    const info = workbook.tables.find(({ name }) => name.toLowerCase() === table.toLowerCase());
    const isFree =
      info !== undefined &&
      sheetNamed(workbook, sheet).name === info.sheet &&
      !info.totalsRow &&
      bottom >= info.area.bottom &&
      columns?.table !== info.name &&
      workbook.tables.every(
        (other) => other === info || other.sheet !== info.sheet || !overlap(other.area, { ...info.area, bottom }),
      );
    if (!isFree)
      throw new InputError(
        "table",
        `rows down to ${bottom} for "${table}"`,
        "a table takes free rows below it",
        "open the file again",
      );
    return { info, bottom };
  });
}
