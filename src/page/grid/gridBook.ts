import {
  ICommandService,
  IResourceManagerService,
  UniverInstanceType,
  type ICellData,
  type Injector,
  type IRange,
  type IWorkbookData,
  type Nullable,
} from "@univerjs/core";
import type { FUniver } from "@univerjs/core/facade";
import { FormulaDataModel, LexerTreeBuilder } from "@univerjs/engine-formula";
import type { FWorkbook } from "@univerjs/sheets/facade";
import type { LiveBook } from "../bookEdits";
import type { FilledArea } from "../filledArea";
import { gridCells } from "../gridCells";
import { BOOK_ID } from "../gridTerms";

/** The open workbook with what the formula engine adds to it, not a copy: it goes on changing. */
export function liveBook(workbook: FWorkbook, injector: Injector): LiveBook {
  const resources = injector.get(IResourceManagerService).getResources(BOOK_ID, UniverInstanceType.UNIVER_SHEET);
  const snapshot: IWorkbookData = { ...workbook.getWorkbook().getSnapshot(), resources };
  const formulas = injector.get(FormulaDataModel);
  return { snapshot, filled: (sheetId) => filledAreas(formulas, sheetId) };
}

/** Areas that formulas of one sheet fill; rows and columns count from 1. */
function filledAreas(formulas: FormulaDataModel, sheetId: string): FilledArea[] {
  const areas = formulas.getArrayFormulaRange()[BOOK_ID]?.[sheetId] ?? {};
  const cells = formulas.getArrayFormulaCellData()[BOOK_ID]?.[sheetId] ?? {};
  const found: FilledArea[] = [];
  for (const [row, column, range] of gridCells<Nullable<IRange>>(areas)) {
    if (!range || (range.startRow === range.endRow && range.startColumn === range.endColumn)) continue;
    found.push({
      row: row + 1,
      column: column + 1,
      area: {
        top: range.startRow + 1,
        left: range.startColumn + 1,
        bottom: range.endRow + 1,
        right: range.endColumn + 1,
      },
      value: (r, c): Nullable<ICellData> => cells[r - 1]?.[c - 1],
    });
  }
  return found;
}

/**
 * Mends three ways in which the formula engine fails on tables: a half-typed `Table[` breaks every later formula,
 * `[@Column]` is known in its stored form alone, and a bracket in a heading (`Survey[board area (m2)]`) opens a call.
 */
export function mendTableFormulas(api: FUniver, injector: Injector, workbook: () => FWorkbook): void {
  const reader = LexerTreeBuilder.prototype as unknown as FormulaReader;
  mendHeadingBrackets(reader);
  const reset = reader._resetTemp;
  reader._resetTemp = function (this: { _squareBracketState: number }) {
    this._squareBracketState = 0;
    reset.call(this);
  };
  injector.get(ICommandService).beforeCommandExecuted(({ id, params }) => {
    if (id !== "sheet.command.set-range-values") return;
    const { subUnitId, range, value } = params as ValuesParams;
    const sheet = workbook().getSheetBySheetId(subUnitId ?? workbook().getActiveSheet().getSheetId());
    const start = range ?? api.getActiveWorkbook()?.getActiveRange()?.getRange();
    if (!sheet || !start) return;
    eachCell(value, start, (cell, row, column) => {
      if (typeof cell.f !== "string" || !cell.f.includes("@")) return;
      cell.f = withoutShorthand(cell.f, sheet.getTableByCell(row, column)?.name);
    });
  });
}

/** What the engine's reader of formulas does letter by letter. */
interface FormulaReader {
  _resetTemp: () => void;
  _squareBracketState: number;
  _nodeMaker: (formula: string, ...rest: unknown[]) => unknown;
  _pushSegment: (letter: string) => void;
  _addSequenceArray: (sequence: unknown, letter: string, at: number) => void;
}

/** Letters that no formula has: what is read in place of a bracket in a heading. */
const HIDDEN = { "(": "\uE000", ")": "\uE001" } as const;
const SHOWN: Readonly<Record<string, string>> = { [HIDDEN["("]]: "(", [HIDDEN[")"]]: ")" };

/** Hides the brackets of headings while a formula is taken apart, and gives each back where its letter is kept. */
function mendHeadingBrackets(reader: FormulaReader): void {
  const { _nodeMaker: read, _pushSegment: push, _addSequenceArray: add } = reader;
  reader._nodeMaker = function (formula, ...rest) {
    return read.call(this, withHiddenBrackets(formula), ...rest);
  };
  reader._pushSegment = function (letter) {
    push.call(this, SHOWN[letter] ?? letter);
  };
  reader._addSequenceArray = function (sequence, letter, at) {
    add.call(this, sequence, SHOWN[letter] ?? letter, at);
  };
}

function withHiddenBrackets(formula: string): string {
  return formula.replace(/"(?:[^"]|"")*"|'(?:[^']|'')*'|\[[^\][]*\]/g, (piece) =>
    piece.startsWith("[") ? piece.replace(/[()]/g, (bracket) => HIDDEN[bracket as keyof typeof HIDDEN]) : piece,
  );
}

/** `[@Height]` -> `Survey[[#This Row],[Height]]`, as a file stores it and the engine reads it. */
export function withoutShorthand(formula: string, table: string | undefined): string {
  return formula.replace(
    /"(?:[^"]|"")*"|([A-Za-z_]\w{0,254})?\[@(?:\[([^\]]+)\]|([^\][]+))\]/g,
    (piece, named?: string, bracketed?: string, bare?: string) => {
      const name = named ?? table;
      const column = bracketed ?? bare;
      return name === undefined || column === undefined ? piece : `${name}[[#This Row],[${column}]]`;
    },
  );
}

interface ValuesParams {
  readonly subUnitId?: string;
  readonly range?: IRange;
  readonly value: unknown;
}

/** Each cell of a command's values: one cell, rows of cells, or cells by row and column. */
function eachCell(
  value: unknown,
  { startRow, startColumn }: IRange,
  visit: (cell: { f?: unknown }, row: number, column: number) => void,
): void {
  if (typeof value !== "object" || value === null) return;
  if ("f" in value || "v" in value) return visit(value as { f?: unknown }, startRow, startColumn);
  const whole = Array.isArray(value);
  for (const [r, row] of Object.entries(value as Record<string, object>)) {
    for (const [c, cell] of Object.entries(row ?? {}) as [string, { f?: unknown } | null][]) {
      if (typeof cell !== "object" || cell === null) continue;
      visit(cell, Number(r) + (whole ? startRow : 0), Number(c) + (whole ? startColumn : 0));
    }
  }
}
