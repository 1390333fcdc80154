import { plainError } from "../../measure/fault";
import { CellError, ERROR_CODES, isErrorText } from "./cellError";
import type { LoadedFunction } from "./loadFunctions";
import { NAMESPACE, type ParameterMetadata } from "./metadata";

/** What the grid hands to a function and takes back. */
export type GridValue = string | number | boolean;
export type GridAnswer = GridValue | GridValue[][];

/** Where messages of errors go: the cell in error, counted from the one that holds the formula. */
export interface ErrorNotes {
  /** Forgets what was said of this formula. */
  readonly clear: () => void;
  readonly put: (row: number, column: number, message: string) => void;
}

/**
 * Calls a cell function the way Excel does: a bare value for a parameter of one cell, rows of cells for a range, the
 * repeating ranges as one array, nothing for what is left out, errors as error objects; and takes its answer, or the
 * answer that it promises, back as plain values. A thrown error becomes its code, and its message a note.
 */
export function adaptFunction({ metadata, call }: LoadedFunction) {
  const name = `${NAMESPACE}.${metadata.name}`;
  return (args: readonly unknown[], notes: ErrorNotes): GridAnswer | Promise<GridAnswer> => {
    notes.clear();
    const failed = (error: unknown): string => {
      if (!(error instanceof CellError)) console.error(name, error);
      notes.put(0, 0, error instanceof CellError ? error.message : plainError(error).message);
      return error instanceof CellError ? error.code : ERROR_CODES.invalidValue;
    };
    try {
      const answer = call(...excelArguments(name, metadata.parameters, args), INVOCATION);
      if (answer instanceof Promise) return answer.then((value: unknown) => gridAnswer(value, notes), failed);
      return gridAnswer(answer, notes);
    } catch (error) {
      return failed(error);
    }
  };
}

/** Excel appends this to the arguments; our functions have no use for it. */
const INVOCATION = {};

function excelArguments(name: string, parameters: readonly ParameterMetadata[], args: readonly unknown[]): unknown[] {
  const last = parameters.at(-1);
  const single = last?.repeating === true ? parameters.slice(0, -1) : parameters;
  const needed = single.filter(({ optional }) => optional !== true).length;
  const most = last?.repeating === true ? Infinity : single.length;
  if (args.length < needed || args.length > most) throw wrongCount(name, parameters, needed, args.length);
  const passed = single.map((parameter, place) => {
    if (place >= args.length) return null;
    return parameter.dimensionality === "matrix" ? cellsOf(args[place]) : oneCell(parameter.name, args[place]);
  });
  if (last?.repeating !== true) return passed;
  const ranges = args.slice(single.length).map(cellsOf);
  return [...passed, ranges.length === 0 ? null : ranges];
}

function wrongCount(name: string, parameters: readonly ParameterMetadata[], needed: number, got: number): CellError {
  const list = parameters.map((each) => (each.optional === true ? `[${each.name}]` : each.name)).join(", ");
  const count = got < needed ? `needs ${needed} arguments` : `takes ${parameters.length} arguments at most`;
  return new CellError(ERROR_CODES.invalidValue, `${name} ${count}, and got ${got}: ${name}(${list})`);
}

function cellsOf(value: unknown): unknown[][] {
  if (!Array.isArray(value)) return [[excelValue(value)]];
  return value.map((row: unknown) => (Array.isArray(row) ? row : [row]).map(excelValue));
}

function oneCell(parameter: string, value: unknown): unknown {
  if (!Array.isArray(value)) return excelValue(value);
  const row: unknown = value[0];
  if (value.length === 1 && Array.isArray(row) && row.length === 1) return excelValue(row[0]);
  throw new CellError(
    ERROR_CODES.invalidValue,
    `${parameter}: got a range of several cells; give one cell, such as the one of this row`,
  );
}

function excelValue(value: unknown): unknown {
  if (value === undefined || value === null) return null;
  return isErrorText(value) ? new CellError(value) : value;
}

function gridAnswer(answer: unknown, notes: ErrorNotes): GridAnswer {
  if (!Array.isArray(answer)) return gridValue(answer, 0, 0, notes);
  const rows = answer.map((row: unknown[], r) => row.map((cell, c) => gridValue(cell, r, c, notes)));
  const only = rows.length === 1 && rows[0]!.length === 1 ? rows[0]![0] : undefined;
  return only ?? rows;
}

function gridValue(value: unknown, row: number, column: number, notes: ErrorNotes): GridValue {
  if (value instanceof CellError) {
    notes.put(row, column, value.message);
    return value.code;
  }
  return typeof value === "number" || typeof value === "boolean" || typeof value === "string" ? value : "";
}
