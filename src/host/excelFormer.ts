import type { Area } from "../workbook/cellRef";
import { enteredAgain, writeCells, type Sender } from "./excelCells";
import { readCells, type Matrix } from "./excelRead";

/** Cells as they were: what was entered in them, and their number formats. */
export interface Former {
  readonly sheet: string;
  readonly area: Area;
  readonly formulas: Matrix;
  readonly formats: Matrix;
}

/** The width that a column had, in points. */
export interface FormerWidth {
  readonly sheet: string;
  readonly column: number;
  readonly points: number;
}

export async function formerCells(
  context: Excel.RequestContext,
  places: readonly { readonly sheet: string; readonly area: Area }[],
): Promise<readonly Former[]> {
  const read = await readCells(context, [
    ...places.map((place) => ({ ...place, what: "formulas" as const })),
    ...places.map((place) => ({ ...place, what: "numberFormat" as const })),
  ]);
  return places.map((place, index) => ({
    ...place,
    formulas: read[index]!.map((row) => row.map(enteredAgain)),
    formats: read[places.length + index]!,
  }));
}

export async function putBackCells(sender: Sender, { sheet, area, formulas, formats }: Former): Promise<void> {
  await writeCells(sender, sheet, area, "numberFormat", formats);
  await writeCells(sender, sheet, area, "formulas", formulas);
}
