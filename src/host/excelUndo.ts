import { InputError } from "../measure/errors";
import { areaName, parseSheetArea, type Area } from "../workbook/cellRef";
import type { DefinedName } from "../workbook/openWorkbook";
import { isMark } from "../workbook/ownMarks";
import { senderOf, type Sender } from "./excelCells";
import { putBackCells, type Former, type FormerWidth } from "./excelFormer";
import { writeNames } from "./excelNames";
import { keepInSight, type InSight } from "./excelInSight";
import { lookAt, rangeAt, type HostView } from "./excelRead";

/** What a write did, and what stood there before. */
export interface Done {
  /** Columns that were not there. */
  readonly fresh: readonly { readonly sheet: string; readonly area: Area }[];
  readonly table: { readonly name: string; readonly before: Area; readonly after: Area } | undefined;
  /** The sheet's own filter, which now spans more columns. */
  readonly filter: { readonly sheet: string; readonly from: Area } | undefined;
  /** What stayed in sight before a column was added to it. */
  readonly inSight: (InSight & { readonly sheet: string }) | undefined;
  readonly cells: readonly Former[];
  readonly widths: readonly FormerWidth[];
  readonly namesAdded: readonly DefinedName[];
  readonly namesRemoved: readonly DefinedName[];
  readonly sheetsAdded: readonly string[];
  /** Sheets that were written again or deleted, with the cells that they had. */
  readonly sheetsFormer: readonly { readonly name: string; readonly cells: Former | undefined }[];
}

/**
 * Puts back what a write changed; what was changed elsewhere since stays.
 *
 * @throws InputError when our columns were moved or deleted since, or the table got columns after them
 */
export async function undoEdits(context: Excel.RequestContext, done: Done): Promise<void> {
  refuseMoved(await lookAt(context), done);
  await restore(context, done);
}

/** The same for a write that may have stopped halfway: only what is there is taken away. */
export async function restore(context: Excel.RequestContext, done: Done): Promise<void> {
  const look = await lookAt(context);
  const sender = senderOf(context);
  const { put } = sender;
  const isThere = (sheet: string) => look.sheets.some(({ name }) => name === sheet);
  const table = done.table && look.tables.find(({ name }) => name === done.table!.name);
  if (done.table && table && table.area.right !== done.table.before.right) {
    const area = { ...table.area, right: done.table.before.right };
    await put(SMALL, () => context.workbook.tables.getItem(table.name).resize(rangeAt(context, table.sheet, area)));
  }
  for (const { sheet, area } of done.fresh.filter((each) => isThere(each.sheet))) {
    // Rows that the table got since go with the column.
    const grown =
      table && area.right <= done.table.after.right
        ? { ...area, bottom: Math.max(area.bottom, table.area.bottom) }
        : area;
    await put(SMALL, () => {
      const range = rangeAt(context, sheet, grown);
      range.clear("All");
      // A list of choices is no content and no look.
      range.dataValidation.clear();
    });
  }
  for (const former of done.cells) await putBackCells(sender, former);
  for (const { sheet, column, points } of done.widths.filter((each) => isThere(each.sheet)))
    await put(SMALL, () => {
      rangeAt(context, sheet, { top: 1, bottom: 1, left: column, right: column }).format.columnWidth = points;
    });
  if (done.filter) {
    const { sheet, from } = done.filter;
    await put(SMALL, () => context.workbook.worksheets.getItem(sheet).autoFilter.apply(rangeAt(context, sheet, from)));
  }
  if (done.inSight) {
    const { sheet, ...before } = done.inSight;
    await put(SMALL, () => keepInSight(context, sheet, before));
  }
  await restoreNames(sender, look, done);
  await restoreSheets(sender, isThere, done);
  await sender.send();
}

const SMALL = 200;

async function restoreNames(sender: Sender, look: HostView, { namesAdded, namesRemoved }: Done): Promise<void> {
  const now = new Map(look.names.filter(({ sheet }) => sheet === undefined).map((each) => [each.name, each]));
  const going = namesAdded.filter(({ name }) => now.has(name)).map(({ name }) => name);
  const coming = namesRemoved.filter(({ name, refersTo }) => {
    const there = now.has(name) && !going.includes(name);
    return !there && !refersTo.includes("#REF!");
  });
  await writeNames(sender, going, coming);
}

async function restoreSheets(
  sender: Sender,
  isThere: (sheet: string) => boolean,
  { sheetsAdded, sheetsFormer }: Done,
): Promise<void> {
  const { worksheets } = sender.context.workbook;
  for (const name of sheetsAdded.filter(isThere)) await sender.put(SMALL, () => worksheets.getItem(name).delete());
  for (const { name, cells } of sheetsFormer) {
    await sender.put(SMALL, () => {
      if (isThere(name)) worksheets.getItem(name).getRange().clear("Contents");
      else worksheets.add(name);
    });
    if (cells) await putBackCells(sender, cells);
  }
}

function refuseMoved(look: HostView, { namesAdded, table }: Done): void {
  const place = (refersTo: string | undefined) => {
    const found = refersTo === undefined ? undefined : parseSheetArea(refersTo);
    return found && `${found.sheet.toLowerCase()}!${areaName(found.area)}`;
  };
  const moved = namesAdded
    .filter(({ name }) => isMark(name))
    .some(({ name, refersTo }) => place(look.names.find((each) => each.name === name)?.refersTo) !== place(refersTo));
  const now = table && look.tables.find(({ name }) => name === table.name);
  const widened = table !== undefined && now?.area.right !== table.after.right;
  if (!moved && !widened) return;
  throw new InputError(
    "undo",
    moved
      ? "columns or sheets of this step that were moved, renamed or deleted since"
      : "a table with other columns since",
    "puts back what still lies where it was written",
    "delete in Excel what you no longer want",
  );
}
