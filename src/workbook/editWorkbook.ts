import { InputError } from "../measure/errors";
import { addSheets, removedSheets } from "./bookSheets";
import { blankStyles, SPREADSHEET_TYPE } from "./blankParts";
import { changedBook } from "./bookEditor";
import { hasForeignFormulas } from "./foreignFormulas";
import { areaName, cellName, overlap, sheetArea, type Area } from "./cellRef";
import { formulaStands, isGrowing, type CellEdit, type EditResult, type WidthEdit, type WorkbookEdits } from "./edits";
import { NotEditable, protectedSheet } from "./notEditable";
import type { DefinedName, Workbook } from "./openWorkbook";
import { columnMark, isMark, SHEET_MARK } from "./ownMarks";
import { packageEditor, type PackageEditor } from "./packageEditor";
import { neededPart } from "./parts";
import { planColumns, type ColumnPlan } from "./planColumns";
import { readSheet, sheetNamed } from "./readSheet";
import { checkWellFormed, textOf } from "./readXml";
import { stylesPart } from "./readStyles";
import { sharedTextsOf } from "./sharedTexts";
import { shiftWorkbook } from "./shift/shiftWorkbook";
import { sheetLook } from "./sheetLook";
import { sheetMatters, sheetText, writeSheet, type CellChange, type SheetChanges } from "./sheetEditor";
import { styleEditor, type StyleEditor } from "./styleEditor";
import { changedTable } from "./tableEditor";
import { packer, packText, writeZip } from "./writeZip";

/**
 * Edits a workbook surgically: only the cells named, the parts that must know of them (the table, the styles when a
 * format is new, the list of sheets and names), and nothing else. Every other part keeps its packed bytes.
 *
 * The order of calculation is dropped. A full calculation is asked for only where a formula of the user may read what
 * changed: without the add-in it takes our figures away.
 *
 * @throws InputError for a signed or Strict workbook, a protected sheet, a name that is taken, or columns that do not fit
 */
export function editWorkbook(
  workbook: Workbook,
  edits: WorkbookEdits,
  onProgress?: (fraction: number) => void,
): EditResult {
  if (edits.shift !== undefined) return shiftWorkbook(workbook, edits.shift);
  refuseUneditable(workbook);
  refuseOtherTexts(workbook, edits.cells ?? []);
  const parts = packageEditor(workbook);
  const styles = stylesOf(workbook, parts);
  const { columns, cells = [], widths = [], rows = [], frozen = [] } = edits;
  const growth = grownTables(workbook, edits);
  refuseOtherStyles(cells, styles.editor.count());
  refuseFormulas(workbook, cells);
  let plan: ColumnPlan | undefined;
  const sheets = new Set(
    [
      ...(columns ? [columns.sheet] : []),
      ...cells.map((cell) => cell.sheet),
      ...[...widths, ...rows, ...frozen].map((each) => each.sheet),
      ...growth.map(({ info }) => info.sheet),
    ].map((name) => sheetNamed(workbook, name)),
  );
  for (const sheet of sheets) {
    const entry = neededPart(workbook.zip, sheet.part);
    checkWellFormed(entry);
    const text = sheetText(sheet.name, textOf(entry));
    if (sheetMatters(text).locked) throw protectedSheet(text.sheet);
    const own =
      columns && sheetNamed(workbook, columns.sheet) === sheet
        ? (plan = planColumns(workbook, text, columns, styles.editor))
        : undefined;
    const pack = packer(entry.name);
    const here = ({ sheet: name }: { readonly sheet: string }) => sheetNamed(workbook, name) === sheet;
    const inSight = frozen.filter(here).at(-1);
    const changes: SheetChanges = {
      ...sheetChanges(own, cells.filter(here), widths.filter(here), styles.editor),
      rows: new Map(rows.filter(here).map((each) => [each.row, each])),
      ...(own === undefined ? {} : keptInSight(workbook, sheet.name, columns?.keepsInSight)),
      ...(inSight === undefined ? {} : { frozen: inSight }),
      grown: growth.filter(({ info }) => here(info)).map(({ info: { area }, bottom }) => ({ area, bottom })),
    };
    writeSheet(text, changes, pack.push, onProgress);
    parts.put(pack.done());
  }
  if (plan?.table) {
    const entry = neededPart(workbook.zip, plan.table.info.part);
    parts.put(packText(entry.name, changedTable(textOf(entry), plan.table.change)));
  }
  for (const { info, bottom } of growth) {
    const entry = neededPart(workbook.zip, info.part);
    const change = { area: { ...info.area, bottom }, totalsRow: false, dropped: 0, added: [], formulas: new Map() };
    parts.put(packText(entry.name, changedTable(textOf(entry), change)));
  }
  const removed = removedSheets(workbook, edits.removeSheets ?? [], parts);
  const added = addSheets(workbook, edits.sheets ?? [], removed, styles.editor, parts);
  styles.done();
  dropCalculationOrder(workbook, parts);
  const book = neededPart(workbook.zip, workbook.part);
  const names = changedNames(workbook, edits, plan, removed.names, added.marks);
  const changed = changedBook(textOf(book), {
    added: added.listed,
    removed: removed.positions,
    calculates: changesWhatStood(edits, plan) && hasForeignFormulas(workbook),
    ...names,
  });
  parts.put(packText(book.name, changed));
  const { entries, ...change } = parts.done();
  const bytes = writeZip(entries);
  onProgress?.(1);
  return {
    bytes,
    ...change,
    columns: plan?.places.placed.map(({ at }) => at) ?? [],
    notes: [...(plan?.places.notes ?? []), ...names.notes],
  };
}

/** Tables that take more rows. @throws InputError when one cannot */
function grownTables(workbook: Workbook, { tables = [], columns }: WorkbookEdits) {
  return tables.map(({ sheet, table, bottom }) => {
    const info = workbook.tables.find(({ name }) => name.toLowerCase() === table.toLowerCase());
    const isFree =
      info !== undefined &&
      sheetNamed(workbook, sheet).name === info.sheet &&
      !info.totalsRow &&
      bottom >= info.area.bottom &&
      columns?.table !== info.name &&
      workbook.tables.every(
        (other) => other === info || other.sheet !== info.sheet || !overlap(other.area, { ...info.area, bottom }),
      );
    if (!isFree)
      throw new InputError(
        "table",
        `rows down to ${bottom} for "${table}"`,
        "a table takes free rows below it",
        "open the file again",
      );
    return { info, bottom };
  });
}

/** Whether cells change that formulas of the user may read: more than new columns, sheets and widths. */
function changesWhatStood(
  { cells = [], tables = [], removeSheets = [] }: WorkbookEdits,
  plan: ColumnPlan | undefined,
): boolean {
  if (cells.length + tables.length + removeSheets.length > 0) return true;
  if (plan === undefined) return false;
  const { placed, dropped, emptied, table } = plan.places;
  return table?.grows === true || dropped.length + emptied.length > 0 || placed.some(({ at }) => at.replaced);
}

function refuseUneditable(workbook: Workbook): void {
  if (workbook.signed) {
    throw new NotEditable(
      "workbook",
      "a digitally signed workbook",
      "cannot be changed without breaking the signature",
      "save an unsigned copy",
    );
  }
  if (workbook.strict) {
    throw new NotEditable(
      "workbook",
      "a Strict Open XML workbook",
      "is read, but not changed",
      "save it in Excel as Excel Workbook (.xlsx)",
    );
  }
}

/** A number of a shared text that says something else than the cell would be a text of some other cell. */
function refuseOtherTexts(workbook: Workbook, cells: readonly CellEdit[]): void {
  const other = cells.find(
    ({ content, sharedText }) => sharedText !== undefined && sharedTextsOf(workbook)[sharedText] !== content,
  );
  if (!other) return;
  throw new InputError(
    `cell ${cellName(other.row, other.column)} of "${other.sheet}"`,
    `the shared text ${other.sharedText}, which reads otherwise`,
    "takes the text that the file has under that number",
    "open the file again",
  );
}

function refuseOtherStyles(cells: readonly CellEdit[], count: number): void {
  const other = cells.find(({ style }) => style !== undefined && style >= count);
  if (!other) return;
  throw new InputError(
    `cell ${cellName(other.row, other.column)} of "${other.sheet}"`,
    `the style ${other.style}`,
    `takes one of the ${count} styles of the file`,
    "open the file again",
  );
}

function stylesOf(workbook: Workbook, parts: PackageEditor): { editor: StyleEditor; done: () => void } {
  const part = stylesPart(workbook);
  const entry = part === undefined ? undefined : neededPart(workbook.zip, part);
  const editor = styleEditor(entry ? textOf(entry) : blankStyles());
  return {
    editor,
    done: () => {
      const xml = editor.done();
      if (xml === undefined) return;
      if (entry) return parts.put(packText(entry.name, xml));
      const name = parts.freeName("xl/styles", ".xml");
      parts.add(packText(name, xml), `${SPREADSHEET_TYPE}styles+xml`);
      parts.relate("styles", name);
    },
  };
}

function sheetChanges(
  plan: ColumnPlan | undefined,
  others: readonly CellEdit[],
  widths: readonly WidthEdit[],
  styles: StyleEditor,
): SheetChanges {
  const cells = new Map(plan?.cells);
  for (const { row, column, content, format, style, sharedText } of others) {
    const known = (cells.get(row) ?? []).filter((change) => change.column !== column);
    const styled = (kept: number | undefined) =>
      format === undefined ? (style ?? kept) : styles.styled(style ?? kept, { format });
    const changed: CellChange = { column, content, styled, ...(sharedText === undefined ? {} : { sharedText }) };
    cells.set(
      row,
      [...known, changed].sort((a, b) => a.column - b.column),
    );
  }
  return {
    cells,
    widths: new Map([...(plan?.widths ?? []), ...widths.map(({ column, width }) => [column, width] as const)]),
    hidden: new Set(widths.filter(({ hidden }) => hidden).map(({ column }) => column)),
    choices: plan?.choices ?? [],
    ...(plan?.places.filter ? { filter: plan.places.filter.to } : {}),
  };
}

function dropCalculationOrder(workbook: Workbook, parts: PackageEditor): void {
  for (const relation of workbook.relations.filter(({ kind }) => kind === "calcChain")) {
    parts.remove(relation.target);
    parts.unrelate(relation.id);
  }
}

/** Columns that are frozen up to one of them, unless some are. */
function keptInSight(workbook: Workbook, sheet: string, column: number | undefined): Pick<SheetChanges, "frozen"> {
  if (column === undefined) return {};
  const { frozen } = sheetLook(workbook, sheet);
  return frozen.columns > 0 ? {} : { frozen: { ...frozen, columns: column, firstColumn: 1 } };
}

/** @throws InputError when a cell that was read as typed holds a formula */
function refuseFormulas(workbook: Workbook, cells: readonly CellEdit[]): void {
  const typed = cells.filter((cell) => cell.typed);
  for (const sheet of new Set(typed.map((cell) => cell.sheet))) {
    const { formulas } = readSheet(workbook, sheet, { formulas: true });
    const own = typed.filter((cell) => cell.sheet === sheet).map(({ row, column }) => cellName(row, column));
    const live = own.filter((name) => formulas.has(name));
    if (live.length > 0) throw formulaStands(live);
  }
}

/** The names to delete, add and move: ours are written again, the user's stay, those asked for are added when missing. */
function changedNames(
  workbook: Workbook,
  { columns, names = [] }: WorkbookEdits,
  plan: ColumnPlan | undefined,
  removed: readonly number[],
  sheetMarks: readonly { readonly wantedName: string; readonly sheet: string; readonly stale: string | undefined }[],
) {
  const stale = new Set([
    ...(plan?.places.staleMarks ?? []),
    ...removed,
    ...sheetMarks.flatMap(({ stale: mark }) => mark ?? []),
  ]);
  const namesRemoved = new Set(
    workbook.names.flatMap((name, i) =>
      removed.includes(i) || stale.has(name.name) || (isMark(name.name) && name.refersTo.includes("#REF!")) ? [i] : [],
    ),
  );
  const known = new Set(
    workbook.names
      .filter((name, i) => !namesRemoved.has(i) && name.sheet === undefined)
      .map((name) => name.name.toLowerCase()),
  );
  const added: Omit<DefinedName, "sheet">[] = [];
  const mark = (start: string, wantedName: string, sheet: string, area: Area): void => {
    let number = 1;
    while (known.has(`${start}${number}`)) number++;
    known.add(`${start}${number}`);
    added.push({ name: `${start}${number}`, refersTo: sheetArea(sheet, area), hidden: true, comment: wantedName });
  };
  const sheet = columns && sheetNamed(workbook, columns.sheet).name;
  for (const { wantedName, area } of plan?.places.marks ?? [])
    mark(columnMark(columns?.holds), wantedName, sheet!, area);
  for (const { wantedName, sheet: own } of sheetMarks)
    mark(SHEET_MARK, wantedName, own, { top: 1, left: 1, bottom: 1, right: 1 });
  const notes: string[] = [];
  const moved = movedFilter(workbook, sheet, plan);
  for (const wanted of names) {
    const { name, refersTo } = wanted;
    const grows = workbook.names.findIndex((each) => each.sheet === undefined && isGrowing(each, wanted));
    if (grows >= 0) moved.set(grows, refersTo);
    else if (known.has(name.toLowerCase()))
      notes.push(`the name ${name} is in the workbook already and stays as it is`);
    else added.push({ name, refersTo, hidden: false, comment: "" });
    known.add(name.toLowerCase());
  }
  return { namesRemoved, namesAdded: added, namesMoved: moved, notes };
}

/** A sheet's own filter is also in a hidden name, which must agree. */
function movedFilter(workbook: Workbook, sheet: string | undefined, plan: ColumnPlan | undefined): Map<number, string> {
  const moved = new Map<number, string>();
  const filter = plan?.places.filter;
  if (!filter || sheet === undefined) return moved;
  workbook.names.forEach((name, i) => {
    const same = name.refersTo.slice(name.refersTo.lastIndexOf("!") + 1).replaceAll("$", "") === areaName(filter.from);
    if (name.name === "_xlnm._FilterDatabase" && name.sheet === sheet && same)
      moved.set(i, sheetArea(sheet, filter.to));
  });
  return moved;
}
