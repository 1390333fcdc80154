import { realpathSync } from "node:fs";
import { dirname, join } from "node:path";

/** The path of a file that the build puts beside the program, also where a link started it. */
export function besideProgram(...names: readonly string[]): string {
  return join(dirname(realpathSync(process.argv[1]!)), ...names);
}
