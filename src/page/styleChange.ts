import type { ICellData, IStyleData, IWorkbookData } from "@univerjs/core";
import { styleNumber } from "./gridTerms";
import type { OpenedBook } from "./openedBook";

/** A style of the file, or a number format of the page. */
export type StyleChange = { readonly style?: number; readonly format?: string };

/** The workbook as it was opened, and as it is now. */
export interface Books {
  readonly opened: OpenedBook;
  readonly snapshot: IWorkbookData;
}

/** A style of the file that the cell now has, a new number format, or a look that no save carries. */
export function styleChange(
  before: ICellData["s"],
  after: ICellData["s"],
  { opened, snapshot }: Books,
): StyleChange | "look" | undefined {
  if (before === after || (!before && after === "x0") || (before === "x0" && !after)) return undefined;
  const own = styleNumber(after);
  if (own !== undefined) return { style: own };
  const [old, now] = [styleOf(before, opened.snapshot), styleOf(after, snapshot)];
  if (JSON.stringify(sorted(old)) === JSON.stringify(sorted(now))) return undefined;
  const format = now.n?.pattern ?? "General";
  if ((old.n?.pattern ?? "General") !== format) return { format };
  return "look";
}

/** A style of the grid, whether named or written out. */
export function styleOf(style: ICellData["s"], { styles }: IWorkbookData): IStyleData {
  return (typeof style === "string" ? styles[style] : style) ?? {};
}

function sorted(style: IStyleData): object {
  return Object.fromEntries(
    Object.entries(style)
      .filter(([, value]) => value !== null && value !== undefined)
      .sort(),
  );
}
