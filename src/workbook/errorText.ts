/** Errors that every spreadsheet knows in a file (ECMA-376 part 1, 18.17.3). */
export const STORED_ERRORS = ["#N/A", "#VALUE!", "#REF!", "#DIV/0!", "#NUM!", "#NAME?", "#NULL!"] as const;

/** Whether a text is what a cell in error shows, in a program that also has these errors. */
export function errorTexts(...others: readonly string[]): (value: unknown) => value is string {
  const all: ReadonlySet<unknown> = new Set<unknown>([...STORED_ERRORS, ...others]);
  return (value): value is string => all.has(value);
}
