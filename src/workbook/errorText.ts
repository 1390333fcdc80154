/** Errors that every spreadsheet knows in a file (ECMA-376 part 1, 18.17.3). */
export const STORED_ERRORS = ["#N/A", "#VALUE!", "#REF!", "#DIV/0!", "#NUM!", "#NAME?", "#NULL!"] as const;

/** Whether a text is what a cell in error shows, in a program that has these errors besides. */
export function errorTexts(...besides: readonly string[]): (value: unknown) => value is string {
  const all: ReadonlySet<unknown> = new Set<unknown>([...STORED_ERRORS, ...besides]);
  return (value): value is string => all.has(value);
}
