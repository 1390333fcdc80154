import { fchmodSync, fchownSync, statSync } from "node:fs";

/** Who may read and write a file. */
export interface Access {
  readonly mode: number;
  readonly uid: number;
  readonly gid: number;
}

const PERMISSIONS = 0o777;
const GROUP = 0o070;
const OTHERS = 0o007;
const BITS_A_CLASS = 3;

/** The access of the first of these files that is there; undefined when none is. */
export function accessLike(...paths: readonly string[]): Access | undefined {
  for (const path of paths) {
    const stats = statSync(path, { throwIfNoEntry: false });
    if (stats !== undefined) return { mode: stats.mode & PERMISSIONS, uid: stats.uid, gid: stats.gid };
  }
  return undefined;
}

/** Gives an open file, which only its owner may read so far, the access of another. */
export function giveAccess(file: number, { mode, uid, gid }: Access): void {
  try {
    fchownSync(file, uid, gid);
    fchmodSync(file, mode);
  } catch {
    // Only root gives a file away. A group that may read the survey may then not be the group of this file.
    fchmodSync(file, (mode & ~GROUP) | (mode & ((mode & OTHERS) << BITS_A_CLASS)));
  }
}
