import { createWorkbook } from "../../src/workbook/createWorkbook";
import { cellName, parseSheetArea } from "../../src/workbook/cellRef";
import { fillWorkbook, type Filled } from "../../src/filling/fillWorkbook";
import type { FillOptions } from "../../src/filling/surveyEdits";
import { ODD_SIZES } from "../../src/headings/questions";
import { openWorkbook, type Workbook } from "../../src/workbook/openWorkbook";
import { readSheet } from "../../src/workbook/readSheet";
import type { SheetValue } from "../../src/workbook/sheetValue";
import { excel } from "../functions/cell";
import type { CellAnswer } from "../runtime/excelRuntime";
import type { Argument, Cell } from "../runtime/marshal";
import { evaluate, isError, type Sheet } from "./evaluate";

/** A survey as the cells of a sheet. */
export type Cells = readonly (readonly (string | number | boolean | null)[])[];

/** A workbook of one sheet that holds a survey from its first row. */
export function bookOf(cells: Cells, table = true): Workbook {
  return openWorkbook(
    createWorkbook([{ name: "Survey", rows: cells, headingRow: 1, ...(table ? { table: "Survey" } : {}) }]),
  );
}

export function filled(book: Workbook, options: Partial<FillOptions> = {}): Filled {
  return fillWorkbook(book, {
    figures: ["outside height", "problem"],
    settings: [],
    // Generated sizes are odd on purpose.
    recognise: { words: [{ word: ODD_SIZES, meaning: "keep" }] },
    values: false,
    cutList: false,
    ...options,
  });
}

/** One cell of a filled survey: its formula, the result stored beside it, and what the formula gives. */
export interface Calculated {
  readonly cell: string;
  readonly heading: string;
  readonly row: number;
  readonly formula: string;
  readonly stored: Cell;
  readonly calculated: Cell;
}

/** Every formula of the survey sheet, calculated with the real cell functions inside Microsoft's runtime. */
export async function calculated(bytes: Uint8Array, headingRow = 1, comma = false): Promise<readonly Calculated[]> {
  const book = openWorkbook(bytes);
  const grid = readSheet(book, "Survey", { formulas: true });
  const valueAt = (row: number, column: number): Cell => plain(grid.rows[row - 1]?.[column - 1] ?? null);
  const ranges = new Map<string, readonly (readonly Cell[])[]>();
  const formulas = new Map([...grid.formulas]);
  const answers = new Map<string, Promise<Cell>>();
  /** A cell with a formula is calculated before what reads it, as a spreadsheet does. */
  const answerOf = (name: string, formula: string): Promise<Cell> => {
    const known = answers.get(name) ?? evaluate(formula, sheet);
    answers.set(name, known);
    return known;
  };
  const sheet: Sheet = {
    comma,
    cell: (name) => {
      const formula = formulas.get(name);
      return formula === undefined ? valueAt(...place(name)) : answerOf(name, formula);
    },
    range: (name) => {
      const known = ranges.get(name) ?? namedRange(book, name);
      ranges.set(name, known);
      return known;
    },
    call: inBatches((name, args) => [name.replace(/^ENC_/, "").replaceAll("_", "."), args]),
  };
  return Promise.all(
    [...grid.formulas].map(async ([cell, formula]) => {
      const [row, column] = place(cell);
      return {
        cell,
        heading: String(valueAt(headingRow, column)),
        row,
        formula,
        stored: valueAt(row, column),
        calculated: await answerOf(cell, formula),
      };
    }),
  );
}

/** The same answer: numbers to nine figures (text in a formula keeps fifteen), texts and errors exactly. */
export function agree({ stored, calculated: found, heading, formula }: Calculated): boolean {
  if (typeof stored === "number" && typeof found === "number")
    return Math.abs(stored - found) <= 1e-9 * Math.max(1, Math.abs(stored));
  if (isError(stored) || isError(found)) return isError(stored) && isError(found) && stored.error === found.error;
  // A no-break space stands for empty text, which LibreOffice would take for no result.
  const [kept, shown] = [stored === "\u00a0" ? "" : stored, found ?? ""];
  if (typeof kept !== "string" || typeof shown !== "string") return kept === shown;
  // A measure that is read by a call of its own hands on that it is wrong, not why, nor how it was typed.
  const handedOn = /_(?:MEASURE|DIMENSIONS)\(/.test(formula);
  if (heading === "problem") return handedOn ? (kept === "") === (shown === "") : unquoted(kept) === unquoted(shown);
  return heading === "cautions" && handedOn ? kept === shown.replace(AS_TYPED, "") : kept === shown;
}

/** A number joined into a settings text is told as that text. */
function unquoted(text: string): string {
  return text.replace(/got "([^"]*?)(?: (?:kg|g|lb|oz))?"/, "got $1");
}

const AS_TYPED = /(?:; |^)height \S+ cm looks like a catalogue's, rounded up to whole cm: measure it$/;

/** Calls asked for in one turn go in one message, as when Excel calculates a column; the same call goes once. */
function inBatches(asked: (name: string, args: readonly Argument[]) => Call): Sheet["call"] {
  const known = new Map<string, Promise<Cell>>();
  const ids = new Map<unknown, number>();
  const idOf = (range: unknown) => ids.get(range) ?? ids.set(range, ids.size).size - 1;
  let waiting: { readonly call: Call; readonly done: (cell: Cell) => void }[] = [];
  const send = async (): Promise<void> => {
    const batch = waiting;
    waiting = [];
    const answers = await excel.callMany(batch.map(({ call }) => call));
    answers.forEach((answer, index) => batch[index]!.done(shownCell(answer)));
  };
  return (name, args) => {
    const key = JSON.stringify([name, ...args.map((each) => (Array.isArray(each) ? ["range", idOf(each)] : each))]);
    const before = known.get(key);
    if (before !== undefined) return before;
    const answer = new Promise<Cell>((done) => {
      if (waiting.length === 0) setImmediate(() => void send());
      waiting.push({ call: asked(name, args), done });
    });
    known.set(key, answer);
    return answer;
  };
}

type Call = readonly [id: string, args: readonly Argument[]];

function shownCell(answer: CellAnswer): Cell {
  if ("error" in answer) return { error: answer.error };
  if (!Array.isArray(answer.value)) return answer.value as Cell;
  const [[only = null] = []] = answer.value as readonly (readonly Cell[])[];
  return only;
}

export function namedRange(book: Workbook, name: string): readonly (readonly Cell[])[] {
  const defined = book.names.find((each) => each.name.toLowerCase() === name.toLowerCase());
  const area = defined === undefined ? undefined : parseSheetArea(defined.refersTo);
  if (area === undefined) throw new Error(`the workbook has no range called ${name}`);
  const { rows } = readSheet(book, area.sheet);
  const { top, left, bottom, right } = area.area;
  return Array.from({ length: bottom - top + 1 }, (_, row) =>
    Array.from({ length: right - left + 1 }, (_unused, column) =>
      plain(rows[top - 1 + row]?.[left - 1 + column] ?? null),
    ),
  );
}

function place(name: string): [row: number, column: number] {
  const match = /^([A-Z]+)(\d+)$/.exec(name);
  if (match === null) throw new Error(`no cell: ${name}`);
  const letters = [...match[1]!].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0);
  if (cellName(Number(match[2]), letters) !== name) throw new Error(`no cell: ${name}`);
  return [Number(match[2]), letters];
}

function plain(value: SheetValue): Cell {
  if (typeof value !== "object" || value === null || "error" in value) return value;
  return value.serial;
}
