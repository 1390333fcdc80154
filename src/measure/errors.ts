/** An error that answers a question, and is no bug: many rows of a survey have one, and a stack costs more than sizing the row. */
export class WithoutStack extends Error {
  constructor(message: string) {
    const { stackTraceLimit } = Error;
    Error.stackTraceLimit = 0;
    super(message);
    Error.stackTraceLimit = stackTraceLimit;
  }
}

/**
 * Something the user gave that cannot be used: a `#VALUE!` cell, a pane message or a command-line line.
 *
 * @param argument the argument, setting or heading, in the user's words
 * @param got what it held, as the user would recognise it
 * @param expected what it accepts
 * @param cure the next thing to type or do; empty when `expected` says it
 * @param inShort what a survey says of a row with this problem, where the message is more than its reader needs
 */
export class InputError extends WithoutStack {
  override readonly name = "InputError";

  constructor(
    readonly argument: string,
    readonly got: string,
    readonly expected: string,
    readonly cure = "",
    readonly inShort?: string,
  ) {
    super(`${argument}: got ${got}; ${expected}${cure === "" ? "" : `; ${cure}`}`);
  }
}

/** A well-formed question without an answer (a part that this kind lacks): `#N/A`, so that IFNA works. */
export class NoAnswer extends WithoutStack {
  override readonly name = "NoAnswer";
}

/** Something outside the program that does not do its part: a server that has ended, a spreadsheet that refuses. */
export class Unavailable extends Error {
  override readonly name = "Unavailable";
}

/** How a message shows a value: texts in quotes, at most 40 characters; nothing as `a blank`. */
export function shown(value: unknown): string {
  if (value === null || value === undefined || value === "") return "a blank";
  if (typeof value === "string") return `"${value.length > 40 ? `${value.slice(0, 39)}…` : value}"`;
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  if (typeof value === "number") return String(value);
  return "something that is not a number or a text";
}
