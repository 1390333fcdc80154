import { isBlank } from "../src/measure/blank";
import { InputError, NoAnswer, shown } from "../src/measure/errors";
import { Fault, plainError } from "../src/measure/fault";
import { isBlankRow } from "../src/item/itemsOfRow";
import { isNoEnclosure, problemOf, sizeRow, type Row, type Sized } from "../src/item/sizeItem";
import type { Answer, Cell } from "../src/item/answers";
import { errorCode, unwrapped } from "../src/settings/errorCell";
import type { SettingsOptions } from "../src/settings/readSettings";
import { settingsOf } from "../src/settings/settingsOf";
import type { Settings } from "../src/settings/schema";

/** What a cell function hands back to the spreadsheet. */
export type CellResult = (number | string | CustomFunctions.Error)[][];

/**
 * Everything that blanks, settings and errors need, for functions of one item: the answer of a blank row, or of one
 * whose enclosure is `none`, is empty text.
 */
export function itemAnswer(
  row: Row,
  settings: unknown,
  answer: (sized: Sized) => Answer,
  options: SettingsOptions = {},
): CellResult {
  return guarded(() => {
    const cells = plainRow(row);
    if (isBlankRow(cells) || isNoEnclosure(cells.enclosure)) return "";
    const sized = sizeRow(cells, settingsIn(settings, options));
    return sized === undefined ? "" : answer(sized);
  });
}

/** Why a row cannot be sized, in words: settings that cannot be read are a problem of the row too, never an error. */
export function rowProblem(row: Row, settings: unknown): CellResult {
  try {
    const cells = plainRow(row);
    if (isBlankRow(cells) || isNoEnclosure(cells.enclosure)) return [[""]];
    return [[problemOf(cells, settingsIn(settings))]];
  } catch (error) {
    if (error instanceof InputError) return [[error.message]];
    throw cellError(error);
  }
}

/** The same for a function of one cell: blank in, empty text out. */
export function measuringAnswer(
  cell: unknown,
  settings: unknown,
  answer: (cell: unknown, settings: Settings) => Answer,
): CellResult {
  return guarded(() => {
    const plain = plainCell(cell);
    return isBlank(plain) ? "" : answer(plain, settingsIn(settings));
  });
}

/** The same for a function without an item. */
export function plainAnswer(settings: unknown, answer: (settings: Settings) => Answer): CellResult {
  return guarded(() => answer(settingsIn(settings)));
}

/**
 * The text of a selector, empty for a blank. It is typed as a range, so that a settings range or text put in its place
 * is seen for what it is; what the text may be, only its reader knows.
 */
export function selector(cells: unknown, argument: string, example: string): string {
  const only = onlyCell(cells);
  if (only === undefined && isColumn(cells))
    throw new InputError(argument, `a range of ${cells.length} cells`, `give one cell, or a text such as "${example}"`);
  if (only === undefined || (typeof only === "string" && only.includes("=")))
    throw new InputError(argument, "settings", `put "${example}" before them`);
  const cell = plainCell(only);
  if (isBlank(cell)) return "";
  if (typeof cell === "string") return cell;
  if (typeof cell === "number") return String(cell);
  throw new InputError(argument, shown(cell), `give a text such as "${example}"`);
}

/** An error that a cell holds, given by its code, and the plain value of a data type; anything else as it is. */
export function plainCell(cell: unknown): unknown {
  const plain = unwrapped(cell);
  return errorCode(plain) ?? plain;
}

function settingsIn(settings: unknown, options: SettingsOptions = {}): Settings {
  return settingsOf(Array.isArray(settings) ? settings : [], options);
}

function plainRow(row: Row): Row {
  return {
    height: plainCell(row.height),
    width: plainCell(row.width),
    depth: plainCell(row.depth),
    enclosure: plainCell(row.enclosure),
    // Left out by a function without such an argument, which is not the same as a blank.
    weight: "weight" in row ? (plainCell(row.weight) ?? null) : undefined,
  };
}

/** A settings range or stock table has at least two columns. */
function isColumn(cells: unknown): cells is readonly unknown[] {
  return Array.isArray(cells) && cells.every((row) => Array.isArray(row) && row.length === 1);
}

/** The single cell of a 1 x 1 range (or of a bare value); undefined for a larger range. */
function onlyCell(cells: unknown): unknown {
  if (!Array.isArray(cells)) return cells ?? null;
  const row: unknown = cells.length === 1 ? cells[0] : undefined;
  return Array.isArray(row) && row.length === 1 ? (row[0] ?? null) : undefined;
}

/**
 * The answer of a function that never spills. Excel takes it as one value, so that it goes into other formulas as such and
 * is shown without an @ before it.
 */
export function oneValue(cells: CellResult): CellResult[number][number] {
  return cells[0]![0]!;
}

/** The one place that turns what the core throws into a cell error; what nobody expected is reported as a fault of the program. */
export function guarded(compute: () => Answer): CellResult {
  try {
    return cellsOf(compute(), cellError);
  } catch (error) {
    throw cellError(error);
  }
}

/**
 * An answer as rows of cells. Excel takes rows of one width alone: what a short row lacks is empty text.
 *
 * @param errorIn makes an error of the kind that is wanted
 */
export function cellsOf<E>(answer: Answer, errorIn: (error: unknown) => E): (number | string | E)[][] {
  if (!isTable(answer)) return [[shownCell(answer, errorIn)]];
  const width = answer.reduce((widest, row) => Math.max(widest, row.length), 0);
  return answer.map((row) => Array.from({ length: width }, (_, index) => shownCell(row[index] ?? "", errorIn)));
}

/** Whether an answer spills over several cells. */
export function isTable(answer: Answer): answer is readonly (readonly Cell[])[] {
  return Array.isArray(answer);
}

function shownCell<E>(cell: Cell, errorIn: (error: unknown) => E): number | string | E {
  if (typeof cell === "object") return errorIn(cell);
  // Excel would show nothing at all.
  if (typeof cell === "number" && !Number.isFinite(cell)) return errorIn(new RangeError(`the answer ${cell}`));
  return cell;
}

/** An error as plain data, which keeps its kind on the way from another thread. */
export interface CellFault {
  readonly notAvailable: boolean;
  readonly message: string;
  /** Of a fault of the program: what it met. */
  readonly details?: string;
}

export function faultOf(error: unknown): CellFault {
  const cause = plainError(error);
  const fault = { notAvailable: cause instanceof NoAnswer, message: cause.message };
  return cause instanceof Fault ? { ...fault, details: cause.details } : fault;
}

/**
 * The cells of an answer that another thread gave.
 *
 * @throws CustomFunctions.Error where it gave none
 */
export function cellsOfReply(reply: Reply): CellResult {
  if ("fault" in reply) throw shownFault(reply.fault);
  return reply.table.map((row) => row.map((cell) => (typeof cell === "object" ? shownFault(cell) : cell)));
}

/** The cells of an answer, or why there is none: plain data too. */
export type Reply = { readonly table: readonly ReplyRow[] } | { readonly fault: CellFault };

type ReplyRow = readonly (number | string | CellFault)[];

/** The error that the spreadsheet shows. */
function shownFault({ notAvailable, message, details }: CellFault): CustomFunctions.Error {
  const codes = CustomFunctions.ErrorCode;
  if (details !== undefined) console.error(details);
  return new CustomFunctions.Error(notAvailable ? codes.notAvailable : codes.invalidValue, message);
}

function cellError(error: unknown): CustomFunctions.Error {
  return shownFault(faultOf(error));
}
