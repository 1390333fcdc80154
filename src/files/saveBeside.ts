import {
  closeSync,
  existsSync,
  fsyncSync,
  linkSync,
  lstatSync,
  openSync,
  readFileSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  type BigIntStats,
} from "node:fs";
import { dirname } from "node:path";
import { InputError } from "../measure/errors";
import { accessLike } from "./access";
import { dropBackup, keepBackup, sameInode, type Backup } from "./backup";
import { clearLeftovers, temporaryName } from "./leftovers";
import { refuseIrregular } from "./readRegularFile";
import { refuseOpen, refuseUnasked, type Replacing } from "./refuseUnasked";
import { codeOf, explained } from "./systemErrors";
import { writeFlushed } from "./writeFlushed";

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
 * that is replaced is first kept beside as `survey.backup-1.xlsx`; an older backup is never written over. Who may read the
 * survey may read the output, and nobody else, from its first byte on.
 *
 * @throws InputError when a file would be replaced unasked, is open in a spreadsheet, may only be read, has other names,
 * is no regular file or has changed since it was read, or when the folder cannot be written
 */
export function saveBeside(request: SaveRequest): SaveResult {
  try {
    const output = realOutput(request.output);
    const exists = existsSync(output);
    refuseUnasked(request, output, exists);
    const old = exists ? readFileSync(output) : undefined;
    if (old !== undefined && sameBytes(old, request.bytes)) return { output };
    return written(request, output, old);
  } catch (error) {
    throw explained(error, "output", request.output);
  }
}

/**
 * Refuses, before any work, an output that `saveBeside` would refuse as it lies there now.
 *
 * @throws InputError
 */
export function refuseTaken(request: Replacing): void {
  try {
    const output = realOutput(request.output);
    refuseUnasked(request, output, existsSync(output));
  } catch (error) {
    throw explained(error, "output", request.output);
  }
}

function written(request: SaveRequest, output: string, old: Uint8Array | undefined): SaveResult {
  const temporary = temporaryName(output);
  let backup: Backup | undefined;
  try {
    clearLeftovers(output);
    writeFlushed(temporary, request.bytes, accessLike(request.input, output));
    prove(request, readFileSync(temporary));
    if (old === undefined) placeNew(temporary, output);
    else {
      const isInput = sameInode(request.input, output);
      const known = isInput ? request.inputBytes : old;
      refuseChanged(request.output, output, known);
      backup = keepBackup(output);
      refuseOpen(request.output, output);
      const stats = refuseChanged(request.output, output, known);
      replaceUnchanged(temporary, output, stats, request.output);
    }
    flushFolder(dirname(output));
    return backup === undefined ? { output } : { output, backup: backup.path };
  } catch (error) {
    rmSync(temporary, { force: true });
    if (backup !== undefined) dropBackup(backup, output);
    throw error;
  }
}

/** The file that a link leads to. @throws InputError when it leads nowhere, or what is there is no regular file */
function realOutput(path: string): string {
  const link = lstatSync(path, { throwIfNoEntry: false });
  if (link === undefined) return path;
  if (!existsSync(path))
    throw new InputError(
      "output",
      `"${path}", a link that leads nowhere`,
      "is written as a new file, or over a file",
      "delete the link, or choose another name",
    );
  const real = realpathSync(path);
  refuseIrregular(statSync(real), "output", path);
  return real;
}

/** What was written must be right: where it is not, that is no fault of the survey. */
function prove({ verify, bytes }: SaveRequest, now: Uint8Array): void {
  try {
    if (verify !== undefined) verify(now);
    else if (!sameBytes(bytes, now)) throw new Error("it differs from what it should hold");
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    throw new Error(`the file as written is not right: ${why}`, { cause: error });
  }
}

/** @returns what the system says of the file, read before its bytes were compared */
function refuseChanged(shownAs: string, output: string, known: Uint8Array): BigIntStats {
  const stats = statSync(output, { bigint: true });
  if (sameBytes(readFileSync(output), known)) return stats;
  throw changed(shownAs);
}

/** The last look is right before the rename: what another program has written by then is never written over. */
function replaceUnchanged(temporary: string, output: string, then: BigIntStats, shownAs: string): void {
  const now = statSync(output, { bigint: true });
  const same = (["ino", "dev", "size", "mtimeNs", "ctimeNs"] as const).every((each) => now[each] === then[each]);
  if (!same) throw changed(shownAs);
  renameSync(temporary, output);
}

function changed(shownAs: string): InputError {
  return new InputError(
    "output",
    `"${shownAs}", which has changed since it was read`,
    "is replaced only as it was read",
    "run again",
  );
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

function sameBytes(a: Uint8Array, b: Uint8Array): boolean {
  return Buffer.from(a.buffer, a.byteOffset, a.byteLength).equals(b);
}
