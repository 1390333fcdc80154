import { createHash } from "node:crypto";
import { readdirSync, rmSync } from "node:fs";
import { hostname } from "node:os";
import { basename, dirname, join } from "node:path";
import { codeOf } from "./systemErrors";

/** End of the name of a temporary file. */
const LEFTOVER = ".enclosure-part";
const HASH_LETTERS = 12;

/** The temporary file of this run beside an output. Its name is short: that of the output may be as long as a name can be. */
export function temporaryName(output: string): string {
  return join(dirname(output), `${startOf(output)}${process.pid}${LEFTOVER}`);
}

/** Clears temporary files of runs on this machine that were killed. */
export function clearLeftovers(output: string): void {
  const start = startOf(output);
  for (const name of readdirSync(dirname(output))) {
    if (!name.startsWith(start) || !name.endsWith(LEFTOVER)) continue;
    const process = Number(name.slice(start.length, -LEFTOVER.length));
    if (Number.isInteger(process) && process > 0 && !isRunning(process))
      rmSync(join(dirname(output), name), { force: true });
  }
}

function startOf(output: string): string {
  const hash = createHash("sha256")
    .update(`${hostname()}/${basename(output)}`)
    .digest("hex");
  return `.${hash.slice(0, HASH_LETTERS)}.`;
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
