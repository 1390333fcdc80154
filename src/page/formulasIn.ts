import { gridCells } from "./gridCells";
import type { OpenedBook } from "./openedBook";

/** More than these take a few seconds: the stored results do until the user asks. */
export const MANY_FORMULAS = 15_000;

/** How many formulas there are, and how many of them with a stored result. */
export function formulasIn({ snapshot }: OpenedBook): { readonly formulas: number; readonly stored: number } {
  let [formulas, stored] = [0, 0];
  for (const sheet of Object.values(snapshot.sheets))
    for (const [, , cell] of gridCells(sheet.cellData ?? {})) {
      if (!cell.f && !cell.si) continue;
      formulas++;
      if (cell.v !== undefined && cell.v !== null) stored++;
    }
  return { formulas, stored };
}
