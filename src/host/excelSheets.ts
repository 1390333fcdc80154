import { InputError } from "../measure/errors";
import { checkSheetName } from "../workbook/addSheet";
import type { Area } from "../workbook/cellRef";
import { columnWidth } from "../workbook/columnWidth";
import { isFormula, type CellContent, type NewSheet, type WorkbookEdits } from "../workbook/edits";
import { isMark, ownSheets, sheetNotOurs } from "../workbook/ownMarks";
import { sheetNamed } from "../workbook/sheetNamed";
import { entered, points, writeCells, type Sender } from "./excelCells";
import { rangeAt, readCells, type HostView, type CellRequest } from "./excelRead";

/** Sheets to add, to replace and to delete; nothing is changed yet. */
export interface SheetPlan {
  readonly made: readonly {
    readonly sheet: NewSheet;
    /** Its name in the workbook. */
    readonly name: string;
    /** One of an earlier run, to be replaced under the name that the user gave it. */
    readonly again: boolean;
    readonly staleMark: string | undefined;
  }[];
  readonly removed: readonly string[];
}

/** @throws InputError when a sheet is not ours, a name is taken, or something is protected or uses a sheet that is to be deleted */
export async function planSheets(
  context: Excel.RequestContext,
  look: HostView,
  { sheets = [], removeSheets = [] }: Pick<WorkbookEdits, "sheets" | "removeSheets">,
): Promise<SheetPlan> {
  const ours = ownSheets(look);
  const removed = removeSheets.map((wanted) => sheetNamed(look, wanted).name);
  for (const name of removed) if (!ours.some(({ sheet }) => sheet === name)) throw sheetNotOurs(name);
  if (removed.length > 0 && !look.sheets.some(({ name, state }) => state === "visible" && !removed.includes(name)))
    throw new InputError("sheet", "every sheet that shows", "a workbook keeps one at least", "keep one of them");
  await refuseWhenUsed(context, look, removed);
  const kept = look.sheets.map(({ name }) => name).filter((name) => !removed.includes(name));
  const made = sheets.map((sheet) => {
    checkSheetName(sheet.name);
    const wanted = sheet.name.toLowerCase();
    const own = ours.find((mark) => mark.wantedName.toLowerCase() === wanted && kept.includes(mark.sheet));
    const twice = sheets.some((other) => other !== sheet && other.name.toLowerCase() === wanted);
    if (twice || (own === undefined && kept.some((name) => name.toLowerCase() === wanted)))
      throw sheetNotOurs(sheet.name);
    refuseTakenTable(look, sheet, own?.sheet);
    return { sheet, name: own?.sheet ?? sheet.name, again: own !== undefined, staleMark: own?.mark };
  });
  if (look.structureLocked && (removed.length > 0 || made.some(({ again }) => !again)))
    throw new InputError(
      "workbook",
      "a workbook whose structure is protected",
      "gets no new sheets and loses none",
      "unprotect it in Excel (Review)",
    );
  return { made, removed };
}

/** Adds, replaces and deletes sheets: headings bold and frozen, number formats, widths, table. */
export async function writeSheets(sender: Sender, look: HostView, { made, removed }: SheetPlan): Promise<void> {
  const { worksheets, tables } = sender.context.workbook;
  for (const name of removed) await sender.put(SMALL, () => worksheets.getItem(name).delete());
  for (const { sheet, name, again } of made) {
    await sender.put(SMALL, () => {
      if (!again) return void worksheets.add(name);
      for (const table of look.tables.filter((each) => each.sheet === name))
        tables.getItem(table.name).convertToRange();
      worksheets.getItem(name).getRange().clear("All");
    });
    await fillSheet(sender, name, sheet);
  }
}

const SMALL = 200;

async function fillSheet(sender: Sender, name: string, sheet: NewSheet): Promise<void> {
  const { context, put } = sender;
  const { headingRow = 1, rows } = sheet;
  const right = rows.reduce((widest, { length }) => Math.max(widest, length), 0);
  if (right === 0) return;
  const columnArea = (column: number, top: number): Area => ({ top, bottom: rows.length, left: column, right: column });
  for (let column = 1; column <= right; column++) {
    const format = sheet.formats?.[column - 1];
    const area = columnArea(column, headingRow + 1);
    if (format !== undefined && area.bottom >= area.top)
      await writeCells(
        sender,
        name,
        area,
        "numberFormat",
        rows.slice(headingRow).map(() => [format]),
      );
  }
  const cells = spilled(rows.map((row) => Array.from({ length: right }, (_, column) => row[column] ?? null)));
  await writeCells(sender, name, { top: 1, bottom: rows.length, left: 1, right }, "formulas", cells);
  await put(SMALL * right, () => {
    for (let column = 1; column <= right; column++) {
      const own = rows.map((row) => row[column - 1] ?? null);
      const width = points(sheet.widths?.[column - 1] ?? columnWidth("", own));
      rangeAt(context, name, columnArea(column, 1)).format.columnWidth = width;
    }
    const worksheet = context.workbook.worksheets.getItem(name);
    if (headingRow > 0) {
      rangeAt(context, name, { top: headingRow, bottom: headingRow, left: 1, right }).format.font.bold = true;
      worksheet.freezePanes.freezeRows(headingRow);
    }
    if (sheet.table !== undefined) {
      const bottom = Math.max(rows.length, headingRow + 1);
      const area = rangeAt(context, name, { top: headingRow, bottom, left: 1, right });
      worksheet.tables.add(area, true).name = sheet.table;
    }
  });
}

/** What is entered, except in cells that the formula of another cell fills. */
function spilled(rows: readonly (readonly CellContent[])[]): (string | number | boolean)[][] {
  const cells = rows.map((row) => row.map(entered));
  rows.forEach((row, r) =>
    row.forEach((content, c) => {
      if (!isFormula(content) || content.fills === undefined) return;
      const { top, bottom, left, right } = content.fills;
      for (let y = top - 1; y < bottom; y++)
        for (let x = left - 1; x < right; x++)
          if ((y !== r || x !== c) && cells[y]?.[x] !== undefined) cells[y]![x] = "";
    }),
  );
  return cells;
}

function refuseTakenTable(look: HostView, { table }: NewSheet, again: string | undefined): void {
  if (table === undefined) return;
  const tables = look.tables.filter(({ sheet }) => sheet !== again);
  if ([...tables, ...look.names].every(({ name }) => name.toLowerCase() !== table.toLowerCase())) return;
  throw new InputError(
    "table",
    `"${table}"`,
    "the workbook already has a table or name of that kind",
    "choose another name",
  );
}

async function refuseWhenUsed(
  context: Excel.RequestContext,
  look: HostView,
  removed: readonly string[],
): Promise<void> {
  if (removed.length === 0) return;
  const others = [...look.used].filter(([sheet]) => !removed.includes(sheet));
  const requests = others.map(([sheet, area]): CellRequest => ({ sheet, area, what: "formulas" }));
  const formulas = (await readCells(context, requests)).flat(2).filter((formula) => String(formula).startsWith("="));
  const names = look.names.filter(
    ({ name, sheet }) => !isMark(name) && !(sheet !== undefined && removed.includes(sheet)),
  );
  const texts = [...formulas.map(String), ...names.map(({ refersTo }) => refersTo)].map((text) => text.toLowerCase());
  for (const name of removed) {
    const written = name.toLowerCase().replaceAll("'", "''");
    if (!texts.some((text) => text.includes(`${written}!`) || text.includes(`${written}'!`))) continue;
    throw new InputError(
      "sheet",
      `"${name}", which a formula or a name in the workbook uses`,
      "is deleted only when nothing does",
      "keep it, or change that first",
    );
  }
}
