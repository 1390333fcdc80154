import { InputError } from "../measure/errors";
import type { Book } from "../workbook/book";
import { parseSheetArea, type Area } from "../workbook/cellRef";

/** Names of the ranges that a workbook keeps its settings, stock and board guide in, and of the sheets made for them. */
export const SETTINGS_NAME = "settings";
export const STOCK_NAME = "stock";
export const GUIDE_NAME = "board_guide";
/** Of standard sizes, which the user makes. */
export const SIZES_NAME = "sizes";

/** Where those ranges lie on a sheet. */
export function keptRanges({ names }: Pick<Book, "names">, sheet: string): readonly Area[] {
  return names.flatMap(({ name, refersTo, sheet: own }) => {
    const found = own === undefined && KEPT.includes(name.toLowerCase()) ? parseSheetArea(refersTo) : undefined;
    return found?.sheet === sheet ? [found.area] : [];
  });
}

const KEPT = [SETTINGS_NAME, STOCK_NAME, GUIDE_NAME, SIZES_NAME];

/** The name of such a range in the workbook, whatever its case. */
export function definedName({ names }: Book, wanted: string): Book["names"][number] | undefined {
  return names.find(({ name, sheet }) => name.toLowerCase() === wanted && sheet === undefined);
}

/** Where it lies. @throws InputError where the workbook has no such range */
export function namedArea(book: Book, wanted: string): NonNullable<ReturnType<typeof parseSheetArea>> {
  const defined = definedName(book, wanted);
  const found = defined === undefined ? undefined : parseSheetArea(defined.refersTo);
  if (found === undefined) throw new InputError(wanted, "no range of that name", "make its sheet first");
  return found;
}
