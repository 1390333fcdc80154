/// <reference types="office-js" />
import { InputError, Unavailable } from "../measure/errors";
import { parseArea } from "../workbook/cellRef";
import { sheetNamed } from "../workbook/readSheet";
import { readBook } from "./excelBook";
import { rangeAt } from "./excelRead";
import { undoEdits } from "./excelUndo";
import { writeEdits } from "./excelWrite";
import type { BookPort, SheetCell } from "./port";

/**
 * Waits for Excel to answer the pane.
 *
 * @returns true inside Excel; false in a plain browser, and when Office.js did not load
 */
export async function excelAnswers(): Promise<boolean> {
  if (typeof Office === "undefined") return false;
  const { host } = await Office.onReady();
  return host === Office.HostType.Excel;
}

/** The port of the workbook that is open in Excel. It takes API set ExcelApi 1.13. */
export function excelPort(): BookPort {
  let writes = 0;
  return {
    read: () => inExcel(readBook),
    write: async (edits) => {
      const { columns, notes, done } = await inExcel((context) => writeEdits(context, edits));
      const mine = ++writes;
      const undo = async (): Promise<void> => {
        if (writes !== mine)
          throw new InputError("undo", "an earlier step", "takes back the last step first", "undo the later one");
        await inExcel((context) => undoEdits(context, done));
        writes--;
      };
      return { columns, notes, undo };
    },
    selected: () => inExcel(selectedCell),
    goTo: (cell) => inExcel((context) => goTo(context, cell)),
    onSelect: (listener) => {
      let last = "";
      return listening(
        ({ workbook }) => [workbook.onSelectionChanged],
        async () => {
          const cell = await inExcel(selectedCell);
          const key = JSON.stringify(cell);
          if (cell === undefined || key === last) return;
          last = key;
          listener(cell);
        },
      );
    },
    onChange: (listener) =>
      listening(
        ({ workbook: { worksheets } }) => [worksheets.onChanged, worksheets.onCalculated],
        () => Promise.resolve(listener()),
      ),
  };
}

/** Waits with the work while the user types into a cell. */
async function inExcel<Answer>(work: (context: Excel.RequestContext) => Promise<Answer>): Promise<Answer> {
  try {
    return await Excel.run({ delayForCellEdit: true }, work);
  } catch (error) {
    // What Excel itself refuses has a code.
    throw error instanceof Error && "code" in error ? new Unavailable(`Excel: ${error.message}`) : error;
  }
}

/** A chart sheet has no cell, and Excel answers with an error. */
async function selectedCell(context: Excel.RequestContext): Promise<SheetCell | undefined> {
  const cell = context.workbook.getActiveCell().load(["address", "worksheet/name"]);
  try {
    await context.sync();
  } catch (error) {
    if (error instanceof Error && "code" in error) return undefined;
    throw error;
  }
  const area = parseArea(cell.address.slice(cell.address.lastIndexOf("!") + 1));
  return area && { sheet: cell.worksheet.name, row: area.top, column: area.left };
}

async function goTo(context: Excel.RequestContext, { sheet, row, column }: SheetCell): Promise<void> {
  const { worksheets } = context.workbook;
  worksheets.load(["items/name", "items/visibility"]);
  await context.sync();
  const { name, shown } = sheetNamed(
    {
      sheets: worksheets.items.map((each) => ({ name: each.name, cells: true, shown: each.visibility === "Visible" })),
    },
    sheet,
  );
  if (!shown) throw new InputError("sheet", `"${name}", which is hidden`, "must show", "unhide it in Excel");
  worksheets.getItem(name).activate();
  rangeAt(context, name, { top: row, bottom: row, left: column, right: column }).select();
  await context.sync();
}

interface Event {
  readonly add: (handler: () => Promise<void>) => OfficeExtension.EventHandlerResult<unknown>;
}

async function listening(
  events: (context: Excel.RequestContext) => readonly Event[],
  handler: () => Promise<void>,
): Promise<() => void> {
  const handles = await inExcel(async (context) => {
    const added = events(context).map((event) => event.add(handler));
    await context.sync();
    return added;
  });
  return () => {
    for (const handle of handles)
      void Excel.run(handle.context as Excel.RequestContext, async (context) => {
        handle.remove();
        await context.sync();
      });
  };
}
