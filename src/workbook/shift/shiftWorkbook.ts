import { changedBook } from "../bookEditor";
import { hasForeignFormulas } from "../foreignFormulas";
import type { EditResult } from "../edits";
import type { SheetInfo, Workbook } from "../openWorkbook";
import { packageEditor, type PackageEditor } from "../packageEditor";
import { neededPart, partOf, relationsOf } from "../parts";
import { checkWellFormed, textOf } from "../readXml";
import { sheetNamed } from "../sheetNamed";
import { sheetText } from "../sheetText";
import { packer, packText, writeZip } from "../writeZip";
import type { Shift } from "./shift";
import {
  partWithFormulas,
  shiftedAnchors,
  shiftedComments,
  shiftedFrames,
  shiftedPivotPlace,
  shiftedPivotSource,
} from "./shiftedParts";
import { shiftedFormula } from "./shiftedFormula";
import { namesSheet, sheetWithFormulas, shiftedSheet } from "./shiftedSheet";
import { newColumnNames, shiftedTable } from "./shiftedTable";
import { refuseShift } from "./refuseShift";

/**
 * Rows or columns of a sheet come or go in the file, and everything that names a cell follows: formulas of every sheet,
 * tables, merged cells, filters, conditional formats, validations, comments, links, pictures, charts, pivot tables, names.
 *
 * @throws InputError before anything is done when something cannot follow, and names it
 */
export function shiftWorkbook(workbook: Workbook, asked: Shift): EditResult {
  const sheet = sheetNamed(workbook, asked.sheet);
  const shift: Shift = { ...asked, sheet: sheet.name };
  const entry = neededPart(workbook.zip, sheet.part);
  checkWellFormed(entry);
  const text = sheetText(sheet.name, textOf(entry));
  refuseShift(workbook, sheet, text, shift);
  const parts = packageEditor(workbook);
  const tables = workbook.tables.filter((table) => table.sheet === sheet.name);
  const pack = packer(entry.name);
  const around = {
    headings: (row: number, column: number) => {
      const table = tables.find(({ area, headerRow }) => headerRow && area.top === row && column > area.left);
      return table && newColumnNames(table, shift)[column - shift.at];
    },
    isHeading: (row: number) => tables.some(({ area, headerRow }) => headerRow && area.top === row),
  };
  shiftedSheet(text, shift, around, pack.push);
  parts.put(pack.done());
  changeOtherParts(workbook, sheet, shift, parts);
  for (const relation of workbook.relations.filter(({ kind }) => kind === "calcChain")) {
    parts.remove(relation.target);
    parts.unrelate(relation.id);
  }
  const book = neededPart(workbook.zip, workbook.part);
  const namesMoved = new Map(
    workbook.names.flatMap(({ refersTo, sheet: local }, i) => {
      const now = shiftedFormula(refersTo, local, shift);
      return now === refersTo ? [] : [[i, now] as const];
    }),
  );
  parts.put(
    packText(
      book.name,
      changedBook(textOf(book), {
        ...{ added: [], removed: [], namesRemoved: new Set(), namesAdded: [], namesMoved },
        calculates: hasForeignFormulas(workbook),
      }),
    ),
  );
  const { entries, ...change } = parts.done();
  return { bytes: writeZip(entries), ...change, columns: [], notes: [] };
}

/** Every part but the sheet that shifts and the main one. */
function changeOtherParts(workbook: Workbook, sheet: SheetInfo, shift: Shift, parts: PackageEditor): void {
  const put = (part: string, change: (xml: string) => string | undefined): void => {
    const entry = partOf(workbook.zip, part);
    if (entry === undefined) return;
    const before = textOf(entry);
    const after = change(before);
    if (after !== undefined && after !== before) parts.put(packText(entry.name, after));
  };
  for (const other of workbook.sheets.filter((each) => each.cells && each !== sheet)) {
    checkWellFormed(neededPart(workbook.zip, other.part));
    put(other.part, (xml) => sheetWithFormulas(sheetText(other.name, xml), shift));
  }
  for (const table of workbook.tables) put(table.part, (xml) => shiftedTable(xml, table, shift));
  for (const { kind, target, outside } of relationsOf(workbook.zip, sheet.part)) {
    if (outside) continue;
    if (kind === "comments" || kind === "threadedComment") put(target, (xml) => shiftedComments(xml, shift));
    if (kind === "vmlDrawing") put(target, (xml) => shiftedFrames(xml, shift));
    if (kind === "drawing") put(target, (xml) => partWithFormulas(shiftedAnchors(xml, shift), shift));
    if (kind === "pivotTable") put(target, (xml) => shiftedPivotPlace(xml, shift));
  }
  const own = new Set(relationsOf(workbook.zip, sheet.part).map(({ target }) => target));
  const names = namesSheet(shift.sheet);
  for (const part of workbook.zip.keys()) {
    const type = workbook.types.of(part) ?? "";
    if (/pivotCacheDefinition\+xml$/.test(type)) put(part, (xml) => shiftedPivotSource(xml, shift));
    if (!/(?:\.chart|\.chartex|drawing)\+xml$/.test(type) || own.has(part)) continue;
    put(part, (xml) => (names(xml.replaceAll("&apos;", "'")) ? partWithFormulas(xml, shift) : undefined));
  }
}
