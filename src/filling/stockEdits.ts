import { cellText, isBlank } from "../measure/blank";
import { InputError } from "../measure/errors";
import { plainName } from "../settings/names";
import { settingsOf } from "../settings/settingsOf";
import type { StockField } from "../settings/stockFields";
import { stockField } from "../settings/stockTable";
import { tableHeading } from "../settings/tableHeading";
import { overlap, sheetArea, type Area } from "../workbook/cellRef";
import type { CellEdit, WorkbookEdits } from "../workbook/edits";
import { definedName, namedArea, STOCK_NAME } from "./keptRanges";
import { typedContent } from "./rowDecision";
import type { KeptBook } from "./settingEdits";

/** Texts of a row of the stock table, by what its columns hold. */
export type StockTexts = Readonly<Partial<Record<StockField, string>>>;

/** A change to the stock table; rows count from 1, without the heading. What a change does not name stays. */
export type StockChange =
  | { readonly does: "replace"; readonly row: number; readonly texts: StockTexts }
  | { readonly does: "add"; readonly texts: StockTexts }
  | { readonly does: "remove"; readonly row: number };

export interface StockLine {
  readonly row: number;
  readonly texts: StockTexts;
}

/** What the columns of a stock table hold, each with the unit that its heading names. */
export function stockColumns([headings = []]: Range): readonly { readonly field: StockField; readonly unit: string }[] {
  return headings.flatMap((heading) => {
    const { name, unit } = tableHeading(heading);
    const field = stockField(name);
    return field === undefined ? [] : [{ field, unit }];
  });
}

/** The rows of a stock table that hold something, as texts. */
export function stockLines([headings = [], ...body]: Range): readonly StockLine[] {
  const fields = headings.map((heading) => stockField(tableHeading(heading).name));
  return body.flatMap((cells, place) => {
    if (cells.every(isBlank)) return [];
    const texts = fields.flatMap((field, column) => (field === undefined ? [] : [[field, cellText(cells[column])]]));
    return [{ row: place + 1, texts: Object.fromEntries(texts) as StockTexts }];
  });
}

/**
 * Changes a row of the stock table on its sheet, which the workbook must have: no other row moves, and a formula is never
 * written over. A price that is changed is no example any more.
 *
 * @throws InputError when stock or settings could not be read then, or there is no room for another row
 */
export function stockEdits(
  kept: KeptBook,
  change: StockChange,
): Required<Pick<WorkbookEdits, "cells" | "names" | "tables">> {
  const { book, found } = kept;
  const [headings = [], ...body] = found.stock ?? [];
  const fields = headings.map((heading) => stockField(tableHeading(heading).name));
  const place = change.does === "add" ? body.findLastIndex((cells) => !cells.every(isBlank)) + 1 : change.row - 1;
  const before = body[place] ?? [];
  const texts = change.does === "remove" ? undefined : ownPrice(change.texts, before, fields);
  const after = headings.map((_, column) => {
    if (texts === undefined) return null;
    const field = fields[column];
    const text = field === undefined ? undefined : texts[field];
    return text === undefined || text.trim() === cellText(before[column]) ? before[column] : typedContent(text);
  });
  const rows = [...body];
  rows[place] = after;
  const others = [found.settings, found.guide].filter((range) => range !== undefined);
  // A name that others have to know is missed here, before it is gone.
  settingsOf([[headings, ...rows], ...others]);
  const { sheet, area } = namedArea(book, STOCK_NAME);
  const cells = after.flatMap((content, column): readonly CellEdit[] => {
    if (content === before[column] || (isBlank(content) && isBlank(before[column]))) return [];
    const at = { row: area.top + 1 + place, column: area.left + column };
    return [{ sheet, ...at, content: content as CellEdit["content"], typed: true }];
  });
  return { cells, ...grown(kept, sheet, area, area.top + 1 + place) };
}

/** How many rows of the survey name a stock themselves. */
export function rowsNaming(stock: string, { sized }: Pick<KeptBook, "sized">): number {
  const wanted = plainName(stock);
  return sized.survey.items.filter(({ own }) => own.some(({ value }) => plainName(cellText(value)) === wanted)).length;
}

type Range = readonly (readonly unknown[])[];

function ownPrice(
  texts: StockTexts,
  before: readonly unknown[],
  fields: readonly (StockField | undefined)[],
): StockTexts {
  const { price } = texts;
  const isNew = price !== undefined && price.trim() !== cellText(before[fields.indexOf("price")]);
  return isNew ? { ...texts, "example price": "" } : texts;
}

/** The name of the range, and a table that ends with it, take in a row below them. */
function grown(
  { book }: KeptBook,
  sheet: string,
  area: Area,
  bottom: number,
): Required<Pick<WorkbookEdits, "names" | "tables">> {
  if (bottom <= area.bottom) return { names: [], tables: [] };
  const below = { ...area, top: area.bottom + 1, bottom };
  const beside = book.tables.filter((table) => table.sheet === sheet);
  const table = beside.find((each) => overlap(each.area, area));
  const isTaken =
    book
      .grid(sheet)
      .rows.slice(area.bottom, bottom)
      .some((cells) => cells.slice(area.left - 1, area.right).some((cell) => !isBlank(cell))) ||
    beside.some((each) => each !== table && overlap(each.area, below));
  if (isTaken)
    throw new InputError(
      "stock",
      "no free row below the last one",
      "cells below the stock table are in use",
      `insert a row between two others on the sheet ${sheet}, and add the stock again`,
    );
  const { name, refersTo } = definedName(book, STOCK_NAME)!;
  return {
    names: [{ name, refersTo: sheetArea(sheet, { ...area, bottom }), grownFrom: refersTo }],
    tables: table === undefined || table.area.bottom >= bottom ? [] : [{ sheet, table: table.name, bottom }],
  };
}
