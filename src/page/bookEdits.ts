import type { IWorkbookData, IWorksheetData } from "@univerjs/core";
import { InputError } from "../measure/errors";
import { areaName, cellName } from "../workbook/cellRef";
import type { CellContent, CellEdit, NewSheet, TableGrowth, WorkbookEdits } from "../workbook/edits";
import { changedLayout, type ChangedLayout } from "./changedLayout";
import { liveTables } from "./liveTables";
import type { OpenedBook } from "./openedBook";
import { formulasOf } from "./sharedFormulas";
import { storedFromTyped } from "./storedFormulas";
import { plainOf } from "./plainOf";
import { SHOWN_BLANK } from "../workbook/shownBlank";
import { type FilledArea, fillArea } from "./filledArea";
import { changedCells, numbersOf } from "./changedCells";

/** The workbook as the grid shows it. */
export interface LiveBook {
  readonly snapshot: IWorkbookData;
  readonly filled: (sheetId: string) => readonly FilledArea[];
}

export interface PageChanges {
  readonly edits: WorkbookEdits;
  /** The same without cells where nothing is new but the result of a formula: what a user has changed. */
  readonly own: WorkbookEdits;
  /** What a save does not carry, in plain words. */
  readonly said: readonly string[];
}

/**
 * What has changed since the workbook was opened, as edits of its file: cells, fresh results of formulas, styles that a
 * sort moved, number formats, widths, heights, hidden rows and columns, frozen parts and new sheets. A formula that the page cannot work out keeps its old result.
 *
 * @throws InputError when a sheet of the file is gone or was renamed, or a heading of a table was changed
 */
export function bookEdits(opened: OpenedBook, live: LiveBook): PageChanges {
  const { snapshot } = live;
  const known = new Map(opened.sheets.map((sheet) => [sheet.name, sheet]));
  const now = snapshot.sheetOrder.map((id) => ({ id, sheet: snapshot.sheets[id]! }));
  const lost = opened.sheets.find(({ name }) => !now.some(({ sheet }) => sheet.name === name));
  if (lost)
    throw new InputError(
      "save",
      `a workbook without the sheet "${lost.name}"`,
      "keeps every sheet of the file under its name",
      "undo that, or change the sheets in your spreadsheet program",
    );
  const cells: CellEdit[] = [];
  const ownCells: CellEdit[] = [];
  const layouts: ChangedLayout[] = [];
  const sheets: NewSheet[] = [];
  let looks = 0;
  let keptArrays = 0;
  let plainer = 0;
  for (const { id, sheet } of now) {
    const before = known.get(sheet.name ?? "");
    if (before === undefined) sheets.push(newSheet(sheet, live.filled(id)));
    else {
      const old = opened.snapshot.sheets[before.id]!;
      const changes = changedCells(before, old, sheet, live.filled(id), { opened, snapshot });
      for (const cell of changes.cells) {
        cells.push(cell);
        if (!changes.fresh.has(cell)) ownCells.push(cell);
      }
      looks += changes.looks;
      keptArrays += changes.keptArrays;
      plainer += changes.plainer;
      layouts.push(changedLayout(before.name, old, sheet));
    }
  }
  refuseHeadings(opened, cells);
  const widths = layouts.flatMap((each) => each.widths);
  const rows = layouts.flatMap((each) => each.rows);
  const frozen = layouts.flatMap((each) => each.frozen);
  const tables = opened.tables.flatMap((table): TableGrowth[] => {
    const bottom = liveTables(snapshot).get(table.id);
    if (bottom === undefined || table.totalsRow || bottom <= table.area.bottom) return [];
    return [{ sheet: table.sheet, table: table.name, bottom }];
  });
  const others = {
    ...(sheets.length === 0 ? {} : { sheets }),
    ...(widths.length === 0 ? {} : { widths }),
    ...(rows.length === 0 ? {} : { rows }),
    ...(frozen.length === 0 ? {} : { frozen }),
    ...(tables.length === 0 ? {} : { tables }),
  };
  return {
    edits: { ...(cells.length === 0 ? {} : { cells }), ...others },
    own: { ...(ownCells.length === 0 ? {} : { cells: ownCells }), ...others },
    said: [
      ...(looks === 0 ? [] : [`${looks} cells look different here than in the file: looks are not saved`]),
      ...(plainer === 0
        ? []
        : [`${plainer} cells lose the look of parts of their text, which the file that was opened still has`]),
      ...(keptArrays === 0
        ? []
        : [
            `${keptArrays} formulas of the file that fill several cells keep their stored results until it is calculated`,
          ]),
    ],
  };
}

function newSheet(sheet: Partial<IWorksheetData>, filled: readonly FilledArea[]): NewSheet {
  const cells = sheet.cellData ?? {};
  const formulas = formulasOf(cells);
  const rows: CellContent[][] = [];
  const put = (row: number, column: number, content: CellContent): void => {
    while (rows.length <= row) rows.push([]);
    while (rows[row]!.length < column) rows[row]!.push(null);
    rows[row]![column] = content;
  };
  for (const r of numbersOf(cells)) {
    for (const c of numbersOf(cells[r] ?? {})) {
      const cell = cells[r]?.[c];
      const typed = formulas.at(r, c);
      const result = plainOf(cell);
      if (typed === undefined) put(r, c, result);
      else put(r, c, { formula: storedFromTyped(typed.slice(1)), result: result ?? SHOWN_BLANK });
    }
  }
  for (const area of filled) {
    const anchor = rows[area.row - 1]?.[area.column - 1];
    if (typeof anchor !== "object" || anchor === null || !("formula" in anchor)) continue;
    put(area.row - 1, area.column - 1, { ...anchor, fills: area.area });
    fillArea(area, put);
  }
  return { name: sheet.name ?? "", rows, headingRow: 0 };
}

function refuseHeadings({ tables }: OpenedBook, cells: readonly CellEdit[]): void {
  for (const { name, sheet, area, headerRow } of tables.filter((table) => table.headerRow)) {
    const heading = cells.find(
      (cell) =>
        headerRow &&
        cell.sheet === sheet &&
        cell.row === area.top &&
        cell.column >= area.left &&
        cell.column <= area.right,
    );
    if (heading)
      throw new InputError(
        `cell ${cellName(heading.row, heading.column)}`,
        `another heading of the table ${name} (${areaName(area)})`,
        "keeps its headings, by which formulas know its columns",
        "undo that, or rename the column in your spreadsheet program",
      );
  }
}
