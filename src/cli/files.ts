import { existsSync, readFileSync } from "node:fs";
import { InputError, shown } from "../measure/errors";

/** @throws InputError when the file is not there or cannot be read */
export function readInput(path: string, argument: string): Uint8Array {
  if (!existsSync(path))
    throw new InputError(argument, shown(path), "give the path of a file", "no such file is there");
  try {
    return new Uint8Array(readFileSync(path));
  } catch (error) {
    const reason = error instanceof Error ? error.message : "it cannot be read";
    throw new InputError(argument, shown(path), "give the path of a file that can be read", reason);
  }
}
