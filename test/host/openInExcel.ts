import { excelPort } from "../../src/host/excel";
import type { BookPort } from "../../src/host/port";
import { cellName } from "../../src/workbook/cellRef";
import type { Held, OpenInHost } from "./contract";
import { fakeExcel, type FakeExcel } from "./fakeExcel";
import type { ExcelName } from "./officeScript";
import { fakeWorkbook, type FakeSheet, type FakeWorkbook } from "./fakeWorkbook";

export interface OpenInExcel extends OpenInHost {
  readonly port: BookPort;
  readonly book: FakeWorkbook;
  readonly excel: FakeExcel;
  readonly sheet: (name: string) => FakeSheet;
}

/** A file open in the stand-in for Excel. */
export function openInExcel(
  bytes: Uint8Array,
  { supports, host }: { supports?: number; host?: ExcelName } = {},
): OpenInExcel {
  const book = fakeWorkbook(bytes);
  const excel = fakeExcel(book, supports, host);
  const sheet = (name: string) => book.sheets.find((each) => each.name === name)!;
  return {
    port: excelPort(),
    book,
    excel,
    sheet,
    held: (name) => Promise.resolve(heldIn(sheet(name))),
    close: () => Promise.resolve(excel.close()),
  };
}

function heldIn({ cells }: FakeSheet): ReadonlyMap<string, Held> {
  const held = new Map<string, Held>();
  for (const [row, own] of cells)
    for (const [column, { formula, value, format }] of own)
      if (formula !== undefined || value !== "") held.set(cellName(row, column), [formula ?? value, format]);
  return held;
}
