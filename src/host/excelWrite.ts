import { cellName, type Area } from "../workbook/cellRef";
import { formulaStands, isFormula, type CellEdit, type PlacedColumn, type WorkbookEdits } from "../workbook/edits";
import { sheetNamed } from "../workbook/sheetNamed";
import { protectedSheet } from "../workbook/notEditable";
import { entered, points, senderOf, writeCells, type Sender } from "./excelCells";
import { planExcelColumns } from "./planExcelColumns";
import { writeExcelColumns } from "./writeExcelColumns";
import { formerCells } from "./excelFormer";
import { planNames, writeNames } from "./excelNames";
import { lookAt, rangeAt, type HostView } from "./excelRead";
import { planSheets, writeSheets } from "./excelSheets";
import { inSight, keepInSight } from "./excelInSight";
import { restore, type Done } from "./excelUndo";

/** What a write did to the open workbook, and what undoes it. */
export interface WrittenInExcel {
  readonly columns: readonly PlacedColumn[];
  readonly notes: readonly string[];
  readonly done: Done;
}

/**
 * Writes edits into the workbook that is open in Excel. Results of formulas, and the formula with which new rows of a
 * table fill themselves, are left out: Excel works them out. So is the number of a cell style, which only a file has.
 * When Excel refuses a step, those before it are taken back.
 *
 * @throws InputError when a sheet is protected, a name is the user's own, or the columns do not fit
 */
export async function writeEdits(context: Excel.RequestContext, edits: WorkbookEdits): Promise<WrittenInExcel> {
  const look = await lookAt(context);
  const { columns, cells = [], widths = [], names = [] } = edits;
  const sheetOf = ({ sheet }: { readonly sheet: string }) => sheetNamed(look, sheet).name;
  for (const each of [...(columns ? [columns] : []), ...cells, ...widths]) refuseLocked(look, sheetOf(each));
  const sheets = await planSheets(context, look, edits);
  const again = [...sheets.made.flatMap(({ name, again }) => (again ? [name] : [])), ...sheets.removed];
  for (const name of again) refuseLocked(look, name);
  const plan = columns && (await planExcelColumns(context, look, sheetOf(columns), columns));
  const namePlan = planNames(look, names, plan, sheets);
  const written = spilledApart(cells).map((cell) => ({ ...cell, sheet: sheetOf(cell), area: areaOfCell(cell) }));
  const formerWidths = widths.map((each) => ({
    sheet: sheetOf(each),
    column: each.column,
    format: rangeAt(context, sheetOf(each), areaOfCell({ row: 1, column: each.column })).format.load("columnWidth"),
  }));
  const wholeSheets = again.flatMap((sheet) => {
    const area = look.used.get(sheet);
    return area ? [{ sheet, area }] : [];
  });
  const former = await formerCells(
    context,
    [...written, ...wholeSheets].map(({ sheet, area }) => ({ sheet, area })),
  );
  if (formerWidths.length > 0) await context.sync();
  const live = written.filter(({ typed }, index) => typed && isEnteredFormula(former[index]!.formulas[0]![0]));
  if (live.length > 0) throw formulaStands(live.map(({ row, column }) => cellName(row, column)));
  const held = plan && columns?.keepsInSight !== undefined ? await inSight(context, plan.sheet) : undefined;
  const { table, filter } = plan?.places ?? {};
  const done: Done = {
    fresh: plan?.fresh.map((area) => ({ sheet: plan.sheet, area })) ?? [],
    table: table && { name: table.info.name, before: table.info.area, after: table.area },
    filter: filter && plan && !plan.filtered ? { sheet: plan.sheet, from: filter.from } : undefined,
    inSight: held?.columns === 0 ? { sheet: plan!.sheet, ...held } : undefined,
    cells: [...(plan?.former ?? []), ...former.slice(0, written.length)],
    widths: [
      ...(plan?.widths ?? []),
      ...formerWidths.map(({ sheet, column, format }) => ({ sheet, column, points: format.columnWidth })),
    ],
    namesAdded: namePlan.added,
    namesRemoved: namePlan.removed,
    sheetsAdded: sheets.made.flatMap(({ name, again }) => (again ? [] : [name])),
    sheetsFormer: again.map((name) => ({
      name,
      cells: former.slice(written.length).find(({ sheet }) => sheet === name),
    })),
  };
  const sender = senderOf(context);
  try {
    // Names go before the sheets that they lead to, and come after them; formulas find the names that they use.
    await writeNames(
      sender,
      namePlan.removed.map(({ name }) => name),
      [],
    );
    await writeSheets(sender, look, sheets);
    await writeNames(sender, [], namePlan.added);
    const notes = plan ? await writeExcelColumns(sender, plan) : [];
    if (done.inSight !== undefined)
      await sender.put(SMALL, () => keepInSight(context, plan!.sheet, { ...held!, columns: columns!.keepsInSight! }));
    for (const cell of written) await writeCell(sender, cell);
    for (const each of widths)
      await sender.put(SMALL, () => {
        const cell = areaOfCell({ row: 1, column: each.column });
        rangeAt(context, sheetOf(each), cell).format.columnWidth = points(each.width);
      });
    await sender.send();
    return { columns: plan?.places.placed.map(({ at }) => at) ?? [], notes: [...notes, ...namePlan.notes], done };
  } catch (error) {
    await restore(context, done).catch(() => {
      throw new Error("Excel refused a step, and then to take back those before it: look at the sheets", {
        cause: error,
      });
    });
    throw error;
  }
}

const isEnteredFormula = (entry: unknown): boolean => typeof entry === "string" && entry.startsWith("=");

const SMALL = 200;

async function writeCell(sender: Sender, { sheet, content, format, area }: CellEdit & { area: Area }): Promise<void> {
  if (format !== undefined) await writeCells(sender, sheet, area, "numberFormat", [[format]]);
  await writeCells(sender, sheet, area, "formulas", [[entered(content)]]);
}

/** The cells without those that the formula of another fills: Excel spills it by itself. */
function spilledApart(cells: readonly CellEdit[]): readonly CellEdit[] {
  const spills = cells.filter(({ content }) => isFormula(content) && content.fills !== undefined);
  const isFilled = (cell: CellEdit) =>
    spills.some((spill) => {
      const { top, bottom, left, right } = (isFormula(spill.content) && spill.content.fills) || NOWHERE;
      const inside = cell.row >= top && cell.row <= bottom && cell.column >= left && cell.column <= right;
      return cell !== spill && cell.sheet === spill.sheet && inside;
    });
  return spills.length === 0 ? cells : cells.map((cell) => (isFilled(cell) ? { ...cell, content: null } : cell));
}

const NOWHERE: Area = { top: 0, bottom: -1, left: 0, right: -1 };

function areaOfCell({ row, column }: { readonly row: number; readonly column: number }): Area {
  return { top: row, bottom: row, left: column, right: column };
}

function refuseLocked(look: HostView, sheet: string): void {
  if (look.locked.has(sheet)) throw protectedSheet(sheet);
}
