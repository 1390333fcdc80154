import { InputError } from "../measure/errors";
import { checkSheetName, writeNewSheet } from "./addSheet";
import { SPREADSHEET_TYPE } from "./blankParts";
import type { NewSheet } from "./edits";
import { escapeXml } from "./escape";
import { NotEditable } from "./notEditable";
import type { SheetInfo, Workbook } from "./openWorkbook";
import { isMark, ownSheets, sheetNotOurs } from "./ownMarks";
import { privateParts, type PackageEditor } from "./packageEditor";
import { relationsName } from "./parts";
import { textOf } from "./readXml";
import { sheetNamed } from "./sheetNamed";
import type { StyleEditor } from "./styleEditor";

/** Sheets that go, by position, and the marks that go with them. */
export interface RemovedSheets {
  readonly positions: readonly number[];
  /** Positions of the names that go with them: their marks, and those that only they know. */
  readonly names: readonly number[];
}

/**
 * Takes sheets of an earlier run out of the package.
 *
 * @throws InputError when one is not ours, is the last that shows, or when a formula, chart or name elsewhere uses it
 */
export function removedSheets(workbook: Workbook, names: readonly string[], parts: PackageEditor): RemovedSheets {
  if (names.length === 0) return { positions: [], names: [] };
  refuseLockedStructure(workbook);
  const gone = names.map((name) => {
    const sheet = sheetNamed(workbook, name);
    if (!ownSheets(workbook).some((own) => own.sheet === sheet.name)) throw sheetNotOurs(sheet.name);
    return sheet;
  });
  if (!workbook.sheets.some((sheet) => sheet.state === "visible" && !gone.includes(sheet))) {
    throw new InputError("sheet", "every sheet that shows", "a workbook keeps one at least", "keep one of them");
  }
  for (const sheet of gone) {
    const own = privateParts(workbook.zip, sheet.part);
    refuseWhenUsed(workbook, sheet, new Set([...own, sheet.part, workbook.part]));
    for (const part of [...own, sheet.part]) parts.remove(part);
    parts.unrelate(sheet.relation);
  }
  const going = workbook.names.flatMap((name, i) => {
    const local = gone.some((sheet) => sheet.name === name.sheet);
    const mark = isMark(name.name) && gone.some((sheet) => refersTo(name.refersTo, sheet.name));
    return local || mark ? [i] : [];
  });
  return { positions: gone.map((sheet) => workbook.sheets.indexOf(sheet)), names: going };
}

/** The sheets to list in the main part, and the marks of those that a later run may replace. */
export interface AddedSheets {
  readonly listed: readonly { readonly name: string; readonly sheetId: number; readonly relation: string }[];
  readonly marks: readonly {
    readonly wantedName: string;
    readonly sheet: string;
    readonly stale: string | undefined;
  }[];
}

/**
 * Adds sheets after the last; one of an earlier run is replaced, under the name that the user gave it.
 *
 * @throws InputError when the user has a sheet or table of that name, or the structure is locked
 */
export function addSheets(
  workbook: Workbook,
  sheets: readonly NewSheet[],
  removed: RemovedSheets,
  styles: StyleEditor,
  parts: PackageEditor,
): AddedSheets {
  const listed: AddedSheets["listed"][number][] = [];
  const marks: AddedSheets["marks"][number][] = [];
  const kept = workbook.sheets.filter((_, position) => !removed.positions.includes(position));
  let sheetId = Math.max(0, ...workbook.sheets.map((sheet) => sheet.sheetId));
  let tableId = workbook.tables.reduce((most, { id }) => Math.max(most, id), 0);
  for (const sheet of sheets) {
    checkSheetName(sheet.name);
    const wanted = sheet.name.toLowerCase();
    const own = ownSheets(workbook).find(
      (mark) => mark.wantedName.toLowerCase() === wanted && kept.some((s) => s.name === mark.sheet),
    );
    const replaced = own && kept.find((s) => s.name === own.sheet);
    const names = [...kept.filter((s) => s !== replaced), ...listed].map((s) => s.name.toLowerCase());
    if (!replaced && names.includes(wanted)) throw sheetNotOurs(sheet.name);
    if (!replaced) refuseLockedStructure(workbook);
    refuseTakenTable(workbook, sheet, replaced);
    if (replaced) for (const part of privateParts(workbook.zip, replaced.part)) parts.remove(part);
    const part = replaced?.part ?? parts.freeName("xl/worksheets/sheet", ".xml");
    if (replaced) parts.remove(relationsName(part));
    writeNewSheet(sheet, part, ++tableId, styles, parts);
    if (!replaced) {
      parts.listType(part, `${SPREADSHEET_TYPE}worksheet+xml`);
      listed.push({ name: sheet.name, sheetId: ++sheetId, relation: parts.relate("worksheet", part) });
    }
    if (sheet.replaceable)
      marks.push({ wantedName: sheet.name, sheet: replaced?.name ?? sheet.name, stale: own?.mark });
  }
  return { listed, marks };
}

function refuseLockedStructure(workbook: Workbook): void {
  if (!workbook.structureLocked) return;
  throw new NotEditable(
    "workbook",
    "a workbook whose structure is protected",
    "gets no new sheets",
    "unprotect it in Excel (Review)",
  );
}

function refuseTakenTable(workbook: Workbook, sheet: NewSheet, replaced: SheetInfo | undefined): void {
  const wanted = sheet.table?.toLowerCase();
  const tables = workbook.tables.filter((table) => table.sheet !== replaced?.name).map((table) => table.name);
  const taken = [...tables, ...workbook.names.map((name) => name.name)].some((name) => name.toLowerCase() === wanted);
  if (taken)
    throw new InputError(
      "table",
      `"${sheet.table}"`,
      "the workbook already has a table or name of that kind",
      "choose another name",
    );
}

function refuseWhenUsed(workbook: Workbook, sheet: SheetInfo, own: ReadonlySet<string>): void {
  const inNames = workbook.names.some(
    (name) => !isMark(name.name) && name.sheet !== sheet.name && refersTo(name.refersTo, sheet.name),
  );
  const written = escapeXml(sheet.name.replaceAll("'", "''")).replaceAll("&quot;", '"');
  const inParts = [...workbook.zip.values()].find((entry) => {
    if (own.has(entry.name) || !entry.name.endsWith(".xml") || entry.name.startsWith("docProps/")) return false;
    return refersTo(textOf(entry).replaceAll("&apos;", "'").replaceAll("&quot;", '"'), written);
  });
  if (!inNames && !inParts) return;
  const where = inParts ? ` (${inParts.name})` : " (a defined name)";
  throw new InputError(
    "sheet",
    `"${sheet.name}", which something else in the workbook uses${where}`,
    "is deleted only when nothing does",
    "keep it, or change that first",
  );
}

function refersTo(text: string, sheet: string): boolean {
  const lowered = text.toLowerCase();
  const name = sheet.toLowerCase();
  return lowered.includes(`'${name}'!`) || lowered.includes(`${name}!`) || lowered.includes(`${name}'!`);
}
