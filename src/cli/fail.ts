import { Fault, plainError } from "../measure/fault";
import { errorAnswer, errorLines, type Typed } from "./errorText";
import { visibleJson, warn } from "./print";

/** Exit code when nothing could be done. */
const REFUSED = 2;
/** Exit code of a fault of the program. */
const FAULTY = 3;

/**
 * The one place where the command line ends on an error.
 *
 * @param debug whether the details of a fault are wanted
 * @param typed the command that failed, by which a question says what to type
 * @returns the exit code
 */
export function fail(error: unknown, debug: boolean, typed?: Typed): number {
  const cause = plainError(error);
  if (!(cause instanceof Fault)) {
    if (typed?.json === true) console.error(visibleJson(errorAnswer(cause, typed)));
    else for (const line of errorLines(cause, typed)) warn(line);
    return REFUSED;
  }
  warn(debug ? cause.message : `${cause.message} Add --debug for details.`);
  // The fault may have come after the new file took the place of the old.
  if (typed?.rest.includes("--in-place") === true) warn("If it was already written in place, its backup is beside it.");
  if (debug) for (const line of cause.details.split("\n")) warn(line);
  return FAULTY;
}

/** Errors that reach no caller end the same way; a reader of the output that has gone away is no error. */
export function failOutside(debug: boolean): void {
  const end = (error: unknown): void => process.exit(fail(error, debug));
  process.on("uncaughtException", end);
  process.on("unhandledRejection", end);
  for (const stream of [process.stdout, process.stderr])
    stream.on("error", (error: NodeJS.ErrnoException) => {
      if (error.code === "EPIPE") process.exit(0);
      throw error;
    });
}
