import { parseArea, parseSheetArea } from "../workbook/cellRef";
import type { DefinedName } from "../workbook/openWorkbook";
import type { SheetGrid } from "../workbook/readSheet";

/** Where a list of choices may take its values from. */
interface ListSources {
  /** The sheet whose cells offer the list. */
  readonly sheet: string;
  readonly sheets: readonly { readonly name: string; readonly grid: Pick<SheetGrid, "rows"> }[];
  readonly names: readonly DefinedName[];
}

/**
 * The values of a list of choices as they are when the workbook is opened. The grid is given these and not the formula:
 * formulas of lists, worked out on their own, came between those of the cells.
 *
 * @returns undefined where the formula is none of: values in itself, a range, a name of one, a column down to its end
 */
export function listedValues(formula: string, sources: ListSources): readonly string[] | undefined {
  if (formula.startsWith('"') && formula.endsWith('"')) return texts(formula.slice(1, -1).split(","));
  const { sheet, sheets, names } = sources;
  const named = names.find(({ name }) => name.toLowerCase() === formula.toLowerCase());
  if (named !== undefined && named.refersTo !== formula) return listedValues(named.refersTo, { ...sources, names: [] });
  const downFrom = DOWN_A_COLUMN.exec(formula)?.[1];
  const range = downFrom ?? formula;
  const own = parseArea(range.replaceAll("$", ""));
  const found = own === undefined ? parseSheetArea(range) : { sheet, area: own };
  const rows = sheets.find(({ name }) => name === found?.sheet)?.grid.rows;
  if (found === undefined || rows === undefined) return undefined;
  const { top, left, bottom, right } = found.area;
  return texts(
    rows.slice(top - 1, downFrom === undefined ? bottom : undefined).flatMap((row) => row.slice(left - 1, right)),
  );
}

/** From a cell down as far as its column is filled. */
const DOWN_A_COLUMN = /^OFFSET\(([^,]+),0,0,COUNTA\([^()]*\)-1,1\)$/i;

/** What can be offered: the grid parts its list by commas. */
function texts(values: readonly unknown[]): readonly string[] {
  const offered = values.flatMap((value) =>
    typeof value === "string" || typeof value === "number" ? [String(value).trim()] : [],
  );
  return [...new Set(offered)].filter((text) => text !== "" && !text.includes(","));
}
