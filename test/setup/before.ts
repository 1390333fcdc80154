import { chmodSync, mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import buildIfStale from "../../.config/build/buildIfStale";

/** The folder that this process made. */
export let made: string | undefined;

/** Builds, and gives all tests one folder for what they write for a while. */
export default function before(): void {
  buildIfStale();
  const folder = mkdtempSync(join(tmpdir(), "enclosure-columns-"));
  made = folder;
  // A test runs as another user, who must get as far as its own folder.
  chmodSync(folder, 0o755);
  // Where Node and other programs look, by system.
  for (const name of ["TMPDIR", "TEMP", "TMP"]) process.env[name] = folder;
}
