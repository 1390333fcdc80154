import { addSheets, removedSheets } from "./bookSheets";
import { blankStyles, SPREADSHEET_TYPE } from "./blankParts";
import { changedBook } from "./bookEditor";
import { hasForeignFormulas } from "./foreignFormulas";
import type { CellEdit, EditResult, WidthEdit, WorkbookEdits } from "./edits";
import { protectedSheet } from "./notEditable";
import type { Workbook } from "./openWorkbook";
import { packageEditor, type PackageEditor } from "./packageEditor";
import { neededPart } from "./parts";
import { planColumns, type ColumnPlan } from "./planColumns";
import { sheetNamed } from "./sheetNamed";
import { checkWellFormed, textOf } from "./readXml";
import { stylesPart } from "./readStyles";
import { shiftWorkbook } from "./shift/shiftWorkbook";
import { renameColumns } from "./renamedColumns";
import { frozenOf } from "./sheetLook";
import { writeSheet } from "./writeSheet";
import type { CellChange, SheetChanges } from "./sheetChanges";
import { sheetMatters, sheetText } from "./sheetText";
import { styleEditor, type StyleEditor } from "./styleEditor";
import { changedTable } from "./tableEditor";
import { packer, packText, writeZip } from "./writeZip";
import { changedNames } from "./changedNames";
import { refuseCells, refuseUneditable } from "./refuseCells";
import { grownTables } from "./grownTables";

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
  const parts = packageEditor(workbook);
  const styles = stylesOf(workbook, parts);
  const { columns, cells = [], widths = [], rows = [], frozen = [] } = edits;
  const growth = grownTables(workbook, edits);
  refuseCells(workbook, cells, styles.editor.count());
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
    const change = {
      area: { ...info.area, bottom },
      totalsRow: false,
      dropped: 0,
      added: [],
      renamed: new Map(),
      formulas: new Map(),
    };
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
  if (plan?.table) renameColumns(workbook, parts, plan.table.info.name, plan.places);
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
  const frozen = frozenOf(workbook, sheet);
  return frozen.columns > 0 ? {} : { frozen: { ...frozen, columns: column, firstColumn: 1 } };
}
