import type { Workbook } from "./openWorkbook";
import { ownSheets } from "./ownMarks";
import { neededPart } from "./parts";
import { textOf } from "./readXml";

/**
 * Whether a sheet that is not ours holds a formula that calls none of our functions: such a formula may read what an edit
 * changes, and its result in the file is then out of date. Our own formulas are written with their results.
 */
export function hasForeignFormulas(workbook: Workbook): boolean {
  const own = new Set(ownSheets(workbook).map(({ sheet }) => sheet));
  return workbook.sheets.some(
    ({ name, part, cells }) => cells && !own.has(name) && isForeignIn(textOf(neededPart(workbook.zip, part))),
  );
}

/** The text of a formula; one that shares the formula of another cell has none. */
const FORMULA = /<(?:\w+:)?f(?:\s[^>]*)?>([^<]+)</g;

function isForeignIn(xml: string): boolean {
  for (const [, formula] of xml.matchAll(FORMULA)) if (!/_xldudf_ENC_/i.test(formula!)) return true;
  return false;
}
