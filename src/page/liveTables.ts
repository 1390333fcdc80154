import type { IRange, IWorkbookData } from "@univerjs/core";

interface TableList {
  readonly tables: readonly { readonly id: string; readonly range: IRange }[];
}

/** The last row of each table of the file as the grid has it now, by the number of the table; rows count from 1. */
export function liveTables({ resources = [] }: IWorkbookData): ReadonlyMap<number, number> {
  const data = resources.find(({ name }) => name === "SHEET_TABLE_PLUGIN")?.data ?? "{}";
  const sheets = Object.values((data === "" ? {} : JSON.parse(data)) as Readonly<Record<string, TableList>>);
  return new Map(
    sheets
      .flatMap(({ tables }) => tables)
      .flatMap(({ id, range }) => {
        const number = /^table-(\d+)$/.exec(id)?.[1];
        return number === undefined ? [] : [[Number(number), range.endRow + 1] as const];
      }),
  );
}
