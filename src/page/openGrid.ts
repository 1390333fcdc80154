import { IUndoRedoService } from "@univerjs/core";
import type { FWorkbook } from "@univerjs/sheets/facade";
import type { Book } from "../workbook/book";
import { cellName } from "../workbook/cellRef";
import type { Shift } from "../workbook/shift/shift";
import { bookEdits, type PageChanges } from "./bookEdits";
import { isErrorText } from "./functions/cellError";
import { cellMessages } from "./functions/cellMessages";
import { formulasIn, MANY_FORMULAS } from "./formulasIn";
import { keptFilters } from "./keptFilters";
import { keptPlace } from "./keptPlace";
import { loadFunctions } from "./functions/loadFunctions";
import type { FunctionMetadata } from "./functions/metadata";
import { functionInfo, registerFunctions } from "./functions/registerFunctions";
import { createGrid, type Grid } from "./grid/createGrid";
import { liveBook, mendTableFormulas } from "./grid/gridBook";
import { growTables } from "./grid/growTables";
import { calculateInTurn, type Calculations } from "./grid/calculateInTurn";
import { mendSortedFormulas } from "./grid/sortedFormulas";
import { nameParts } from "./grid/nameParts";
import { pasteTexts } from "./grid/pasteTexts";
import { quickEngine } from "./grid/quickEngine";
import { quickPictures } from "./grid/quickPictures";
import { refuseCommands, refuseLockedChanges } from "./grid/refusedCommands";
import { sortWholeRows } from "./grid/sortWholeRows";
import { pageBook } from "./pageBook";
import { BOOK_ID } from "./gridTerms";
import type { OpenedBook } from "./openedBook";
import type { StatusLine } from "./statusLine";

/** The spreadsheet with a workbook in it. */
export interface OpenGrid {
  readonly grid: Grid;
  readonly workbook: () => FWorkbook;
  /** The workbook as the server has it: what the page compares with. */
  readonly opened: () => OpenedBook;
  /** Shows another workbook, or the same again. */
  readonly show: (book: OpenedBook) => Promise<void>;
  /** The same workbook in a newer state: selected cell and filters stay. */
  readonly refresh: (book: OpenedBook, state?: NewerState) => Promise<void>;
  /** Listens to the same workbook being shown in a newer state. */
  readonly onRefresh: (listener: () => void) => () => void;
  readonly changes: () => PageChanges;
  /** The workbook as it is shown, for whoever reads a survey. */
  readonly book: () => Book;
  /** Works out every formula. */
  readonly calculate: () => Promise<void>;
  /** Waits until what follows from cells that changed is worked out. */
  readonly settled: () => Promise<void>;
}

/** What is new in a workbook that is shown again. */
export interface NewerState {
  /** Rows or columns that came or went. */
  readonly shift?: Shift | undefined;
  /** It brings the results of what was written: nobody waits until they are worked out again. */
  readonly hasResults?: boolean;
}

export interface OpenGridOptions {
  readonly container: HTMLElement;
  /** Where the values of an argument are offered. */
  readonly values: HTMLElement;
  readonly dark: boolean;
  readonly functions: readonly FunctionMetadata[];
  readonly status: StatusLine;
  readonly loadScript: (name: string) => Promise<void>;
}

/** Makes the spreadsheet, with our functions live in it. */
export async function openGrid({
  container,
  values,
  dark,
  functions,
  status,
  loadScript,
}: OpenGridOptions): Promise<OpenGrid> {
  const loaded = await loadFunctions(functions, loadScript);
  const messages = cellMessages();
  quickPictures();
  const grid = createGrid({ container, values, dark, functions: functions.map(functionInfo) });
  nameParts(container);
  const { api, injector } = grid;
  let opened: OpenedBook | undefined;
  let workbook: FWorkbook | undefined;
  const shown = (): FWorkbook => {
    if (workbook === undefined) throw new Error("no workbook is open");
    return workbook;
  };
  const book = (): OpenedBook => {
    if (opened === undefined) throw new Error("no workbook is open");
    return opened;
  };
  const tellSelected = (): void => {
    const sheet = workbook?.getActiveSheet();
    const cell = sheet?.getSelection()?.getActiveRange();
    if (!sheet || !cell) return;
    const [row, column] = [cell.getRow(), cell.getColumn()];
    const message = messages.at({ sheet: sheet.getSheetId(), row, column });
    const wrong = isErrorText(cell.getValue()) && message !== undefined && message !== "";
    status.cell(wrong ? `${cellName(row + 1, column + 1)}: ${message}` : "", wrong);
  };

  refuseCommands(injector, (why) => status.say(why, true));
  const lockedSheet = (sheetId?: string): string | undefined => {
    const id = sheetId ?? workbook?.getActiveSheet().getSheetId();
    return opened?.sheets.find((sheet) => sheet.locked && sheet.id === id)?.name;
  };
  refuseLockedChanges(injector, lockedSheet, (why) => status.say(why, true));
  mendTableFormulas(api, injector, shown);
  mendSortedFormulas(injector);
  sortWholeRows(injector, shown);
  quickEngine(injector);
  const hasNoTotals = (table: string) => opened?.tables.some((each) => each.name === table && !each.totalsRow) ?? false;
  growTables(injector, shown, hasNoTotals, (text) => status.say(text));
  const formula = api.getFormula();
  let calculations: Calculations | undefined;
  /** The most formulas that a calculation took up since this was set to 0. */
  let taken = 0;
  const calculate = async (): Promise<void> => {
    await calculations?.done();
    taken = 0;
    const done = formula.onCalculationResultApplied(LONGEST_CALCULATION);
    formula.executeCalculation();
    await done;
  };
  const refreshed = new Set<() => void>();
  /** The workbook as it was last read; undefined when something has changed since. */
  let read: Book | undefined;
  api.onCommandExecuted(({ id }) => {
    if (CHANGING.test(id)) read = undefined;
  });
  const takeFormulas = (): Calculations => {
    registerFunctions(injector, loaded, messages.notesOf);
    pasteTexts(injector);
    api.onCommandExecuted(({ id }) => {
      if (SELECTING.includes(id)) tellSelected();
    });
    formula.calculationResultApplied(tellSelected);
    formula.calculationProcessing(({ totalFormulasToCalculate, completedFormulasCount }) => {
      taken = Math.max(taken, totalFormulasToCalculate);
      if (totalFormulasToCalculate < MANY_FORMULAS) return;
      status.say(`Calculating: ${completedFormulasCount} of ${totalFormulasToCalculate} formulas`);
    });
    return calculateInTurn(injector);
  };
  /** Works out what is shown, after it was written into. */
  let working = Promise.resolve();
  /**
   * @param isFresh whether the results that the file has are those of its cells: nothing was written since
   * @returns works out what the stored results may not be any more
   */
  const show = async (next: OpenedBook, isFresh = true): Promise<() => Promise<void>> => {
    await Promise.allSettled([working]);
    await calculations?.done();
    if (workbook !== undefined) api.disposeUnit(BOOK_ID);
    // Steps of the workbook before would change cells of this one.
    injector.get(IUndoRedoService).clearUndoRedo(BOOK_ID);
    opened = next;
    read = undefined;
    // The grid keeps and changes what it is given; the page compares with what it was.
    workbook = api.createWorkbook(structuredClone(next.snapshot));
    // Known only once there is a workbook.
    calculations ??= takeFormulas();
    const { formulas, stored } = formulasIn(next);
    const isMany = formulas > MANY_FORMULAS;
    if (!isMany) await calculations.opening("all is worked out", grid.draw);
    else if (isFresh && stored === formulas) await calculations.opening("stored results hold", grid.draw);
    else await grid.draw();
    performance.mark("answers");
    return async () => {
      taken = 0;
      if (isMany) status.say(`${formulas} formulas show their stored results. Calculate works them out again.`);
      else for (let asked = 0; taken < formulas && asked < MOST_ASKED; asked++) await calculate();
    };
  };
  return {
    grid,
    workbook: shown,
    opened: book,
    show: async (next) => (await show(next))(),
    refresh: async (next, { shift, hasResults = false } = {}) => {
      const goBack = keptPlace(shown());
      const filterAgain = keptFilters(shown(), injector);
      working = (await show(next, false))();
      if (hasResults) working.catch(reportError);
      else await working;
      await filterAgain(shown(), shift);
      // A filter is no step of the user's: the next undo takes back the write.
      injector.get(IUndoRedoService).clearUndoRedo(BOOK_ID);
      goBack(shown());
      for (const listener of refreshed) listener();
    },
    onRefresh: (listener) => {
      refreshed.add(listener);
      return () => void refreshed.delete(listener);
    },
    changes: () => bookEdits(book(), liveBook(shown(), injector)),
    book: () => (read ??= pageBook(book(), liveBook(shown(), injector))),
    calculate,
    settled: async () => {
      await Promise.allSettled([working]);
      await calculations?.settled();
    },
  };
}

/** What the grid runs when another cell is selected; its events leave out some ways. */
const SELECTING = ["sheet.operation.set-selections", "sheet.operation.set-worksheet-active"];

/** Whatever changes a workbook, its results included. */
const CHANGING = /\.mutation\./;

/** The engine has been seen to leave a calculation out right after another workbook was shown. */
const MOST_ASKED = 3;
const LONGEST_CALCULATION = 600_000;
