import { accessSync, constants, existsSync, statSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { InputError } from "../measure/errors";
import { backupsOf, sameInode } from "./backup";

/** What is to be written where. */
export interface Replacing {
  readonly input: string;
  readonly output: string;
  readonly inPlace?: boolean;
  readonly replace?: boolean;
}

const ANY_WRITE = 0o222;

/**
 * Refuses to replace a file that the user did not say to replace, or that would lose something by it.
 *
 * @param output where the request's output really lies
 * @throws InputError
 */
export function refuseUnasked(request: Replacing, output: string, exists: boolean): void {
  if (!exists) return;
  const isInput = sameInode(request.input, output);
  if (isInput && !request.inPlace) {
    throw new InputError(
      "output",
      `"${request.output}", which is the survey itself`,
      "is written beside the survey",
      "choose another name, or say in place",
    );
  }
  if (!isInput && !request.replace) {
    throw new InputError(
      "output",
      `"${request.output}", which is there already`,
      "is written as a new file",
      "choose another name, or say replace",
    );
  }
  refuseOpen(request.output, output);
  refuseReadOnly(request.output, output);
  refuseOtherNames(request.output, output);
}

/** @throws InputError when the file's own lock is beside it: `~$survey.xlsx` of Excel, `.~lock.survey.xlsx#` of LibreOffice */
export function refuseOpen(shownAs: string, output: string): void {
  const name = basename(output);
  const locks = [`~$${name}`, `~$${name.slice(2)}`, `.~lock.${name}#`];
  const lock = locks.find((each) => existsSync(join(dirname(output), each)));
  if (lock === undefined) return;
  throw new InputError(
    "output",
    `"${shownAs}", which is open in a spreadsheet (${lock})`,
    "is replaced only when closed",
    "close it there first",
  );
}

/** A new file under its name would not be read-only any more. */
function refuseReadOnly(shownAs: string, output: string): void {
  accessSync(output, constants.W_OK);
  // Root may write everything, and a file that is marked read-only all the same.
  if ((statSync(output).mode & ANY_WRITE) !== 0) return;
  throw new InputError(
    "output",
    `"${shownAs}", which may only be read`,
    "is kept as it is",
    "choose another name, or allow writing to it first",
  );
}

/** The other names of the file would go on meaning the old one. */
function refuseOtherNames(shownAs: string, output: string): void {
  const names = Number(statSync(output).nlink) - backupsOf(output);
  if (names <= 1) return;
  throw new InputError(
    "output",
    `"${shownAs}", a file that has ${names} names (hard links)`,
    "is kept as it is",
    "choose another name",
  );
}
