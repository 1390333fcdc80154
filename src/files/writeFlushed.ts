import { closeSync, fsyncSync, openSync, writeSync } from "node:fs";
import { giveAccess, type Access } from "./access";

const WRITE_STEP = 4_194_304;
/** For a file without a survey on the disk: nobody but its owner. */
const OWNER_ALONE = 0o600;

/**
 * Writes a new file, which may be read by those with `access` and by nobody else from its first byte on, and waits until
 * it is on the disk.
 *
 * @throws Error of the system, also when the file is there
 */
export function writeFlushed(path: string, bytes: Uint8Array, access: Access | undefined): void {
  const file = openSync(path, "wx", OWNER_ALONE);
  try {
    if (access !== undefined) giveAccess(file, access);
    for (let at = 0; at < bytes.length;) at += writeSync(file, bytes, at, Math.min(WRITE_STEP, bytes.length - at));
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
}
