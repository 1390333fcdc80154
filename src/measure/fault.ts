import { InputError, NoAnswer, Unavailable } from "./errors";

/**
 * A fault of the program itself: what a person reads in place of the error that nobody foresaw. The reference is the
 * same wherever the same fault shows, so that it can be reported.
 */
export class Fault extends Error {
  override readonly name = "Fault";

  /** @param details the error as the program met it; only for `--debug` */
  constructor(
    message: string,
    readonly details = "",
  ) {
    super(message);
  }
}

/** The error as a person reads it: one that was foreseen as it is, any other as a fault of the program. */
export function plainError(error: unknown): Error {
  const isForeseen =
    error instanceof InputError || error instanceof NoAnswer || error instanceof Unavailable || error instanceof Fault;
  return isForeseen ? error : faultOf(error);
}

function faultOf(error: unknown): Fault {
  const details = detailsOf(error);
  return new Fault(
    `This is a fault of the program; your survey is as it was. Reference ${referenceOf(details)}.`,
    details,
  );
}

/** Minified source is printed above a stack by some hosts; a stack itself has short lines alone. */
const LONGEST_LINE = 300;

function detailsOf(error: unknown): string {
  const text = error instanceof Error ? (error.stack ?? `${error.name}: ${error.message}`) : String(error);
  return text
    .split("\n")
    .map((line) => line.slice(0, LONGEST_LINE))
    .join("\n");
}

const REFERENCE_LETTERS = 6;
const HEXADECIMAL = 16;

/** A short hash (FNV-1a, 32 bits) of the error without the folders of this machine, and without figures of this run. */
function referenceOf(details: string): string {
  const plain = details.replace(/[^\s()]{0,300}[\\/]/g, "").replace(/\d+/g, "");
  let hash = 0x811c9dc5;
  for (const letter of plain) hash = Math.imul(hash ^ letter.codePointAt(0)!, 0x01000193) >>> 0;
  return hash.toString(HEXADECIMAL).padStart(8, "0").slice(-REFERENCE_LETTERS);
}
