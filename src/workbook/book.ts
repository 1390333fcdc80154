import type { DefinedName, SheetInfo, Workbook } from "./openWorkbook";
import type { TableInfo } from "./readTable";
import { readSheet, type ReadSheetOptions, type SheetGrid } from "./readSheet";

/** A sheet, wherever the workbook is open. */
export type BookSheet = Pick<SheetInfo, "name" | "state" | "cells">;

/** A table, wherever the workbook is open. */
export type BookTable = Pick<TableInfo, "name" | "sheet" | "area" | "headerRow" | "totalsRow" | "columns" | "plain">;

/** What reading a survey and placing columns beside it must know of a workbook: of a file, or of one open in a host. */
export interface Book {
  readonly sheets: readonly BookSheet[];
  readonly tables: readonly BookTable[];
  readonly names: readonly DefinedName[];
  /** What the user should know of the program that has it open. */
  readonly said?: readonly string[];
  /** @throws InputError when there is no such sheet, or it cannot be read */
  readonly grid: (sheet: string, options?: Pick<ReadSheetOptions, "lastRow" | "formats">) => SheetGrid;
}

/** The book of a file. */
export function bookOf(workbook: Workbook): Book {
  const { sheets, tables, names } = workbook;
  return { sheets, tables, names, grid: (sheet, options) => readSheet(workbook, sheet, options) };
}
