import { constants, copyFileSync, existsSync, linkSync, readFileSync, rmSync, statSync } from "node:fs";
import { extname } from "node:path";
import { codeOf } from "./systemErrors";

/** A second name or a copy of a file that is about to be replaced. */
export interface Backup {
  readonly path: string;
  /** False for one that an earlier run, which was ended, left of the same file. */
  readonly made: boolean;
}

/**
 * Keeps a file beside itself as `survey.backup-1.xlsx`, or with the next number that is free: a second name where the disk
 * knows such links, which cannot be cut short; else a copy.
 */
export function keepBackup(path: string): Backup {
  for (let number = 1; ; number++) {
    const backup = backupName(path, number);
    if (sameInode(path, backup)) return { path: backup, made: false };
    try {
      linkSync(path, backup);
      return { path: backup, made: true };
    } catch (error) {
      if (codeOf(error) === "EEXIST") continue;
    }
    try {
      copyFileSync(path, backup, constants.COPYFILE_EXCL);
      return { path: backup, made: true };
    } catch (error) {
      if (codeOf(error) !== "EEXIST") throw error;
    }
  }
}

/** Takes a backup away again where the file was not replaced after all: only while both are the same. */
export function dropBackup({ path: backup, made }: Backup, path: string): void {
  if (!made || !existsSync(path) || !existsSync(backup)) return;
  if (sameInode(path, backup) || readFileSync(path).equals(readFileSync(backup))) rmSync(backup, { force: true });
}

/** How many names of a file are backups of it. */
export function backupsOf(path: string): number {
  let number = 1;
  let found = 0;
  for (; existsSync(backupName(path, number)); number++) if (sameInode(path, backupName(path, number))) found++;
  return found;
}

/** Whether two names are of one file. */
export function sameInode(a: string, b: string): boolean {
  const one = statSync(a, { throwIfNoEntry: false, bigint: true });
  const other = statSync(b, { throwIfNoEntry: false, bigint: true });
  return one !== undefined && other !== undefined && one.ino === other.ino && one.dev === other.dev;
}

function backupName(path: string, number: number): string {
  const extension = extname(path);
  return `${path.slice(0, path.length - extension.length)}.backup-${number}${extension}`;
}
