import { InputError } from "../measure/errors";
import type { SheetInfo } from "./openWorkbook";

/** The sheet with that name, in any case. @throws InputError when there is none, or it has no cells */
export function sheetNamed<Sheet extends Pick<SheetInfo, "name" | "cells">>(
  workbook: { readonly sheets: readonly Sheet[] },
  name: string,
): Sheet {
  const sheet = workbook.sheets.find((s) => s.name.toLowerCase() === name.trim().toLowerCase());
  if (!sheet) {
    const known = workbook.sheets.map((s) => `"${s.name}"`).join(", ");
    throw new InputError("sheet", `"${name}"`, `the workbook has ${known}`, "name one of these");
  }
  if (!sheet.cells)
    throw new InputError(
      "sheet",
      `"${sheet.name}", which is a chart`,
      "needs a sheet with cells",
      "name another sheet",
    );
  return sheet;
}
