import {
  closeSync,
  constants,
  copyFileSync,
  existsSync,
  fchmodSync,
  fsyncSync,
  linkSync,
  openSync,
  readdirSync,
} from "node:fs";
import { readFileSync, realpathSync, renameSync, rmSync, statSync, writeSync } from "node:fs";
import { hostname } from "node:os";
import { basename, dirname, extname, join } from "node:path";
import { InputError } from "../measure/errors";

/** What to write, and what must not be harmed. */
export interface SaveRequest {
  /** The user's file, which was read. */
  readonly input: string;
  /** Its bytes as they were read: when the file has changed since, it is not replaced. */
  readonly inputBytes: Uint8Array;
  /** Where to write. The input itself only with `inPlace`. */
  readonly output: string;
  readonly bytes: Uint8Array;
  /** Proves the file as read back from the disk; throws when it is not right. Left out, its bytes must be those given. */
  readonly verify?: (written: Uint8Array) => void;
  /** Replace the input, keeping a backup beside it. */
  readonly inPlace?: boolean;
  /** Replace another file that stands at the output, keeping a backup beside it. */
  readonly replace?: boolean;
}

export interface SaveResult {
  readonly output: string;
  /** Where the replaced file is kept. */
  readonly backup?: string;
}

/**
 * Writes a file so that at any moment, a kill or a full disk included, the output is either the old file or the whole
 * new one: a temporary file in the same folder, flushed, read back and proved, then renamed over the output. A file
 * that is replaced is first kept beside as `survey.backup-1.xlsx`; an older backup is never written over.
 *
 * @throws InputError when a file would be replaced unasked, is open in a spreadsheet, has changed since it was read, or
 * the folder cannot be written
 */
export function saveBeside(request: SaveRequest): SaveResult {
  const output = existsSync(request.output) ? realpathSync(request.output) : request.output;
  const exists = existsSync(output);
  refuseUnasked(request, output, exists);
  if (exists && sameBytes(readFileSync(output), request.bytes)) return { output };
  const temporary = join(dirname(output), `.${basename(output)}.${hostname()}.${process.pid}${LEFTOVER}`);
  try {
    clearLeftovers(output);
    writeFlushed(temporary, request.bytes, exists ? statSync(output).mode : undefined);
    (request.verify ?? refuseOtherThan(request.bytes))(readFileSync(temporary));
    refuseChanged(request, output, exists);
    const backup = exists ? keepBackup(output) : undefined;
    if (exists) renameSync(temporary, output);
    else placeNew(temporary, output);
    flushFolder(dirname(output));
    return backup === undefined ? { output } : { output, backup };
  } catch (error) {
    rmSync(temporary, { force: true });
    throw explained(error, output);
  }
}

/** End of the name of a temporary file. */
const LEFTOVER = ".enclosure-part";
const PERMISSIONS = 0o777;
const WRITE_STEP = 4_194_304;

function refuseOtherThan(wanted: Uint8Array): (written: Uint8Array) => void {
  return (written) => {
    if (!sameBytes(wanted, written)) throw new Error("the file as written differs from what it should hold");
  };
}

function refuseUnasked(request: SaveRequest, output: string, exists: boolean): void {
  const isInput = exists && sameFile(request.input, output);
  if (isInput && !request.inPlace) {
    throw new InputError(
      "output",
      `"${request.output}", which is the survey itself`,
      "is written beside the survey",
      "choose another name, or say in place",
    );
  }
  if (exists && !isInput && !request.replace) {
    throw new InputError(
      "output",
      `"${request.output}", which is there already`,
      "is written as a new file",
      "choose another name, or say replace",
    );
  }
  const lock = exists ? openElsewhere(output) : undefined;
  if (lock !== undefined) {
    throw new InputError(
      "output",
      `"${request.output}", which is open in a spreadsheet (${lock})`,
      "is replaced only when closed",
      "close it there first",
    );
  }
}

/** The file's own lock beside it: `~$survey.xlsx` of Excel, `.~lock.survey.xlsx#` of LibreOffice. */
function openElsewhere(output: string): string | undefined {
  const name = basename(output);
  return [`~$${name}`, `~$${name.slice(2)}`, `.~lock.${name}#`].find((lock) => existsSync(join(dirname(output), lock)));
}

function refuseChanged(request: SaveRequest, output: string, exists: boolean): void {
  if (!exists || !sameFile(request.input, output) || sameBytes(readFileSync(output), request.inputBytes)) return;
  throw new InputError(
    "output",
    `"${request.output}", which has changed since it was read`,
    "is replaced only as it was read",
    "run again",
  );
}

function writeFlushed(path: string, bytes: Uint8Array, mode: number | undefined): void {
  const file = openSync(path, "wx");
  try {
    for (let at = 0; at < bytes.length;) at += writeSync(file, bytes, at, Math.min(WRITE_STEP, bytes.length - at));
    if (mode !== undefined) fchmodSync(file, mode & PERMISSIONS);
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
}

/** A second name for the old file where the disk knows such links, which cannot be cut short; else a copy. */
function keepBackup(output: string): string {
  const extension = extname(output);
  const stem = output.slice(0, output.length - extension.length);
  for (let number = 1; ; number++) {
    const backup = `${stem}.backup-${number}${extension}`;
    try {
      linkSync(output, backup);
      return backup;
    } catch (error) {
      if (codeOf(error) === "EEXIST") continue;
    }
    try {
      copyFileSync(output, backup, constants.COPYFILE_EXCL);
      return backup;
    } catch (error) {
      if (codeOf(error) !== "EEXIST") throw error;
    }
  }
}

/** Renaming would silently replace a file that came to stand there meanwhile; a link does not. */
function placeNew(temporary: string, output: string): void {
  try {
    linkSync(temporary, output);
    rmSync(temporary);
  } catch (error) {
    if (codeOf(error) === "EEXIST" || existsSync(output)) throw error;
    renameSync(temporary, output);
  }
}

/** Temporary files of runs on this machine that were killed. */
function clearLeftovers(output: string): void {
  const start = `.${basename(output)}.${hostname()}.`;
  for (const name of readdirSync(dirname(output))) {
    if (!name.startsWith(start) || !name.endsWith(LEFTOVER)) continue;
    const process = Number(name.slice(start.length, -LEFTOVER.length));
    if (Number.isInteger(process) && process > 0 && !isRunning(process))
      rmSync(join(dirname(output), name), { force: true });
  }
}

function isRunning(id: number): boolean {
  if (id === process.pid) return false;
  try {
    process.kill(id, 0);
    return true;
  } catch (error) {
    return codeOf(error) !== "ESRCH";
  }
}

function flushFolder(folder: string): void {
  try {
    const handle = openSync(folder, "r");
    try {
      fsyncSync(handle);
    } finally {
      closeSync(handle);
    }
  } catch {
    // Windows and some network disks cannot flush a folder; the file itself is flushed.
  }
}

function sameFile(a: string, b: string): boolean {
  if (!existsSync(a) || !existsSync(b)) return false;
  const [one, other] = [statSync(a), statSync(b)];
  return realpathSync(a) === realpathSync(b) || (one.ino === other.ino && one.dev === other.dev);
}

function sameBytes(a: Uint8Array, b: Uint8Array): boolean {
  return Buffer.from(a.buffer, a.byteOffset, a.byteLength).equals(b);
}

function codeOf(error: unknown): string {
  return typeof error === "object" && error !== null && "code" in error ? String(error.code) : "";
}

const REASONS: Readonly<Record<string, readonly [got: string, cure: string]>> = {
  ENOSPC: ["a full disk", "make room, or write to another disk"],
  EDQUOT: ["a full quota", "make room, or write to another disk"],
  EFBIG: ["a file larger than is allowed here", "write to another disk"],
  EACCES: ["a folder or file that may not be written", "choose a folder of your own"],
  EPERM: ["a folder or file that may not be written", "choose a folder of your own"],
  EROFS: ["a disk that may only be read", "choose another disk"],
  EBUSY: ["a file that another program holds open", "close it there first"],
  ENOENT: ["a folder that is not there", "make the folder, or choose another"],
  ENOTDIR: ["a folder that is not there", "make the folder, or choose another"],
  EEXIST: ["a file that came to stand there meanwhile", "run again, or choose another name"],
};

function explained(error: unknown, output: string): unknown {
  const reason = REASONS[codeOf(error)];
  return reason ? new InputError("output", `"${output}": ${reason[0]}`, "the original is as it was", reason[1]) : error;
}
