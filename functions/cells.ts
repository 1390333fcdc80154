import { InputError, NoAnswer, shown } from "../src/measure/errors";
import { isBlank, isBlankRow, isNoEnclosure, problemOf, sizeRow, type Row, type Sized } from "../src/survey/sizeRow";
import type { Answer, Cell } from "../src/survey/answers";
import { settingsOf } from "../src/settings/settingsOf";
import type { Settings } from "../src/settings/schema";

/** What a cell function hands back to the spreadsheet. */
export type CellResult = (number | string | CustomFunctions.Error)[][];

/**
 * Everything that blanks, settings and errors need, for functions of one item: the answer of a blank row, or of one
 * whose enclosure is `none`, is empty text.
 */
export function itemAnswer(row: Row, settings: unknown, answer: (sized: Sized) => Answer): CellResult {
  return guarded(() => {
    const cells = plainRow(row);
    if (isBlankRow(cells) || isNoEnclosure(cells.enclosure)) return "";
    const sized = sizeRow(cells, settingsIn(settings));
    return sized === undefined ? "" : answer(sized);
  });
}

/** Why a row cannot be sized, in words: settings that cannot be read are a problem of the row too, never an error. */
export function rowProblem(row: Row, settings: unknown): CellResult {
  try {
    return [[problemOf(plainRow(row), settingsIn(settings))]];
  } catch (error) {
    if (error instanceof InputError) return [[error.message]];
    throw error;
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

/** The same for a function that needs no item. */
export function plainAnswer(settings: unknown, answer: (settings: Settings) => Answer): CellResult {
  return guarded(() => answer(settingsIn(settings)));
}

/**
 * The text of a selector. It is typed as a range, so that a settings range or text put in its place is seen for what it
 * is.
 */
export function selector(cells: unknown, argument: string, example: string): string {
  const only = onlyCell(cells);
  if (only === undefined || (typeof only === "string" && only.includes("=")))
    throw new InputError(argument, "settings", `put "${example}" before them`);
  const cell = plainCell(only);
  if (typeof cell === "string" && cell.trim() !== "") return cell;
  throw new InputError(argument, cell === 0 ? "0 or a blank" : shown(cell), `give a text such as "${example}"`);
}

/** An error that a cell holds, told by its code; anything else as it is. */
export function plainCell(cell: unknown): unknown {
  if (typeof cell !== "object" || cell === null) return cell;
  const code: unknown = "code" in cell ? cell.code : undefined;
  return typeof code === "string" ? code : cell;
}

function settingsIn(settings: unknown): Settings {
  if (!Array.isArray(settings)) return settingsOf([]);
  return settingsOf(settings);
}

function plainRow(row: Row): Row {
  return {
    height: plainCell(row.height),
    width: plainCell(row.width),
    depth: plainCell(row.depth),
    enclosure: plainCell(row.enclosure),
    weight: plainCell(row.weight),
  };
}

/** The single cell of a 1 x 1 range (or of a bare value); undefined for a larger range. */
function onlyCell(cells: unknown): unknown {
  if (!Array.isArray(cells)) return cells ?? null;
  const row: unknown = cells.length === 1 ? cells[0] : undefined;
  return Array.isArray(row) && row.length === 1 ? (row[0] ?? null) : undefined;
}

/** The one place that turns what the core throws into a cell error; anything else is a bug and surfaces as one. */
function guarded(compute: () => Answer): CellResult {
  try {
    const answer = compute();
    return typeof answer === "object" && !(answer instanceof NoAnswer)
      ? answer.map((row) => row.map(shownCell))
      : [[shownCell(answer)]];
  } catch (error) {
    if (error instanceof InputError)
      throw new CustomFunctions.Error(CustomFunctions.ErrorCode.invalidValue, error.message);
    if (error instanceof NoAnswer)
      throw new CustomFunctions.Error(CustomFunctions.ErrorCode.notAvailable, error.message);
    throw error;
  }
}

function shownCell(cell: Cell): number | string | CustomFunctions.Error {
  if (!(cell instanceof NoAnswer)) return cell;
  return new CustomFunctions.Error(CustomFunctions.ErrorCode.notAvailable, cell.message);
}
