/// <reference types="office-js" />
import { InputError, Unavailable } from "../measure/errors";
import { parseArea } from "../workbook/cellRef";
import { sheetNamed } from "../workbook/sheetNamed";
import { bookReader, type BookReader } from "./excelBook";
import { showOnly } from "./excelFilter";
import { rangeAt } from "./excelRead";
import { ALWAYS_SHOWN, type Showing } from "./excelShowing";
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

/**
 * The port of the workbook that is open in Excel. It takes API set ExcelApi 1.13.
 *
 * @param showing whether the pane can be seen. While it cannot, nothing is asked of Excel; a change is reported when it can
 */
export function excelPort(showing: Showing = ALWAYS_SHOWN): BookPort {
  let writes = 0;
  const reader = bookReader();
  return {
    read: () => inExcel(reader.read),
    write: async (edits) => {
      reader.forget();
      const { columns, notes, done } = await inExcel((context) => writeEdits(context, edits), {
        // Excel forgets what can be undone when a sheet is deleted, so such a write is no step of its own.
        oneStep: (edits.removeSheets ?? []).length === 0,
      });
      const mine = ++writes;
      const undo = async (): Promise<void> => {
        if (writes !== mine)
          throw new InputError("undo", "an earlier step", "takes back the last step first", "undo the later one");
        reader.forget();
        await inExcel((context) => undoEdits(context, done), { oneStep: done.sheetsAdded.length === 0 });
        writes--;
      };
      return { columns, notes, undo };
    },
    selected: () => inExcel(selectedCell),
    showOnly: (rows, value) => inExcel((context) => showOnly(context, rows, value)),
    goTo: (cell) => inExcel((context) => goTo(context, cell)),
    onSelect: (listener) => {
      let last = "";
      return listening(
        showing,
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
        showing,
        ({ workbook: { worksheets } }) => [worksheets.onChanged, worksheets.onCalculated],
        () => Promise.resolve(listener()),
        reader,
      ),
  };
}

/**
 * Waits with the work while the user types into a cell.
 *
 * @param oneStep whether Ctrl+Z takes the work back as one, where Excel can do that
 */
async function inExcel<Answer>(
  work: (context: Excel.RequestContext) => Promise<Answer>,
  { oneStep = false } = {},
): Promise<Answer> {
  const merged = oneStep && Office.context.requirements.isSetSupported("ExcelApi", MERGES_UNDO);
  try {
    return await Excel.run({ delayForCellEdit: true, ...(merged ? { mergeUndoGroup: true } : {}) }, work);
  } catch (error) {
    // What Excel itself refuses has a code.
    throw error instanceof Error && "code" in error ? new Unavailable(`Excel: ${error.message}`) : error;
  }
}

/** The set of functions with which several changes are one step to undo. */
const MERGES_UNDO = "1.20";

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
  readonly add: (handler: (event: object) => Promise<void>) => OfficeExtension.EventHandlerResult<unknown>;
}

async function listening(
  showing: Showing,
  events: (context: Excel.RequestContext) => readonly Event[],
  handler: () => Promise<void>,
  reader?: BookReader,
): Promise<() => void> {
  let missed = false;
  let stopped = false;
  const heard = (event: object): Promise<void> => {
    // Excel goes on until the request that takes the handler away is answered.
    if (stopped) return Promise.resolve();
    reader?.forget("worksheetId" in event ? String(event.worksheetId) : undefined);
    if (showing.now()) return handler();
    missed = true;
    return Promise.resolve();
  };
  const handles = await inExcel(async (context) => {
    const added = events(context).map((event) => event.add(heard));
    await context.sync();
    return added;
  });
  reader?.follow(true);
  const unwatch = showing.onShow(() => {
    if (missed) void handler();
    missed = false;
  });
  return () => {
    stopped = true;
    unwatch();
    reader?.follow(false);
    for (const handle of handles)
      void Excel.run(handle.context as Excel.RequestContext, async (context) => {
        handle.remove();
        await context.sync();
      });
  };
}
