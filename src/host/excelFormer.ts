import type { Area } from "../workbook/cellRef";
import { enteredAgain, writeCells, type Sender } from "./excelCells";
import { readCells, type Matrix, type CellRequest } from "./excelRead";

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
  const requests = (what: CellRequest["what"]) => places.map((place) => ({ ...place, what }));
  const read = await readCells(context, [...requests("formulas"), ...requests("values"), ...requests("numberFormat")]);
  const [formulas, values, formats] = [0, 1, 2].map((part) => read.slice(part * places.length));
  return places.map((place, index) => ({
    ...place,
    formulas: formulas![index]!.map((row, r) => row.map((cell, c) => enteredAgain(cell, values![index]![r]![c]))),
    formats: formats![index]!,
  }));
}

export async function putBackCells(sender: Sender, { sheet, area, formulas, formats }: Former): Promise<void> {
  await writeCells(sender, sheet, area, "numberFormat", formats);
  await writeCells(sender, sheet, area, "formulas", formulas);
}
