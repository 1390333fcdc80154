import { closeSync, constants, fstatSync, openSync, readFileSync, type Stats } from "node:fs";
import { InputError, shown } from "../measure/errors";
import { codeOf, explained } from "./systemErrors";

/**
 * The bytes of a file that the user names.
 *
 * @param argument how the user calls it
 * @throws InputError when it is not there, is no regular file (a folder, pipe or device), or cannot be read
 */
export function readRegularFile(path: string, argument: string): Uint8Array {
  let file: number | undefined;
  try {
    // A pipe would otherwise keep the program waiting until something is written to it. Windows has no such flag.
    file = openSync(path, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
    refuseIrregular(fstatSync(file), argument, path);
    return new Uint8Array(readFileSync(file));
  } catch (error) {
    if (codeOf(error) === "ENOENT" || codeOf(error) === "ENOTDIR")
      throw new InputError(argument, shown(path), "give the path of a file", "no such file is there");
    if (codeOf(error) === "EACCES" || codeOf(error) === "EPERM")
      throw new InputError(argument, shown(path), "give the path of a file that can be read", "you may not read it");
    throw explained(error, argument, path);
  } finally {
    if (file !== undefined) closeSync(file);
  }
}

/** @throws InputError for a folder, pipe, device or socket */
export function refuseIrregular(stats: Stats, argument: string, path: string): void {
  if (stats.isFile()) return;
  const got = stats.isDirectory() ? "a folder" : stats.isFIFO() ? "a pipe" : "a device";
  throw new InputError(argument, `"${path}", which is ${got}`, "needs a plain file", "give the name of a file");
}
