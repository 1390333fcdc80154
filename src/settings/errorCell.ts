import { InputError } from "../measure/errors";

/**
 * A cell of an Excel data type (a number with its format, an entity) as the plain value that Excel shows beside older
 * functions; one that stands for an error as that error. Anything else as it is.
 */
export function unwrapped(cell: unknown): unknown {
  if (typeof cell !== "object" || cell === null || !("basicValue" in cell) || "code" in cell) return cell;
  return "basicType" in cell && cell.basicType === "Error" ? { code: cell.basicValue } : cell.basicValue;
}

/** The code of an error that a cell holds, such as `#N/A`; undefined for anything else. */
export function errorCode(cell: unknown): string | undefined {
  if (typeof cell !== "object" || cell === null || !("code" in cell)) return undefined;
  return typeof cell.code === "string" ? cell.code : undefined;
}

/** @throws InputError when a cell holds an error, which only the user can mend, where it arises */
export function refuseErrorCell(cell: unknown, argument: string): void {
  const code = errorCode(cell);
  if (code !== undefined) throw new InputError(argument, `the error ${code}`, "mend that cell, or clear it");
}
